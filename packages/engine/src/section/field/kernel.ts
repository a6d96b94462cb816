/**
 * Covariance functions of the latent field, all of unit variance. Distances are in the unit disc of relative
 * radius (0 origin, 1 cambium), 0 or more.
 */

/**
 * Squared exponential of a distance, exp(−d²/2l²): Rasmussen & Williams (2006), equation 4.9. Only for straight
 * distances; of an angle along the circle it is not a covariance.
 */
export function squaredExponential(distance: number, length: number): number {
  const q = distance / length;
  return Math.exp(-0.5 * q * q);
}

/** Matérn of order 5/2: Rasmussen & Williams (2006), equation 4.17. Twice differentiable in mean square. */
export function matern52(distance: number, length: number): number {
  const q = (Math.sqrt(5) * distance) / length;
  return (1 + q + (q * q) / 3) * Math.exp(-q);
}

/**
 * Periodic covariance of an angle, exp(−2 sin²(Δ/2)/l²) with Δ in radians: Rasmussen & Williams (2006),
 * equation 4.31. A squared exponential of the chord, so it is valid on the circle.
 */
export function periodic(angleRad: number, length: number): number {
  const s = Math.sin(angleRad / 2) / length;
  return Math.exp(-2 * s * s);
}
