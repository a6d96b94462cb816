export { changeRose } from './changeRose.ts';
export { type ChangeSectionOptions, changeSection } from './changeSection.ts';
export { type ChangeTracesOptions, changeTraces } from './changeTraces.ts';
export { forecastFan } from './forecastFan.ts';
