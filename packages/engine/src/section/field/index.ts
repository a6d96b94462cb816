export { soundnessPosterior } from './posterior.ts';
export type { FieldPrior, Scenario } from './prior.ts';
export { FIELD_PRIOR } from './prior.ts';
export type { FieldDrilling, FieldInput, FieldPosterior } from './types.ts';
export { WOOD_STATE } from './types.ts';
