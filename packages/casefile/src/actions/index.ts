/** Edits of a case file: pure functions, case file in, new case file out. */
export * from './decision.ts';
export * from './drillings.ts';
export * from './flares.ts';
export { newCase } from './newCase.ts';
export { nextId } from './nextId.ts';
export { nextVisit } from './nextVisit.ts';
export type { DrillingPlace, DrillingRef } from './places.ts';
export * from './roots.ts';
export * from './sections.ts';
export * from './signs.ts';
export * from './targets.ts';
export * from './traceFiles.ts';
export * from './tree.ts';
export * from './visit.ts';
