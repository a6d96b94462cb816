/** The table of `accuracy --csv`: one felled section a row. docs/guide/accuracy.md says what each column holds. */
import { csvLine } from '@standfast/casefile';
import { rounded } from '../json.ts';
import type { SectionVerdict } from './verdict.ts';

const COLUMNS: readonly [name: string, cell: (one: SectionVerdict) => string | number | null][] = [
  ['case', (one) => one.case],
  ['section', (one) => one.section],
  ['label', (one) => one.label],
  ['species', (one) => one.species],
  ['invented', (one) => (one.invented ? 'yes' : 'no')],
  ['source', (one) => one.source],
  ['drillings', (one) => one.drillings],
  ['weakestDirectionDeg', ({ weakest }) => weakest.directionDeg],
  ['weakestTruth', ({ weakest }) => rounded(weakest.truth)],
  ['weakestP05', ({ weakest }) => rounded(weakest.p05)],
  ['weakestP50', ({ weakest }) => rounded(weakest.p50)],
  ['weakestP95', ({ weakest }) => rounded(weakest.p95)],
  ['weakestInside', ({ weakest }) => (weakest.inside ? 'yes' : 'no')],
  ['weakestError', ({ weakest }) => rounded(weakest.error)],
  ['trulyWeakestDirectionDeg', ({ weakestInTruth }) => weakestInTruth.directionDeg],
  ['trulyWeakestTruth', ({ weakestInTruth }) => rounded(weakestInTruth.truth)],
  ['trulyWeakestP05', ({ weakestInTruth }) => rounded(weakestInTruth.p05)],
  ['trulyWeakestP50', ({ weakestInTruth }) => rounded(weakestInTruth.p50)],
  ['trulyWeakestP95', ({ weakestInTruth }) => rounded(weakestInTruth.p95)],
  ['trulyWeakestInside', ({ weakestInTruth }) => (weakestInTruth.inside ? 'yes' : 'no')],
  ['directionsInside', ({ insideShare }) => rounded(insideShare)],
  ['soundShareTruth', ({ soundShare }) => rounded(soundShare.truth)],
  ['soundShareP05', ({ soundShare }) => rounded(soundShare.p05)],
  ['soundShareP50', ({ soundShare }) => rounded(soundShare.p50)],
  ['soundShareP95', ({ soundShare }) => rounded(soundShare.p95)],
  ['soundShareInside', ({ soundShare }) => (soundShare.inside ? 'yes' : 'no')],
  ['wallsTo', (one) => one.wallsTo],
  ['wallsCompared', ({ walls }) => walls.filter(({ finding }) => finding === 'edge').length],
  ['wallMeanErrorMm', ({ walls }) => meanError(walls)],
  ['wallsMissed', ({ walls }) => walls.filter(({ finding }) => finding === 'missed').length],
  ['wallFalseAlarms', ({ walls }) => walls.filter(({ finding }) => finding === 'false alarm').length],
];

/** The whole table as CSV text, its head first. */
export function accuracyTable(verdicts: readonly SectionVerdict[]): string {
  return (
    csvLine(COLUMNS.map(([name]) => name)) +
    verdicts.map((one) => csvLine(COLUMNS.map(([, cell]) => cell(one)))).join('')
  );
}

function meanError(walls: SectionVerdict['walls']): number | null {
  const errors = walls.filter(({ finding }) => finding === 'edge').map(({ errorMm }) => errorMm!);
  return errors.length ? rounded(errors.reduce((sum, error) => sum + error, 0) / errors.length) : null;
}
