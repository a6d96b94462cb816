/** Angles round the stem. */

/** An azimuth brought into [0, 360). */
export function wrap(azimuthDeg: number): number {
  const turned = azimuthDeg - 360 * Math.floor(azimuthDeg / 360);
  return turned >= 360 ? 0 : turned;
}

/** How far clockwise from one azimuth to another, in (-180, 180]. */
export function signedTurn(fromDeg: number, toDeg: number): number {
  const turn = wrap(toDeg - fromDeg);
  return turn > 180 ? turn - 360 : turn;
}

/** Angle between two azimuths, 0 to 180. */
export function apart(a: number, b: number): number {
  return Math.abs(signedTurn(a, b));
}
