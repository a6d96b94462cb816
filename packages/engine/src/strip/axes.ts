/**
 * A chart of two axes only, made whole by the numbers printed along them: how their spacing changes along an axis tells
 * the tilt, and the last of them where the axis's scale ends.
 */
import { homographyOfChart, leastSquares, project } from './homography.ts';
import { type NumberAlong, numbersAround } from './numbers/readAxes.ts';
import type { CornersPx, PointPx, StripImage } from './types.ts';

/** Three numbers fit any scale seen at a tilt: so many must agree, to this share of the axis, and be this share of all read. */
const LEAST_AGREEING = 4;
const AGREES = 0.008;
const AGREEING_SHARE = 0.6;
/** An axis runs on beyond its last number by this share of itself at most: an arrowhead. At its origin it does not. */
const MOST_BEYOND = 0.09;
const AT_ORIGIN = 0.03;
/** Far and near end of an axis differ in scale by less than this share on any photo of a chart. */
const MOST_CHANGE = 0.6;

/** Value along an axis seen at a tilt: (start + rate × at) / (1 + tilt × at), and the place of its last number. */
interface TiltedScale {
  start: number;
  rate: number;
  tilt: number;
  last: number;
}

/**
 * The corners of a chart whose left and bottom axes are seen, from the numbers along both.
 * @param corners its left and bottom axes, the other two sides by parallels
 * @returns null where the numbers do not tell
 */
export function axesMadeWhole(image: StripImage, corners: CornersPx): CornersPx | null {
  const map = homographyOfChart(corners);
  if (!map) return null;
  const { below, beside } = numbersAround(image, corners);
  const along = tiltedScale(below);
  const up = tiltedScale(beside[0] ?? []);
  if (!along || !up) return null;
  const origin = corners[3];
  const right = project(map, along.last, 1);
  const top = project(map, 0, 1 - up.last);
  // Where level lines meet, and upright ones: at -1 / tilt along the axis, at infinity without tilt.
  const [h0, h1, h2, h3, h4, h5, h6, h7, h8] = map as unknown as number[];
  const onto = ([x, y, w]: Triple): Triple => [
    h0! * x + h1! * y + h2! * w,
    h3! * x + h4! * y + h5! * w,
    h6! * x + h7! * y + h8! * w,
  ];
  const levelMeet = onto([-1, along.tilt, along.tilt]);
  const uprightMeet = onto([0, up.tilt + 1, up.tilt]);
  const [x, y, w] = across(across([...top, 1], levelMeet), across([...right, 1], uprightMeet));
  if (!(Math.abs(w) > 0)) return null;
  return [top as PointPx, [x / w, y / w], right as PointPx, origin];
}

type Triple = readonly [number, number, number];

/** The line through two points, or the point on two lines, as three numbers that hold up to a common factor. */
function across([a, b, c]: Triple, [d, e, f]: Triple): Triple {
  return [b * f - c * e, c * d - a * f, a * e - b * d];
}

/** The scale that most numbers along an axis lie on; null where too few do, or it does not begin and end at one of them. */
function tiltedScale(numbers: readonly NumberAlong[]): TiltedScale | null {
  let agreeing: NumberAlong[] = [];
  for (let i = 0; i < numbers.length; i++) {
    for (let j = i + 1; j < numbers.length; j++) {
      for (let k = j + 1; k < numbers.length; k++) {
        const trial = fitted([numbers[i]!, numbers[j]!, numbers[k]!]);
        if (!trial) continue;
        const like = numbers.filter((n) => Math.abs(placeOf(trial, n.value) - n.at) < AGREES);
        if (like.length > agreeing.length && new Set(like.map((n) => n.value)).size === like.length)
          agreeing = like;
      }
    }
  }
  if (agreeing.length < LEAST_AGREEING || agreeing.length < AGREEING_SHARE * numbers.length) return null;
  const scale = fitted(agreeing);
  if (!scale) return null;
  const places = agreeing.map((n) => placeOf(scale, n.value));
  const last = Math.max(...places);
  if (Math.abs(Math.min(...places)) > AT_ORIGIN || last < 1 - MOST_BEYOND || last > 1 + AT_ORIGIN)
    return null;
  return { ...scale, last };
}

const placeOf = ({ start, rate, tilt }: Omit<TiltedScale, 'last'>, value: number) =>
  (value - start) / (rate - tilt * value);

/** Least squares of start + rate × at − tilt × at × value = value, in shares of the greatest value. */
function fitted(numbers: readonly NumberAlong[]): Omit<TiltedScale, 'last'> | null {
  const most = Math.max(...numbers.map((n) => n.value));
  if (!(most > 0)) return null;
  const rows = numbers.flatMap(({ at, value }) => [1, at, (-at * value) / most]);
  const solved = leastSquares(
    Float64Array.from(rows),
    Float64Array.from(numbers, (n) => n.value / most),
    numbers.length,
    3,
  );
  if (!solved) return null;
  const [start, rate, tilt] = solved as unknown as [number, number, number];
  if (!(Math.abs(tilt) < MOST_CHANGE) || !(rate > start * tilt)) return null;
  return { start: start * most, rate: rate * most, tilt };
}
