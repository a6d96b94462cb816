/** Degrees from one azimuth clockwise to another; the same azimuth twice is the whole round. */
export function arcSpanDeg(fromDeg: number, toDeg: number): number {
  const span = (((toDeg - fromDeg) % 360) + 360) % 360;
  return span === 0 ? 360 : span;
}
