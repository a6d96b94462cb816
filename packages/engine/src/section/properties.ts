/**
 * Exact properties of a section with known voids: the document of `standfast section`.
 */
import { DIRECTIONS_DEG, inverseSecondMoments, modulusByDirection } from './capacity.ts';
import { checkOutlineShape, checkRing } from './check-outline.ts';
import { peaksOfLength, peaksTowards } from './peaks.ts';
import type { AreaMoments, Loop } from './polygon.ts';
import { RAD } from './ring.ts';
import type { Outline, PointMm, RingMm } from './types.ts';
import { type Wood, woodOf } from './wood.ts';

/** An outline with known voids. */
export interface SectionToMeasure {
  outline: Outline;
  /** Rings of wood that is gone, mm from the outline's origin. They may overlap and open to the outside. */
  voids: readonly RingMm[];
  /** Remarks of whoever read the input, passed on into the answer's warnings. */
  warnings?: readonly string[];
}

/** A value for bending towards a compass direction. */
export interface DirectionalValue {
  directionDeg: number;
  value: number;
}

/** Exact properties of the wood that is left. The first seven fields are the agreed document; the rest explain it. */
export interface SectionProperties {
  areaMm2: number;
  centroidMm: [xMm: number, yMm: number];
  /** Second moments of area about the centroid of the wood left: ∫y², ∫x², ∫xy. */
  ixxMm4: number;
  iyyMm4: number;
  ixyMm4: number;
  /** Bending moment per unit of greatest fibre stress, every 10 degrees. */
  modulusMm3: DirectionalValue[];
  /** The same over that of the outline without voids. */
  remaining: DirectionalValue[];
  /** The weakest direction of all (not only of the 36), and what remains in it. */
  least: { directionDeg: number; modulusMm3: number; remaining: number };
  /** Principal second moments, and the compass direction (0 to 180) in which the section is stiffest to bend. */
  principal: { mostMm4: number; leastMm4: number; stiffestDeg: number };
  /** Area of the wood left over that of the outline. */
  areaShare: number;
  /** Pieces the wood is in. More than one bend together only while something holds them from sliding. */
  pieces: number;
  /** With more than one piece: the same capacity when each bends for itself, sliding past the others. */
  piecesAlone: { modulusMm3: DirectionalValue[]; remaining: DirectionalValue[] } | null;
  warnings: string[];
}

/**
 * Area, centroid, second moments and bending capacity by direction of an outline less its voids, exact to rounding for
 * every kind of outline (smooth ones are integrated along their curve, not as polygons).
 *
 * Wood in several pieces is taken to bend as one, as the definition of the document has it, and a warning says so;
 * `piecesAlone` gives the capacity when the pieces do not hold together.
 *
 * @throws InputFault for an outline or void that cannot be, and when no wood is left.
 */
export function sectionProperties({ outline, voids, warnings = [] }: SectionToMeasure): SectionProperties {
  checkOutlineShape(outline, 'outline');
  voids.forEach((ring, i) => {
    checkRing(ring, `voids[${i}]`, 'void');
  });
  const sound = woodOf(outline, []);
  const wood = voids.length ? woodOf(outline, voids) : sound;
  const { moments } = wood;
  const soundModulus = modulusOf(sound);
  const modulus = modulusOf(wood);
  const alone = wood.pieces.length > 1 ? modulusOfPiecesAlone(wood) : null;
  const overSound = (values: Float64Array) => byDirection(values.map((value, k) => value / soundModulus[k]!));
  const least = leastModulus(wood);
  return {
    areaMm2: moments.areaMm2,
    centroidMm: moments.centroidMm,
    ixxMm4: moments.ixxMm4,
    iyyMm4: moments.iyyMm4,
    ixyMm4: moments.ixyMm4,
    modulusMm3: byDirection(modulus),
    remaining: overSound(modulus),
    least: { ...least, remaining: least.modulusMm3 / modulusTowards(sound, least.directionDeg) },
    principal: principalMoments(moments),
    areaShare: moments.areaMm2 / sound.moments.areaMm2,
    pieces: wood.pieces.length,
    piecesAlone: alone && { modulusMm3: byDirection(alone), remaining: overSound(alone) },
    warnings: [
      ...warnings,
      ...sizeWarnings(Math.sqrt(sound.moments.areaMm2)),
      ...wood.warnings,
      ...pieceWarnings(wood.pieces.length),
    ],
  };
}

const byDirection = (values: Float64Array): DirectionalValue[] =>
  DIRECTIONS_DEG.map((directionDeg, k) => ({ directionDeg, value: values[k]! }));

const loopsOf = (wood: Wood): Loop[] => wood.pieces.flatMap((piece) => [piece.solid, ...piece.hollows]);

/** σ per unit moment is u · J⁻¹ (r − c): the vector that, times r, gives it for bending towards a direction. */
function gradientTowards(moments: AreaMoments, directionDeg: number): PointMm {
  const [jxx, jxy, jyy] = inverseSecondMoments(moments);
  const sin = Math.sin(directionDeg * RAD);
  const cos = Math.cos(directionDeg * RAD);
  return [sin * jxx + cos * jxy, sin * jxy + cos * jyy];
}

