/**
 * Drawings are tested as drawings: each is kept as an SVG that was looked at by eye. They are our own earlier
 * output, not a published truth; look at a changed one before keeping it (`npx vitest run tests/report -u`).
 */
import {
  commonTopPct,
  criteriaFigure,
  darkTheme,
  remainingRose,
  type Scene,
  type SceneItem,
  safetyGauge,
  safetyRose,
  sampleAssessment,
  sampleCase,
  sectionFigure,
  sectionWithRoseFigure,
  toSvg,
  traceFigure,
  windFigure,
} from '@standfast/report';
import { describe, expect, it } from 'vitest';

const a = sampleAssessment();
const section = a.sections[0]!;
const tree = sampleCase().tree;
const plan = { section, flares: a.flares, next: a.nextDrilling };

const drawings: Record<string, Scene> = {
  'trace-through-hollow': traceFigure(section.drillings[2]!, { width: 483, units: 'metric' }),
  'trace-on-phone-in-inches': traceFigure(section.drillings[2]!, { width: 340, units: 'us' }),
  'trace-without-loss': traceFigure(a.flares[1]!.drillings[0]!, { width: 483, units: 'metric' }),
  'section-with-flares': sectionFigure(plan, { width: 420, units: 'metric' }),
  'rose-remaining': remainingRose(section, { width: 260, units: 'metric' }),
  'rose-safety': safetyRose(a.safety, { width: 320, units: 'metric' }),
  'section-with-rose': sectionWithRoseFigure({ ...plan, safety: a.safety }, { width: 440, units: 'metric' }),
  'wind-in-feet': windFigure(tree, a.wind, { width: 440, units: 'us', sections: a.sections }),
  criteria: criteriaFigure(section.criteria, { width: 480, units: 'metric' }),
  'safety-gauge': safetyGauge(a.safety, { width: 480, units: 'metric' }),
};

/** Last digits of sines differ by platform: a tenth of a pixel is enough for a drawing. */
const rounded = (svg: string) =>
  svg.replace(/-?\d+\.\d+/g, (n) => String(Math.round(Number(n) * 10) / 10 || 0));

describe('drawings', () => {
  for (const [name, scene] of Object.entries(drawings))
    it(name, async () => {
      await expect(`${rounded(toSvg(scene))}\n`).toMatchFileSnapshot(`drawings/${name}.svg`);
    });

  it('a dark one', async () => {
    const svg = toSvg(drawings['section-with-rose']!, { theme: darkTheme });
    expect(svg).toContain(darkTheme.colours.ink);
    expect(svg).not.toContain('#1c1f23');
  });

  it('say in words what they show', () => {
    for (const scene of Object.values(drawings)) {
      expect(scene.title.length).toBeGreaterThan(10);
      expect(scene.description.length).toBeGreaterThan(40);
      expect(toSvg(scene)).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it('draw the next needle along its heading, turned off the pith as advised', () => {
    const bearingOf = (offRadialDeg: number) => {
      const { stop, ...advice } = a.nextDrilling;
      if (stop) throw new Error('the sample advises a hole');
      const next = { ...advice, offRadialDeg } as typeof a.nextDrilling;
      const svg = toSvg(sectionFigure({ ...plan, next }, { width: 420, units: 'metric' }));
      const line = /part="next-drilling".*?d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"/.exec(svg)!;
      const [x0, y0, x1, y1] = line.slice(1).map(Number) as [number, number, number, number];
      return ((Math.atan2(x1 - x0, y0 - y1) * 180) / Math.PI + 360) % 360;
    };
    // It stands at 210 degrees, so to the pith is 30.
    expect(bearingOf(0)).toBeCloseTo(30, 0);
    expect(bearingOf(30)).toBeCloseTo(60, 0);
    expect(bearingOf(-30)).toBeCloseTo(0, 0);
  });

  it('hold the section’s drillings by name for a screen to find', () => {
    const refs = parts(drawings['section-with-flares']!.items, 'drilling');
    expect(refs).toEqual(['s1/d1', 's1/d2', 's1/d3', 's1/d4', 's1/d5', 's1/d6']);
  });
});

describe('unusual cases', () => {
  it.each([0, 1, 12])('a section with %d drillings', (count) => {
    const one = sampleAssessment(count).sections[0]!;
    const svg = toSvg(sectionFigure({ section: one }, { width: 330, units: 'us' }));
    expect(
      parts(sectionFigure({ section: one }, { width: 330, units: 'us' }).items, 'drilling'),
    ).toHaveLength(count);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('keeps a spike of one column', () => {
    const spiked = structuredClone(section.drillings[2]!);
    spiked.drawn.highPct[250] = 97;
    expect(commonTopPct([spiked])).toBe(100);
    const figure = traceFigure(spiked, { width: 483, units: 'metric' });
    const top = figure.plot.resistancePct.range[1];
    const trace = find(figure.items, 'trace');
    expect(JSON.stringify(trace)).toContain(
      ` ${Math.round((top + 0.03 * (figure.plot.resistancePct.range[0] - top)) * 100) / 100}`,
    );
  });

  it('draws to a true scale when asked', () => {
    const { plot } = traceFigure(section.drillings[0]!, { width: 300, units: 'metric', pxPerMm: 2 });
    const [r0, r1] = plot.depthMm.range;
    const [d0, d1] = plot.depthMm.domain;
    expect((r1 - r0) / (d1 - d0)).toBeCloseTo(2, 12);
  });
});

function parts(items: readonly SceneItem[], part: string): (string | undefined)[] {
  return items.flatMap((i) => [
    ...(i.part === part ? [i.ref] : []),
    ...(i.kind === 'group' ? parts(i.items, part) : []),
  ]);
}

function find(items: readonly SceneItem[], part: string): SceneItem | undefined {
  for (const i of items) {
    if (i.part === part) return i;
    const inner = i.kind === 'group' ? find(i.items, part) : undefined;
    if (inner) return inner;
  }
  return undefined;
}
