import { newCase } from '@standfast/casefile';
import type { Assessment, SectionAssessment, TreeInput } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import type { Wanted } from './assessor.ts';
import { followSharpening, type Sharpening, sharpeningKept } from './sharpening.ts';

const wanted = (): Wanted => ({
  files: {},
  caseFile: {
    ...newCase('2026-05-14'),
    sections: [
      {
        id: 's1',
        heightM: 1,
        outline: { kind: 'circle', diameterMm: 600 },
        drillings: [
          { id: 'd1', azimuthDeg: 0 },
          { id: 'd2', azimuthDeg: 90 },
        ],
      },
    ],
  },
});

/** A worker that hands back how many drillings it was given. */
function counting(faultAt = Number.POSITIVE_INFINITY) {
  const asked: number[] = [];
  return {
    asked,
    closed: 0,
    async assess({ caseFile }: Wanted) {
      const count = caseFile.sections[0]!.drillings.length;
      asked.push(count);
      if (count >= faultAt) return { ok: false as const, faults: [{ what: 'torn', where: '' }], notices: [] };
      const section = { id: 's1', drillings: new Array(count) } as unknown as SectionAssessment;
      const assessment = { sections: [section] } as unknown as Assessment;
      return { ok: true as const, assessment, tree: {} as TreeInput, notices: [] };
    },
    close() {
      this.closed++;
    },
  };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('how the picture sharpened', () => {
  it('goes through the drillings in order and keeps what it found', async () => {
    const job = wanted();
    const worker = counting();
    const seen: Sharpening[] = [];
    followSharpening(
      job,
      's1',
      (state) => seen.push(state),
      () => worker,
    );
    await settle();
    expect(worker.asked).toEqual([0, 1, 2]);
    expect(worker.closed).toBe(1);
    expect(seen.at(-1)).toMatchObject({ done: true, fault: null });
    expect(seen.at(-1)?.steps.map(({ drillings }) => drillings)).toEqual([0, 1, 2]);

    const again = counting();
    followSharpening(
      job,
      's1',
      () => undefined,
      () => again,
    );
    await settle();
    expect(again.asked).toEqual([]);
    expect(sharpeningKept(job.caseFile, 's1').done).toBe(true);
    expect(sharpeningKept(wanted().caseFile, 's1').steps).toEqual([]);
  });

  it('stops where it is told to, and goes on from there', async () => {
    const job = wanted();
    const worker = counting();
    const stop = followSharpening(
      job,
      's1',
      ({ steps }) => {
        if (steps.length === 1) stop();
      },
      () => worker,
    );
    await settle();
    expect(sharpeningKept(job.caseFile, 's1').steps).toHaveLength(1);
    const again = counting();
    followSharpening(
      job,
      's1',
      () => undefined,
      () => again,
    );
    await settle();
    expect(again.asked).toEqual([1, 2]);
  });

  it('says what keeps a step from being worked out', async () => {
    const seen: Sharpening[] = [];
    followSharpening(
      wanted(),
      's1',
      (state) => seen.push(state),
      () => counting(1),
    );
    await settle();
    expect(seen.at(-1)).toMatchObject({ done: false, fault: 'torn' });
    expect(seen.at(-1)?.steps).toHaveLength(1);
  });
});
