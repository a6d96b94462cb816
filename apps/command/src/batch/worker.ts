/** One case of a batch, in a thread of its own. */
import { createHash } from 'node:crypto';
import {
  assessedWorkRow,
  inspectCase,
  openCase,
  type ReadonlyCaseBag,
  unassessedRow,
  type WorkRow,
} from '@standfast/casefile';
import { bagFromPath } from '@standfast/casefile/node';
import { assess } from '@standfast/engine';
import { type CaseOutcome, verdictsOf } from '../accuracy/verdict.ts';
import { faultMessage } from '../outcome.ts';
import { assessedRow, failedRow, type Row } from './row.ts';

export interface Task {
  /** Where the case is. */
  path: string;
  /** What it is called in the table. */
  name: string;
  seed?: number;
  draws?: number;
  /** Hash of the content an earlier run assessed in the same way; the same content is not assessed again. */
  done?: string;
}

/** The case's row, or null when its content has not changed since it was done. */
export default async function assessOne({ path, name, seed, draws, done }: Task): Promise<Row | null> {
  let hash: string | null = null;
  try {
    const bag = await bagFromPath(path);
    hash = contentHash(bag);
    if (hash === done) return null;
    const { caseFile, engineInput, notices } = openCase(bag);
    const assessment = assess(engineInput, { seed, draws });
    return assessedRow(name, hash, caseFile, { ...assessment, notices: [...notices, ...assessment.notices] });
  } catch (error) {
    return failedRow(name, hash, faultMessage(error));
  }
}

/** Holds the case's prediction against its felled sections; a case without any is not assessed. */
export async function judgeOne({ path, name, seed, draws }: Task): Promise<CaseOutcome> {
  try {
    const { caseFile, engineInput } = openCase(await bagFromPath(path));
    if (!caseFile.sections.some(({ felled }) => felled)) return { case: name, status: 'standing' };
    const assessment = assess(engineInput, { seed, draws });
    return { case: name, status: 'judged', sections: verdictsOf(name, caseFile, assessment) };
  } catch (error) {
    return { case: name, status: 'failed', message: faultMessage(error) };
  }
}

/** The case's row in a work list, or null when its content has not changed since it was done. */
export async function listOne({ path, name, seed, draws, done }: Task): Promise<WorkRow | null> {
  let hash: string | null = null;
  try {
    const bag = await bagFromPath(path);
    hash = contentHash(bag);
    if (hash === done) return null;
    const { caseFile, engineInput, faults, notices } = inspectCase(bag);
    if (!caseFile || !engineInput) {
      return unassessedRow(
        name,
        caseFile,
        faults.map(({ message }) => message),
        hash,
      );
    }
    try {
      const assessment = assess(engineInput, { seed, draws });
      return assessedWorkRow(
        name,
        caseFile,
        { ...assessment, notices: [...notices, ...assessment.notices] },
        hash,
      );
    } catch (error) {
      return unassessedRow(name, caseFile, [faultMessage(error)], hash);
    }
  } catch (error) {
    return unassessedRow(name, null, [faultMessage(error)], hash);
  }
}

/** SHA-256 over every file's path and bytes, in order of path: the same for a folder and its zip. */
function contentHash(bag: ReadonlyCaseBag): string {
  const hash = createHash('sha256');
  for (const [name, bytes] of [...bag].sort(([a], [b]) => (a < b ? -1 : 1))) {
    hash.update(`${name}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}
