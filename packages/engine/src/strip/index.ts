export { chartKnownFrom, checkStripSize } from './checkStrip.ts';
export { findChart, settleCorners } from './findChart.ts';
export { type Homography, homographyFrom, inverseHomography, project } from './homography.ts';
export type { PrintedScale } from './numbers/readAxes.ts';
export { type Chart, type ReadStripOptions, readStrip } from './readStrip.ts';
export { type ChartSeen, type ChartSettled, seeChart, settleChart } from './settleChart.ts';
export { standsUpright } from './standsUpright.ts';
export type * from './types.ts';
