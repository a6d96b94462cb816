/**
 * Covariance functions of the latent field, all of unit variance. Distances are in the unit disc of relative
 * radius (0 origin, 1 cambium).
 */

/**
 * Squared exponential of a distance, exp(−d²/2l²): Rasmussen & Williams (2006), equation 4.9. Only for straight
 * distances; of an angle along the circle it is not a covariance.
 */
export function squaredExponential(distance: number, length: number): number {
  const q = distance / length;
  return Math.exp(-0.5 * q * q);
}

/** Matérn of order 3/2: Rasmussen & Williams (2006), equation 4.17. */
export function matern32(distance: number, length: number): number {
  const q = (Math.sqrt(3) * distance) / length;
  return (1 + q) * Math.exp(-q);
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

/**
 * C2 Wendland covariance of the way along the circle, (1 + τd/c)(1 − d/c)₊^τ, valid for τ ≥ 4 and c ≤ π: Gneiting
 * (2013), Strictly and non-strictly positive definite functions on spheres, Bernoulli 19, table 1. Used for
 * polar fields by Padonou & Roustant (2016), SIAM/ASA J. Uncertainty Quantification 4.
 */
export function wendland(angleRad: number, tau: number, reachRad: number): number {
  const turn = Math.abs(angleRad) % (2 * Math.PI);
  const d = Math.min(turn, 2 * Math.PI - turn) / reachRad;
  return d >= 1 ? 0 : (1 + tau * d) * (1 - d) ** tau;
}
