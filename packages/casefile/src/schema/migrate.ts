/**
 * Old case files are brought up to date one version at a time, so that each step is small and stays tested. A newer
 * file is refused: reading it as an old one could drop what it says.
 */
import { InputFault } from '@standfast/engine';
import { CASE_FORMAT, CASE_VERSION } from './schema.ts';

/** A case file as it stands in JSON, of any version. */
export type CaseDocument = Record<string, unknown>;

/** `steps[n]` turns a document of version n into one of version n + 1; it may leave the `version` field alone. */
export type MigrationSteps = Readonly<Record<number, (document: CaseDocument) => CaseDocument>>;

/** No version before 1 was ever written. */
export const MIGRATIONS: MigrationSteps = {};

/**
 * The document at version `newest`, and the version it was written in.
 *
 * @throws InputFault when it is no case file, is newer than `newest`, or is older than the oldest step.
 */
export function migrate(
  json: unknown,
  where: string,
  steps: MigrationSteps = MIGRATIONS,
  newest: number = CASE_VERSION,
): { document: CaseDocument; writtenIn: number } {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new InputFault(
      `this is not a case file: it should hold one JSON object with "format": "${CASE_FORMAT}"`,
      where,
    );
  }
  let document = json as CaseDocument;
  const { format, version } = document;
  if (format === 'standfast-assessment') {
    throw new InputFault(
      'this is an assessment that was computed, not a case: open the case it was made from',
      where,
    );
  }
  if (format === undefined) {
    throw new InputFault(
      `format is missing: a case file says "format": "${CASE_FORMAT}", "version": ${newest}`,
      where,
    );
  }
  if (format !== CASE_FORMAT) {
    throw new InputFault(`format is ${JSON.stringify(format)}: a case file says "${CASE_FORMAT}"`, where);
  }
  if (version === undefined) {
    throw new InputFault(
      `version is missing: write "version": ${newest} if the file follows that format`,
      where,
    );
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    throw new InputFault(
      `version is ${JSON.stringify(version)}: it should be a whole number from 1 to ${newest}`,
      where,
    );
  }
  if (version > newest) {
    throw new InputFault(
      `version ${version} is newer than this program reads (up to ${newest}): open it with a newer Standfast. ` +
        'Nothing was read and nothing was changed',
      where,
    );
  }
  for (let from = version; from < newest; from++) {
    const step = steps[from];
    if (!step) {
      throw new InputFault(
        `version ${version} is too old for this program, which reads version ${newest}`,
        where,
      );
    }
    document = { ...step(document), version: from + 1 };
  }
  return { document, writtenIn: version };
}
