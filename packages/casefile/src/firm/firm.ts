/**
 * What a firm keeps once for all its reports: letterhead, logo, signature, language, units, wording. It fills what a case leaves
 * out, and is then part of the case, so that a report made from the case is the same wherever it is made again.
 */
import { InputFault } from '@standfast/engine';
import type { CaseBag, ReadonlyCaseBag } from '../bag/bag.ts';
import { findFile } from '../bag/paths.ts';
import { CaseFaults } from '../caseFaults.ts';
import { checkCase } from '../check/checkCase.ts';
import { saveCase } from '../saveCase.ts';
import { parseCase } from '../schema/parseCase.ts';
import { CASE_FORMAT, CASE_VERSION, type CaseFile, type CaseReport } from '../schema/schema.ts';

export interface Firm {
  report: Pick<CaseReport, 'units' | 'paper' | 'letterhead' | 'signature' | 'language' | 'wording'>;
  /** Who assesses, where a case does not say. */
  assessor?: NonNullable<CaseFile['assessor']>;
  /** The pictures that `report` names, by path. */
  files: ReadonlyCaseBag;
}

/** What belongs to one case only. */
const OF_ONE_CASE = ['struck', 'added', 'reduced'] as const;

/** The folder of a case in which a firm's pictures are kept. */
const FOLDER = 'report';

/**
 * Reads `firm.json`: the fields of `report` in a case, without those of one case only, and `assessor`.
 * @param json bytes, text, or a value already parsed
 * @param files where the pictures are looked for, by the paths that it names
 * @throws InputFault or CaseFaults naming each field that is wrong, or a picture that is missing
 */
export function parseFirm(json: unknown, files: ReadonlyCaseBag, where = 'firm.json'): Firm {
  const { assessor: who, ...fields } = jsonObject(json, where);
  for (const name of OF_ONE_CASE)
    if (name in fields)
      throw new InputFault('belongs to one case, not to the firm: take it out', `${where}: ${name}`);
  const signature = fields.signature as { signedOn?: unknown } | null | undefined;
  if (signature?.signedOn)
    throw new InputFault(
      'a firm cannot sign before there is a report: take the date out, and give it with each report',
      `${where}: signature.signedOn`,
    );
  const { report = {}, assessor } = asCase(fields, who, where);
  const pictures: CaseBag = new Map();
  for (const [field, path] of [
    ['letterhead.logo', report.letterhead?.logo],
    ['signature.image', report.signature?.image],
  ] as const) {
    if (path === undefined) continue;
    const found = findFile(files, path, `${where}: ${field}`);
    if (!found) throw new InputFault(`names ${path}, which is not there`, `${where}: ${field}`);
    pictures.set(path, found.bytes);
  }
  return { report, files: pictures, ...(assessor ? { assessor } : {}) };
}

function jsonObject(json: unknown, where: string): Record<string, unknown> {
  let value = json;
  try {
    if (value instanceof Uint8Array) value = new TextDecoder('utf-8', { fatal: true }).decode(value);
    if (typeof value === 'string') value = JSON.parse(value) as unknown;
  } catch {
    throw new InputFault('is not valid JSON in UTF-8', where);
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new InputFault('should hold an object like {"letterhead": {"lines": ["…"]}}', where);
  return value as Record<string, unknown>;
}

/** Checked as the report of an empty case; faults then speak of the firm's file. */
function asCase(report: Record<string, unknown>, assessor: unknown, where: string): CaseFile {
  const here = ({ what, where: place }: InputFault) =>
    new InputFault(what, place.replace(/^.*?: report\.?/, `${where}: `).replace(/: $/, ''));
  try {
    const { caseFile } = parseCase(
      { format: CASE_FORMAT, version: CASE_VERSION, tree: {}, report, assessor },
      where,
    );
    const [fault] = checkCase(caseFile).faults;
    if (fault) throw fault;
    return caseFile;
  } catch (error) {
    if (error instanceof CaseFaults) throw new CaseFaults(error.faults.map(here));
    throw error instanceof InputFault ? here(error) : error;
  }
}

/** The case with what it leaves out filled from the firm, and the firm's pictures in its bag. */
export function withFirm(
  caseFile: CaseFile,
  bag: ReadonlyCaseBag,
  { report: firm, assessor, files }: Firm,
): { caseFile: CaseFile; bag: CaseBag } {
  const own = caseFile.report ?? {};
  const filled = new Map(bag);
  /** Puts a picture of the firm into the bag, beside a file of that name that is another. */
  const kept = (path: string): string => {
    const bytes = files.get(path)!;
    const plain = path.split('/').at(-1)!;
    for (let n = 1; ; n++) {
      const wanted = `${FOLDER}/${n === 1 ? '' : `${n}-`}${plain}`;
      const there = filled.get(wanted);
      if (there && !sameBytes(there, bytes)) continue;
      filled.set(wanted, bytes);
      return wanted;
    }
  };
  const report: CaseReport = { ...without(firm, ['letterhead', 'signature', 'wording']), ...own };
  if (firm.letterhead && own.letterhead === undefined) {
    const { logo } = firm.letterhead;
    report.letterhead = { ...firm.letterhead, ...(logo === undefined ? {} : { logo: kept(logo) }) };
  }
  if (firm.signature) {
    const { image } = firm.signature;
    const takesImage = image !== undefined && own.signature?.image === undefined;
    report.signature = {
      ...firm.signature,
      ...own.signature,
      ...(takesImage ? { image: kept(image) } : {}),
    };
  }
  if (firm.wording) report.wording = { ...firm.wording, ...own.wording };
  const changed: CaseFile = {
    ...caseFile,
    ...(assessor || caseFile.assessor ? { assessor: { ...assessor, ...caseFile.assessor } } : {}),
    report,
  };
  return { caseFile: changed, bag: saveCase(changed, filled) };
}

function without<T extends object, K extends keyof T>(object: T, keys: readonly K[]): Omit<T, K> {
  return Object.fromEntries(Object.entries(object).filter(([key]) => !keys.includes(key as K))) as Omit<T, K>;
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}
