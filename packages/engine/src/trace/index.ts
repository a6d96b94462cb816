/** Reading drilling traces: from depth and resistance to zones, their probabilities and the residual wall. */
export { checkTrace } from './checkTrace.ts';
export { type DrawnTrace, drawnTrace } from './drawnTrace.ts';
export { readTraces, type TraceToRead } from './readTraces.ts';
export * from './types.ts';
