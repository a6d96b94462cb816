/** Loose files on their way to the step that takes them: tables, photos of strips, reports to verify, inventories. */
import { useSyncExternalStore } from 'react';
import type { StripDraft } from '../edit/stripDraft.ts';
import type { LooseFile } from './incoming.ts';

interface Queue<T> {
  set(next: readonly T[]): void;
  use(): readonly T[];
}

function queue<T>(): Queue<T> {
  const listeners = new Set<() => void>();
  let waiting: readonly T[] = [];
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    set(next) {
      waiting = next;
      for (const listener of listeners) listener();
    },
    use: () => useSyncExternalStore(subscribe, () => waiting),
  };
}

const tables = queue<LooseFile>();
export const waitForImport = tables.set;
export const useWaitingTables = tables.use;

/** A photo, with what was done with it before it was laid aside. */
export interface WaitingStrip extends LooseFile {
  draft?: StripDraft;
}

const strips = queue<WaitingStrip>();
export const waitForStrips = strips.set;
export const useWaitingStrips = strips.use;

const reports = queue<File>();
export const waitForReports = reports.set;
export const useWaitingReports = reports.use;

const inventories = queue<File>();
export const waitForInventories = inventories.set;
export const useWaitingInventories = inventories.use;
