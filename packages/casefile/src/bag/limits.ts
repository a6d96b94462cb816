/**
 * Limits on what is read into memory, in words a person can act on.
 */
import { InputFault } from '@standfast/engine';
import type { BagLimits } from './bag.ts';

export function checkCount(files: number, where: string, { maxFiles }: BagLimits): void {
  if (files > maxFiles) {
    throw new InputFault(
      `holds ${files} files, more than the ${maxFiles} that are read: is this the case, and not a folder of many cases?`,
      where,
    );
  }
}

export function checkSize(bytes: number, where: string, { maxFileBytes }: BagLimits): void {
  if (bytes > maxFileBytes) {
    throw new InputFault(
      `is ${inMegabytes(bytes)}, more than the ${inMegabytes(maxFileBytes)} that are read: make it smaller or take it out of the case`,
      where,
    );
  }
}

export function checkTotal(bytes: number, where: string, { maxTotalBytes }: BagLimits): void {
  if (bytes > maxTotalBytes) {
    throw new InputFault(
      `holds ${inMegabytes(bytes)} in all, more than the ${inMegabytes(maxTotalBytes)} that are read: take out what does not belong to the case`,
      where,
    );
  }
}

function inMegabytes(bytes: number): string {
  return bytes < 1e6 ? `${bytes} bytes` : `${Math.round(bytes / 1e6)} MB`;
}
