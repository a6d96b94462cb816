/** Section figures, safety by direction, critical gusts and the trade's rules. */
import { criteriaFigure } from '../../figures/criteria.ts';
import { sectionFigure } from '../../figures/plan/section.ts';
import { remainingRose } from '../../figures/rose/rose.ts';
import { safetyGauge } from '../../figures/safetyGauge.ts';
import { sectionWithRoseFigure } from '../../figures/sectionWithRose.ts';
import { bearing, measure, span } from '../../units.ts';
import { said } from '../../words/said.ts';
import type { Block } from '../blocks.ts';
import { type Context, shareRange, significant, withRange } from '../context.ts';
import { figure, floating, heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { weakest } from './opening.ts';

export function overview(context: Context): Block[] {
  const { a, w, units, figureWidth } = context;
  if (a.sections.length === 0) return [];
  const governing =
    a.sections.find((s) => s.id === a.safety.governing.sectionId) ??
    weakest(context)?.section ??
    a.sections[0]!;
  const shared = { units, width: figureWidth };
  const flares = a.flares;
  const blocks: Block[] = [
    heading(1, w.overview.heading, 'overview'),
    floating(
      sectionWithRoseFigure(
        { section: governing, flares, next: a.nextDrilling, safety: a.safety },
        { ...shared, width: figureWidth * 0.82 },
      ),
      w.overview.caption(governing.id, measure(governing.heightM, 'heightM', units)),
      `overview-${governing.id}`,
    ),
    byDirection(context),
  ];
  for (const section of a.sections) {
    blocks.push(
      figure(
        remainingRose(section, { ...shared, width: figureWidth * 0.45 }),
        w.overview.remainingCaption(section.id),
        `remaining-${section.id}`,
      ),
      figure(
        sectionFigure({ section, flares, next: a.nextDrilling }, { ...shared, width: figureWidth * 0.7 }),
        w.overview.sectionCaption(section.id, measure(section.heightM, 'heightM', units)),
        `section-${section.id}`,
      ),
    );
  }
  return blocks;
}

/** Strength and safety side by side, every 30 degrees. */
function byDirection(context: Context): Block {
  const { a, w } = context;
  const s = a.safety;
  const strengthAt = new Map(weakest(context)?.section.remaining.map((r) => [r.directionDeg, r]) ?? []);
  const uprootingAt = new Map(s.uprooting.map((r) => [r.directionDeg, r]));
  const strengthOf = weakest(context)?.section.id ?? '';
  return table(
    w.safety.table,
    w.safety.columns(strengthOf),
    [0.22, 0.26, 0.26, 0.26],
    s.breakage
      .filter((b) => b.directionDeg % 30 === 0)
      .map((b) => {
        const strength = strengthAt.get(b.directionDeg);
        const uprooting = uprootingAt.get(b.directionDeg);
        return [
          bearing(b.directionDeg),
          strength ? shareRange(strength) : '–',
          withRange(b, 2),
          uprooting ? withRange(uprooting, 2) : '–',
        ];
      }),
  );
}

export function safety(context: Context): Block[] {
  const { a, w, units, figureWidth } = context;
  const s = a.safety;
  const gust = (mode: 'breakage' | 'uprooting') => {
    const i = s.criticalGustMs[mode];
    return [w.modes[mode], measure(i.p50, 'speedMs', units), span(i.p05, i.p95, 'speedMs', units)];
  };
  return [
    heading(1, w.safety.heading, 'safety'),
    { kind: 'paragraph', text: w.safety.intro },
    figure(safetyGauge(s, { units, width: figureWidth }), w.safety.gaugeCaption, 'safety-gauge'),
    table(w.safety.gustTable, w.safety.gustColumns, [0.4, 0.25, 0.35], [gust('breakage'), gust('uprooting')]),
    { kind: 'paragraph', text: w.safety.gustNote, tone: 'small' },
  ];
}

export function criteria({ a, w, units, figureWidth }: Context): Block[] {
  const withRules = a.sections.filter((s) => s.criteria.length > 0);
  if (withRules.length === 0) return [];
  return [
    heading(1, w.criteria.heading, 'criteria'),
    { kind: 'paragraph', text: w.criteria.intro },
    ...withRules.flatMap((s): Block[] => [
      floating(
        criteriaFigure(s.criteria, { units, width: figureWidth }),
        w.criteria.caption(s.id),
        `criteria-${s.id}`,
      ),
      table(
        w.criteria.table(s.id),
        w.criteria.columns,
        [0.25, 0.17, 0.09, 0.09, 0.1, 0.3],
        s.criteria.map((c) => [
          `${c.name} (${c.source})`,
          said(c.quantity),
          c.value === null ? '–' : significant(c.value),
          significant(c.limit),
          c.met === null ? w.criteria.none : c.met ? w.criteria.yes : w.criteria.no,
          textInUnits(c.note, units),
        ]),
      ),
    ]),
  ];
}
