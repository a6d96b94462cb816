/** The tree, its crown, the site and its wind, what was seen, what it could hit, and what holds the roots. */
import { CROWN_SHAPES, DEFAULTS } from '@standfast/casefile';
import { windFigure } from '@standfast/report';
import { useCallback } from 'react';
import { BearingEntry, ChoiceEntry, NumberEntry, TextEntry, YesNoEntry } from '../parts/entries.tsx';
import { Figure } from '../parts/Figure.tsx';
import { Group } from '../parts/Group.tsx';
import { PlaceGroup } from '../parts/tree/PlaceGroup.tsx';
import { RootsGroups } from '../parts/tree/RootsGroups.tsx';
import { SignsGroup } from '../parts/tree/SignsGroup.tsx';
import { SiteGroup } from '../parts/tree/SiteGroup.tsx';
import { TargetsGroup } from '../parts/tree/TargetsGroup.tsx';
import { useSettings } from '../state/settings.ts';
import { useArrival } from '../state/useArrival.ts';
import { useCaseFile, useSessionView } from '../state/useSession.tsx';

const SHAPES = CROWN_SHAPES.map((value) => ({ value, label: value.replace('-', ' ') }));

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
  useArrival();
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
              <BearingEntry at="tree.leanTowardDeg" label="Leans toward" hint="Clockwise from north." />
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
          <PlaceGroup />
          <SiteGroup />
        </div>
        <aside className="column figure-column" aria-label="Wind on the tree">
          <WindPicture />
        </aside>
      </div>
      <SignsGroup />
      <TargetsGroup />
      <RootsGroups />
    </>
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
