/**
 * What the columns of a table are: first by the words over them, then by how their numbers run.
 */
import { type ColumnShape, columnShape } from './columnShape.ts';
import { depthUnitInWords, drillingInTitle, roleInWords, saysPercent } from './headerWords.ts';
import type { Cell } from './rows.ts';
import { isBlankCell } from './source.ts';
import type { ColumnRole, DepthUnit, TableColumn, TableQuestion } from './types.ts';

/** A needle's length in mm, with room on both sides: what a column of depths should span. */
const NEEDLE_MM: readonly [number, number] = [50, 1600];
/** Full scales of common converters and counters, for readings that are no percentages. */
const FULL_SCALES = [255, 500, 1000, 1023, 2000, 4095, 5000, 10_000, 16_383, 32_767, 65_535];
const MOST_PERCENT = 105;

export interface ColumnsGuess {
  columns: TableColumn[];
  reversed: boolean;
  /** A depth step is needed and not known. */
  needsStep: boolean;
  questions: TableQuestion[];
  reasons: string[];
  /** Taken off the confidence. */
  doubt: number;
}

/**
 * @param titles the words over the columns, `''` where there are none.
 * @param rows the first rows with readings.
 * @param toNumber a cell's number, null when it is none.
 */
export function guessColumns(
  titles: readonly string[],
  rows: readonly (readonly Cell[])[],
  toNumber: (cell: Cell | undefined) => number | null,
): ColumnsGuess {
  const shapes = titles.map((_, c) =>
    columnShape(
      rows.map((cells) => toNumber(cells[c])),
      rows.filter((cells) => !isBlankCell(cells[c])).length,
    ),
  );
  const found: ColumnsGuess = {
    columns: [],
    reversed: false,
    needsStep: false,
    questions: [],
    reasons: [],
    doubt: 0,
  };
  const roles = rolesOf(titles, shapes, rows, found);
  const hasPercentCells = (c: number) => rows.some((cells) => /%\s*$/.test(String(cells[c] ?? '')));
  const readings = shapes.filter((_, c) => roles[c] === 'resistance');
  const resistanceUnit = unitOfReadings(
    readings,
    titles.some((title, c) => roles[c] === 'resistance' && (saysPercent(title) || hasPercentCells(c))),
    found,
  );
  const labels = labelsFor(titles, roles);
  found.columns = titles.map((title, c): TableColumn => {
    const role = roles[c]!;
    if (role === 'depth') return { role, title, unit: unitOfDepth(title, shapes[c]!, found) };
    if (role === 'resistance') return { role, title, label: labels[c]!, ...resistanceUnit };
    return { role, title };
  });
  orderOf(roles, shapes, found);
  if (roles.includes('resistance') && !roles.includes('depth')) found.needsStep = true;
  return found;
}

function rolesOf(
  titles: readonly string[],
  shapes: readonly ColumnShape[],
  rows: readonly (readonly Cell[])[],
  found: ColumnsGuess,
): ColumnRole[] {
  const numeric = shapes.map(({ numericShare, values }) => numericShare >= 0.5 && values.length > 0);
  const roles: (ColumnRole | null)[] = titles.map((title, c) => {
    const named = roleInWords(title);
    if (numeric[c]) return named;
    // A column of names is the drilling's only when its names come in runs.
    return named === 'drilling' && comesInRuns(rows.map((cells) => String(cells[c] ?? '')))
      ? 'drilling'
      : 'ignore';
  });
  const words = roles.some((role, c) => role !== null && numeric[c]);
  roles.forEach((role, c) => {
    if (role === 'drilling' && numeric[c] && !comesInRuns(shapes[c]!.values.map(String))) roles[c] = null;
  });
  const says = (role: ColumnRole) => roles.includes(role);

  // Without words: what grows or falls from row to row is depth, or a running number.
  if (!says('depth')) {
    for (const [c, shape] of shapes.entries()) {
      if (!numeric[c] || (roles[c] !== null && roles[c] !== 'index') || shape.direction === 0) continue;
      const counting = shape.whole && shape.even && shape.step === 1 && shape.least <= 1;
      if (roles[c] === 'index' || (counting && hasAnotherRun(shapes, c))) {
        roles[c] = 'index';
        continue;
      }
      if (counting && shape.values.length > NEEDLE_MM[1]) {
        roles[c] = 'index';
        found.reasons.push(
          `Column ${c + 1} counts 1, 2, 3 … further than a needle is long in mm, so it is a running number.`,
        );
        continue;
      }
      roles[c] = 'depth';
      found.reasons.push(
        `Column ${c + 1} ${shape.direction > 0 ? 'grows' : 'falls'} from row to row, so it is the depth.`,
      );
      if (counting) {
        found.doubt += 0.4;
        found.questions.push({
          about: 'columns',
          text: `column ${c + 1} counts by ones: it is taken as the depth, but could be a running number.`,
        });
      }
      break;
    }
  }
  // A running number beside a depth says nothing more.
  if (says('depth')) {
    for (const [c, role] of roles.entries()) if (role === 'index') roles[c] = 'ignore';
  }

  // Other numbers without words are readings, unless a column says that it is the resistance.
  const explicit = says('resistance');
  roles.forEach((role, c) => {
    if (role !== null) return;
    roles[c] = numeric[c] && !explicit ? 'resistance' : 'ignore';
    if (explicit && numeric[c]) {
      found.reasons.push(
        `Column ${c + 1}${titles[c] ? ` (${titles[c]})` : ''} is left out: its title does not say what it is.`,
      );
    }
  });
  if (!words) found.doubt += 0.1;
  if (!says('resistance')) {
    found.doubt += 1;
    found.questions.push({
      about: 'columns',
      text: 'no column looks like readings of resistance: say which one it is.',
    });
  }
  return roles.map((role) => role ?? 'ignore');
}

