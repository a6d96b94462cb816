/**
 * The normal distribution's density and distribution function.
 */

/** Density of the standard normal. */
export function normalDensity(x: number): number {
  return 0.3989422804014327 * Math.exp(-0.5 * x * x);
}

/**
 * Distribution function of the standard normal, by Hart (1968) as given by West (2005), Better approximations to
 * cumulative normal functions, Wilmott; double precision.
 */
export function normalBelow(x: number): number {
  const a = Math.abs(x);
  if (a > 37) return x > 0 ? 1 : 0;
  const e = Math.exp(-0.5 * a * a);
  let tail: number;
  if (a < 7.07106781186547) {
    let top = 3.52624965998911e-2 * a + 0.700383064443688;
    top = top * a + 6.37396220353165;
    top = top * a + 33.912866078383;
    top = top * a + 112.079291497871;
    top = top * a + 221.213596169931;
    top = top * a + 220.206867912376;
    let bottom = 8.83883476483184e-2 * a + 1.75566716318264;
    bottom = bottom * a + 16.064177579207;
    bottom = bottom * a + 86.7807322029461;
    bottom = bottom * a + 296.564248779674;
    bottom = bottom * a + 637.333633378831;
    bottom = bottom * a + 793.826512519948;
    bottom = bottom * a + 440.413735824752;
    tail = (e * top) / bottom;
  } else {
    const f = a + 1 / (a + 2 / (a + 3 / (a + 4 / (a + 0.65))));
    tail = e / (f * 2.506628274631);
  }
  return x > 0 ? 1 - tail : tail;
}
