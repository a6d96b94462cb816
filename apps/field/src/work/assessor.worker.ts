/**
 * The assessment, off the page's thread. The worker keeps each trace it has read, by the hash of its bytes, so an
 * edit sends only the case.
 */
import {
  CaseFaults,
  type CaseFile,
  checkCase,
  engineInput,
  parseCase,
  readTraceTable,
} from '@standfast/casefile';
import {
  type Assessment,
  assess,
  type CaseInput,
  checkTrace,
  InputFault,
  type Notice,
  type Trace,
} from '@standfast/engine';
import { expose, transfer } from 'comlink';
import { traceFilesOf } from '../edit/drillings.ts';
import { earlierInput } from './earlierVisit.ts';
import { rememberingReader } from './rememberingReader.ts';

export interface FaultText {
  what: string;
  where: string;
}

export type AssessOutcome =
  | { ok: true; assessment: Assessment; tree: CaseInput['tree']; notices: Notice[] }
  | { ok: false; faults: FaultText[]; notices: Notice[] };

export interface AssessJob {
  caseFile: CaseFile;
  /** Path to SHA-256. */
  files: Record<string, string>;
  draws: number;
}

/** A trace's samples, for drawing a part of it at full detail. */
export interface TraceSamples {
  depthMm: Float64Array;
  resistancePct: Float64Array;
}

const bytesBySha = new Map<string, Uint8Array>();
const traceBySha = new Map<string, Trace>();
const read = rememberingReader();

function traceOf(path: string, sha256: string): Trace {
  const known = traceBySha.get(sha256);
  if (known) return known;
  const bytes = bytesBySha.get(sha256);
  if (!bytes) throw new InputFault('This file is missing from the case; bring it in again.', path);
  const trace = readTraceTable(bytes, path);
  checkTrace(trace, path);
  traceBySha.set(sha256, trace);
  bytesBySha.delete(sha256);
  return trace;
}

function withoutRepeats(faults: FaultText[]): FaultText[] {
  const seen = new Set<string>();
  return faults.filter(({ what, where }) => {
    const key = `${where}\n${what}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function faultsOf(thrown: unknown): FaultText[] {
  if (thrown instanceof CaseFaults) return thrown.faults.map(({ what, where }) => ({ what, where }));
  if (thrown instanceof InputFault) return [{ what: thrown.what, where: thrown.where }];
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return [
    { what: `The assessment stopped: ${message}. The case itself is safe; save it as a zip.`, where: '' },
  ];
}

const api = {
  /** Which of these hashes the worker has yet to be given. */
  unknown(shas: string[]): string[] {
    return shas.filter((sha256) => !traceBySha.has(sha256) && !bytesBySha.has(sha256));
  },

  give(sha256: string, bytes: Uint8Array): void {
    bytesBySha.set(sha256, bytes);
  },

  assess({ caseFile, files, draws }: AssessJob): AssessOutcome {
    const faults: FaultText[] = [];
    const notices: Notice[] = [];
    const attempt = <T>(step: () => T): T | undefined => {
      try {
        return step();
      } catch (thrown) {
        faults.push(...faultsOf(thrown));
        return undefined;
      }
    };
    // A field that was emptied may be one that the format cannot be without.
    attempt(() => parseCase(caseFile));
    const shapeless = new Set(faults.map(({ where }) => where));
    const checked = attempt(() => checkCase(caseFile));
    for (const { what, where } of checked?.faults ?? []) {
      if (!shapeless.has(where)) faults.push({ what, where });
    }
    notices.push(...(checked?.notices ?? []));
    const traces = new Map<string, Trace>();
    for (const { named, path, sha256 } of traceFilesOf(caseFile, files)) {
      const trace = attempt(() => traceOf(path, sha256));
      if (trace) traces.set(named, trace);
    }
    const ready = attempt(() => engineInput(caseFile, traces));
    notices.push(...(ready?.notices ?? []));
    const earlier = attempt(() => earlierInput(caseFile, files, (sha256) => bytesBySha.get(sha256), traceOf));
    notices.push(...(earlier?.notices ?? []));
    if (!ready || faults.length > 0) return { ok: false, faults: withoutRepeats(faults), notices };
    const assessment = attempt(() =>
      assess(earlier?.input ? { ...ready.input, earlier: earlier.input } : ready.input, { draws, read }),
    );
    if (!assessment) return { ok: false, faults, notices };
    return { ok: true, assessment, tree: ready.input.tree, notices };
  },

  samples(path: string, sha256: string): TraceSamples {
    const { depthMm, resistancePct } = traceOf(path, sha256);
    const copy = { depthMm: depthMm.slice(), resistancePct: resistancePct.slice() };
    return transfer(copy, [copy.depthMm.buffer, copy.resistancePct.buffer]);
  },
};

export type AssessorApi = typeof api;

expose(api);
