import { describe, expect, it } from 'vitest';
import { parseCase } from '../schema/parseCase.ts';
import type { CaseFile } from '../schema/schema.ts';
import { checkCase } from './checkCase.ts';

function caseWith(change: (json: Draft) => void): CaseFile {
  const json: Draft = {
    format: 'standfast-case',
    version: 1,
    tree: {
      species: 'Tilia cordata',
      stemDiameterMm: 900,
      heightM: 24,
      crown: { baseHeightM: 5, widthM: 16 },
    },
    site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'II' },
    sections: [
      {
        id: 's1',
        heightM: 0.5,
        outline: { kind: 'circle', diameterMm: 990 },
        barkMm: 20,
        drillings: [
          { id: 'd1', azimuthDeg: 0, trace: 'traces/d1.csv' },
          { id: 'd2', azimuthDeg: 90, trace: 'traces/d2.csv' },
        ],
      },
    ],
    flares: [{ id: 'f1', azimuthDeg: 20, widthMm: 300, heightMm: 350, drillings: [] }],
    targets: [{ what: 'path', occupancy: 'frequent', distanceM: 5, directionDeg: 90 }],
  };
  change(json);
  return parseCase(json).caseFile;
}

// biome-ignore lint/suspicious/noExplicitAny: the tests below write into the case at will
type Draft = any;

const faultsOf = (change: (json: Draft) => void) =>
  checkCase(caseWith(change)).faults.map(({ message }) => message);
const noticesOf = (change: (json: Draft) => void) =>
  checkCase(caseWith(change)).notices.map(({ severity, where, text }) => `${severity} ${where}: ${text}`);

