/**
 * What the browser keeps: one row a case, and the bytes of traces and photos once each, by their SHA-256. Traces are
 * never put inside the case's row, so saving a keystroke writes a few kilobytes however many samples there are.
 */
import type { CaseFile } from '@standfast/casefile';
import type { Interval } from '@standfast/engine';
import Dexie, { type EntityTable } from 'dexie';

/** Where a case came from. */
export type CaseOrigin = 'demonstration' | 'made here' | 'brought in';

/** The last assessment in short, so that the list can show it without working it out again. */
export interface CaseVerdict extends Interval {
  mode: 'breakage' | 'uprooting';
  directionDeg: number;
}

export interface CaseRecord {
  id: string;
  caseFile: CaseFile;
  /** Path in the case folder (for example `traces/d1.csv`) to the SHA-256 of its bytes. */
  files: Record<string, string>;
  /** Text typed into a field that could not be read yet, by field path: kept, so that no keystroke is lost. */
  drafts: Record<string, string>;
  origin: CaseOrigin;
  createdAt: number;
  savedAt: number;
  /** When it was put in the bin; 0 while it is not. */
  deletedAt: number;
  verdict: CaseVerdict | null;
}

export interface BlobRecord {
  sha256: string;
  bytes: Uint8Array;
  storedAt: number;
}

export type FieldDatabase = Dexie & {
  cases: EntityTable<CaseRecord, 'id'>;
  blobs: EntityTable<BlobRecord, 'sha256'>;
};

export const database = new Dexie('standfast') as FieldDatabase;
database.version(1).stores({ cases: 'id, savedAt, deletedAt', blobs: 'sha256, storedAt' });
