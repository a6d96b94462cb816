/**
 * From the bytes, text or JSON of `case.json` to a case file.
 */
import { InputFault, type Notice } from '@standfast/engine';
import { throwFaults } from '../caseFaults.ts';
import { explainIssue, fieldPath } from './explain.ts';
import { migrate } from './migrate.ts';
import { nearestName } from './nearestName.ts';
import { type CaseFile, caseSchema, knownFields, strictCaseSchema } from './schema.ts';
import { whereJsonBreaks } from './whereJsonBreaks.ts';

/**
 * Reads a case file. Fields this version does not know are kept and warned of.
 *
 * @param json bytes (UTF-8), text, or a value already parsed.
 * @param where the file's name for messages.
 * @throws InputFault or CaseFaults naming each field, what is wrong with it and what to do.
 */
export function parseCase(json: unknown, where = 'case.json'): { caseFile: CaseFile; notices: Notice[] } {
  const { document, writtenIn } = migrate(jsonValue(json, where), where);
  const strict = strictCaseSchema.safeParse(document);
  const issues = strict.success ? [] : strict.error.issues;
  throwFaults(
    issues
      .filter((issue) => issue.code !== 'unrecognized_keys')
      .map((issue) => explainIssue(issue, document, where)),
  );
  const notices: Notice[] = [];
  for (const issue of issues) {
    if (issue.code !== 'unrecognized_keys') continue;
    for (const key of issue.keys) notices.push(unknownField([...issue.path, key], key));
  }
  if (writtenIn !== document.version) {
    notices.push({
      severity: 'note',
      where,
      text: `written in version ${writtenIn} of the format, read as version ${String(document.version)}; saving writes the newer one.`,
    });
  }
  return { caseFile: caseSchema.parse(document), notices };
}

function unknownField(path: readonly PropertyKey[], key: string): Notice {
  const meant = nearestName(key, knownFields);
  return {
    severity: meant && meant !== key ? 'caution' : 'note',
    where: fieldPath(path),
    text: `is not a field this version knows: it is kept, and not used.${meant && meant !== key ? ` Was ${meant} meant?` : ''}`,
  };
}

function jsonValue(json: unknown, where: string): unknown {
  if (json instanceof Uint8Array) return jsonValue(utf8(json, where), where);
  if (typeof json !== 'string') return json;
  const text = json.charCodeAt(0) === 0xfeff ? json.slice(1) : json;
  if (text.trim() === '') throw new InputFault('is empty: it should hold the case as JSON', where);
  try {
    return JSON.parse(text) as unknown;
  } catch {
    throw new InputFault(`is not valid JSON${jsonTrouble(text)}`, where);
  }
}

function utf8(bytes: Uint8Array, where: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputFault('is not UTF-8 text: save it again as UTF-8', where);
  }
}

/** Where and how a JSON text breaks, as the end of a sentence. */
export function jsonTrouble(text: string): string {
  const broken = whereJsonBreaks(text);
  if (!broken) return ': look for a missing comma, quote or bracket';
  const { line, column, atEnd } = broken;
  return atEnd
    ? ': it ends too early, a bracket or quote is not closed'
    : ` at line ${line}, column ${column}: look for a missing comma, quote or bracket there`;
}
