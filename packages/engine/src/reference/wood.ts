/**
 * Green-wood strength of a species, or of its genus, or of trees at large, with a scatter that grows as less is known.
 *
 * Strengths are means of small clear green specimens (Wood Handbook Table 5-3a and others, wood-green.csv). The scatter
 * of `logSd` is that of the mean that applies to this tree (which species it is); scatter between trees of one species
 * and along a stem comes on top (decision/strength.ts).
 */
import type { Notice, SourcedValue, WoodAssessment } from '../assessment.ts';
import { constant, statusNote } from './constants.ts';
import { type DragGroup, dragGroupFor } from './drag.ts';
import { readName } from './names.ts';
import { type Status, type WoodGreenRow, woodCov, woodGreen, woodMoisture } from './tables.generated.ts';

export interface Wood {
  /** For the assessment document. */
  assessment: WoodAssessment;
  genus: string | null;
  /** How closely the name was matched. */
  match: 'species' | 'genus' | 'kind' | 'none';
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

type Row = Readonly<WoodGreenRow>;

/** Least spread taken between a genus's mean and an unlisted species of it (ln), judged from genera with many rows. */
const LEAST_GENUS_LOG_SD = 0.15;

const genusOf = (row: Row) => row.scientific.split(' ')[0]!;

function geometricMean(values: number[]): number {
  return Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
}

function logSd(values: number[]): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, value) => sum + Math.log(value), 0) / values.length;
  return Math.sqrt(
    values.reduce((sum, value) => sum + (Math.log(value) - mean) ** 2, 0) / (values.length - 1),
  );
}

/** The weakest standing among rows, for the notice. */
function worstStatus(rows: readonly Row[]): Status {
  const order: Status[] = ['low confidence', 'memory', 'checked', 'read'];
  return order.find((status) => rows.some((row) => row.status === status)) ?? 'read';
}

interface Found {
  match: Wood['match'];
  rows: readonly Row[];
  matched: string | null;
  logSd: number;
}

function find(species: string): Found & { genus: string | null } {
  const name = readName(species);
  if (name) {
    const own = woodGreen.filter((row) => row.scientific === name.binomial);
    if (own.length > 0) {
      // Where a species has two rows (old and young growth) the weaker one: planted trees grow fast.
      const weakest = own.reduce((a, b) => (b.compParKpa < a.compParKpa ? b : a));
      return { match: 'species', rows: [weakest], matched: weakest.scientific, logSd: 0, genus: name.genus };
    }
    const kin = woodGreen.filter((row) => genusOf(row) === name.genus);
    if (kin.length > 0) {
      const spread = Math.max(LEAST_GENUS_LOG_SD, logSd(kin.map((row) => row.compParKpa)));
      return {
        match: 'genus',
        rows: kin,
        matched: `${name.genus} (mean of ${kin.length})`,
        logSd: spread,
        genus: name.genus,
      };
    }
    const kind = dragGroupFor(name.genus).kind;
    const alike = woodGreen.filter((row) => dragGroupFor(genusOf(row)).kind === kind);
    if (alike.length > 0) {
      const spread = logSd(alike.map((row) => row.compParKpa));
      return { match: 'kind', rows: alike, matched: null, logSd: spread, genus: name.genus };
    }
  }
  return {
    match: 'none',
    rows: woodGreen,
    matched: null,
    logSd: logSd(woodGreen.map((row) => row.compParKpa)),
    genus: null,
  };
}

/** Green density: specific gravity by the species' or genus's moisture, or the default. */
function greenDensity(found: Found & { genus: string | null }): SourcedValue {
  const row = found.rows[0]!;
  const gravity = geometricMean(found.rows.map((each) => each.sgGreen));
  const moist =
    found.match === 'species' ? woodMoisture.find((each) => each.scientific === row.scientific) : undefined;
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
    value: Math.round(1000 * gravity * (1 + (moist.heartPct + moist.sapPct) / 200)),
    unit: 'kg/m3',
    source: `specific gravity by the mean moisture of heartwood and sapwood, ${moist.source}${statusNote(moist.status)}`,
  };
}

