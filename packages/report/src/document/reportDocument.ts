/** Puts the report together, in the order it is read: the owner's summary first, the expert's evidence last. */

import { pictureOf } from '../picture/picture.ts';
import { inLanguage } from '../words/inLanguage.ts';
import { isLanguage, LANGUAGES, type LanguageCode } from '../words/languages.ts';
import { spaced } from '../words/spaced.ts';
import { language, speaking } from '../words/spoken.ts';
import { type CasePlaces, withWording } from '../words/wording.ts';
import type { Block, ReportDocument } from './blocks.ts';
import { changed } from './changes.ts';
import { type Context, longDate } from './context.ts';
import type { ReportCase, ReportInput, ReportOptions } from './input.ts';
import { keyed } from './keys.ts';
import { advice } from './parts/advice.ts';
import { change } from './parts/change.ts';
import { closing, record } from './parts/closing.ts';
import { decision } from './parts/decision.ts';
import { drillings } from './parts/drillings.ts';
import { felled } from './parts/felled.ts';
import { anchorage, windAndLoad, wood } from './parts/load.ts';
import { opening } from './parts/opening.ts';
import { fileOf, photos } from './parts/photos.ts';
import { criteria, overview, safety } from './parts/strengthAndSafety.ts';
import { worked } from './parts/worked.ts';

/** Width that a full figure is drawn for, px: the text width of an A4 page in points. */
export const FIGURE_WIDTH = 483;

/** The language that the case asks its report to be in; English unless it does. */
export function reportLanguage({ report }: ReportCase): LanguageCode {
  const code = report?.language ?? 'en';
  return isLanguage(code) ? code : 'en';
}

/**
 * The whole report as blocks, in the language and wording that the case asks for. Same input, same document.
 * @throws InputFault when the firm's wording cannot be used
 */
export function reportDocument(input: ReportInput): ReportDocument {
  return speaking(reportLanguage(input.caseFile), () => {
    const made = inWords(input);
    return language() === LANGUAGES.en ? made : spaced(made);
  });
}

function inWords({ assessment, caseFile, options, files }: ReportInput): ReportDocument {
  const w = withWording(language().report, caseFile.report?.wording ?? {}, places(caseFile, options));
  const units = caseFile.report?.units ?? options.units;
  const context: Context = {
    a: inLanguage(assessment),
    computed: assessment,
    c: caseFile,
    w,
    units,
    options,
    files: files ?? null,
    paper: caseFile.report?.paper ?? (units === 'us' ? 'letter' : 'a4'),
    figureWidth: FIGURE_WIDTH,
  };
  const made = [
    ...opening(context),
    ...decision(context),
    ...advice(context),
    ...safety(context),
    ...overview(context),
    ...criteria(context),
    ...drillings(context),
    ...change(context),
    ...felled(context),
    ...anchorage(context),
    ...windAndLoad(context),
    ...wood(context),
    ...record(context),
    ...closing(context),
    ...photos(context),
    ...worked(context),
  ];
  const blocks = numbered(changed(context, keyed(made)));
  const label = [caseFile.tree.label, caseFile.tree.species]
    .filter((s) => s !== undefined && s !== '')
    .join(', ');
  return {
    title: label === '' ? w.title : `${w.title}: ${label}`,
    caseLabel: [label, caseFile.client?.name].filter((s) => s !== undefined && s !== '').join(' · '),
    subject: w.title,
    author: caseFile.assessor?.name ?? '',
    language: w.language,
    generatedOn: options.generatedOn,
    paper: context.paper,
    producer: `Standfast ${assessment.engineVersion}`,
    words: {
      page: w.page,
      figure: w.figure,
      table: w.table,
      continued: w.continued,
      contents: w.contents,
      photo: w.photo,
      struck: w.struck,
      kept: w.kept,
      evidence: w.evidence,
    },
    ...letterhead(context),
    blocks,
  };
}

/** What the places of a firm's wording stand for. */
function places(c: ReportCase, { generatedOn }: ReportOptions): CasePlaces {
  const { facts, months, notRecorded } = language().report;
  const tree = [c.tree.species, c.tree.label].filter((s) => s !== undefined && s !== '').join(' ');
  return {
    tree: tree || facts.tree.toLowerCase(),
    client: c.client?.name ?? notRecorded,
    assessor: c.assessor?.name ?? notRecorded,
    firm: c.assessor?.firm ?? notRecorded,
    place: c.place?.name ?? notRecorded,
    visitedOn: c.visitedOn === undefined ? notRecorded : longDate(c.visitedOn, months),
    reportedOn: longDate(generatedOn, months),
  };
}

/** The firm's lines and logo; nothing where the case has neither. */
function letterhead({ c, w, files }: Context): Pick<ReportDocument, 'letterhead'> {
  const { lines = [], logo } = c.report?.letterhead ?? {};
  const bytes = logo === undefined || files === null ? undefined : fileOf(files, logo);
  const picture = bytes === undefined ? null : pictureOf(bytes);
  if (lines.length === 0 && picture === null) return {};
  return {
    letterhead: { lines: [...lines], logo: picture, logoText: w.logo(lines[0] ?? c.assessor?.firm ?? '') },
  };
}

/** Numbers headings (1, 1.1), figures and tables in the order they stand. */
function numbered(blocks: Block[]): Block[] {
  let [first, second, figures, tables] = [0, 0, 0, 0];
  return blocks.map((block): Block => {
    if (block.kind === 'heading') {
      if (block.level === 1) {
        first++;
        second = 0;
        return { ...block, number: String(first) };
      }
      second++;
      return { ...block, number: `${first}.${second}` };
    }
    if (block.kind === 'figure') return { ...block, number: ++figures };
    if (block.kind === 'table') return { ...block, number: ++tables };
    return block;
  });
}
