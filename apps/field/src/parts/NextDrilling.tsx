/** Where one more hole would help most, as a place to stand, or why to stop. */
import type { NextDrilling } from '@standfast/engine';
import { bearing } from '@standfast/report';
import { fixed } from '../units/quantities.ts';
import { OpenNumber } from './OpenNumber.tsx';

export function NextDrillingCard({ next }: { next: NextDrilling }) {
  if (next.stop === true) {
    return (
      <div className="next-card">
        <p className="next-head">No further hole</p>
        <p>{next.why}</p>
      </div>
    );
  }
  const worth = `${fixed(100 * next.worth, 0)} %`;
  return (
    <div className="next-card">
      <p className="next-head">
        Next drilling: stand at {bearing(next.azimuthDeg)} of {next.sectionId}, drill toward the pith
      </p>
      <p>{next.why}</p>
      <p>
        Worth{' '}
        <OpenNumber
          explanation={{
            name: 'Worth of one more hole',
            value: worth,
            meaning:
              'The expected drop in the chance of a wrong decision to keep or to act, as a share of that chance now.',
            formula: [
              'for each place: what the needle would meet in each draw, and the decision that would follow',
              'worth = 1 − chance of a wrong decision after the hole ÷ chance before it',
            ],
            inputs: next.candidates.slice(0, 12).map(({ sectionId, azimuthDeg, worth: share }) => ({
              name: `${sectionId}, ${bearing(azimuthDeg)}`,
              value: `${fixed(100 * share, 0)} %`,
              source: 'this assessment',
            })),
            sources: [],
            limits: 'It does not know where you can stand, or what the wound costs this tree.',
          }}
        >
          {worth}
        </OpenNumber>{' '}
        of the present chance of a wrong decision.
      </p>
    </div>
  );
}
