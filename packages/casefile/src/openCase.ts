/**
 * From a bag of files to a case that can be assessed, or to everything that is in the way of that.
 */
import { type CaseInput, checkTrace, InputFault, type Notice, type Trace } from '@standfast/engine';
import { CASE_JSON, type ReadonlyCaseBag } from './bag/bag.ts';
import { bagBelow, EARLIER_FOLDER } from './bag/earlierBag.ts';
import { filesInWords, findFile, pathProblem } from './bag/paths.ts';
import { CaseFaults, throwFaults } from './caseFaults.ts';
import { checkCase, drillingsOf } from './check/checkCase.ts';
import { engineInput } from './engineInput.ts';
import { parseCase } from './schema/parseCase.ts';
import type { CaseFile } from './schema/schema.ts';
import { readTraceTable } from './trace/readTraceTable.ts';
import { traceNotices } from './trace/traceNotices.ts';

/** A case as far as it could be read. */
export interface InspectedCase {
  /** Null when `case.json` itself cannot be read. */
  caseFile: CaseFile | null;
  /** The traces that could be read, by the path that the drillings name. */
  traces: Map<string, Trace>;
  /** Null while there are faults. */
  engineInput: CaseInput | null;
  faults: InputFault[];
  notices: Notice[];
  /** The earlier visit that the case names, as far as it could be read; null when it names none that is there. */
  earlier: InspectedCase | null;
}

/**
 * Opens a case for assessment.
 *
 * @throws InputFault, or CaseFaults with every fault found in `case.json` and the traces.
 */
export function openCase(bag: ReadonlyCaseBag): {
  caseFile: CaseFile;
  engineInput: CaseInput;
  notices: Notice[];
} {
  const { caseFile, engineInput: input, faults, notices } = inspectCase(bag);
  throwFaults(faults);
  if (!caseFile || !input) throw new InputFault('the case could not be read', CASE_JSON);
  return { caseFile, engineInput: input, notices };
}

/**
 * Opens a case as far as it goes: for an editor, where a person mends what is wrong. Never throws for bad input.
 */
export function inspectCase(bag: ReadonlyCaseBag): InspectedCase {
  const opened: InspectedCase = {
    caseFile: null,
    traces: new Map(),
    engineInput: null,
    faults: [],
    notices: [],
    earlier: null,
  };
  collect(opened, () => {
    const { caseFile, notices } = parseCase(caseJson(bag), CASE_JSON);
    opened.caseFile = caseFile;
    opened.notices.push(...notices);
  });
  const { caseFile } = opened;
  if (!caseFile) return opened;
  const checked = checkCase(caseFile);
  opened.faults.push(...checked.faults);
  opened.notices.push(...checked.notices);
  readTraces(opened, caseFile, bag);
  lookForPhotos(opened, caseFile, bag);
  lookForUnused(opened, caseFile, bag);
  openEarlier(opened, caseFile, bag);
  collect(opened, () => {
    const { input, notices } = engineInput(caseFile, opened.traces);
    opened.notices.push(...notices);
    const earlier = opened.earlier?.engineInput;
    if (opened.faults.length === 0) opened.engineInput = earlier ? { ...input, earlier } : input;
  });
  return opened;
}

/** Runs a step and keeps its faults. */
function collect(opened: InspectedCase, step: () => void): void {
  try {
    step();
  } catch (error) {
    if (error instanceof CaseFaults) opened.faults.push(...error.faults);
    else if (error instanceof InputFault) opened.faults.push(error);
    else throw error;
  }
}

/**
 * Reads the earlier visit that the case names. Where nothing is there the name is wrong: a fault. What is wrong within the
 * earlier case is told and leaves the comparison out, but never stands in the way of the present one.
 */
