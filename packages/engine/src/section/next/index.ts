export { nextDrilling } from './nextDrilling.ts';
export type { NextDrillingInput, SectionToDrill } from './types.ts';
