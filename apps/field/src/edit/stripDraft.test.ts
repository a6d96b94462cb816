import type { CornersPx } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import {
  knownOf,
  newDraft,
  type ScaleText,
  type StripDraft,
  scaleFromPrint,
  withSeen,
} from './stripDraft.ts';

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

  it('takes a ruler’s marks, in the person’s units, and where depth begins', () => {
    const outcome = knownOf(draft({ way: 'ruler', apart: '5', start: '1', startsAt: 'right' }), 'us');
    const ruler = 'known' in outcome ? outcome.known.ruler : null;
    expect(ruler?.startsAt).toBe('right');
    expect(ruler?.distanceMm).toBeCloseTo(127, 9);
    expect(ruler?.startMm).toBeCloseTo(25.4, 9);
    expect(knownOf(draft({ way: 'ruler' }), 'metric')).toEqual({
      faults: { apart: 'Needed to read the line.' },
    });
    expect(knownOf(draft({ way: 'ruler', apart: '0' }), 'metric')).toEqual({
      faults: { apart: expect.stringMatching(/above 0/) },
    });
  });

  it('knows a scale that was printed from one that was typed', () => {
    const printed = { depthMm: [0, 250], resistance: [0, 100] } as const;
    const seen = { chart: { cornersPx: CORNERS, sure: 0.9, from: 'frame' }, printed } as const;
    const begun = withSeen(newDraft(null, 'metric'), seen, { width: 200, height: 100 }, 'metric');
    expect(scaleFromPrint(begun, printed)).toBe('printed numbers');
    // Shown as 9.84 in, read as 250 mm all the same.
    const inches = withSeen(newDraft(null, 'us'), seen, { width: 200, height: 100 }, 'us');
    expect(knownOf(inches, 'us')).toEqual({ known: { cornersPx: CORNERS, ...printed } });
    const typed = knownOf({ ...inches, scale: { ...inches.scale, right: '10' } }, 'us');
    expect('known' in typed && typed.known.depthMm?.[1]).toBeCloseTo(254, 9);
    expect(scaleFromPrint(begun, { ...printed, depthMm: [0, 240] })).toBeNull();
    expect(scaleFromPrint(draft({ right: '250' }), printed)).toBeNull();
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

  it('takes what the chart’s printed numbers say over the strip before, and leaves what they do not say', () => {
    const begun = newDraft({ depthMm: [0, 400], resistance: [0, 50] }, 'us');
    const chart = { cornersPx: CORNERS, sure: 0.9, from: 'frame' } as const;
    const seen = { chart, printed: { depthMm: [254, 0], resistance: null } } as const;
    const { corners, found, scale } = withSeen(begun, seen, { width: 200, height: 100 }, 'us');
    expect([scale.left, scale.right, scale.bottom, scale.top]).toEqual(['10', '0', '0', '50']);
    expect([corners, found]).toEqual([CORNERS, chart]);
    expect(withSeen(begun, null, { width: 200, height: 100 }, 'us')).toMatchObject({
      corners: [
        [20, 25],
        [180, 25],
        [180, 75],
        [20, 75],
      ],
      found: null,
      scale: begun.scale,
    });
  });
});
