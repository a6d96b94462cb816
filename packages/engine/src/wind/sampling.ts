/**
 * Standard normal draws by stratified sampling (one draw in each of n equal slices of probability, in random order:
 * McKay, Beckman and Conover 1979), so that the points of an interval do not wander with the seed.
 */
import type { Random } from '../random.ts';

/** The standard normal quantile, relative error below 1.2e-9 (Acklam 2003). */
export function normalQuantile(p: number): number {
  const a = [
    -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
    2.506628277459239,
  ];
  const b = [
    -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1,
    -1.328068155288572e1,
  ];
  const c = [
    -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ];
  const d = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416];
  const tail = 0.02425;
  if (p < tail || p > 1 - tail) {
    const q = Math.sqrt(-2 * Math.log(p < tail ? p : 1 - p));
    const x =
      (((((c[0]! * q + c[1]!) * q + c[2]!) * q + c[3]!) * q + c[4]!) * q + c[5]!) /
      ((((d[0]! * q + d[1]!) * q + d[2]!) * q + d[3]!) * q + 1);
    return p < tail ? x : -x;
  }
  const q = p - 0.5;
  const r = q * q;
  return (
    ((((((a[0]! * r + a[1]!) * r + a[2]!) * r + a[3]!) * r + a[4]!) * r + a[5]!) * q) /
    (((((b[0]! * r + b[1]!) * r + b[2]!) * r + b[3]!) * r + b[4]!) * r + 1)
  );
}

/** `count` stratified uniforms on (0, 1), in random order. */
export function stratifiedUniforms(random: Random, count: number): Float64Array {
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    // 1e-9 keeps the first slice off zero.
    out[i] = (i + 1e-9 + random.uniform() * (1 - 2e-9)) / count;
  }
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(random.uniform() * (i + 1));
    const kept = out[i]!;
    out[i] = out[j]!;
    out[j] = kept;
  }
  return out;
}

/** `count` stratified standard normals, in random order. */
export function stratifiedNormals(random: Random, count: number): Float64Array {
  return stratifiedUniforms(random, count).map(normalQuantile);
}
