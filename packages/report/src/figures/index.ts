export * from './options.ts';
export type { PlanContent } from './plan/drawPlan.ts';
export { type SectionFigureOptions, sectionFigure } from './plan/section.ts';
export { LITTLE_KNOWN_SD } from './plan/soundnessField.ts';
export { type RoseFigureOptions, remainingRose, SAFETY_LIMITS, safetyRose } from './rose/rose.ts';
export * from './sectionWithRose.ts';
export * from './trace.ts';
export * from './zonePattern.ts';
