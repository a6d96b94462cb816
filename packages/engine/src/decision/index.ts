export { safety } from './safety.ts';
export type { SafetyInput, SafetyResult, SectionStrength } from './types.ts';
