/** The site: its wind by a code, how often that wind returns, and the soil. */
import {
  ASCE_EXPOSURES,
  type CaseSite,
  EUROCODE_TERRAINS,
  SOILS,
  setWindCode,
  WIND_CODES,
} from '@standfast/casefile';
import { useCaseFile, useSession } from '../../state/useSession.tsx';
import { ChoiceEntry, NumberEntry, TextEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';
import { orLeftOut, same } from './choices.ts';

const TERRAINS: Record<(typeof EUROCODE_TERRAINS)[number], string> = {
  '0': '0, open sea or coast',
  I: 'I, lakes, flat and bare',
  II: 'II, low vegetation, few obstacles',
  III: 'III, suburb, village, woodland',
  IV: 'IV, town, buildings over 15 m',
};
const EXPOSURES: Record<(typeof ASCE_EXPOSURES)[number], string> = {
  B: 'B, suburb, woodland',
  C: 'C, open with few obstacles',
  D: 'D, flat, unobstructed, water',
};
const SOIL_WORDS: Record<(typeof SOILS)[number], string> = {
  unknown: 'not known',
  'free-draining': 'free-draining, deep',
  poor: 'poor: shallow, gleyed or wet',
};

/** Return period of the code's own map, in years. */
const MAP_YEARS = { 'EN 1991-1-4': '50', 'ASCE 7-22': '700', 'ASCE 7-16': '700' } as const;

export function SiteGroup() {
  const session = useSession();
  const site = useCaseFile().site;
  const changeCode = (windCode: string) =>
    session.edit('Wind code', (caseFile) => setWindCode(caseFile, windCode as CaseSite['windCode']));
  return (
    <Group title="Site and wind" id="site">
      <div className="fields">
        <ChoiceEntry at="site.windCode" label="Wind code" choices={same(WIND_CODES)} onChoose={changeCode} />
        {site && (
          <>
            <NumberEntry
              at="site.basicWindSpeedMs"
              label="Basic wind speed"
              hint={
                site.windCode === 'EN 1991-1-4'
                  ? 'Ten-minute mean at 10 m over open country.'
                  : 'Three-second gust at 10 m over open country.'
              }
              quantity="speedMs"
              limits={{ min: 0, aboveMin: true, max: 120 }}
            />
            <NumberEntry
              at="site.basicWindReturnYears"
              label="Returns once in"
              hint="How often a wind of that speed comes."
              placeholder={MAP_YEARS[site.windCode]}
              quantity="years"
              limits={{ min: 2, max: 10_000 }}
            />
            {site.windCode === 'EN 1991-1-4' ? (
              <ChoiceEntry
                at="site.terrain"
                label="Terrain"
                choices={EUROCODE_TERRAINS.map((value) => ({ value, label: TERRAINS[value] }))}
              />
            ) : (
              <ChoiceEntry
                at="site.exposure"
                label="Exposure"
                choices={ASCE_EXPOSURES.map((value) => ({ value, label: EXPOSURES[value] }))}
              />
            )}
            <ChoiceEntry
              at="site.soil"
              label="Soil"
              hint="Roots hold less in poor soil."
              choices={orLeftOut(
                SOILS.filter((value) => value !== 'unknown').map((value) => ({
                  value,
                  label: SOIL_WORDS[value],
                })),
                SOIL_WORDS.unknown,
              )}
            />
            <TextEntry at="site.basicWindSource" label="Where the speed is from" />
          </>
        )}
      </div>
    </Group>
  );
}
