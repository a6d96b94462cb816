import { describe, expect, it } from 'vitest';
import { CASE_JSON } from '../bag/bag.ts';
import { demoBag, secondVisitBag } from '../node/demoBag.ts';
import { inspectCase, openCase } from '../openCase.ts';
import { saveCase } from '../saveCase.ts';
import { nextVisit } from './nextVisit.ts';

describe('the next visit', () => {
  it('holds the first whole and lists the drillings without their traces', async () => {
    const bag = await demoBag();
    const { caseFile } = openCase(bag);
    const next = nextVisit(caseFile, bag, '2030-06-20');
    expect(next.caseFile.earlier).toBe('earlier/2026-06-18');
    expect([...next.bag.keys()].filter((path) => path.startsWith('earlier/'))).toHaveLength(bag.size);
    const drillings = next.caseFile.sections.flatMap((section) => section.drillings);
    expect(drillings.map(({ id }) => id)).toEqual(
      caseFile.sections.flatMap((s) => s.drillings.map(({ id }) => id)),
    );
    expect(drillings.every(({ trace }) => trace === undefined)).toBe(true);
    expect(next.caseFile.tree).toEqual(caseFile.tree);
    expect(next.caseFile.targets).toEqual(caseFile.targets);
    const opened = inspectCase(next.bag);
    expect(opened.faults).toEqual([]);
    expect(opened.engineInput?.earlier?.sections[0]?.drillings).toHaveLength(7);
  });

  it('is a fault where the earlier visit named is not there', async () => {
    const bag = await demoBag();
    const { caseFile } = openCase(bag);
    const { faults } = inspectCase(saveCase({ ...caseFile, earlier: 'earlier/1999-01-01' }, bag));
    expect(faults.map(({ message }) => message).join()).toMatch(
      /earlier\/1999-01-01, where there is no case\.json/,
    );
    const climbing = inspectCase(saveCase({ ...caseFile, earlier: '../elsewhere' }, bag));
    expect(climbing.faults.map(({ message }) => message).join()).toMatch(/climbs out of the case/);
  });

  it('keeps the new visit when the earlier one is broken, and says so', async () => {
    const bag = await secondVisitBag();
    bag.set(`earlier/2026-06-18/${CASE_JSON}`, new TextEncoder().encode('{"format": "standfast-case"'));
    const { engineInput, notices } = openCase(bag);
    expect(engineInput.earlier).toBeUndefined();
    expect(notices.find(({ where }) => where === 'earlier')).toMatchObject({ severity: 'serious' });
  });
});