function openEarlier(opened: InspectedCase, caseFile: CaseFile, bag: ReadonlyCaseBag): void {
  const folder = caseFile.earlier;
  if (folder === undefined) return;
  collect(opened, () => {
    const where = 'case.json: earlier';
    const problem = pathProblem(folder.replace(/\/$/, ''));
    if (problem) throw new InputFault(`${problem} (${JSON.stringify(folder)})`, where);
    const below = bagBelow(bag, folder);
    if (!findFile(below, CASE_JSON, where)) {
      throw new InputFault(
        `names the earlier visit ${folder}, where there is no case.json; ${filesInWords(bag, EARLIER_FOLDER)}: correct the name, add that case's folder, or take the field out`,
        where,
      );
    }
    const earlier = inspectCase(below);
    opened.earlier = earlier;
    for (const fault of earlier.faults) {
      opened.notices.push({
        severity: 'serious',
        where: 'earlier',
        text: `the earlier visit cannot be assessed, so nothing is compared: ${fault.message}`,
      });
    }
  });
}

function caseJson(bag: ReadonlyCaseBag): Uint8Array {
  const found = findFile(bag, CASE_JSON, CASE_JSON);
  if (found) return found.bytes;
  const elsewhere = [...bag.keys()].filter((path) => path.endsWith(`/${CASE_JSON}`));
  const hint =
    elsewhere.length > 0
      ? `it lies in ${elsewhere.slice(0, 5).join(', ')}: open that folder`
      : `${filesInWords(bag, '')}; open a case folder or its zip`;
  throw new InputFault(`there is no case.json here: ${hint}`, CASE_JSON);
}

function readTraces(opened: InspectedCase, caseFile: CaseFile, bag: ReadonlyCaseBag): void {
  for (const { drilling, place, path } of drillingsOf(caseFile)) {
    const name = drilling.trace;
    if (name === undefined || opened.traces.has(name)) continue;
    collect(opened, () => {
      const where = `case.json: ${path}.trace`;
      const file = findFile(bag, name, where);
      if (!file) {
        throw new InputFault(
          `drilling ${drilling.id} names the trace ${name}, which is not in the case; ${filesInWords(bag, 'traces/')}: correct the name or add the file`,
          where,
        );
      }
      if (!file.exact) {
        opened.notices.push({
          severity: 'note',
          where: place,
          text: `names the trace ${name}; the file is called ${file.path} and was taken.`,
        });
      }
      const trace = readTraceTable(file.bytes, file.path);
      checkTrace(trace, file.path);
      opened.traces.set(name, trace);
      opened.notices.push(...traceNotices(trace, place));
    });
  }
}

/** A missing photo is a pity, not a reason to stop. */
function lookForPhotos(opened: InspectedCase, caseFile: CaseFile, bag: ReadonlyCaseBag): void {
  const photos = [
    ...caseFile.signs.map(({ photo }, i) => ({ photo, place: `signs[${i}]`, path: `signs[${i}].photo` })),
    ...caseFile.sections.map(({ id, felled }, i) => ({
      photo: felled?.photo,
      place: `sections.${id}.felled`,
      path: `sections[${i}].felled.photo`,
    })),
    ...drillingsOf(caseFile).map(({ drilling, place, path }) => ({
      photo: drilling.photo,
      place,
      path: `${path}.photo`,
    })),
    {
      photo: caseFile.report?.letterhead?.logo,
      place: 'report.letterhead',
      path: 'report.letterhead.logo',
    },
    {
      photo: caseFile.report?.signature?.image,
      place: 'report.signature',
      path: 'report.signature.image',
    },
  ];
  for (const { photo, place, path } of photos) {
    if (photo === undefined) continue;
    collect(opened, () => {
      if (findFile(bag, photo, `case.json: ${path}`)) return;
      opened.notices.push({
        severity: 'caution',
        where: place,
        text: `names the photo ${photo}, which is not in the case.`,
      });
    });
  }
}

function lookForUnused(opened: InspectedCase, caseFile: CaseFile, bag: ReadonlyCaseBag): void {
  const named = new Set(drillingsOf(caseFile).map(({ drilling }) => drilling.trace?.toLowerCase()));
  const unused = [...bag.keys()].filter(
    (path) => /^traces\/.*\.csv$/i.test(path) && !named.has(path.toLowerCase()),
  );
  if (unused.length > 0) {
    opened.notices.push({
      severity: 'note',
      where: 'traces',
      text: `no drilling names ${unused.slice(0, 10).join(', ')}${unused.length > 10 ? ` and ${unused.length - 10} more` : ''}.`,
    });
  }
}
