/** What holds the roots and what was done to them: cuts, sides they cannot spread to, static load tests. */
import { BearingEntry, NumberEntry, TextEntry } from '../entries.tsx';
import { ListGroup } from '../ListRows.tsx';

const SPAN = { min: 1, max: 360 };

export function RootsGroups() {
  return (
    <>
      <ListGroup
        title="Root cuts"
        list="rootCuts"
        singular="root cut"
        blank={{ azimuthDeg: 0, distanceM: 2 }}
        lead="Trenches, kerbs, foundations: where roots were severed. The anchorage is reduced on that side."
        id="root-cuts"
        fields={(i) => (
          <>
            <BearingEntry
              at={`rootCuts.${i}.azimuthDeg`}
              label="Side of the cut"
              hint="Clockwise from north."
            />
            <NumberEntry
              at={`rootCuts.${i}.distanceM`}
              label="Distance from the bark"
              quantity="heightM"
              limits={{ min: 0, max: 100 }}
            />
            <NumberEntry
              at={`rootCuts.${i}.widthDeg`}
              label="How far round"
              hint="Seen from the stem."
              placeholder="90"
              quantity="angleDeg"
              limits={SPAN}
            />
            <NumberEntry
              at={`rootCuts.${i}.depthM`}
              label="Depth"
              hint="Left out: not known."
              quantity="heightM"
              limits={{ min: 0, max: 20 }}
            />
            <NumberEntry
              at={`rootCuts.${i}.year`}
              label="Year"
              quantity="plain"
              limits={{ min: 1900, max: 2200 }}
            />
            <TextEntry at={`rootCuts.${i}.note`} label="Note" />
          </>
        )}
      />
      <ListGroup
        title="Restricted root space"
        list="rootSpace"
        singular="barrier"
        blank={{ azimuthDeg: 0, distanceM: 2 }}
        lead="Walls, kerbs, ditches: sides to which the roots cannot spread."
        id="root-space"
        fields={(i) => (
          <>
            <TextEntry at={`rootSpace.${i}.what`} label="What stops the roots" />
            <BearingEntry at={`rootSpace.${i}.azimuthDeg`} label="Side" hint="Clockwise from north." />
            <NumberEntry
              at={`rootSpace.${i}.distanceM`}
              label="Distance from the bark"
              quantity="heightM"
              limits={{ min: 0, max: 100 }}
            />
            <NumberEntry
              at={`rootSpace.${i}.widthDeg`}
              label="How far round"
              hint="Seen from the stem."
              placeholder="90"
              quantity="angleDeg"
              limits={SPAN}
            />
          </>
        )}
      />
      <ListGroup
        title="Static load tests"
        list="staticTests"
        singular="static load test"
        blank={{ directionDeg: 0, tiltDeg: 0.25 }}
        lead="A measured pull with the tilt of the root plate. It replaces what is known only from the tree’s size, toward the side it was pulled to."
        id="static-tests"
        fields={(i) => (
          <>
            <BearingEntry
              at={`staticTests.${i}.directionDeg`}
              label="Pulled toward"
              hint="Clockwise from north."
            />
            <NumberEntry
              at={`staticTests.${i}.momentNm`}
              label="Moment at the ground"
              hint="Force times height of the rope, at that tilt."
              quantity="momentNm"
              limits={{ min: 0, aboveMin: true, max: 1e8 }}
            />
            <NumberEntry
              at={`staticTests.${i}.tiltDeg`}
              label="Tilt of the root plate"
              hint="0.25° if it can be."
              quantity="angleDeg"
              limits={{ min: 0.1, max: 0.5 }}
            />
            <TextEntry at={`staticTests.${i}.note`} label="Note" hint="By whom, with what, on which day." />
          </>
        )}
      />
    </>
  );
}
