/** Safety at a glance: the range on a scale with the marks 1 and 1.5, and the words. */
import type { Interval } from '@standfast/engine';
import type { VerdictGrade } from '../explain/verdict.ts';

const SCALE_TOP = 4;

/** The 90 % range as a bar, the middle as a dot, on a scale from 0 to 4 with ticks at 1 and 1.5. */
export function SafetyScale({ interval, label }: { interval: Interval; label: string }) {
  const at = (factor: number) => 2 + (96 * Math.min(SCALE_TOP, Math.max(0, factor))) / SCALE_TOP;
  const beyond = interval.p95 > SCALE_TOP;
  return (
    <svg
      className="safety-scale"
      viewBox="0 0 100 22"
      role="img"
      aria-label={label}
      preserveAspectRatio="none"
    >
      <path className="scale-danger" d={`M${at(0)} 11H${at(1)}`} />
      <path className="scale-line" d={`M${at(1)} 11H${at(SCALE_TOP)}`} />
      <path className="scale-mark" d={`M${at(1)} 3V19M${at(1.5)} 6V16`} />
      <path className="scale-range" d={`M${at(interval.p05)} 11H${at(interval.p95)}`} />
      {beyond && <path className="scale-mark" d="M96 7l3 4-3 4" />}
      <path className="scale-middle" d={`M${at(interval.p50)} 4V18`} />
    </svg>
  );
}

/** The grade's own shape: a full triangle, an open one, a half disc, a tick. */
export function GradeMark({ grade }: { grade: VerdictGrade }) {
  return (
    <svg className={`grade-mark ${grade}`} viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      {grade === 'fails' && <path d="M12 3 22 21H2z" fill="currentColor" />}
      {grade === 'may-fail' && (
        <path
          d="M12 4.5 20.5 20H3.5z M12 10v5 M12 17v1"
          fill="none"
          stroke="currentColor"
          strokeWidth="2.2"
        />
      )}
      {grade === 'below-mark' && (
        <>
          <circle cx="12" cy="12" r="8.8" fill="none" stroke="currentColor" strokeWidth="2.2" />
          <path d="M12 3.2a8.8 8.8 0 0 1 0 17.6z" fill="currentColor" />
        </>
      )}
      {grade === 'holds' && (
        <path d="M4 12.5 10 18.5 20.5 5.5" fill="none" stroke="currentColor" strokeWidth="2.6" />
      )}
    </svg>
  );
}