/** Corners and, on smooth boundaries, the points between them where the stress peaks, for directions given. */
function extremes(
  loops: readonly Loop[],
  moments: AreaMoments,
  directionsDeg: readonly number[],
): Float64Array {
  const peaks = directionsDeg.flatMap((d) => peaksTowards(loops, ...gradientTowards(moments, d)));
  const xy = loops.flatMap((loop) => Array.from(loop.xy));
  for (const [x, y] of peaks) xy.push(x, y);
  return Float64Array.from(xy);
}

/** Opposite directions share their peaks, so half the circle is enough. */
const HALF_CIRCLE = DIRECTIONS_DEG.slice(0, 18);

function modulusOf(wood: Wood): Float64Array {
  return modulusByDirection(wood.moments, extremes(loopsOf(wood), wood.moments, HALF_CIRCLE));
}

function modulusTowards(wood: Wood, directionDeg: number): number {
  const [gx, gy] = gradientTowards(wood.moments, directionDeg);
  const [cx, cy] = wood.moments.centroidMm;
  const xy = extremes(loopsOf(wood), wood.moments, [directionDeg]);
  let most = 0;
  for (let i = 0; i < xy.length; i += 2) {
    most = Math.max(most, Math.abs(gx * (xy[i]! - cx) + gy * (xy[i + 1]! - cy)));
  }
  return 1 / most;
}

/**
 * The least modulus over all directions: the greatest of u · J⁻¹ (r − c) over unit vectors u is |J⁻¹ (r − c)|, with u
 * along that vector, so it needs no search over directions.
 */
function leastModulus(wood: Wood): { directionDeg: number; modulusMm3: number } {
  const inverse = inverseSecondMoments(wood.moments);
  const centroid = wood.moments.centroidMm;
  const candidates: PointMm[] = peaksOfLength(loopsOf(wood), inverse, centroid);
  for (let i = 0; i < wood.corners.length; i += 2) {
    candidates.push([wood.corners[i]!, wood.corners[i + 1]!]);
  }
  // Where many points tie (a circle), rounding must not choose.
  const clearly = 1 + 1e-9;
  let most = 0;
  let directionDeg = 0;
  for (const [x, y] of candidates) {
    const vx = inverse[0] * (x - centroid[0]) + inverse[1] * (y - centroid[1]);
    const vy = inverse[1] * (x - centroid[0]) + inverse[2] * (y - centroid[1]);
    const length = Math.hypot(vx, vy);
    if (length > most * clearly) {
      most = length;
      directionDeg = halfTurn(Math.atan2(vx, vy) / RAD);
    }
  }
  return { directionDeg, modulusMm3: 1 / most };
}

/**
 * Capacity when the pieces slide freely past each other: all take the same curvature κ, each about its own centroid,
 * so M = (Σ Jᵢ) E κ and σ(r) = u · (Σ Jᵢ)⁻¹ (r − cᵢ) per unit moment in piece i.
 */
function modulusOfPiecesAlone(wood: Wood): Float64Array {
  const sum = { ...wood.moments, ixxMm4: 0, iyyMm4: 0, ixyMm4: 0 };
  for (const { moments } of wood.pieces) {
    sum.ixxMm4 += moments.ixxMm4;
    sum.iyyMm4 += moments.iyyMm4;
    sum.ixyMm4 += moments.ixyMm4;
  }
  const least = new Float64Array(36).fill(Infinity);
  for (const piece of wood.pieces) {
    const moments = { ...sum, centroidMm: piece.moments.centroidMm };
    const xy = extremes([piece.solid, ...piece.hollows], moments, HALF_CIRCLE);
    modulusByDirection(moments, xy).forEach((value, k) => {
      least[k] = Math.min(least[k]!, value);
    });
  }
  return least;
}

/** Eigenvalues of J and the direction of the greater one. */
function principalMoments({ ixxMm4, iyyMm4, ixyMm4 }: AreaMoments): SectionProperties['principal'] {
  const middle = (ixxMm4 + iyyMm4) / 2;
  const reach = Math.hypot((iyyMm4 - ixxMm4) / 2, ixyMm4);
  // ∫(u·r)² with u = (sin d, cos d) is middle + ½(Ixx − Iyy) cos 2d + Ixy sin 2d.
  const round = reach <= 1e-12 * middle;
  return {
    mostMm4: middle + reach,
    leastMm4: middle - reach,
    stiffestDeg: round ? 0 : halfTurn(Math.atan2(ixyMm4, (ixxMm4 - iyyMm4) / 2) / 2 / RAD),
  };
}

/** An angle brought into [0, 180). */
function halfTurn(deg: number): number {
  const turned = deg - 180 * Math.floor(deg / 180);
  return turned >= 180 ? 0 : turned;
}

function sizeWarnings(acrossMm: number): string[] {
  if (acrossMm >= 30 && acrossMm <= 20_000) return [];
  return [
    `The outline is about ${Number(acrossMm.toPrecision(2))} mm across, which is not a stem’s size. Lengths are taken as millimetres.`,
  ];
}

function pieceWarnings(pieces: number): string[] {
  if (pieces < 2) return [];
  return [
    `The voids part the wood into ${pieces} pieces. The figures take them as bending together, which holds only while something keeps them from sliding past each other; piecesAlone gives what is left when nothing does.`,
  ];
}
