/** A French report has no English sentence left, whatever the case. */
import {
  type CaseFile,
  CONSEQUENCES,
  CROWN_SHAPES,
  OCCUPANCIES,
  openCase,
  PROTECTIONS,
  SIGN_KINDS,
  saveCase,
} from '@standfast/casefile';
import { demoBag, secondVisitBag } from '@standfast/casefile/node';
import { type Assessment, assess, type CaseInput } from '@standfast/engine';
import { provenPdf, reportDocument, speaking, verifyReport } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { describe, expect, it } from 'vitest';
import { inLanguage } from '../../packages/report/src/words/inLanguage.ts';
import { language } from '../../packages/report/src/words/spoken.ts';

/** Few draws: the sentences are the same as of many. */
const DRAWS = 200;
/** Words that no French sentence has. */
const ENGLISH =
  /(?<![\p{L}’'-])(the|of|is|are|was|were|with|and|which|that|from|than|been|has|not|no|by|its|below|above|within|between|towards?|years?|drillings?|wood|strength|failure|likely)(?![\p{L}’'-])/u;

const bag = await demoBag();
const demo = openCase(bag);
const options = { units: 'metric' as const, generatedOn: '2026-06-20' };

const signs = (...kinds: string[]): CaseInput['signs'] =>
  kinds.map((kind, i) => ({ kind, azimuthDeg: 40 * i, heightM: 0.5 }));
const target = (what: string, distanceM?: number, more: object = {}) =>
  ({
    what,
    occupancy: 'frequent',
    ...(distanceM === undefined ? {} : { distanceM }),
    ...more,
  }) as CaseInput['targets'][number];

/** Cases far apart: each brings out other sentences. */
const variants: Record<string, (input: CaseInput) => CaseInput> = {
  'the demonstration': (input) => input,
  'no drilling at all': (input) => ({
    ...input,
    sections: input.sections.map((section) => ({ ...section, drillings: [] })),
    flares: input.flares.map((flare) => ({ ...flare, drillings: [] })),
  }),
  'one drilling, in Eurocode wind': (input) => ({
    ...input,
    tree: { ...input.tree, species: 'Quercus', leanDeg: 12, leanTowardDeg: 90 },
    site: { windCode: 'EN 1991-1-4', terrain: 'III', basicWindSpeedMs: 24, soil: 'poor' },
    sections: input.sections.map((section) => ({ ...section, drillings: section.drillings.slice(0, 1) })),
    flares: [],
    signs: [],
    targets: [],
  }),
  'a conifer of no known species, bare, with a mapped wind': (input) => ({
    ...input,
    tree: { ...input.tree, species: 'Thujopsis dolabrata', crown: { ...input.tree.crown, inLeaf: false } },
    site: { windCode: 'ASCE 7-16', exposure: 'C', basicWindSpeedMs: 51, soil: 'free-draining' },
  }),
  'a species nobody knows': (input) => ({ ...input, tree: { ...input.tree, species: 'Blorptree' } }),
  'an oak known by its genus': (input) => ({ ...input, tree: { ...input.tree, species: 'Quercus cerris' } }),
  'a lime of the second catalogue': (input) => ({
    ...input,
    tree: { ...input.tree, species: 'Aesculus hippocastanum' },
  }),
  'an open cavity, decayed surface, a leaning tree': (input) => ({
    ...input,
    tree: { ...input.tree, leanDeg: 20, leanTowardDeg: 200 },
    sections: input.sections.map((section) => ({
      ...section,
      surface: undefined,
      opening: { azimuthDeg: 225, widthMm: 400 },
    })),
  }),
  'fungi, insects and cracks': (input) => ({
    ...input,
    signs: [
      ...signs(
        'Kretzschmaria deusta',
        'Meripilus giganteus',
        'Ganoderma bracket',
        'termites',
        'borer holes',
        'cavity',
      ),
      ...signs(
        'included bark',
        'open crack',
        'bulge',
        'thin crown',
        'broken limb',
        'cracked limb',
        'Armillaria',
      ),
    ],
  }),
  'a failing anchorage': (input) => ({
    ...input,
    signs: signs('soil heave', 'soil crack', 'lean', 'root cut', 'dead limb'),
  }),
  'cut roots, little room and a static test': (input) => ({
    ...input,
    rootCuts: [
      { azimuthDeg: 10, distanceM: 0.6, depthM: 1, widthDeg: 90 },
      { azimuthDeg: 200, distanceM: 9, widthDeg: 40 },
    ],
    rootSpace: [{ azimuthDeg: 300, distanceM: 1 }],
    staticTests: [{ directionDeg: 60, momentNm: 200_000, tiltDeg: 0.2 }],
  }),
  'targets of every kind': (input) => ({
    ...input,
    targets: [
      target('playground', 4, { directionDeg: 90, protection: 'partial' }),
      target('house', 12, { directionDeg: 10 }),
      target('power line', 25),
      target('parking lot', 30, { occupancy: 'rare' }),
      target('shed', 300, { occupancy: 'constant' }),
      target('thing without a name', undefined, { occupancy: undefined }),
      target('lawn', 8, { occupancy: 'now and then', consequence: 'minor' }),
    ],
  }),
  'an assessor who overrides': (input) => ({
    ...input,
    timeFrameYears: 3,
    decision: {
      likelihoodOfFailure: { value: 'probable', reason: 'je connais cet arbre' },
      byTarget: [{ target: input.targets[0]!.what, consequences: { value: 'minor' } }],
    },
  }),
  'a small tree in calm': (input) => ({
    ...input,
    tree: { ...input.tree, heightM: 9, crown: { ...input.tree.crown, widthM: 4, baseHeightM: 3 } },
    site: { windCode: 'EN 1991-1-4', terrain: 'IV', basicWindSpeedMs: 20, soil: 'unknown' },
    signs: signs('old wound', 'seam', 'sap flow', 'frass', 'ants'),
  }),
};

