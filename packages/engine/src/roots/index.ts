export { anchorageDraws } from './anchorage.ts';
export { flareSoundShare } from './flareShare.ts';
export {
  type AnchorageDraws,
  type AnchorageInput,
  type FlareSoundness,
  SOILS,
} from './types.ts';
