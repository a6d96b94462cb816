/** The section: outline, exact mechanics, the trade's rules, and the needle's line. */
export { arcSpanDeg } from './arc.ts';
export { cambiumRing } from './cambium.ts';
export { DIRECTIONS_DEG, modulusByDirection, ringModulusByDirection } from './capacity.ts';
export { checkOutline } from './check-outline.ts';
export { type NeedleLine, needleLine } from './needle.ts';
export { outlineRadius, outlineRing } from './outline.ts';
export type { AreaMoments } from './polygon.ts';
export {
  type DirectionalValue,
  type SectionProperties,
  type SectionToMeasure,
  sectionProperties,
} from './properties.ts';
export { type DrilledWall, type RadialWall, radialWall } from './radial-wall.ts';
export { outlineFrom, sectionInputFrom } from './section-input.ts';
export {
  type CavityOpening,
  type StrengthLossInput,
  strengthLoss,
  strengthLossCriteria,
  WALL_RULES_ARE_NEARLY_ONE,
} from './strength-loss.ts';
export { type HollowStem, type ThinWallModes, thinWallModes } from './thin-wall.ts';
