/** The return visit: what has changed since the visit before, with its error, and when safety will pass a mark. */
export { type Change, changeBetween, forecastCrossings, type MeasuredRate } from './changeBetween.ts';
export type { SpeedPrior } from './rates.ts';
export type * from './types.ts';
export type { WorkedSection, WorkedVisit } from './visit.ts';
export { yearsBetween } from './yearsBetween.ts';
