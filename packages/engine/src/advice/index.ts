export { type AdviseInput, advise } from './advise.ts';
export { defaultWanted, type Wanted } from './leastPruning.ts';
export { frontSpeeds } from './reinspection.ts';
