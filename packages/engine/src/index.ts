/** The science of Standfast, pure: no input or output, no clock, no hidden randomness. */
export * from './assess.ts';
export type * from './assessment.ts';
export type * from './case.ts';
export type * from './change/types.ts';
export { yearsBetween } from './change/yearsBetween.ts';
export { eventLikelihood, riskOf } from './decision/risk.ts';
export * from './decision/words.ts';
export * from './faults.ts';
export * from './random.ts';
export { checkFelled } from './section/felled/index.ts';
export { type FirstDrillingsInput, firstDrillings } from './section/first/index.ts';
export * from './section/index.ts';
export * from './section/types.ts';
export * from './strip/index.ts';
export * from './trace/index.ts';
export { ENGINE_VERSION } from './version.ts';
