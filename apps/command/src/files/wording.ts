/** A firm's own wording, read from a file and looked through. */
import { InputFault } from '@standfast/engine';
import { wordingFaults } from '@standfast/report';
import { readJson } from './read.ts';

const LIMIT_BYTES = 1e6;

/** @throws InputFault naming the first text that cannot be used, and how many more there are */
export async function readWording(file: string): Promise<Record<string, string>> {
  const wording = await readJson(file, "a firm's wording", LIMIT_BYTES);
  const [first, ...others] = wordingFaults(wording);
  if (first) {
    const more =
      others.length === 0 ? '' : ` (and ${others.length} more: ${others.map(({ key }) => key).join(', ')})`;
    throw new InputFault(first.what + more, first.key === '' ? file : `${file}: ${first.key}`);
  }
  return wording as Record<string, string>;
}
