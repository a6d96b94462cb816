export { chartKnownFrom, checkStripSize } from './checkStrip.ts';
export { findChart, settleCorners } from './findChart.ts';
export { type Homography, homographyFrom, inverseHomography, project } from './homography.ts';
export { type Chart, type ReadStripOptions, readStrip } from './readStrip.ts';
export { type ChartSettled, settleChart } from './settleChart.ts';
export type * from './types.ts';
