/**
 * What the browser keeps: one row a case, and the bytes of traces and photos once each, by their SHA-256. Traces are
 * never put inside the case's row, so saving a keystroke writes a few kilobytes however many samples there are.
 */
import type { CaseFile, Firm, WorkRow } from '@standfast/casefile';
import Dexie, { type EntityTable } from 'dexie';

/** Where a case came from. */
export type CaseOrigin = 'demonstration' | 'made here' | 'brought in';

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
}

export interface BlobRecord {
  sha256: string;
  bytes: Uint8Array;
  storedAt: number;
}

/** A case in short, so that list and map open without its traces and without assessing anything. */
export interface SummaryRecord {
  id: string;
  /** When the case was last saved. */
  savedAt: number;
  /** `savedAt` of the case as it was summed up: it has changed since when the two differ. */
  of: number;
  /** What wrote it; another writer's summary is made anew. */
  by: string;
  row: WorkRow;
  /** Only what was recorded: what it comes to is still to be worked out. */
  waiting: boolean;
}

/** Lines that a person brought in to see behind the trees: roads, paths, boundaries. */
export interface BackgroundRecord {
  id: 'background';
  name: string;
  /** Longitude and latitude of each point, one line after another. */
  lonLatDeg: Float64Array;
  /** Place of each line's first point; the number of points at the end. */
  starts: Uint32Array;
}

/** What the firm keeps for all its reports: letterhead, logo, signature, units and words. */
export interface FirmRecord extends Firm {
  id: 'firm';
}

export type FieldDatabase = Dexie & {
  cases: EntityTable<CaseRecord, 'id'>;
  blobs: EntityTable<BlobRecord, 'sha256'>;
  summaries: EntityTable<SummaryRecord, 'id'>;
  backgrounds: EntityTable<BackgroundRecord, 'id'>;
  firms: EntityTable<FirmRecord, 'id'>;
};

export const database = new Dexie('standfast') as FieldDatabase;
database.version(1).stores({ cases: 'id, savedAt, deletedAt', blobs: 'sha256, storedAt' });
database.version(2).stores({ summaries: 'id', backgrounds: 'id' });
database.version(3).stores({ firms: 'id' });
