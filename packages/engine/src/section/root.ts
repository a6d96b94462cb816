/** A root of a continuous function, by bisection. */

/** A root of f between a and b by bisection, or null when f does not change sign there. */
export function rootBetween(f: (t: number) => number, a: number, b: number): number | null {
  let low = a;
  let high = b;
  const atLow = f(low);
  if (atLow === 0) return low;
  if (atLow > 0 === f(high) > 0) return null;
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === atLow > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
