/**
 * The demonstration, as if its tree had been felled and traced (invented): the prediction is held against the truth
 * behind its simulated traces, and the truth changes nothing of the prediction.
 */
import { openCase, saveCase } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import { type Assessment, assess, readTraces, type TraceReading, type TraceToRead } from '@standfast/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { FELLED_DEMO } from '../simulated/demo/felledDemo.ts';
import { kindAt, SECTION_HEIGHT_MM } from '../simulated/demo/truthOfDemo.ts';

const DRAWS = 400;
/** Edges of the simulated traces are gradual over 24 mm; the reading puts them within a third of that. */
const WALL_MM = 8;

let standing: Assessment;
let felled: Assessment;
beforeAll(async () => {
  const bag = await demoBag();
  const { caseFile, engineInput } = openCase(bag);
  // The traces are the same both times: read once.
  let readings: TraceReading[] | undefined;
  const read = (traces: TraceToRead[]) => {
    readings ??= readTraces(traces);
    return readings;
  };
  standing = assess(engineInput, { draws: DRAWS, read });
  const sections = caseFile.sections.map((section) =>
    section.id === FELLED_DEMO.sectionId ? { ...section, felled: FELLED_DEMO.felled } : section,
  );
  felled = assess(openCase(saveCase({ ...caseFile, sections }, bag)).engineInput, {
    draws: DRAWS,
    read,
  });
}, 60_000);

describe('the demonstration, felled', () => {
  it('was traced as the plan of decay has it', () => {
    const [ring] = FELLED_DEMO.felled.incipient;
    ring!.forEach(([x, y], i) => {
      const [nextX, nextY] = ring![(i + 1) % ring!.length]!;
      const middle = [(x + nextX) / 2, (y + nextY) / 2] as const;
      // Just inside and well outside the tracing, on the line to the middle of the decay.
      const at = (share: number) =>
        kindAt(-200 + (middle[0] + 200) * share, -190 + (middle[1] + 190) * share, SECTION_HEIGHT_MM);
      expect(at(0.93)).not.toBe('sound');
      expect(at(1.1)).toBe('sound');
    });
  });

  it('changes nothing of the prediction', () => {
    const { felled: judged, ...section } = felled.sections[0]!;
    expect(judged).toBeDefined();
    expect({ ...felled, sections: [section] }).toEqual(standing);
  });

  it('holds the truth in the weakest direction, and the walls to some millimetres', () => {
    const judged = felled.sections[0]!.felled!;
    expect(judged.weakest.inside).toBe(true);
    expect(judged.weakestInTruth.inside).toBe(true);
    expect(judged.soundShare.inside).toBe(true);
    expect(judged.wallsTo).toBe('first loss');
    const edges = judged.walls.filter(({ finding }) => finding === 'edge');
    expect(edges.length).toBeGreaterThanOrEqual(3);
    for (const { errorMm } of edges) expect(Math.abs(errorMm!)).toBeLessThan(WALL_MM);
    expect(judged.walls.filter(({ finding }) => finding === 'missed' || finding === 'false alarm')).toEqual(
      [],
    );
  });

  it('begins anew where nothing was drilled', async () => {
    const { caseFile } = openCase(await demoBag());
    const bare = {
      ...caseFile,
      sections: caseFile.sections.map((section) => ({ ...section, drillings: [] })),
      flares: caseFile.flares.map((flare) => ({ ...flare, drillings: [] })),
    };
    const assessed = assess(openCase(saveCase(bare, await demoBag())).engineInput, { draws: DRAWS });
    const [plan] = assessed.firstDrillings!;
    expect(plan!.drillings.filter(({ at }) => at === 'section')).toHaveLength(6);
    expect(plan!.drillings.filter(({ at }) => at === 'flare')).toHaveLength(4);
    // The brackets and the seam stand to the south-west: begin on the other side, end there.
    expect(plan!.drillings[0]!.azimuthDeg).toBeLessThan(130);
    expect(plan!.drillings.at(-1)).toMatchObject({ at: 'flare', placeId: 'f3' });
    expect(assessed.nextDrilling).toMatchObject({
      sectionId: 's1',
      azimuthDeg: plan!.drillings[0]!.azimuthDeg,
      why: expect.stringMatching(/has not been drilled/),
    });
    expect(
      assessed.notices.some(({ severity, text }) => severity === 'serious' && /No drilling/.test(text)),
    ).toBe(true);
    // Judgement stands beside its rule; published sources also in the list of all.
    const published = plan!.rules.filter(({ source }) => /[12]\d{3}/.test(source));
    expect(published.length).toBeGreaterThan(2);
    for (const { source } of published) expect(assessed.sources).toContain(source);
    for (const { p05, p95 } of assessed.sections[0]!.remaining) expect(p95 - p05).toBeGreaterThan(0.2);
    expect(standing.firstDrillings).toBeUndefined();
  });
});
