/**
 * A case file back into its bag.
 */
import { CASE_JSON, type CaseBag, type ReadonlyCaseBag } from './bag/bag.ts';
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from './schema/schema.ts';

/** `case.json` as text: format and version first, then every field, those not known to this version included. */
export function caseText(caseFile: CaseFile): string {
  const { format: _format, version: _version, ...rest } = caseFile;
  return `${JSON.stringify({ format: CASE_FORMAT, version: CASE_VERSION, ...rest }, null, 2)}\n`;
}

/** The bag with this case file in it; all other files stay. */
export function saveCase(caseFile: CaseFile, bag: ReadonlyCaseBag): CaseBag {
  const saved: CaseBag = new Map(bag);
  for (const path of saved.keys()) {
    if (path !== CASE_JSON && path.toLowerCase() === CASE_JSON) saved.delete(path);
  }
  saved.set(CASE_JSON, new TextEncoder().encode(caseText(caseFile)));
  return saved;
}
