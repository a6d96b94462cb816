/**
 * Green-wood strength of a species, or of its genus, or of trees at large, with a scatter that grows as less is known.
 *
 * Strengths are means of small clear green specimens (Wood Handbook Table 5-3a and others, wood-green.csv). The scatter
 * of not knowing the species is kept here; scatter between trees of one species and along a stem comes on top
 * (decision/strength.ts).
 */
import type { Notice, SourcedValue, WoodAssessment } from '../assessment.ts';
import { constant, statusNote } from './constants.ts';
import { type DragGroup, dragGroupFor } from './drag.ts';
import { geometricMean, matchWood, type WoodMatch, type WoodRow } from './match.ts';
import { type Status, woodCov, woodMoisture } from './tables.generated.ts';

export interface Wood {
  /** For the assessment document. */
  assessment: WoodAssessment;
  genus: string | null;
  /** How closely the name was matched. */
  match: WoodMatch['match'];
  /** Means of clear green wood, Pa. */
  bendingPa: number;
  compressionPa: number;
  shearPa: number;
  moePa: number;
  /** Standard deviation of ln(strength) from not knowing the species, 0 for a species of the table. */
  unknownSpeciesLogSd: number;
  /** Green density of stem wood, kg/m³. */
  greenDensityKgM3: number;
  drag: DragGroup;
  notices: Notice[];
}

/** A second catalogue that puts a strength at this share or less is spoken of. */
const MUCH_LOWER = 0.85;

/** Green density: specific gravity by the species' moisture, or the default. */
function greenDensity({ match, rows }: WoodMatch): SourcedValue {
  const row = rows[0]!;
  const moist =
    match === 'species' ? woodMoisture.find((each) => each.scientific === row.scientific) : undefined;
  if (!moist) {
    const fallback = constant('default green density');
    return {
      name: 'green density',
      value: fallback.value,
      unit: fallback.unit,
      cov: fallback.logSd ?? 0,
      source: fallback.source + statusNote(fallback.status),
    };
  }
  return {
    name: 'green density',
    value: Math.round(1000 * row.sgGreen * (1 + (moist.heartPct + moist.sapPct) / 200)),
    unit: 'kg/m3',
    source: `specific gravity by the mean moisture of heartwood and sapwood, ${moist.source}${statusNote(moist.status)}`,
  };
}

/** What the reader must know of a species row by how it is known; null for one that was read. */
function standingOf(row: WoodRow): { severity: Notice['severity']; text: string } | null {
  const known: Record<Exclude<Status, 'read' | 'computed' | 'proposal'>, string> = {
    checked: 'was entered from memory and cross-checked',
    memory: 'was entered from memory',
    'low confidence': 'stands on values from memory that are round or borrowed',
  };
  if (row.status === 'read' || row.status === 'computed' || row.status === 'proposal') return null;
  const low = row.status === 'low confidence';
  return {
    severity: low ? 'caution' : 'note',
    text: `The green strength of ${row.scientific} ${known[row.status]}; the source is ${row.source}.${
      low ? ' Check it there before relying on the safety factors.' : ''
    }`,
  };
}

function noticesFor(species: string, found: WoodMatch, compressionPa: number): Notice[] {
  const where = 'tree.species';
  const remedy = 'Look up the green strength of this species if the decision turns on it.';
  const notices: Notice[] = [];
  const say = (severity: Notice['severity'], text: string) => notices.push({ severity, where, text });
  const { match, rows, second, genus } = found;
  switch (match) {
    case 'species': {
      const standing = standingOf(rows[0]!);
      if (standing) say(standing.severity, standing.text);
      break;
    }
    case 'genus':
      say(
        'caution',
        `"${species}" has no row of its own in the wood table; the mean of ${rows.length} of its genus is taken, with a wider spread. ${remedy}`,
      );
      break;
    case 'quoted':
      say(
        'caution',
        `No species of the genus ${genus} is in the wood table; its compression strength is taken as ${second!.compressionMpa} MPa, quoted from memory of ${second!.source}, with a wide spread, and its other strengths in proportion. ${remedy}`,
      );
      break;
    case 'kind':
      say(
        'caution',
        `No species of the genus ${genus} is in the wood table; the mean of all ${
          dragGroupFor(genus).kind === 'conifer' ? 'conifers' : 'broadleaved trees'
        } is taken, with a wide spread. ${remedy}`,
      );
      break;
    case 'none':
      say(
        'serious',
        `"${species}" is not recognised; the mean of all species of the wood table is taken, with a wide spread, and so is the drag. Check the spelling, or give the botanical name.`,
      );
  }
  if (second && match !== 'quoted' && second.compressionMpa * 1e6 <= MUCH_LOWER * compressionPa) {
    const lower = Math.round((1 - (second.compressionMpa * 1e6) / compressionPa) * 100);
    say(
      'caution',
      `Another catalogue, ${second.source} (quoted from memory), puts the green compression strength of ${second.scientific} at ${second.compressionMpa} MPa, ${lower} % lower than is used here: the breakage safety would be lower by as much.`,
    );
  }
  return notices;
}

/**
 * Green wood of a tree by its name as written (botanical, synonym or common). Never throws: an unknown name gives wide
 * defaults and a notice.
 */
export function woodFor(species: string): Wood {
  const found = matchWood(species);
  const { match, rows, second } = found;
  const mean = (pick: (row: WoodRow) => number) => geometricMean(rows.map(pick));
  const tabledPa = mean((row) => row.compParKpa) * 1e3;
  const inProportion = match === 'quoted' ? (second!.compressionMpa * 1e6) / tabledPa : 1;
  const compressionPa = tabledPa * inProportion;
  const bendingPa = mean((row) => row.morKpa) * 1e3 * inProportion;
  const shearPa = mean((row) => row.shearKpa) * 1e3 * inProportion;
  const moePa = mean((row) => row.moeMpa) * 1e6 * inProportion;
  const density = greenDensity(found);
  const source =
    match === 'species'
      ? rows[0]!.source + statusNote(rows[0]!.status)
      : match === 'quoted'
        ? `${second!.source}${statusNote(second!.status)}; strengths but compression in proportion`
        : `geometric mean of ${rows.length} species of wood-green.csv (Wood Handbook Table 5-3a and others)`;
  const strength = (name: string, property: string, pa: number): SourcedValue => ({
    name,
    value: Math.round(pa / 1e4) / 100,
    unit: 'MPa',
    cov:
      Math.round(Math.hypot(woodCov.find((row) => row.property === property)!.cov, found.logSd) * 1000) /
      1000,
    source,
  });
  return {
    assessment: {
      species,
      matched: found.matched,
      values: [
        strength('green compression strength along the grain', 'compression', compressionPa),
        strength('green bending strength', 'mor', bendingPa),
        strength('green shear strength along the grain', 'shear', shearPa),
        strength('green modulus of elasticity', 'moe', moePa),
        density,
      ],
    },
    genus: found.genus,
    match,
    bendingPa,
    compressionPa,
    shearPa,
    moePa,
    unknownSpeciesLogSd: found.logSd,
    greenDensityKgM3: density.value,
    drag: dragGroupFor(found.genus),
    notices: noticesFor(species, found, compressionPa),
  };
}
