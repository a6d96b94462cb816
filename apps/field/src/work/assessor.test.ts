import type { CaseFile } from '@standfast/casefile';
import type { Assessment, TreeInput } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { type AssessmentView, FULL_DRAWS, followCase, QUICK_DRAWS, type Wanted } from './assessor.ts';
import type { AssessOutcome } from './assessor.worker.ts';

const wanted = (label: string): Wanted => ({
  caseFile: { tree: { label } } as unknown as CaseFile,
  files: {},
});

/** A service whose answers the test hands out one by one. */
function slowService() {
  const asked: { label: string; draws: number; answer: (outcome: AssessOutcome) => void }[] = [];
  return {
    asked,
    assess: ({ caseFile }: Wanted, draws: number) =>
      new Promise<AssessOutcome>((answer) => {
        asked.push({ label: caseFile.tree.label ?? '', draws, answer });
      }),
  };
}

const good = (draws: number): AssessOutcome => ({
  ok: true,
  assessment: { draws } as unknown as Assessment,
  tree: {} as TreeInput,
  notices: [],
});
const bad: AssessOutcome = { ok: false, faults: [{ what: 'no height', where: 'tree.heightM' }], notices: [] };
const settle = () => new Promise((resolve) => setTimeout(resolve, 15));

async function follow() {
  const service = slowService();
  const views: AssessmentView[] = [];
  const assessor = followCase(service, (view) => views.push(view), 0);
  return { service, assessor, last: () => views.at(-1)! };
}

describe('following a case', () => {
  it('shows the quick pass first, then the full one', async () => {
    const { service, assessor, last } = await follow();
    const first = wanted('a');
    assessor.want(first);
    await settle();
    expect(service.asked.map(({ draws }) => draws)).toEqual([QUICK_DRAWS]);
    service.asked[0]!.answer(good(QUICK_DRAWS));
    await settle();
    expect(last()).toMatchObject({ quick: true, working: true, of: first.caseFile });
    service.asked[1]!.answer(good(FULL_DRAWS));
    await settle();
    expect(last()).toMatchObject({ quick: false, working: false, assessment: { draws: FULL_DRAWS } });
  });

  it('throws away what was under way for an older case', async () => {
    const { service, assessor, last } = await follow();
    assessor.want(wanted('old'));
    await settle();
    const newer = wanted('new');
    assessor.want(newer);
    await settle();
    service.asked[0]!.answer(good(1));
    await settle();
    expect(last().assessment).toBeNull();
    expect(service.asked.map(({ label }) => label)).toEqual(['old', 'new']);
    service.asked[1]!.answer(good(2));
    await settle();
    expect(last().of).toBe(newer.caseFile);
  });

  it('keeps the last good assessment when the case cannot be assessed, and says why', async () => {
    const { service, assessor, last } = await follow();
    const first = wanted('a');
    assessor.want(first);
    await settle();
    service.asked[0]!.answer(good(QUICK_DRAWS));
    await settle();
    service.asked[1]!.answer(good(FULL_DRAWS));
    await settle();
    assessor.want(wanted('b'));
    await settle();
    service.asked[2]!.answer(bad);
    await settle();
    expect(last()).toMatchObject({
      of: first.caseFile,
      assessment: { draws: FULL_DRAWS },
      faults: [{ where: 'tree.heightM' }],
      working: false,
    });
  });

  it('says so when the worker itself fails, and goes on', async () => {
    const { assessor, last } = await follow();
    const failing = followCase(
      { assess: () => Promise.reject(new Error('gone')) },
      (view) => shown.push(view),
      0,
    );
    const shown: AssessmentView[] = [];
    failing.want(wanted('a'));
    await settle();
    expect(shown.at(-1)?.faults).toEqual([{ what: 'gone', where: '' }]);
    assessor.want(wanted('b'));
    assessor.stop();
    await settle();
    expect(last().working).toBe(true);
  });
});
