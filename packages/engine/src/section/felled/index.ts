/** Predictions held against felled sections. */
export { checkFelled, predictionAgainstTruth } from './judge.ts';
