/** Of a drilling that came from a photographed strip: how its chart was set, and how much of it was read. */
import { type StripOrigin, stripOriginIn } from '@standfast/casefile';
import { fixed, measure, roundNumber, span } from '../../units.ts';
import type { Block } from '../blocks.ts';
import { type Context, percent } from '../context.ts';
import { fileOf } from './photos.ts';

/** So many stretches of a kind are told with their depths, the longest; the rest are counted. */
const MOST_TOLD = 8;

/** Facts under the trace; nothing where the drilling’s table is no reading of a strip. */
export function readFromStrip(context: Context, tracePath: string | undefined): Block[] {
  const { files } = context;
  const table = files === null || tracePath === undefined ? undefined : fileOf(files, tracePath);
  const origin = table === undefined ? null : stripOriginIn(table);
  return origin === null ? [] : [{ kind: 'definitions', layout: 'facts', items: facts(context, origin) }];
}

function facts({ w: { drillings }, units }: Context, origin: StripOrigin): { term: string; text: string }[] {
  const words = drillings.strip;
  const { cornersFound: found, depthMm, resistance, shareRead } = origin;
  const corners = origin.cornersPx.map(([x, y]) => `(${fixed(x, 0)};\u00a0${fixed(y, 0)})`).join(' ');
  const depth = (mm: number) => measure(mm, 'lengthMm', units);
  // A stretch shorter than is printed is told by one depth.
  const where = (from: number, to: number) =>
    depth(from) === depth(to) ? depth(from) : span(from, to, 'lengthMm', units);
  const stretches = (list: StripOrigin['leftOutMm'], say: (where: string) => string) => {
    if (list.length === 0) return '';
    const longestFirst = [...list].sort((a, b) => b[1] - b[0] - (a[1] - a[0]));
    const told = longestFirst.slice(0, MOST_TOLD).sort((a, b) => a[0] - b[0]);
    const others = list.length - told.length;
    return say(
      [...told.map(([from, to]) => where(from, to)), ...(others > 0 ? [words.others(others)] : [])].join(
        ', ',
      ),
    );
  };
  const read = [
    shareRead === null ? '' : words.share(percent(shareRead)),
    stretches(origin.leftOutMm, words.leftOut),
    stretches(origin.unsureMm, words.unsure),
    stretches(origin.drawnMm, words.drawn),
  ].filter((text) => text !== '');
  return [
    { term: words.terms.photo, text: origin.photo },
    {
      term: words.terms.chart,
      text: found === null ? words.byHand(corners) : words.found(found.from, percent(found.sure), corners),
    },
    {
      term: words.terms.scale,
      text: words.scale(
        depth(depthMm[0]),
        depth(depthMm[1]),
        roundNumber(resistance[0]),
        roundNumber(resistance[1]),
        words.scaleFrom[origin.scaleFrom],
      ),
    },
    ...(read.length > 0 ? [{ term: words.terms.read, text: read.join(' ') }] : []),
  ];
}