describe.each(Object.entries(variants))('%s', (_, change) => {
  const input = change(demo.engineInput);
  const assessment: Assessment = assess(input, { draws: DRAWS });

  it('has French words for every sentence of the engine', () => {
    expect(missingIn(assessment)).toEqual([]);
  });

  it('leaves no English in the report', () => {
    const caseFile: CaseFile = {
      ...demo.caseFile,
      signs: input.signs.map(({ kind, azimuthDeg, heightM }) => ({ kind, azimuthDeg, heightM })),
      report: { language: 'fr' },
    };
    expect(englishIn(assessment, caseFile, input)).toEqual([]);
  });
});

/** Sentences of the assessment that French has no words for. */
function missingIn(assessment: Assessment): string[] {
  const missing = new Set<string>();
  speaking('fr', () => inLanguage(assessment, (text) => missing.add(text)));
  return [...missing];
}

/** Texts of the report in which English is left, but for titles and what a person wrote. */
function englishIn(assessment: Assessment, caseFile: CaseFile, input: CaseInput): string[] {
  const recorded = recordedIn(caseFile, input);
  const left = textsOf(reportDocument({ assessment, caseFile, options }))
    .map((text) => recorded.reduce((rest, own) => rest.replaceAll(own, ''), text).replace(TITLES, ''))
    .filter((text) => ENGLISH.test(text));
  return [...new Set(left)];
}

/** Titles of works keep their own language, and places in the case their names. */
const TITLES =
  /Fungal Strategies of Wood Decay in Trees|The Body Language of Trees|Tree Risk Assessment( Manual)?|Principles of Tree Hazard Assessment and Management|The strength properties of timber|Applied Statistical Decision Theory|Arboriculture & Urban Forestry|Plant and Soil|\b(sections|flares)\.[\w.]+/g;

/** What a person wrote stays as it was written: all of it, longest first, but for words chosen from a list. */
function recordedIn(...of: unknown[]): string[] {
  const found = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value === 'string' && value.length > 3 && !LISTED.has(value)) found.add(value);
    else if (typeof value === 'object' && value !== null && !ArrayBuffer.isView(value))
      Object.values(value).forEach(walk);
  };
  of.forEach(walk);
  return [...found].sort((a, b) => b.length - a.length).flatMap((text) => [text, spacedFrench(text)]);
}

const LISTED: ReadonlySet<string> = new Set([
  ...SIGN_KINDS,
  ...CROWN_SHAPES,
  ...OCCUPANCIES,
  ...CONSEQUENCES,
  ...PROTECTIONS,
]);

const spacedFrench = (text: string) => speaking('fr', () => language().numbers.spacing(text));

/** Everything that is read in a document, its figures' texts and their descriptions too. */
function textsOf(document: object): string[] {
  const texts: string[] = [];
  const walk = (value: unknown, key: string): void => {
    if (typeof value === 'string') {
      if (
        !/^(d|id|key|kind|part|ref|face|fill|stroke|anchor|join|cap|language|paper|producer|clip)$/.test(key)
      )
        texts.push(value);
    } else if (Array.isArray(value)) for (const one of value) walk(one, key);
    else if (typeof value === 'object' && value !== null)
      for (const [name, one] of Object.entries(value)) walk(one, name);
  };
  walk(document, '');
  return texts;
}

describe('the second visit', () => {
  it('is compared in French', async () => {
    const second = openCase(await secondVisitBag());
    const computed = assess(second.engineInput, { draws: DRAWS });
    const assessment = { ...computed, notices: [...second.notices, ...computed.notices] };
    expect(missingIn(assessment)).toEqual([]);
    const caseFile: CaseFile = { ...second.caseFile, report: { language: 'fr' } };
    expect(englishIn(assessment, caseFile, second.engineInput)).toEqual([]);
  });
});

describe('a French report', () => {
  it('verifies', async () => {
    const fonts = await loadFonts(import.meta.url);
    const caseFile: CaseFile = { ...demo.caseFile, report: { language: 'fr' } };
    const inFrench = saveCase(caseFile, bag);
    const assessment = assess(demo.engineInput, { draws: DRAWS });
    const reported = { ...assessment, notices: [...demo.notices, ...assessment.notices] };
    const pdf = await provenPdf({ assessment: reported, caseFile, options, bag: inFrench }, { fonts });
    const verified = await verifyReport(pdf, 'rapport.pdf', { fonts });
    expect(verified).toMatchObject({ stands: true, caseUnchanged: true });
  });

  it('is the same however often it is made, and leaves English as it was', () => {
    const assessment = assess(demo.engineInput, { draws: DRAWS });
    const english = () => reportDocument({ assessment, caseFile: demo.caseFile, options });
    const before = JSON.stringify(english());
    const french = () =>
      JSON.stringify(
        reportDocument({ assessment, caseFile: { ...demo.caseFile, report: { language: 'fr' } }, options }),
      );
    expect(french()).toBe(french());
    expect(JSON.stringify(english())).toBe(before);
  });
});