/** True when another column runs one way too, so that this one may be a mere count. */
function hasAnotherRun(shapes: readonly ColumnShape[], but: number): boolean {
  return shapes.some((shape, c) => c !== but && shape.direction !== 0 && shape.numericShare > 0.9);
}

function comesInRuns(names: readonly string[]): boolean {
  let runs = 1;
  for (let i = 1; i < names.length; i++) if (names[i] !== names[i - 1]) runs++;
  return names.length > 0 && runs <= Math.max(1, names.length / 4);
}

function unitOfDepth(title: string, shape: ColumnShape, found: ColumnsGuess): DepthUnit {
  const said = depthUnitInWords(title);
  if (said) {
    found.reasons.push(`The title ${JSON.stringify(title)} gives the depth in ${said}.`);
    return said;
  }
  const span = shape.most - shape.least;
  const [least, most] = NEEDLE_MM;
  if (span >= least && span <= most) {
    found.reasons.push(`The depth spans ${shown(span)}, a needle's length in mm.`);
    found.doubt += 0.05;
    return 'mm';
  }
  // 300 to 500 mm is 30 to 50 cm, 12 to 20 inches, 0.3 to 0.5 m.
  const unit: DepthUnit =
    span > most ? 'mm' : span >= 20 ? 'cm' : span >= 5 ? 'inch' : span <= 1.6 ? 'm' : 'mm';
  found.doubt += 0.4;
  found.questions.push({
    about: 'depth unit',
    text: `the depth spans ${shown(span)} and no unit is given: it is taken in ${unit === 'inch' ? 'inches' : unit}. Say the unit.`,
  });
  return unit;
}

type ResistanceUnit = { unit: 'percent' | 'fraction' } | { unit: 'counts'; fullScale: number };

/** One unit for all readings of a table: they come from one drill. */
function unitOfReadings(
  shapes: readonly ColumnShape[],
  saidPercent: boolean,
  found: ColumnsGuess,
): ResistanceUnit {
  const most = Math.max(0, ...shapes.map((shape) => shape.most));
  if (saidPercent || shapes.length === 0) return { unit: 'percent' };
  if (most > 0 && most <= 1 && shapes.some((shape) => !shape.whole)) {
    found.doubt += 0.2;
    found.questions.push({
      about: 'resistance unit',
      text: `the readings never exceed ${shown(most)}: they are taken as a fraction of full scale, 0 to 1.`,
    });
    return { unit: 'fraction' };
  }
  if (most <= MOST_PERCENT) {
    found.reasons.push(`The readings go up to ${shown(most)}, so they are taken in percent of full scale.`);
    return { unit: 'percent' };
  }
  const fullScale = FULL_SCALES.find((scale) => scale >= most) ?? Math.ceil(most);
  found.doubt += 0.4;
  found.questions.push({
    about: 'resistance unit',
    text: `the readings go up to ${shown(most)}, so they are no percentages: they are taken as counts with a full scale of ${fullScale}. Say the drill's full scale.`,
  });
  return { unit: 'counts', fullScale };
}

function labelsFor(titles: readonly string[], roles: readonly ColumnRole[]): string[] {
  const several = roles.filter((role) => role === 'resistance').length > 1;
  const taken = new Map<string, number>();
  return titles.map((title, c) => {
    if (roles[c] !== 'resistance') return '';
    const wanted = drillingInTitle(title) || (several ? title || `column ${c + 1}` : 'drilling');
    const times = (taken.get(wanted) ?? 0) + 1;
    taken.set(wanted, times);
    return times === 1 ? wanted : `${wanted} (${times})`;
  });
}

function orderOf(roles: readonly ColumnRole[], shapes: readonly ColumnShape[], found: ColumnsGuess): void {
  const runs = shapes.filter((_, c) => roles[c] === 'depth' || roles[c] === 'index');
  if (runs.length > 0 && runs.every(({ direction }) => direction === -1)) {
    found.reversed = true;
    found.reasons.push('Depth falls from row to row, so the rows are turned round.');
  } else if (runs.some(({ direction }) => direction === 0) && !roles.includes('drilling')) {
    found.doubt += 0.4;
    found.questions.push({
      about: 'order',
      text: 'the depth does not grow from row to row: is it the depth, or do several drillings stand one below another?',
    });
  }
}

function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
