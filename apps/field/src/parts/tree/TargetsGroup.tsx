/** Who or what could be hit, how often it is there, where, what shields it, and by which part of the tree. */
import { CONSEQUENCES, OCCUPANCIES, PARTS_OF_TREE, PROTECTIONS } from '@standfast/casefile';
import { BearingEntry, ChoiceEntry, NumberEntry, TextEntry } from '../entries.tsx';
import { ListGroup } from '../ListRows.tsx';
import { orLeftOut, same } from './choices.ts';

export function TargetsGroup() {
  return (
    <ListGroup
      title="Targets"
      list="targets"
      singular="target"
      blank={{ what: 'footpath', occupancy: 'frequent' }}
      lead="Who or what could be hit, and how often it is there."
      id="targets"
      fields={(i) => (
        <>
          <TextEntry at={`targets.${i}.what`} label="What" />
          <ChoiceEntry at={`targets.${i}.occupancy`} label="Occupancy" choices={same(OCCUPANCIES)} />
          <NumberEntry
            at={`targets.${i}.distanceM`}
            label="Distance"
            hint="From the stem."
            quantity="heightM"
            limits={{ min: 0, max: 1000 }}
          />
          <BearingEntry at={`targets.${i}.directionDeg`} label="Direction" hint="Clockwise from north." />
          <ChoiceEntry
            at={`targets.${i}.protection`}
            label="Shielded"
            choices={orLeftOut(same(PROTECTIONS.slice(1)), 'not at all')}
          />
          <ChoiceEntry
            at={`targets.${i}.partOfTree`}
            label="Struck by"
            choices={orLeftOut(same(PARTS_OF_TREE), 'whatever can reach it')}
          />
          <ChoiceEntry
            at={`targets.${i}.consequence`}
            label="Harm to expect"
            choices={orLeftOut(same(CONSEQUENCES), 'worked out from what it is')}
          />
          <TextEntry at={`targets.${i}.note`} label="Note" />
        </>
      )}
    />
  );
}
