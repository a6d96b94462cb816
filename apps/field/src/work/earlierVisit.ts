/** The earlier visit that a case holds: which of its files the assessment needs, and what it comes to. */
import {
  CASE_JSON,
  CaseFaults,
  type CaseFile,
  checkCase,
  EARLIER_FOLDER,
  engineInput,
  parseCase,
} from '@standfast/casefile';
import { type CaseInput, InputFault, type Notice, type Trace } from '@standfast/engine';
import { traceFilesOf } from '../edit/drillings.ts';

type Files = Readonly<Record<string, string>>;

/** Files of the earlier visit by their paths in its own folder; its own earlier visits are not looked at. */
function earlierFiles({ earlier }: CaseFile, files: Files): Record<string, string> {
  if (earlier === undefined) return {};
  const prefix = `${earlier.replace(/\/$/, '')}/`;
  return Object.fromEntries(
    Object.entries(files)
      .filter(([path]) => path.startsWith(prefix))
      .map(([path, sha256]) => [path.slice(prefix.length), sha256]),
  );
}

/** What the assessment reads of it: its case file and its tables, path to SHA-256. */
export function earlierEvidence(caseFile: CaseFile, files: Files): Record<string, string> {
  return Object.fromEntries(
    Object.entries(earlierFiles(caseFile, files))
      .filter(([path]) => path === CASE_JSON || (/\.csv$/i.test(path) && !path.startsWith(EARLIER_FOLDER)))
      .map(([path, sha256]) => [`${caseFile.earlier}/${path}`, sha256]),
  );
}

/**
 * The earlier visit as the engine takes it; null where the case names none or it cannot be assessed, which a notice says.
 * @throws InputFault when the case names one that is not there
 */
export function earlierInput(
  caseFile: CaseFile,
  files: Files,
  bytesOf: (sha256: string) => Uint8Array | undefined,
  traceOf: (path: string, sha256: string) => Trace,
): { input: CaseInput | null; notices: Notice[] } {
  if (caseFile.earlier === undefined) return { input: null, notices: [] };
  const own = earlierFiles(caseFile, files);
  const sha256 = own[CASE_JSON];
  const bytes = sha256 === undefined ? undefined : bytesOf(sha256);
  if (!bytes) {
    throw new InputFault(
      `names the earlier visit ${caseFile.earlier}, where there is no case.json: bring in its folder again`,
      'case.json: earlier',
    );
  }
  try {
    const { caseFile: earlier } = parseCase(bytes, CASE_JSON);
    const { faults } = checkCase(earlier);
    if (faults.length > 0) throw new CaseFaults(faults);
    const traces = new Map(
      traceFilesOf(earlier, own).map(({ named, path, sha256: sha }) => [named, traceOf(path, sha)]),
    );
    return { input: engineInput(earlier, traces).input, notices: [] };
  } catch (thrown) {
    if (!(thrown instanceof InputFault)) throw thrown;
    return {
      input: null,
      notices: [
        {
          severity: 'serious',
          where: 'earlier',
          text: `the earlier visit cannot be assessed, so nothing is compared: ${thrown.message}`,
        },
      ],
    };
  }
}
