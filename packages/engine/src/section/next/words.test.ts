import { describe, expect, it } from 'vitest';
import { stopWhenSure, stopWhenWorthless, whyDrill } from './words.ts';

const standing = { mustAct: 0.18, wrongNow: 0.18, limit: 1.5 };
const place = { sectionId: 's2', azimuthDeg: 210, offRadialDeg: 0 };

describe('the advice in words', () => {
  it('says where the decision stands and what a hole is expected to bring', () => {
    const said = whyDrill(standing, place, { holes: 1, wrongAfter: 0.062 });
    expect(said).toBe(
      'As far as breakage goes, the decision to keep is wrong with a chance of 18 % now. A hole at section s2, 210°, is expected to bring that to 6.2 %.',
    );
  });

  it('says to which hand the needle is turned, as one sees it who faces the stem', () => {
    const prospect = { holes: 2, wrongAfter: 0.06 } as const;
    expect(whyDrill(standing, { ...place, offRadialDeg: 30 }, prospect)).toMatch(
      /30° to the right of the pith/,
    );
    expect(whyDrill(standing, { ...place, offRadialDeg: -30 }, prospect)).toMatch(
      /30° to the left of the pith/,
    );
  });

  it('names the likelier decision', () => {
    const acting = { mustAct: 0.97, wrongNow: 0.03, limit: 1.5 };
    expect(stopWhenSure(acting, 0.05)).toMatch(
      /below 1.5 is 97 %.*the decision to act is wrong in less than 5.0 %/,
    );
  });

  it('tells doubt of wind and wood from doubt that needles no longer settle', () => {
    expect(stopWhenWorthless(standing, 0.01, 0.16)).toMatch(/16 % would be left, for it comes from the wind/);
    expect(stopWhenWorthless(standing, 0.01, 0.02)).toMatch(
      /would leave 2.0 %.*test that sees the whole section/,
    );
  });
});
