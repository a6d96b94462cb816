/**
 * The prediction held against the section as it was seen after felling. It reads what was predicted and never feeds
 * back into it.
 */
import type {
  FelledAssessment,
  JudgedDirection,
  JudgedInterval,
  SectionAssessment,
} from '../../assessment.ts';
import type { FelledSection, SectionInput } from '../../case.ts';
import { InputFault } from '../../faults.ts';
import type { Interval } from '../../trace/types.ts';
import { cambiumRing } from '../cambium.ts';
import { checkOutline, checkRing } from '../check-outline.ts';
import { FIELD_PRIOR } from '../field/index.ts';
import { outlineRing } from '../outline.ts';
import { boxOf } from '../ring.ts';
import type { RingMm } from '../types.ts';
import { trueStrength } from './truth.ts';
import { judgeWalls, STEEPEST_DEG } from './walls.ts';

/**
 * Checks what was traced of a felled section, apart from the wood it leaves.
 *
 * @param where its field, for example `sections[0].felled`; the fault names the field below it
 * @throws InputFault for an outline or ring that cannot be, or one that lies wholly outside the wood
 */
export function checkFelled(felled: FelledSection, standing: SectionInput['outline'], where: string): void {
  if (felled.outline) checkOutline(felled.outline, `${where}.outline`);
  const outer = boxOf(outlineRing(felled.outline ?? standing));
  for (const field of ['unsound', 'incipient'] as const) {
    felled[field]?.forEach((ring, i) => {
      checkRing(ring, `${where}.${field}[${i}]`, 'polygon');
      const box = boxOf(ring);
      if (box.minX > outer.maxX || box.maxX < outer.minX || box.minY > outer.maxY || box.maxY < outer.minY) {
        throw new InputFault(
          'This polygon lies outside the outline. Give millimetres, x east and y north, from the same origin as the outline.',
          `${where}.${field}[${i}]`,
        );
      }
    });
  }
}

/**
 * Prediction against truth for one section.
 *
 * @param where the section's place for faults, for example `sections.s1`
 * @throws InputFault when what was traced cannot be, or leaves no wood
 */
export function predictionAgainstTruth(
  section: Pick<SectionInput, 'outline' | 'barkMm'> & { felled: FelledSection },
  predicted: Pick<SectionAssessment, 'remaining' | 'soundShare' | 'drillings'>,
  where: string,
): FelledAssessment {
  const { felled } = section;
  checkFelled(felled, section.outline, `${where}.felled`);
  const outline = outlineRing(felled.outline ?? section.outline);
  const cambium = cambiumRing(outline, section.barkMm, `${where}.barkMm`);
  const incipient = felled.incipient ?? [];
  const incipientStrength = incipient.length > 0 ? FIELD_PRIOR.incipientStrength.mean : null;
  const truth = trueStrength(cambium, felled.unsound, incipient, incipientStrength ?? 1, `${where}.felled`);
  const remaining = predicted.remaining.map(
    (one, k): JudgedDirection => ({ directionDeg: one.directionDeg, ...judged(one, truth.remaining[k]!) }),
  );
  const wallsTo = incipient.length > 0 ? 'first loss' : 'no strength';
  const steep = predicted.drillings.filter(({ downDeg }) => Math.abs(downDeg) > STEEPEST_DEG);
  return {
    source: felled.source ?? '',
    note: felled.note ?? '',
    outlineMm: asPairs(outline),
    cambiumMm: asPairs(cambium),
    unsoundMm: felled.unsound.map(asPairs),
    incipientMm: incipient.map(asPairs),
    incipientStrength,
    remaining,
    weakest: remaining.reduce((a, b) => (b.p50 < a.p50 ? b : a)),
    weakestInTruth: remaining.reduce((a, b) => (b.truth < a.truth ? b : a)),
    insideShare: remaining.filter(({ inside }) => inside).length / remaining.length,
    soundShare: judged(predicted.soundShare, truth.soundShare),
    wallsTo,
    walls: judgeWalls({
      outline,
      cambium,
      lost: [...felled.unsound, ...incipient],
      drillings: predicted.drillings,
      wallsTo,
    }),
    warnings: [
      ...truth.warnings,
      ...(steep.length > 0
        ? [
            `${steep.map(({ id }) => id).join(', ')} ${steep.length === 1 ? 'runs' : 'run'} more than ${STEEPEST_DEG} degrees off the level and ${steep.length === 1 ? 'leaves' : 'leave'} the plane of the felled section: no wall was compared.`,
          ]
        : []),
    ],
  };
}

/** Numbers are compared as they are printed, to four decimals, so that all sound is all sound. */
const printed = (value: number) => Math.round(value * 1e4) / 1e4;

function judged({ p05, p50, p95 }: Interval, truth: number): JudgedInterval {
  return {
    truth,
    p05,
    p50,
    p95,
    inside: printed(truth) >= printed(p05) && printed(truth) <= printed(p95),
    error: p50 - truth,
  };
}

function asPairs(ring: RingMm): [number, number][] {
  return ring.map(([xMm, yMm]) => [xMm, yMm]);
}
