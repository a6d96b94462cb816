/** Where to begin drilling, before any trace is at hand. */
export { type FirstDrillingsInput, firstDrillings } from './firstDrillings.ts';
