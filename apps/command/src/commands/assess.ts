import path from 'node:path';
import { CASE_JSON, type CaseFile, openCase, type ReadonlyCaseBag } from '@standfast/casefile';
import { bagFromPath, onDisk, writeWhole } from '@standfast/casefile/node';
import { type Assessment, assess } from '@standfast/engine';
import type { LanguageCode, Units } from '@standfast/report';
import { checkOutput } from '../files/output.ts';
import { look } from '../files/read.ts';
import { keysFirst, printJson } from '../json.ts';
import { UsageFault } from '../outcome.ts';
import { summary } from '../terminal/assessment.ts';
import { newPage } from '../terminal/page.ts';
import { today } from '../today.ts';

interface Options {
  json?: boolean;
  report?: string;
  html?: string;
  seed?: number;
  draws?: number;
  units?: Units;
  paper?: 'a4' | 'letter';
  language?: LanguageCode;
  wording?: string;
  firm?: string;
  signedOn?: string;
}

/**
 * Assesses a case folder or zip; prints the result and writes the reports asked for, all or none.
 * @throws InputFault when the case cannot be read or assessed, or a report cannot be written where it is wanted
 */
export async function assessCase(casePath: string, options: Options): Promise<void> {
  const outputs = [options.report, options.html].filter((file) => file !== undefined);
  if (outputs.length === 2 && path.resolve(outputs[0]!) === path.resolve(outputs[1]!)) {
    throw new UsageFault('--report and --html name the same file; give each its own.');
  }
  await look(casePath);
  const bag = await bagFromPath(casePath);
  const firm =
    options.firm === undefined ? undefined : await (await import('../files/firm.ts')).readFirm(options.firm);
  const wording =
    options.wording === undefined
      ? undefined
      : await (await import('../files/wording.ts')).readWording(options.wording);
  const { caseFile, engineInput, notices } = openCase(bag);
  for (const file of outputs) await checkOutput(file, filesOfCase(casePath, caseFile, bag));
  const assessed = assess(engineInput, { seed: options.seed, draws: options.draws });
  const assessment: Assessment = { ...assessed, notices: [...notices, ...assessed.notices] };

  if (outputs.length) {
    const { caseToReport, reportBytes } = await import('../files/report.ts');
    const { units, paper, language, signedOn } = options;
    const own = { caseFile, bag: caseFilesOf(caseFile, bag) };
    const inside = await caseToReport(own, { units, paper, language, wording, signedOn, firm });
    // What is noticed is read from the very case that goes along, as a verifier will read it.
    const reported = { ...assessed, notices: [...openCase(inside.bag).notices, ...assessed.notices] };
    const files = [];
    for (const [kind, file] of [
      ['pdf', options.report],
      ['html', options.html],
    ] as const)
      if (file) files.push({ file, content: await reportBytes(kind, inside, reported, today()) });
    for (const { file, content } of files) await onDisk(file, () => writeWhole(file, content));
  }

  if (options.json) {
    printJson(assessmentDocument(assessment));
    return;
  }
  const page = newPage();
  summary(page, caseFile, assessment);
  if (outputs.length) {
    page.gap();
    for (const file of outputs) page.text(`Wrote ${file}`);
  }
  page.print();
}

/** What belongs to the case of all that lies in its folder: the case file, all that it names, traces, photos, the earlier visit. */
function caseFilesOf(caseFile: CaseFile, bag: ReadonlyCaseBag): ReadonlyCaseBag {
  const named = new Set([...namesIn(caseFile, bag)].map((path) => path.toLowerCase()));
  const earlier = caseFile.earlier === undefined ? null : `${caseFile.earlier.toLowerCase()}/`;
  return new Map(
    [...bag].filter(
      ([path]) =>
        named.has(path.toLowerCase()) ||
        /^(traces|photos)\//i.test(path) ||
        (earlier !== null && path.toLowerCase().startsWith(earlier)),
    ),
  );
}

function namesIn(caseFile: CaseFile, bag: ReadonlyCaseBag): Set<string> {
  const named = new Set([CASE_JSON]);
  JSON.stringify(caseFile, (_, value) => {
    if (typeof value === 'string' && bag.has(value)) named.add(value);
    return value;
  });
  return named;
}

/** The files a case rests on, which no result may overwrite: the case file and all that it names, or the zip. */
function filesOfCase(casePath: string, caseFile: CaseFile, bag: ReadonlyCaseBag): string[] {
  return [casePath, ...[...namesIn(caseFile, bag)].map((name) => path.join(casePath, name))];
}

/** The document of `assess --json`: the agreed keys first and in their order, then all else the assessment says. */
function assessmentDocument(assessment: Assessment): Record<string, unknown> {
  const document = keysFirst(assessment, [
    'format',
    'version',
    'sections',
    'wind',
    'safety',
    'nextDrilling',
    'firstDrillings',
    'change',
    'flares',
    'wood',
    'notices',
    'sources',
    'engineVersion',
    'seed',
    'draws',
  ]);
  return {
    ...document,
    sections: document.sections.map((section) =>
      keysFirst(
        {
          ...section,
          drillings: section.drillings.map((drilling) =>
            keysFirst(drilling, [
              'id',
              'zones',
              'residualWallMm',
              'residualWallIntervalMm',
              'residualWallAtLeast',
            ]),
          ),
          remaining: section.remaining.map((one) => keysFirst(one, ['directionDeg', 'p05', 'p50', 'p95'])),
        },
        ['id', 'heightM', 'drillings', 'intactModulusM3', 'remaining', 'criteria'],
      ),
    ),
    wind: keysFirst(document.wind, ['momentNm', 'gustMs']),
    safety: {
      ...keysFirst(document.safety, ['breakage', 'uprooting', 'governing']),
      governing: keysFirst(document.safety.governing, ['mode', 'directionDeg', 'p05', 'p50', 'p95']),
    },
  };
}
