import { expect, it } from 'vitest';
import { growing, portion, whileTelling } from './stripProgress.ts';

it('puts pieces of work one after another', () => {
  const told: [number, string][] = [];
  const tell = growing((share, step) => told.push([share, step]));
  portion(tell, 0, 0.4)(0.5, 'opening');
  portion(tell, 0.4, 1)(0.25, 'looking');
  portion(tell, 0, 0.4)(1, 'late');
  portion(tell, 0.4, 1)(1, 'done');
  expect(told.map(([share, step]) => [Number(share.toFixed(9)), step])).toEqual([
    [0.2, 'opening'],
    [0.55, 'looking'],
    [0.55, 'late'],
    [1, 'done'],
  ]);
});

it('tells nothing of work that is over', async () => {
  const told: number[] = [];
  let late: (share: number, step: string) => void = () => {};
  const answer = await whileTelling(
    (share) => told.push(share),
    async (tell) => {
      late = tell;
      tell(0.3, 'working');
      return 'answer';
    },
  );
  late(0.9, 'working');
  expect([answer, told]).toEqual(['answer', [0.3]]);
});

it('never tells more than all', () => {
  const told: number[] = [];
  growing((share) => told.push(share))(1.2, 'done');
  expect(told).toEqual([1]);
});
