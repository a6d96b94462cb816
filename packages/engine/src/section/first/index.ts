/** Where to begin drilling, before any trace is at hand. */
export { beginAnew, plansFor } from './beginAnew.ts';
export { type FirstDrillingsInput, firstDrillings } from './firstDrillings.ts';
