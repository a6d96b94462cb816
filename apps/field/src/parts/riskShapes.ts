/**
 * A shape for each risk, so that it is told without colour, drawn alike in the list and on the map: a full triangle, a
 * full diamond, a half disc, a ring; a square where there is no target, a cross where nothing is known yet. Paths lie
 * in a square of 24.
 */
import type { RiskFilter } from '../state/listView.ts';

export interface RiskShape {
  fill: string | null;
  stroke: string | null;
  paint: 'alarm' | 'ink' | 'secondary';
}

const RING = 'M3.5 12a8.5 8.5 0 1 0 17 0a8.5 8.5 0 1 0 -17 0z';

export const RISK_SHAPES: Record<Exclude<RiskFilter, 'any'>, RiskShape> = {
  extreme: { fill: 'M12 1.5L23 21.5H1z', stroke: null, paint: 'alarm' },
  high: { fill: 'M12 1.5L22.5 12L12 22.5L1.5 12z', stroke: null, paint: 'alarm' },
  moderate: { fill: 'M12 3.5a8.5 8.5 0 0 1 0 17z', stroke: RING, paint: 'ink' },
  low: { fill: null, stroke: RING, paint: 'ink' },
  'no target': { fill: null, stroke: 'M4.5 4.5H19.5V19.5H4.5z', paint: 'secondary' },
  'not assessed': { fill: null, stroke: 'M5 5L19 19M19 5L5 19', paint: 'secondary' },
};
