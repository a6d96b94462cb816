/** The prediction held against the section as it was seen after felling. */
import type { FelledAssessment, SectionAssessment } from '@standfast/engine';
import { sectionFigure } from '../../figures/plan/section.ts';
import { bearing, measure } from '../../units.ts';
import type { Block } from '../blocks.ts';
import { type Context, percent, shareRange } from '../context.ts';
import { figure, heading, table } from '../make.ts';

type Felled = SectionAssessment & { felled: FelledAssessment };

/** Nothing when no section was seen after felling. */
export function felled(context: Context): Block[] {
  const { a, w } = context;
  const sections = a.sections.filter((section): section is Felled => section.felled !== undefined);
  if (sections.length === 0) return [];
  return [
    heading(1, w.felled.heading, 'felled'),
    { kind: 'paragraph', text: w.felled.intro },
    ...sections.flatMap((section) => oneSection(context, section)),
  ];
}

function oneSection({ w, units, figureWidth }: Context, section: Felled): Block[] {
  const { felled: f, id } = section;
  const { weakest, weakestInTruth } = f;
  const word = ({ inside }: { inside: boolean }) => (inside ? w.felled.inside : w.felled.outside);
  const blocks: Block[] = [
    figure(
      sectionFigure({ section, felled: f }, { units, width: figureWidth * 0.7 }),
      w.felled.caption(id),
      `felled-${id}`,
    ),
    {
      kind: 'callout',
      severity: weakest.inside && weakestInTruth.inside ? 'note' : 'serious',
      title: w.felled.verdict(id),
      text: [
        w.felled.weakest(
          bearing(weakest.directionDeg),
          shareRange(weakest),
          percent(weakest.truth),
          word(weakest),
        ),
        w.felled.weakestInTruth(
          bearing(weakestInTruth.directionDeg),
          percent(weakestInTruth.truth),
          shareRange(weakestInTruth),
          word(weakestInTruth),
        ),
        w.felled.directions(percent(f.insideShare)),
        w.felled.soundShare(percent(f.soundShare.truth), shareRange(f.soundShare), word(f.soundShare)),
      ].join(' '),
    },
    table(
      w.felled.table(id),
      w.felled.columns,
      [0.26, 0.34, 0.2, 0.2],
      f.remaining
        .filter(({ directionDeg }) => directionDeg % 30 === 0)
        .map((one) => [bearing(one.directionDeg), shareRange(one), percent(one.truth), word(one)]),
    ),
  ];
  if (f.walls.length > 0) {
    const mm = (value: number) => measure(value, 'lengthMm', units);
    const wall = (value: number, atLeast: boolean) =>
      `${atLeast ? `${w.drillings.atLeast} ` : ''}${mm(value)}`;
    blocks.push(
      table(
        w.felled.wallTable(id, w.felled.wallsTo[f.wallsTo]),
        w.felled.wallColumns,
        [0.14, 0.22, 0.22, 0.16, 0.26],
        f.walls.map((one) => [
          one.drillingId,
          wall(one.readMm, one.readAtLeast),
          wall(one.trueMm, one.trueAtLeast),
          one.errorMm === null ? '–' : mm(one.errorMm),
          w.felled.findings[one.finding],
        ]),
      ),
    );
  }
  const said = [
    f.incipientStrength === null ? '' : w.felled.incipient(percent(f.incipientStrength)),
    f.source === '' ? '' : w.felled.source(f.source),
    f.note,
    ...f.warnings,
  ].filter((text) => text !== '');
  if (said.length > 0) blocks.push({ kind: 'paragraph', text: said.join(' '), tone: 'small' });
  return blocks;
}
