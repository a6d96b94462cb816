/** The chain from wind to safety worked by hand, with this tree's middle values put in and each equation's source. */
import type { Assessment, SourcedValue } from '@standfast/engine';
import { bearing, fixed, measure, type Quantity, span } from '../../units.ts';
import { language } from '../../words/spoken.ts';
import type { Block } from '../blocks.ts';
import { type Context, least, percent, probability, shareRange, significant, withRange } from '../context.ts';
import { heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { weakest } from './opening.ts';

/** Half the density of air as the wind codes put it, Pa s²/m². */
const HALF_DENSITY = { eurocode: 0.625, asce: 0.613 };
/** Moment over section modulus is a stress in Pa; strengths are printed in MPa. */
const PA_PER_MPA = 1e6;

type Row = [step: string, equation: string, numbers: string, source: string];

export function worked(context: Context): Block[] {
  const { a, w } = context;
  const { governing } = a.safety;
  return [
    heading(1, w.worked.heading, 'worked'),
    { kind: 'paragraph', text: w.worked.intro },
    table(
      w.worked.table(w.modes[governing.mode], bearing(governing.directionDeg)),
      w.worked.columns,
      [0.2, 0.2, 0.4, 0.2],
      [...loadRows(context), ...stemRows(context), ...rootRows(context), ...lastRows(context)],
    ),
    heading(2, w.worked.others, 'equations'),
    { kind: 'list', items: [...w.worked.equations] },
  ];
}

/** Values whose names, as the engine has them, begin so; in the report's language. */
function allNamed(
  { a, computed }: Context,
  list: (of: Assessment) => readonly SourcedValue[],
  begin: RegExp,
) {
  const names = list(computed);
  return list(a).filter((_, i) => begin.test(names[i]!.name));
}

const named = (...wanted: Parameters<typeof allNamed>): SourcedValue | undefined => allNamed(...wanted)[0];

/** An equation with the language's decimal mark. */
const equation = (text: string) => text.replace(/(\d)\.(\d)/g, `$1${language().numbers.decimalMark}$2`);

/** The wind's and the weight's moment at the ground, added as vectors towards a direction, N·m. */
function together({ a, c }: Context, directionDeg: number): number {
  const [wind, weight] = [a.wind.windMomentNm, a.wind.selfWeightMomentNm];
  const between = ((directionDeg - (c.tree.leanTowardDeg ?? 0)) * Math.PI) / 180;
  return Math.sqrt(wind ** 2 + weight ** 2 + 2 * wind * weight * Math.cos(between));
}

function loadRows(context: Context): Row[] {
  const { a, c, w, units } = context;
  const { wind } = a;
  const say = (value: number, quantity: Quantity) => measure(value, quantity, units);
  const asce = wind.windCode.startsWith('ASCE');
  const half = asce ? HALF_DENSITY.asce : HALF_DENSITY.eurocode;
  const code = asce ? w.worked.sources.asce(wind.windCode) : w.worked.sources.eurocode;
  const rows: Row[] = [
    [
      w.worked.pressure,
      asce ? equation('q = 0.613 K_z K_zt K_d K_e V² = 0.613 v²') : 'q_p = (1 + 7 I_v) ½ ρ v_m² = ½ ρ v²',
      `z = ${say(wind.centreOfPressureM, 'heightM')}, v = ${metric(wind.gustMs, 'm/s', 1)}: ${fixed(half, 3)} · ${fixed(wind.gustMs, 1)}² = ${fixed(half * wind.gustMs ** 2, 0)} Pa${inUs(half * wind.gustMs ** 2, 'pressurePa', context)}`,
      code,
    ],
  ];
  const drag = named(context, (of) => of.wind.values, /^drag coefficient of the crown/);
  const strip = wind.strips.find(
    ({ fromM, toM }) => fromM <= wind.centreOfPressureM && wind.centreOfPressureM < toM,
  );
  if (drag && strip) {
    const middle = (strip.fromM + strip.toM) / 2;
    const moment = strip.pressurePa * drag.value * strip.widthM * (strip.toM - strip.fromM) * middle;
    rows.push([
      w.worked.strip,
      'ΔM = q C_d w Δz z',
      `${fixed(strip.pressurePa, 0)} Pa · ${significant(drag.value)} · ${fixed(strip.widthM, 2)} m · ${fixed(strip.toM - strip.fromM, 3)} m · ${fixed(middle, 2)} m = ${fixed(moment / 1000, 1)} kN·m${inUs(moment, 'momentNm', context)}`,
      drag.source,
    ]);
  }
  rows.push([
    w.worked.wind,
    'M_w = Σ q C_d w Δz z',
    w.worked.strips(wind.strips.length, say(wind.windMomentNm, 'momentNm')),
    w.worked.sources.statics,
  ]);
  rows.push([
    w.worked.weight,
    'M_g = Σ m g z tan δ',
    c.tree.leanDeg
      ? `δ = ${fixed(c.tree.leanDeg, 0)}° → ${bearing(c.tree.leanTowardDeg ?? 0)}: ${say(wind.selfWeightMomentNm, 'momentNm')}`
      : w.worked.noLean,
    w.worked.sources.statics,
  ]);
  const { directionDeg } = a.safety.governing;
  const there = wind.byDirection.find((one) => one.directionDeg === directionDeg);
  rows.push([
    w.worked.together,
    'M(θ) = |M_w u(θ) + M_g u_lean|',
    joined(
      `θ = ${bearing(directionDeg)}: ${say(together(context, directionDeg), 'momentNm')}`,
      there && w.worked.ofDraws(say(there.p50, 'momentNm'), span(there.p05, there.p95, 'momentNm', units)),
    ),
    w.worked.sources.statics,
  ]);
  return rows;
}

/** Modulus, stress, strength and safety at the section and in the direction where breakage is least. */
function stemRows(context: Context): Row[] {
  const { a, w, units } = context;
  const section =
    a.sections.find(({ id }) => id === a.safety.governing.sectionId) ?? weakest(context)?.section;
  const at = least(a.safety.breakage);
  const strength = named(context, (of) => of.safety.values, /^strength of the stem at first crushing/);
  if (!section || !at) return [];
  const here = ({ directionDeg }: { directionDeg: number }) => directionDeg === at.directionDeg;
  const intact = section.intactModulusByDirectionM3.find(here)?.value;
  const share = section.remaining.find(here);
  const moment = a.wind.atSections.find(({ sectionId }) => sectionId === section.id)?.byDirection.find(here);
  if (intact === undefined || !share || !moment) return [];
  const left = intact * share.p50;
  const stress = moment.p50 / left / PA_PER_MPA;
  const rows: Row[] = [
    [
      w.worked.modulus(section.id),
      'W(θ) = R(θ) W₀(θ)',
      `θ = ${bearing(at.directionDeg)}: ${shareRange(share)} · ${measure(intact, 'modulusM3', units)} = ${measure(left, 'modulusM3', units)}`,
      w.worked.sources.bending,
    ],
    [
      w.worked.stress(section.id),
      'σ = M_s / W',
      `${fixed(moment.p50 / 1000, 1)} kN·m / ${fixed(left, 4)} m³ = ${fixed(stress, 2)} MPa`,
      w.worked.sources.bending,
    ],
  ];
  if (strength) {
    const clear = named(context, (of) => of.wood.values, /^green compression strength/);
    const stem = named(context, (of) => of.safety.values, /^strength of a stem with knots/);
    rows.push([
      w.worked.strength,
      'f = k f_c',
      clear && stem
        ? `${significant(stem.value)} · ${significant(clear.value)} MPa = ${significant(stem.value * clear.value)} MPa${spread(strength)}`
        : `${significant(strength.value)} MPa${spread(strength)}`,
      clear?.source ?? strength.source,
    ]);
    rows.push([
      w.worked.breakage,
      'S = f / σ',
      joined(
        `${significant(strength.value)} / ${fixed(stress, 2)} = ${fixed(strength.value / stress, 2)}`,
        w.worked.ofDraws(fixed(at.p50, 2), `${fixed(at.p05, 2)} – ${fixed(at.p95, 2)}`),
      ),
      w.worked.sources.statics,
    ]);
  }
  return rows;
}

function rootRows(context: Context): Row[] {
  const { a, w, units } = context;
  const at = least(a.safety.uprooting);
  const moment = at && a.wind.byDirection.find(({ directionDeg }) => directionDeg === at.directionDeg);
  if (!at || !moment) return [];
  const relations = allNamed(context, (of) => of.safety.values, /^uprooting moment/).filter(
    ({ unit }) => unit === 'N·m',
  );
  return [
    [
      w.worked.anchorage,
      equation('M_a = C d² H; M_a = σ π d³ / 32; M_a = 2.5 M(0.25°)'),
      joined(
        relations.length === 0
          ? undefined
          : `${w.worked.relations(relations.length)}: ${relations.map(({ value }) => measure(value, 'momentNm', units)).join(', ')}`,
        w.worked.reduced(measure(at.p50 * moment.p50, 'momentNm', units)),
      ),
      [...new Set(relations.map(({ source }) => source.split(';')[0]!))].join('; ') ||
        textInUnits(a.safety.anchorageBasis, units),
    ],
    [
      w.worked.uprooting,
      'S = M_a / M(θ)',
      `θ = ${bearing(at.directionDeg)}: ${measure(at.p50 * moment.p50, 'momentNm', units)} / ${measure(moment.p50, 'momentNm', units)} = ${withRange(at, 2)}`,
      w.worked.sources.statics,
    ],
  ];
}

function lastRows(context: Context): Row[] {
  const { a, w, units } = context;
  const { mode } = a.safety.governing;
  const gust = a.safety.criticalGustMs[mode];
  const { chance, timeFrameYears, yearlyGustMs, fiftyYearGustMs } = a.decision;
  return [
    [
      w.worked.critical,
      'v_c = V √λ, |λ M_w u + M_g u_lean| = M_R',
      `${w.modes[mode]}: ${measure(gust.p50, 'speedMs', units)} (${span(gust.p05, gust.p95, 'speedMs', units)})`,
      w.worked.sources.statics,
    ],
    [
      w.worked.chance(w.decision.years(timeFrameYears)),
      'p_n = 1 − exp(−n λ(v_c)), λ(v) = exp((U − v) / A)',
      joined(
        w.worked.gusts(measure(yearlyGustMs, 'speedMs', units), measure(fiftyYearGustMs, 'speedMs', units)),
        `${probability(chance.inTimeFrame.mean)} (${probability(chance.inTimeFrame.p05)} – ${probability(chance.inTimeFrame.p95)})`,
      ),
      w.worked.sources.gusts,
    ],
  ];
}

/** The equations are worked in SI, so that each can be followed; the result is given in the reader's units too. */
function inUs(value: number, quantity: Quantity, { units }: Context): string {
  return units === 'us' ? ` (${measure(value, quantity, units)})` : '';
}

const metric = (value: number, unit: string, decimals: number) => `${fixed(value, decimals)}\u00a0${unit}`;

const spread = ({ cov }: SourcedValue) => (cov === undefined ? '' : ` (±\u00a0${percent(cov)})`);

const joined = (...parts: (string | undefined | null)[]) =>
  parts.filter((part) => part !== undefined && part !== null && part !== '').join('; ');
