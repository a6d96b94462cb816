export * from './options.ts';
