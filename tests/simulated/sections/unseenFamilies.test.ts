/**
 * The third table of simulated sections: sound geometry, seeds that matter, and the mix that its docstring says.
 */
import { describe, expect, it } from 'vitest';
import { contains, selfCrossing, withoutRepeats } from '../../../packages/engine/src/section/ring.ts';
import { woodOf } from '../../../packages/engine/src/section/wood.ts';
import { JUDGING_FAMILIES, type TrueSection, TUNING_FAMILIES, trueSection } from './trueSection.ts';
import { UNSEEN_FAMILIES } from './unseenFamilies.ts';

const SEEDS = Array.from({ length: 15 }, (_, k) => k + 1);
/** Removing wood can raise a section modulus a little, never by more than this here. */
const MOST_REMAINING = 1.05;
const LEAST_REMAINING = 0.1;
/** A section that keeps this share of its wood, and of its strength in every direction, counts as sound or nearly so. */
const NEARLY_SOUND = 0.95;
/** Splinters apart, the wood left hangs together: the largest piece holds at least this share of it. */
const IN_ONE_PIECE = 0.97;
/** Shares of the table as its docstring says, and how far those of a finite number of seeds may be off. */
const MIX = { closed: 1 / 2, open: 1 / 3, 'nearly sound': 1 / 6 };
const MIX_WITHIN = 0.06;

const names = Object.keys(UNSEEN_FAMILIES);
const made = new Map<string, TrueSection[]>(
  names.map((family) => [family, SEEDS.map((seed) => trueSection(family, seed))]),
);

const outside = ({ outline }: TrueSection, ring: TrueSection['wood']) =>
  ring.some(([x, y]) => !contains(outline, x, y));
const woodLeft = ({ wood, voids }: TrueSection) => woodOf({ kind: 'polygon', points: [...wood] }, voids);
const keptShare = (section: TrueSection) =>
  woodLeft(section).moments.areaMm2 / woodLeft({ ...section, voids: [] }).moments.areaMm2;
const bytes = (section: TrueSection) => JSON.stringify({ ...section, remaining: [...section.remaining] });

describe('the table of unseen families', () => {
  it('has ten families, none named in another table', () => {
    expect(names).toHaveLength(10);
    for (const name of names)
      expect([TUNING_FAMILIES[name], JUDGING_FAMILIES[name]]).toEqual([undefined, undefined]);
  });

  it('is about half closed decay, a third open or soft at the surface, the rest sound or nearly so', () => {
    const counts = { closed: 0, open: 0, 'nearly sound': 0 };
    const all = [...made.values()].flat();
    for (const section of all) {
      const sound = Math.min(...section.remaining) >= NEARLY_SOUND && keptShare(section) >= NEARLY_SOUND;
      const open = section.voids.some((ring) => outside(section, ring));
      counts[sound ? 'nearly sound' : open ? 'open' : 'closed']++;
    }
    for (const kind of ['closed', 'open', 'nearly sound'] as const) {
      const off = Math.abs(counts[kind] / all.length - MIX[kind]);
      expect(off, `${counts[kind]} of ${all.length} are ${kind}`).toBeLessThan(MIX_WITHIN);
    }
  });
});

describe.each(names)('%s', (family) => {
  const sections = made.get(family)!;

  it('keeps a finite share of its strength in every direction', () => {
    for (const { remaining } of sections) {
      expect(remaining).toHaveLength(36);
      for (const share of remaining) {
        expect(share).toBeGreaterThan(LEAST_REMAINING);
        expect(share).toBeLessThanOrEqual(MOST_REMAINING);
      }
    }
  });

  it('has simple rings, each within the wood or passing the bark', () => {
    sections.forEach((section, k) => {
      for (const ring of [section.outline, section.wood, ...section.voids]) {
        const corners = withoutRepeats(ring);
        expect(corners.length).toBeGreaterThan(2);
        expect(corners.flat().every(Number.isFinite)).toBe(true);
        expect(selfCrossing(corners), `seed ${SEEDS[k]}`).toBeNull();
      }
      for (const ring of section.voids) {
        const within = ring.every(([x, y]) => contains(section.wood, x, y));
        expect(within || outside(section, ring), `seed ${SEEDS[k]}`).toBe(true);
      }
    });
  });

  it('leaves wood that hangs together', () => {
    sections.forEach((section, k) => {
      const areas = woodLeft(section).pieces.map((piece) => piece.moments.areaMm2);
      const total = areas.reduce((sum, area) => sum + area, 0);
      expect(Math.max(...areas) / total, `seed ${SEEDS[k]}`).toBeGreaterThan(IN_ONE_PIECE);
    });
  });

  it('gives the same bytes for the same seed, and others for another', () => {
    expect(bytes(trueSection(family, SEEDS[0]!))).toBe(bytes(sections[0]!));
    expect(new Set(sections.map(bytes)).size).toBe(SEEDS.length);
  });
});
