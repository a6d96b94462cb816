/** The tree, its crown, the site's wind, what was seen, and what it could hit. */
import {
  ASCE_EXPOSURES,
  type CaseFile,
  type CaseSite,
  CROWN_SHAPES,
  DEFAULTS,
  EUROCODE_TERRAINS,
  OCCUPANCIES,
  SIGN_KINDS,
  setWindCode,
  WIND_CODES,
} from '@standfast/casefile';
import { windFigure } from '@standfast/report';
import { Plus, Trash2 } from 'lucide-react';
import { type ReactNode, useCallback } from 'react';
import { Button } from 'react-aria-components';
import { withValueAt } from '../edit/fieldPath.ts';
import { ChoiceEntry, NumberEntry, TextEntry, YesNoEntry } from '../parts/entries.tsx';
import { Figure } from '../parts/Figure.tsx';
import { Group } from '../parts/Group.tsx';
import { useSettings } from '../state/settings.ts';
import { useCaseFile, useSession, useSessionView } from '../state/useSession.tsx';

const same = (values: readonly string[]) => values.map((value) => ({ value, label: value }));

const SHAPES = CROWN_SHAPES.map((value) => ({ value, label: value.replace('-', ' ') }));
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

/** A green-wood list would be long; these are what a field day most often meets. */
const SPECIES = [
  'Acer platanoides',
  'Acer pseudoplatanus',
  'Acer saccharinum',
  'Acer saccharum',
  'Aesculus hippocastanum',
  'Betula pendula',
  'Fagus grandifolia',
  'Fagus sylvatica',
  'Fraxinus americana',
  'Fraxinus excelsior',
  'Liriodendron tulipifera',
  'Picea abies',
  'Pinus strobus',
  'Pinus sylvestris',
  'Platanus occidentalis',
  'Populus tremula',
  'Pseudotsuga menziesii',
  'Quercus alba',
  'Quercus robur',
  'Quercus rubra',
  'Tilia americana',
  'Tilia cordata',
  'Ulmus americana',
] as const;

export function TreePlace() {
  return (
    <>
      <h1>Tree and site</h1>
      <div className="columns">
        <div className="column">
          <Group title="Tree">
            <div className="fields">
              <TextEntry at="tree.label" label="Label" hint="As on the tag or the plan." />
              <TextEntry
                at="tree.species"
                label="Species"
                hint="Botanical name."
                suggestions={SPECIES}
                italic
              />
              <NumberEntry
                at="tree.stemDiameterMm"
                label="Stem diameter"
                hint="Over bark, at breast height."
                quantity="lengthMm"
                limits={{ min: 0, aboveMin: true, max: 10_000 }}
              />
              <NumberEntry
                at="tree.heightM"
                label="Height"
                quantity="heightM"
                limits={{ min: 0, aboveMin: true, max: 130 }}
              />
              <NumberEntry
                at="tree.leanDeg"
                label="Lean"
                hint="From the vertical."
                placeholder="0"
                quantity="angleDeg"
                limits={{ min: 0, max: 60 }}
              />
              <NumberEntry
                at="tree.leanTowardDeg"
                label="Leans toward"
                hint="Clockwise from north."
                quantity="angleDeg"
                limits={{ min: -360, max: 360 }}
              />
            </div>
          </Group>
          <Group title="Crown">
            <div className="fields">
              <NumberEntry
                at="tree.crown.baseHeightM"
                label="Height of crown base"
                quantity="heightM"
                limits={{ min: 0 }}
              />
              <NumberEntry
                at="tree.crown.widthM"
                label="Crown width"
                quantity="heightM"
                limits={{ min: 0, aboveMin: true, max: 60 }}
              />
              <ChoiceEntry
                at="tree.crown.shape"
                label="Crown shape, from the side"
                choices={SHAPES}
                whenEmpty={`not given: ${DEFAULTS.crownShape}`}
              />
              <YesNoEntry at="tree.crown.inLeaf" label="In leaf" assumed={DEFAULTS.inLeaf} />
            </div>
          </Group>
          <SiteGroup />
        </div>
        <aside className="column figure-column" aria-label="Wind on the tree">
          <WindPicture />
        </aside>
      </div>
      <SignsGroup />
      <TargetsGroup />
    </>
  );
}

