/** Numbers as people read them. */
import type { Interval } from '@standfast/engine';

/** A number with so many digits after the point; a dash when there is none. */
export function fixed(value: number | null, digits: number): string {
  return value === null || !Number.isFinite(value) ? '–' : value.toFixed(digits);
}

/** Middle estimate with the interval that holds the truth nine times in ten: `1.62 (1.21 to 2.14)`. */
export function withInterval({ p05, p50, p95 }: Interval, digits: number): string {
  return `${fixed(p50, digits)} (${fixed(p05, digits)} to ${fixed(p95, digits)})`;
}

/** A share as percent: small ones never read as none, nor large ones as all. */
export function percent(share: number): string {
  if (!Number.isFinite(share)) return '–';
  const hundred = share * 100;
  if (hundred > 0 && hundred < 0.1) return 'under 0.1 %';
  if (hundred < 100 && hundred > 99.9) return 'over 99.9 %';
  const whole = hundred >= 10 && hundred < 99.5;
  return `${whole || hundred === 0 || hundred === 100 ? hundred.toFixed(0) : hundred.toFixed(1)} %`;
}

const POINTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'];

/** A compass direction: `40° (NE)`. */
export function direction(degrees: number): string {
  const turn = ((degrees % 360) + 360) % 360;
  return `${Math.round(turn) % 360}° (${POINTS[Math.round(turn / 45) % 8]})`;
}
