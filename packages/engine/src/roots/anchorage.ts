/**
 * The moment at the ground that would uproot the tree, by direction of fall, with its scatter.
 *
 * From size: each draw lies somewhere between the lowest and the highest of the relations that apply (anchorage.csv),
 * evenly in the logarithm, times a lognormal factor with the residual scatter of Detter, Rust and Krisans 2023 about a
 * relation by size. On poor soil less; on unknown soil anything between. Unsound flares and cut roots take from it by
 * direction. A static load test, where there is one, replaces all that within 45 degrees of its direction: 2.5 times the
 * moment at 0.25 degrees (same study). A test at another tilt between 0.1 and 0.5 degrees is brought to 0.25 along
 * M proportional to tilt^n, with n anywhere from 0.4 (the mean slope of the curve up to its peak) to 1 (linear).
 */
import type { Notice, SourcedValue } from '../assessment.ts';
import type { Soil, StaticTestInput, TreeInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import type { Random } from '../random.ts';
import { constant, sourced, statusNote, woodFor } from '../reference/index.ts';
import { type AnchorageRow, anchorage } from '../reference/tables.generated.ts';
import { stratifiedNormals, stratifiedUniforms } from '../wind/sampling.ts';
import { DIRECTIONS } from '../wind/types.ts';
import { cutLoss } from './cuts.ts';
import { flareEffect } from './flares.ts';
import { readRootSigns } from './signs.ts';
import { type AnchorageDraws, type AnchorageInput, SOILS } from './types.ts';

/** A static load test speaks for directions this far to either side of its own, degrees. */
const TEST_REACH_DEG = 45;

/** One relation evaluated for a tree. */
export interface SizeEstimate {
  row: Readonly<AnchorageRow>;
  momentNm: number;
}

/** Every relation that applies to the tree, evaluated: intact root plate, free-draining soil. */
export function sizeEstimates(tree: TreeInput, genus: string | null): SizeEstimate[] {
  const d = tree.stemDiameterMm / 1000;
  const stemMassKg =
    constant('anchorage stem form factor').value *
    (Math.PI / 4) *
    d *
    d *
    tree.heightM *
    constant('anchorage stem density').value;
  return anchorage
    .filter((row) => row.genus === '' || row.genus === genus)
    .map((row) => {
      switch (row.form) {
        case 'size':
          return { row, momentNm: row.value * 1e3 * d * d * tree.heightM };
        case 'stress':
          return { row, momentNm: (row.value * 1e6 * Math.PI * d ** 3) / 32 };
        case 'mass':
          return { row, momentNm: row.value * stemMassKg };
        default:
          throw new Error(`anchorage.csv: no form "${row.form}"`);
      }
    });
}

function checkInput(input: AnchorageInput): void {
  const soil = input.soil ?? 'unknown';
  if (!SOILS.includes(soil)) {
    throw new InputFault(
      `"${String(soil)}" is no soil known here; use one of ${SOILS.join(', ')}.`,
      'site.soil',
    );
  }
  const testTilt = constant('anchorage test tilt').value;
  const least = constant('anchorage test least tilt').value;
  const most = constant('anchorage test most tilt').value;
  for (const [i, test] of (input.staticTests ?? []).entries()) {
    if (!(test.momentNm > 0) || !Number.isFinite(test.momentNm) || !Number.isFinite(test.directionDeg)) {
      throw new InputFault(
        'A static load test needs a direction and a moment above zero, N·m.',
        `staticTests[${i}]`,
      );
    }
    if (!(test.tiltDeg >= least && test.tiltDeg <= most)) {
      throw new InputFault(
        `The relation for a static load test holds at a tilt of ${testTilt} degrees and can be brought there from ${least} to ${most} degrees, not from ${test.tiltDeg}; give the moment at ${testTilt} degrees.`,
        `staticTests[${i}].tiltDeg`,
      );
    }
  }
  for (const [i, flare] of input.flares.entries()) {
    if (!(flare.widthMm > 0 && flare.heightMm > 0)) {
      throw new InputFault('A root flare needs a width and a height above zero, mm.', `flares[${i}]`);
    }
  }
}

/** The test that speaks for a direction: the nearest within reach. */
function testFor(tests: readonly StaticTestInput[], directionDeg: number): StaticTestInput | null {
  let best: StaticTestInput | null = null;
  let nearest = TEST_REACH_DEG + 1e-9;
  for (const test of tests) {
    const apart = Math.abs(((((test.directionDeg - directionDeg) % 360) + 540) % 360) - 180);
    if (apart < nearest) {
      nearest = apart;
      best = test;
    }
  }
  return best;
}

/** Per draw, the factor of the soil. */
function soilFactors(soil: Soil, random: Random, draws: number): Float64Array {
  const poor = constant('anchorage poor soil').value;
  switch (soil) {
    case 'free-draining':
      return new Float64Array(draws).fill(1);
    case 'poor':
      return new Float64Array(draws).fill(poor);
    case 'unknown':
      return stratifiedUniforms(random, draws).map((u) => poor + (1 - poor) * u);
  }
}

function kilo(momentNm: number): string {
  return (momentNm / 1000).toFixed(0);
}

/**
 * Draws of the uprooting moment by direction.
 * @throws InputFault for a soil, flare or static load test that cannot be.
 */
export function anchorageDraws(input: AnchorageInput, random: Random, draws: number): AnchorageDraws {
  checkInput(input);
  const { tree, flares } = input;
  const soil = input.soil ?? 'unknown';
  const tests = input.staticTests ?? [];
  const estimates = sizeEstimates(tree, woodFor(tree.species).genus);
  const logs = estimates.map((estimate) => Math.log(estimate.momentNm));
  const lowest = Math.min(...logs);
  const highest = Math.max(...logs);
  const between = stratifiedUniforms(random.fork('anchorage relation'), draws);
  const scatter = stratifiedNormals(random.fork('anchorage scatter'), draws);
  const soils = soilFactors(soil, random.fork('soil'), draws);
  const sizeSd = constant('anchorage size scatter').value;
  const testSd = constant('anchorage test scatter').value;
  const testRatio = constant('anchorage test ratio').value;
  const testTilt = constant('anchorage test tilt').value;
  const curveLow = constant('anchorage test curve low').value;
  const curveHigh = constant('anchorage test curve high').value;
  const curve = stratifiedUniforms(random.fork('anchorage test curve'), draws);
  const cuts = cutLoss(
    input.rootCuts ?? [],
    input.rootSpace ?? [],
    tree.stemDiameterMm,
    random.fork('cuts'),
    draws,
  );
  const effect = flareEffect(flares, random.fork('flares'), draws, cuts);
  const testAt = Array.from({ length: DIRECTIONS }, (_, d) => testFor(tests, (d * 360) / DIRECTIONS));
  const momentNm = new Float64Array(draws * DIRECTIONS);
  for (let i = 0; i < draws; i++) {
    const bySize = Math.exp(lowest + (highest - lowest) * between[i]! + sizeSd * scatter[i]!) * soils[i]!;
    const testFactor = testRatio * Math.exp(testSd * scatter[i]!);
    const bend = curveLow + (curveHigh - curveLow) * curve[i]!;
    for (let d = 0; d < DIRECTIONS; d++) {
      const at = i * DIRECTIONS + d;
      const test = testAt[d];
      // A test measured the roots and the soil as they are: neither is taken off again.
      momentNm[at] = test
        ? test.momentNm * testFactor * (test.tiltDeg === testTilt ? 1 : (testTilt / test.tiltDeg) ** bend)
        : bySize * effect.remaining[at]!;
    }
  }
  const answered = new Set([
    ...(input.rootCuts?.length ? ['rootCuts'] : []),
    ...(input.rootSpace?.length ? ['rootSpace'] : []),
  ]);
  const signs = readRootSigns(input.signs, answered);
  const drilled = flares.filter((flare) => flare.soundShare !== null).length;
  const notices: Notice[] = [...signs.notices];
  const doubts = tests.length > 0 ? [] : [...signs.doubts];
  if (flares.length > 0 && drilled < flares.length && drilled > 0) {
    notices.push({
      severity: 'note',
      where: 'flares',
      text: `${flares.length - drilled} of ${flares.length} root flares were not drilled; they are taken as the drilled ones are on average.`,
    });
  }
  if (drilled === 0) {
    notices.push({
      severity: 'caution',
      where: 'flares',
      text: 'No root flare was drilled: the anchorage is estimated as of sound roots, from the size of the tree alone.',
    });
  }
  notices.push(...sideNotices(input, cuts.withinReach));
  if (input.rootSpace?.length && tests.length === 0) doubts.push('roots restricted on one side or more');
  const lost = effect.greatestLoss;
  const percent = Math.round(lost * 100);
  const what = cuts.lost ? 'roots' : "flares' cross-section";
  const how = cuts.lost ? 'cut or unsound' : 'unsound';
  if (lost > constant('root loss measured').value) {
    if (tests.length === 0) doubts.push(`${percent} % of the ${what} ${how} in the worst direction`);
    notices.push({
      severity: 'serious',
      where: cuts.lost ? 'rootCuts' : 'flares',
      text: `About ${percent} % of the ${what} is ${how} in the worst direction; experiments with cut roots went to 50 %, so the loss of anchorage has no measured basis here.`,
    });
  } else if (lost >= constant('root loss action').value) {
    notices.push({
      severity: 'caution',
      where: cuts.lost ? 'rootCuts' : 'flares',
      text: `About ${percent} % of the ${what} is ${how} in the worst direction; from a third up the trade calls for action. Source: ${sourced('root loss action').source}.`,
    });
  }
  return {
    draws,
    momentNm,
    remaining: effect.remaining,
    restsOn: tests.length > 0 ? 'static load test' : drilled > 0 ? 'size and flares' : 'size',
    tested: testAt.map((test) => test !== null),
    basis: basisOf(input, estimates, drilled, cuts.withinReach),
    doubts,
    values: valuesUsed(estimates, soil, drilled > 0, cuts.lost !== null, tests),
    notices,
  };
}

/** What is said of cuts, barriers, lean and tests away from 0.25 degrees. */
function sideNotices(input: AnchorageInput, withinReach: number): Notice[] {
  const { tree } = input;
  const notices: Notice[] = [];
  const cuts = (input.rootCuts?.length ?? 0) + (input.rootSpace?.length ?? 0);
  const reachM = (constant('root cut reach').value * tree.stemDiameterMm) / 1000;
  if (cuts > 0) {
    notices.push({
      severity: withinReach > 0 ? 'caution' : 'note',
      where: input.rootCuts?.length ? 'rootCuts' : 'rootSpace',
      text:
        withinReach > 0
          ? `${withinReach} of ${cuts} cuts or barriers lie within ${reachM.toFixed(1)} m of the stem (three stem diameters), where cutting lowered the force to pull trees over (Smiley 2008). The loss counted here rests on young willow oaks and red maples; its fall with distance is a proposal of this project.`
          : `All cuts and barriers lie beyond ${reachM.toFixed(1)} m (three stem diameters), where no loss of force was measured (Smiley 2008); none is counted. Fine roots and the tree's health are another matter.`,
    });
  }
  if (tree.leanDeg >= constant('lean spoken of').value) {
    notices.push({
      severity: 'note',
      where: 'tree.leanDeg',
      text: `The tree leans by ${tree.leanDeg} degrees. The relations for anchorage stem from upright trees; a tree that grew into its lean has stronger roots against it, one that moved has weaker ones. Only a static load test tells.`,
    });
  }
  const testTilt = constant('anchorage test tilt').value;
  for (const [i, test] of (input.staticTests ?? []).entries()) {
    if (Math.abs(test.tiltDeg - testTilt) < 0.01) continue;
    notices.push({
      severity: 'note',
      where: `staticTests[${i}]`,
      text: `The test reached ${test.tiltDeg} degrees; it is brought to ${testTilt} degrees between a constant stiffness and the mean slope of the tilting curve, which widens the interval.`,
    });
  }
  return notices;
}

function basisOf(
  input: AnchorageInput,
  estimates: readonly SizeEstimate[],
  drilled: number,
  cuts: number,
): string {
  const moments = estimates.map((estimate) => estimate.momentNm);
  const span = `${kilo(Math.min(...moments))} to ${kilo(Math.max(...moments))} kN·m by ${moments.length} relations with stem diameter and height`;
  const losses = [
    ...(drilled > 0 ? [`what drilling found in ${drilled} root flare${drilled === 1 ? '' : 's'}`] : []),
    ...(cuts > 0 ? [`roots cut or kept short on ${cuts === 1 ? 'one side' : `${cuts} sides`}`] : []),
  ];
  const flares = losses.length > 0 ? `, reduced by ${losses.join(' and ')}` : '';
  const tests = input.staticTests?.length ?? 0;
  if (tests > 0) {
    return `Static load test in ${tests} direction${tests === 1 ? '' : 's'}; elsewhere the size of the tree: ${span}${flares}.`;
  }
  return `Size of the tree alone: ${span}${flares}; no measurement of the anchorage itself.`;
}

function valuesUsed(
  estimates: readonly SizeEstimate[],
  soil: Soil,
  drilled: boolean,
  cut: boolean,
  tests: readonly StaticTestInput[],
): SourcedValue[] {
  return [
    ...estimates.map(({ row, momentNm }) => ({
      name: `uprooting moment ${row.relation} (${row.value} ${row.unit}), roots intact, free-draining soil`,
      value: Math.round(momentNm),
      unit: 'N·m',
      cov: constant('anchorage size scatter').value,
      source: `${row.source}${statusNote(row.status)}; ${row.validity}`,
    })),
    sourced('anchorage size scatter'),
    ...(soil === 'free-draining' ? [] : [sourced('anchorage poor soil')]),
    ...(cut ? [sourced('root cut reach'), sourced('root depth')] : []),
    ...(drilled || cut
      ? [sourced('anchorage tension share'), sourced('root loss slope mild'), sourced('root loss slope')]
      : []),
    ...(tests.length > 0 ? [sourced('anchorage test ratio'), sourced('anchorage test scatter')] : []),
  ];
}
