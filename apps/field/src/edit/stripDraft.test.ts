import type { CornersPx } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { knownOf, newDraft, type ScaleText, type StripDraft } from './stripDraft.ts';

const CORNERS: CornersPx = [
  [0, 0],
  [100, 0],
  [100, 50],
  [0, 50],
];
const draft = (scale: Partial<ScaleText>): StripDraft => {
  const begun = newDraft(null, 'metric');
  return { ...begun, corners: CORNERS, scale: { ...begun.scale, ...scale } };
};

describe('the scale of a strip', () => {
  it('asks for the depth that nobody has said yet', () => {
    expect(knownOf(draft({}), 'metric')).toEqual({ faults: { right: 'Needed to read the line.' } });
  });

  it('takes depths at the edges, either way round, in the person’s units', () => {
    expect(knownOf(draft({ left: '300', right: '0' }), 'metric')).toEqual({
      known: { cornersPx: CORNERS, depthMm: [300, 0], resistance: [0, 100] },
    });
    const inches = knownOf(draft({ right: '10' }), 'us');
    expect('known' in inches && inches.known.depthMm?.[1]).toBeCloseTo(254, 9);
  });

  it('takes two marked points of known depth', () => {
    const outcome = knownOf(draft({ way: 'points', atA: '50', atB: '250' }), 'metric');
    expect('known' in outcome && outcome.known.taps?.map(({ depthMm }) => depthMm)).toEqual([50, 250]);
    expect('known' in outcome && outcome.known.depthMm).toBeUndefined();
  });

  it('refuses equal ends and what is no number', () => {
    expect(knownOf(draft({ right: '0' }), 'metric')).toMatchObject({
      faults: { right: expect.stringMatching(/same depth/) },
    });
    expect(knownOf(draft({ right: '30 cm', top: '0' }), 'metric')).toMatchObject({
      faults: { right: expect.stringMatching(/30 cm/), top: expect.stringMatching(/same level/) },
    });
  });

  it('begins with the scale of the strip before', () => {
    const { scale } = newDraft({ depthMm: [0, 400], resistance: [0, 50] }, 'metric');
    expect([scale.left, scale.right, scale.bottom, scale.top]).toEqual(['0', '400', '0', '50']);
  });
});
