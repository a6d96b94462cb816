/** The science of Standfast, pure: no input or output, no clock, no hidden randomness. */
export type * from './assessment.ts';
export type * from './case.ts';
export * from './faults.ts';
export * from './section/index.ts';
export type * from './section/types.ts';
export * from './trace/index.ts';
