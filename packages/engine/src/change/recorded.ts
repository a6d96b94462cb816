/**
 * What was recorded otherwise than on the visit before: a sign that is new, a target that is gone, a height that was
 * measured anew. Told apart from what the needles found, so that a correction is not taken for a change of the tree.
 */
import type { CaseInput, SectionInput, SignInput } from '../case.ts';
import { outlineRing } from '../section/index.ts';
import { meanRadiusMm } from './forecast.ts';
import type { RecordedChange } from './types.ts';

/** A value as it is told; null where none was recorded. Two that read alike are no change. */
type Spoken = string | null;
type Row = Pick<RecordedChange, 'kind' | 'where' | 'what'> & { before: Spoken; now: Spoken };

const said = (value: number | string | boolean | undefined, unit = ''): Spoken => {
  if (value === undefined || value === '') return null;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  return `${Number(value.toFixed(2))}${unit === '' ? '' : ` ${unit}`}`;
};

function treeRows({ tree: then }: CaseInput, { tree: now }: CaseInput): Row[] {
  const row = (where: string, what: string, a: Spoken, b: Spoken): Row => ({
    kind: 'tree',
    where: `tree.${where}`,
    what,
    before: a,
    now: b,
  });
  return [
    row('species', 'species', said(then.species), said(now.species)),
    row('stemDiameterMm', 'stem diameter', said(then.stemDiameterMm, 'mm'), said(now.stemDiameterMm, 'mm')),
    row('heightM', 'height', said(then.heightM, 'm'), said(now.heightM, 'm')),
    row('leanDeg', 'lean', said(then.leanDeg, 'degrees'), said(now.leanDeg, 'degrees')),
    row(
      'leanTowardDeg',
      'direction of lean',
      then.leanDeg === 0 ? null : said(then.leanTowardDeg, 'degrees'),
      now.leanDeg === 0 ? null : said(now.leanTowardDeg, 'degrees'),
    ),
    row(
      'crown.baseHeightM',
      'base of the crown',
      said(then.crown.baseHeightM, 'm'),
      said(now.crown.baseHeightM, 'm'),
    ),
    row('crown.widthM', 'width of the crown', said(then.crown.widthM, 'm'), said(now.crown.widthM, 'm')),
    row('crown.shape', 'shape of the crown', said(then.crown.shape), said(now.crown.shape)),
    row('crown.inLeaf', 'crown in leaf', said(then.crown.inLeaf), said(now.crown.inLeaf)),
  ];
}

function siteRows({ site: then }: CaseInput, { site: now }: CaseInput): Row[] {
  const row = (where: string, what: string, a: Spoken, b: Spoken): Row => ({
    kind: 'input',
    where: `site.${where}`,
    what,
    before: a,
    now: b,
  });
  const ground = (site: CaseInput['site']) =>
    site.windCode === 'EN 1991-1-4' ? `terrain ${site.terrain}` : `exposure ${site.exposure}`;
  return [
    row('windCode', 'wind code', said(then.windCode), said(now.windCode)),
    row(
      'basicWindSpeedMs',
      'basic wind speed',
      said(then.basicWindSpeedMs, 'm/s'),
      said(now.basicWindSpeedMs, 'm/s'),
    ),
    row(
      'basicWindReturnYears',
      'return period of it',
      said(then.basicWindReturnYears, 'years'),
      said(now.basicWindReturnYears, 'years'),
    ),
    row('terrain', 'terrain', ground(then), ground(now)),
    row('soil', 'soil', said(then.soil), said(now.soil)),
  ];
}

function sectionRows(then: SectionInput, now: SectionInput): Row[] {
  const where = `sections.${now.id}`;
  const radius = ({ outline }: SectionInput) =>
    said(Math.round(meanRadiusMm(outlineRing(outline).map(([x, y]) => [x, y]))), 'mm');
  const opening = ({ opening: o }: SectionInput) =>
    o ? `${said(o.widthMm, 'mm')} wide at ${said(o.azimuthDeg)}°` : null;
  return [
    {
      kind: 'tree',
      where: `${where}.outline`,
      what: `mean radius over bark, section ${now.id}`,
      before: radius(then),
      now: radius(now),
    },
    {
      kind: 'input',
      where: `${where}.heightM`,
      what: `height of section ${now.id}`,
      before: said(then.heightM, 'm'),
      now: said(now.heightM, 'm'),
    },
    {
      kind: 'input',
      where: `${where}.barkMm`,
      what: `bark at section ${now.id}`,
      before: said(then.barkMm, 'mm'),
      now: said(now.barkMm, 'mm'),
    },
    {
      kind: 'tree',
      where: `${where}.opening`,
      what: `opening at section ${now.id}`,
      before: opening(then),
      now: opening(now),
    },
  ];
}

const signName = ({ kind, where }: SignInput) => (where ? `${kind}, ${where}` : kind);

/** Things in one list and not in the other, by name; a name that stands twice is paired off twice. */
function comeAndGone(then: readonly string[], now: readonly string[]): { come: string[]; gone: string[] } {
  const left = [...then];
  const come = now.filter((name) => {
    const at = left.findIndex((other) => other.trim().toLowerCase() === name.trim().toLowerCase());
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return { come, gone: left };
}

function listRows(
  kind: 'sign' | 'target' | 'roots',
  where: string,
  then: readonly string[],
  now: readonly string[],
): Row[] {
  const { come, gone } = comeAndGone(then, now);
  return [
    ...come.map((what): Row => ({ kind, where, what, before: null, now: 'recorded' })),
    ...gone.map((what): Row => ({ kind, where, what, before: 'recorded', now: null })),
  ];
}

/** Every difference between what was recorded, by the sections that were paired. */
export function recordedChanges(
  then: CaseInput,
  now: CaseInput,
  pairedSections: readonly (readonly [SectionInput, SectionInput])[],
): RecordedChange[] {
  const targets = ({ targets: list }: CaseInput) =>
    list.map(({ what, occupancy, distanceM }) =>
      [what, occupancy, distanceM === undefined ? undefined : `${distanceM} m`].filter(Boolean).join(', '),
    );
  const cuts = ({ rootCuts }: CaseInput) =>
    (rootCuts ?? []).map(
      ({ azimuthDeg, distanceM }) => `root cut at ${said(azimuthDeg)}°, ${said(distanceM, 'm')} off`,
    );
  const tests = ({ staticTests }: CaseInput) =>
    (staticTests ?? []).map(({ directionDeg }) => `static load test towards ${said(directionDeg)}°`);
  return [
    ...treeRows(then, now),
    ...siteRows(then, now),
    ...pairedSections.flatMap(([a, b]) => sectionRows(a, b)),
    ...listRows('sign', 'signs', then.signs.map(signName), now.signs.map(signName)),
    ...listRows('target', 'targets', targets(then), targets(now)),
    ...listRows('roots', 'rootCuts', [...cuts(then), ...tests(then)], [...cuts(now), ...tests(now)]),
  ].filter((row) => row.before !== row.now);
}