function SiteGroup() {
  const session = useSession();
  const site = useCaseFile().site;
  const changeCode = (windCode: string) =>
    session.edit('Wind code', (caseFile) => setWindCode(caseFile, windCode as CaseSite['windCode']));
  return (
    <Group title="Site and wind">
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
            <TextEntry at="site.basicWindSource" label="Where the speed is from" />
          </>
        )}
      </div>
    </Group>
  );
}

function SignsGroup() {
  const { signs } = useCaseFile();
  return (
    <ListGroup
      title="Signs seen"
      list="signs"
      singular="sign"
      blank={{ kind: 'fruiting body' }}
      lead="What you saw: fruiting bodies, cavities, cracks, insects, cut roots."
    >
      {signs.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: signs have no id; each row's fields are bound by its place.
        <ListRow key={i} list="signs" index={i} singular="sign">
          <TextEntry at={`signs.${i}.kind`} label="Sign" suggestions={SIGN_KINDS} />
          <TextEntry at={`signs.${i}.where`} label="Where" />
          <TextEntry at={`signs.${i}.note`} label="Note" />
        </ListRow>
      ))}
    </ListGroup>
  );
}

function TargetsGroup() {
  const { targets } = useCaseFile();
  return (
    <ListGroup
      title="Targets"
      list="targets"
      singular="target"
      blank={{ what: 'footpath', occupancy: 'frequent' }}
      lead="Who or what could be hit, and how often it is there."
    >
      {targets.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: targets have no id; each row's fields are bound by its place.
        <ListRow key={i} list="targets" index={i} singular="target">
          <TextEntry at={`targets.${i}.what`} label="What" />
          <ChoiceEntry at={`targets.${i}.occupancy`} label="Occupancy" choices={same(OCCUPANCIES)} />
          <NumberEntry
            at={`targets.${i}.distanceM`}
            label="Distance"
            quantity="heightM"
            limits={{ min: 0 }}
          />
          <NumberEntry
            at={`targets.${i}.directionDeg`}
            label="Direction"
            quantity="angleDeg"
            limits={{ min: -360, max: 360 }}
          />
        </ListRow>
      ))}
    </ListGroup>
  );
}

interface ListGroupProps {
  title: string;
  list: 'signs' | 'targets';
  singular: string;
  blank: CaseFile['signs'][number] | CaseFile['targets'][number];
  lead: string;
  children: ReactNode;
}

function ListGroup({ title, list, singular, blank, lead, children }: ListGroupProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const add = () =>
    session.edit(`Add ${singular}`, (caseFile) => withValueAt(caseFile, list, [...caseFile[list], blank]));
  return (
    <Group title={title} lead={lead}>
      <ul className="rows">{children}</ul>
      <Button className="button" onPress={add} isDisabled={writer !== true}>
        <Plus aria-hidden /> Add a {singular}
      </Button>
    </Group>
  );
}

interface ListRowProps {
  list: 'signs' | 'targets';
  index: number;
  singular: string;
  children: ReactNode;
}

function ListRow({ list, index, singular, children }: ListRowProps) {
  const session = useSession();
  const { writer } = useSessionView();
  return (
    <li className="row">
      <div className="fields">{children}</div>
      <Button
        className="icon-button"
        aria-label={`Take out ${singular} ${index + 1}`}
        isDisabled={writer !== true}
        onPress={() =>
          session.edit(`Take out ${singular}`, (caseFile) =>
            withValueAt(caseFile, `${list}.${index}`, undefined),
          )
        }
      >
        <Trash2 aria-hidden />
      </Button>
    </li>
  );
}

/** The wind on the crown, once there is an assessment. */
export function WindPicture() {
  const { result } = useSessionView();
  const { units } = useSettings();
  const { sections } = useCaseFile();
  const { tree, assessment } = result;
  const wind = assessment?.wind;
  const draw = useCallback(
    (width: number) => {
      if (!tree || !wind) throw new Error('There is no wind to draw yet.');
      return windFigure(tree, wind, {
        width,
        units,
        textSize: 13,
        height: Math.max(320, width * 0.8),
        sections,
      });
    },
    [tree, wind, units, sections],
  );
  if (!tree || !wind) {
    return <p className="hint">The wind on the crown is drawn here once the tree and the site are known.</p>;
  }
  return <Figure draw={draw} maxWidth={720} />;
}