describe('checkCase', () => {
  it('finds nothing in a sensible case', () => {
    const { faults, notices } = checkCase(caseWith(() => undefined));
    expect(faults).toEqual([]);
    expect(notices).toEqual([]);
  });

  it.each<[string, (json: Draft) => void, RegExp]>([
    [
      'a stem 90 m thick',
      (c) => (c.tree.stemDiameterMm = 90_000),
      /^case\.json: tree\.stemDiameterMm: is 90000 mm, outside what is possible/,
    ],
    [
      'a tree 300 m high',
      (c) => (c.tree.heightM = 300),
      /tree\.heightM: is 300 m, outside what is possible \(0\.5 to 130 m\): was it measured in feet/,
    ],
    [
      'a crown base above the top',
      (c) => (c.tree.crown.baseHeightM = 30),
      /tree\.crown\.baseHeightM: is 30 m, but the tree is 24 m high/,
    ],
    [
      'an azimuth of 400',
      (c) => (c.sections[0].drillings[0].azimuthDeg = 400),
      /sections\[0\]\.drillings\[0\]\.azimuthDeg: is 400: an azimuth runs from 0 to 360/,
    ],
    [
      'a needle beside the stem',
      (c) => (c.sections[0].drillings[1].offRadialDeg = 95),
      /sections\[0\]\.drillings\[1\]\.offRadialDeg: is 95: a needle 90 degrees or more off the radial does not enter the stem/,
    ],
    [
      'a needle straight down',
      (c) => (c.sections[0].drillings[1].downDeg = 90),
      /sections\[0\]\.drillings\[1\]\.downDeg: is 90/,
    ],
    [
      'two sections of one name',
      (c) => c.sections.push({ ...c.sections[0] }),
      /sections\[1\]\.id: is "s1", which sections\[0\] is called already/,
    ],
    [
      'two drillings of one name',
      (c) => (c.sections[0].drillings[1].id = 'd1'),
      /sections\[0\]\.drillings\[1\]\.id: is "d1", which sections\[0\]\.drillings\[0\] is called already/,
    ],
    ['two flares of one name', (c) => c.flares.push({ ...c.flares[0] }), /flares\[1\]\.id: is "f1"/],
    [
      'a section above the top',
      (c) => (c.sections[0].heightM = 30),
      /sections\[0\]\.heightM: is 30 m, but the tree is 24 m high/,
    ],
    [
      'bark as thick as the stem',
      (c) => (c.sections[0].barkMm = 300),
      /sections\[0\]\.barkMm: is 300 mm on a stem 990 mm across/,
    ],
    [
      'lean without a direction',
      (c) => (c.tree.leanDeg = 8),
      /tree\.leanTowardDeg: is missing while leanDeg is 8/,
    ],
    ['a latitude of 120', (c) => (c.place = { latitude: 120 }), /place\.latitude: is 120/],
    ['a direction of 720', (c) => (c.targets[0].directionDeg = 720), /targets\[0\]\.directionDeg: is 720/],
    [
      'an outline that crosses itself',
      (c) =>
        (c.sections[0].outline = {
          kind: 'polygon',
          points: [
            [-400, -400],
            [400, 400],
            [400, -400],
            [-400, 400],
          ],
        }),
      /^case\.json: sections\[0\]\.outline/,
    ],
    [
      'a short axis above the long',
      (c) => (c.sections[0].outline = { kind: 'ellipse', longMm: 500, shortMm: 900, longAxisDeg: 0 }),
      /sections\[0\]\.outline\.shortMm/,
    ],
    [
      'two radii at one azimuth',
      (c) =>
        (c.sections[0].outline = {
          kind: 'radii',
          radii: [0, 90, 180, 270, 360].map((azimuthDeg) => ({ azimuthDeg, radiusMm: 400 })),
        }),
      /sections\[0\]\.outline\.radii\[4\]/,
    ],
    [
      'a radius at 400 degrees',
      (c) => (c.sections[0].outline = { kind: 'radii', radii: [{ azimuthDeg: 400, radiusMm: 400 }] }),
      /sections\[0\]\.outline\.radii\[0\]\.azimuthDeg: is 400/,
    ],
  ])('refuses %s', (_, change, message) => {
    const faults = faultsOf(change);
    expect(
      faults.some((fault) => message.test(fault)),
      faults.join('\n'),
    ).toBe(true);
  });

  it.each<[string, (json: Draft) => void, RegExp]>([
    [
      'a stem of 9 m',
      (c) => (c.tree.stemDiameterMm = 9000),
      /^caution tree\.stemDiameterMm: is 9000 mm, which is unusual .* written in centimetres or inches, or is it the girth/,
    ],
    [
      'a stem in centimetres',
      (c) => (c.tree.stemDiameterMm = 75),
      /^caution tree\.stemDiameterMm: is 75 mm, which is unusual/,
    ],
    [
      'a gust as mean wind',
      (c) => (c.site.basicWindSpeedMs = 55),
      /^caution site\.basicWindSpeedMs: .* not a gust and not km\/h/,
    ],
    [
      'miles an hour',
      (c) => (c.site = { windCode: 'ASCE 7-22', basicWindSpeedMs: 115, exposure: 'C' }),
      /^caution site\.basicWindSpeedMs: .*115 mph is 51\.4 m\/s/,
    ],
    [
      'a negative azimuth',
      (c) => (c.sections[0].drillings[0].azimuthDeg = -90),
      /^note sections\.s1\.drillings\.d1: an azimuth of -90 degrees is taken as 270/,
    ],
    [
      'one trace for two drillings',
      (c) => (c.sections[0].drillings[1].trace = 'traces/d1.csv'),
      /^serious sections\.s1\.drillings\.d2: reads the same trace as sections\.s1\.drillings\.d1/,
    ],
    [
      'a section far from the stem',
      (c) => (c.sections[0].outline.diameterMm = 99),
      /^caution sections\.s1\.outline: the section is 99 mm across and the stem 900 mm/,
    ],
    [
      'a target out of reach',
      (c) => (c.targets[0].distanceM = 60),
      /^note targets\[0\]: path is 60 m away, beyond the reach/,
    ],
    [
      'an unknown occupancy',
      (c) => (c.targets[0].occupancy = 'busy'),
      /^note targets\[0\]: occupancy "busy" is kept/,
    ],
    [
      'a needle nearly along the bark',
      (c) => (c.sections[0].drillings[0].offRadialDeg = -75),
      /^caution sections\.s1\.drillings\.d1: the needle heads -75 degrees/,
    ],
    ['a year long past', (c) => (c.visitedOn = '1026-05-14'), /^caution visitedOn/],
    [
      'radii far apart',
      (c) =>
        (c.sections[0].outline = {
          kind: 'radii',
          radii: [10, 70, 130, 250, 310].map((azimuthDeg) => ({ azimuthDeg, radiusMm: 480 })),
        }),
      /^caution sections\.s1\.outline: no radius was measured from 130 to 250 degrees/,
    ],
    [
      'a crown wider than twice the height',
      (c) => (c.tree.crown.widthM = 50),
      /^caution tree\.crown\.widthM/,
    ],
  ])('questions %s', (_, change, message) => {
    expect(faultsOf(change)).toEqual([]);
    const notices = noticesOf(change);
    expect(
      notices.some((notice) => message.test(notice)),
      notices.join('\n'),
    ).toBe(true);
  });

  it('allows one name in two sections', () => {
    const upper = { id: 's2', heightM: 1.5, outline: { kind: 'circle', diameterMm: 900 } };
    expect(faultsOf((c) => c.sections.push({ ...upper, drillings: [{ id: 'd1', azimuthDeg: 5 }] }))).toEqual(
      [],
    );
  });
});
