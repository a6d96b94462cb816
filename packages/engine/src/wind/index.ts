export { windAssessment } from './assessment.ts';
export { beaufortMs, convertAveraging } from './averaging.ts';
export { type CrownProfile, crownProfile } from './crown.ts';
export { windDemand } from './demand.ts';
export { demandDraws } from './draws.ts';
export { basicReturnYears, chanceWithin, type GustClimate, gustClimate } from './gustClimate.ts';
export { directionalIntervals, interval } from './interval.ts';
export { windProfile } from './profile.ts';
export { gustOfReturnPeriod } from './returnPeriod.ts';
export {
  type DemandDraws,
  type DemandInput,
  DIRECTIONS,
  type Streamlining,
  type Strip,
  type WindDemand,
  type WindProfile,
} from './types.ts';
