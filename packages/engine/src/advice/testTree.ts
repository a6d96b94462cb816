/** A tree assessed from given strengths, for the tests of decision and advice: no traces are read. */
import type { CaseInput, SiteInput, TreeInput } from '../case.ts';
import { decide, safety } from '../decision/index.ts';
import { randomFrom } from '../random.ts';
import { woodFor } from '../reference/index.ts';
import { anchorageDraws } from '../roots/index.ts';
import { demandDraws, windDemand } from '../wind/index.ts';
import { stratifiedUniforms } from '../wind/sampling.ts';
import type { Loads } from './loads.ts';
import type { Standing } from './pruning.ts';

export const TREE: TreeInput = {
  label: 'T',
  species: 'Acer rubrum',
  stemDiameterMm: 800,
  heightM: 18,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 5, widthM: 12, shape: 'ellipse', inLeaf: true },
};
export const SITE: SiteInput = { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' };

export interface TestTree extends Partial<Omit<CaseInput, 'tree' | 'site'>> {
  tree?: Partial<TreeInput>;
  site?: SiteInput;
  /** Share of the section's strength left, by direction index. */
  left?: (direction: number) => number;
  draws?: number;
}

/** The tree through safety and decision, and what the advice is worked from. */
export function assessedTree(given: TestTree = {}) {
  const draws = given.draws ?? 400;
  const tree = { ...TREE, ...given.tree };
  const site = given.site ?? SITE;
  const signs = given.signs ?? [];
  const random = randomFrom(7);
  const demandInput = { tree, site, sectionHeightsM: [0.5] };
  const demand = windDemand(demandInput);
  const result = safety(
    {
      sections: [
        {
          id: 's1',
          remaining: Float64Array.from({ length: draws * 36 }, (_, k) => given.left?.(k % 36) ?? 1),
          intactModulusMm3: new Float64Array(36).fill((Math.PI * (tree.stemDiameterMm - 30) ** 3) / 32),
        },
      ],
      demand: demandDraws(demandInput, random.fork('demand'), draws, demand),
      anchorage: anchorageDraws(
        {
          tree,
          flares: [],
          signs,
          soil: site.soil,
          staticTests: given.staticTests,
          rootCuts: given.rootCuts,
          rootSpace: given.rootSpace,
        },
        random.fork('anchorage'),
        draws,
      ),
      wood: woodFor(tree.species),
    },
    random.fork('safety'),
  );
  const targets = given.targets ?? [
    { what: 'footpath', occupancy: 'frequent', distanceM: 4, directionDeg: 90 },
  ];
  const decided = decide({
    tree,
    site,
    signs,
    targets,
    decision: given.decision,
    timeFrameYears: given.timeFrameYears,
    safety: result,
  });
  const standing: Standing = { tree, site, sectionHeightsM: [0.5], demand };
  const loads: Loads = {
    drawn: result.drawn,
    safety: result.assessment,
    sectionIds: ['s1'],
    uniforms: stratifiedUniforms(random.fork('pruning'), draws),
  };
  const input: CaseInput = {
    ...given,
    tree,
    site,
    sections: [
      {
        id: 's1',
        heightM: 0.5,
        outline: { kind: 'circle', diameterMm: tree.stemDiameterMm },
        barkMm: 15,
        drillings: [],
      },
    ],
    flares: [],
    signs,
    targets,
  };
  return { input, result, decided, decision: decided.assessment, standing, loads, demand };
}

/** A static load test to every side, strong or weak: the anchorage known. */
export function testedAllRound(momentNm: number) {
  return [0, 90, 180, 270].map((directionDeg) => ({ directionDeg, momentNm, tiltDeg: 0.25 }));
}
