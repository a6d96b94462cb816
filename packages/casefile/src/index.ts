/** What a person recorded: the case file, its folder and zip, tables of readings, and edits. */
import type { CaseInput, InputFault, Notice, Trace } from '@standfast/engine';
import type { BagLimits, CaseBag, ReadonlyCaseBag } from './bag/bag.ts';
import type { CaseFile } from './schema/schema.ts';
import type { TableGuess, TableTrace, TracePreview } from './table/types.ts';

export * from './bag/bag.ts';
export * from './caseFaults.ts';
export * from './history.ts';
export * from './schema/schema.ts';
export * from './table/types.ts';

export declare function parseCase(json: unknown): { caseFile: CaseFile; notices: Notice[] };
export declare function checkCase(caseFile: CaseFile): { faults: InputFault[]; notices: Notice[] };
export declare function engineInput(
  caseFile: CaseFile,
  traces: ReadonlyMap<string, Trace>,
): { input: CaseInput; notices: Notice[] };
export declare function openCase(bag: ReadonlyCaseBag): {
  caseFile: CaseFile;
  engineInput: CaseInput;
  notices: Notice[];
};
export declare function saveCase(caseFile: CaseFile, bag: ReadonlyCaseBag): CaseBag;
export declare function bagFromZip(zip: Uint8Array, name?: string, limits?: BagLimits): CaseBag;
export declare function zipOfBag(bag: ReadonlyCaseBag): Uint8Array;
export declare function readTraceTable(bytes: Uint8Array, where: string): Trace;
export declare function writeTraceTable(trace: Trace, comments?: readonly string[]): Uint8Array;
export declare function guessTable(bytes: Uint8Array, name: string): Promise<TableGuess>;
export declare function previewTable(bytes: Uint8Array, guess: TableGuess): Promise<TracePreview[]>;
export declare function readTable(
  bytes: Uint8Array,
  guess: TableGuess,
): Promise<{ traces: TableTrace[]; notices: Notice[] }>;
