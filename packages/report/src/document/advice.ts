/** What the figures suggest, in one callout, and whether to drill further. The assessor decides. */
import { bearing } from '../units.ts';
import type { Severity } from './blocks.ts';
import { type Context, percent } from './context.ts';

/** The usual mark of static assessments (a convention of the trade). */
const USUAL_RESERVE = 1.5;

export interface Suggestion {
  severity: Severity;
  text: string;
}

/** What the governing safety factor and the rated risk say: the first lines of the summary's callout. */
export function suggestionOf({ a, w }: Context): Suggestion {
  const { p05, p50, mode } = a.safety.governing;
  const suggestion = bySafety(p05, p50, w);
  const { risk } = a.decision.overall;
  if (risk === 'high' || risk === 'extreme') suggestion.severity = 'serious';
  if (mode !== 'uprooting' || !a.safety.anchorageTooThin) return suggestion;
  return {
    severity: suggestion.severity === 'note' ? 'caution' : suggestion.severity,
    text: `${suggestion.text} ${w.advice.thinAnchorage}`,
  };
}

function bySafety(p05: number, p50: number, w: Context['w']): Suggestion {
  if (p50 < 1) return { severity: 'serious', text: w.advice.exceeded };
  if (p50 < USUAL_RESERVE) return { severity: 'caution', text: w.advice.short };
  if (p05 < USUAL_RESERVE) return { severity: 'caution', text: w.advice.uncertain };
  return { severity: 'note', text: w.advice.enough };
}

/** Whether another drilling is worth its wound, and where. */
export function drillFurther({ a, w }: Context): string {
  const next = a.nextDrilling;
  return next.stop === true
    ? w.advice.drillStop(next.why)
    : w.advice.drillNext(next.sectionId, bearing(next.azimuthDeg), percent(next.worth), next.why);
}