function noticesFor(species: string, found: Found & { genus: string | null }): Notice[] {
  const where = 'tree.species';
  const wide = `Measure or look up the green strength of this species if the decision turns on it.`;
  const notices: Notice[] = [];
  if (found.match === 'genus') {
    notices.push({
      severity: 'caution',
      where,
      text: `"${species}" has no row of its own in the wood table; the mean of ${found.rows.length} of its genus is taken, with a wider spread. ${wide}`,
    });
  }
  if (found.match === 'kind') {
    notices.push({
      severity: 'caution',
      where,
      text: `No species of the genus ${found.genus} is in the wood table; the mean of all ${dragGroupFor(found.genus).kind === 'conifer' ? 'conifers' : 'broadleaved trees'} is taken, with a wide spread. ${wide}`,
    });
  }
  if (found.match === 'none') {
    notices.push({
      severity: 'serious',
      where,
      text: `"${species}" is not recognised; the mean of all species of the wood table is taken, with a wide spread, and so is the drag. Check the spelling, or give the botanical name.`,
    });
  }
  const status = worstStatus(found.rows);
  if (found.match === 'species' && status !== 'read') {
    notices.push({
      severity: status === 'low confidence' ? 'caution' : 'note',
      where,
      text:
        status === 'low confidence'
          ? `The green strength of ${found.matched} stands on values from memory that are round or borrowed; check them against ${found.rows[0]!.source} before relying on the safety factors.`
          : `The green strength of ${found.matched} was entered from memory${status === 'checked' ? ' and cross-checked' : ''}; the source is ${found.rows[0]!.source}.`,
    });
  }
  return notices;
}

/**
 * Green wood of a tree by its name as written (botanical, synonym or common). Never throws: an unknown name gives wide
 * defaults and a notice.
 */
export function woodFor(species: string): Wood {
  const found = find(species);
  const mean = (pick: (row: Row) => number) => geometricMean(found.rows.map(pick));
  const cov = (property: string) => woodCov.find((row) => row.property === property)!.cov;
  const bendingPa = mean((row) => row.morKpa) * 1e3;
  const compressionPa = mean((row) => row.compParKpa) * 1e3;
  const shearPa = mean((row) => row.shearKpa) * 1e3;
  const moePa = mean((row) => row.moeMpa) * 1e6;
  const density = greenDensity(found);
  const source =
    found.match === 'species'
      ? found.rows[0]!.source + statusNote(found.rows[0]!.status)
      : `geometric mean of ${found.rows.length} species of wood-green.csv (Wood Handbook Table 5-3a and others)`;
  const spread = (own: number) => Math.round(Math.hypot(own, found.logSd) * 1000) / 1000;
  const megapascal = (pa: number) => Math.round(pa / 1e4) / 100;
  return {
    assessment: {
      species,
      matched: found.matched,
      values: [
        {
          name: 'green compression strength along the grain',
          value: megapascal(compressionPa),
          unit: 'MPa',
          cov: spread(cov('compression')),
          source,
        },
        {
          name: 'green bending strength',
          value: megapascal(bendingPa),
          unit: 'MPa',
          cov: spread(cov('mor')),
          source,
        },
        {
          name: 'green shear strength along the grain',
          value: megapascal(shearPa),
          unit: 'MPa',
          cov: spread(cov('shear')),
          source,
        },
        {
          name: 'green modulus of elasticity',
          value: megapascal(moePa),
          unit: 'MPa',
          cov: spread(cov('moe')),
          source,
        },
        density,
      ],
    },
    genus: found.genus,
    match: found.match,
    bendingPa,
    compressionPa,
    shearPa,
    moePa,
    unknownSpeciesLogSd: found.logSd,
    greenDensityKgM3: density.value,
    drag: dragGroupFor(found.genus),
    notices: noticesFor(species, found),
  };
}
