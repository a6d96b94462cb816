export { chartKnownFrom, checkStripSize, MOST_PIXELS } from './checkStrip.ts';
export { findChart, settleCorners } from './findChart.ts';
export { type Chart, type ReadStripOptions, readStrip } from './readStrip.ts';
export type * from './types.ts';
