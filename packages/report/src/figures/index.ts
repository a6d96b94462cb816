export * from './options.ts';
export * from './trace.ts';
export * from './zonePattern.ts';
