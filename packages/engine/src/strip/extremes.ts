/** Greatest and least over square windows of a plane of bytes: what closings and openings are made of. */

/** Lines of so many bytes each, one after the other. */
export interface Plane {
  bytes: Uint8Array;
  length: number;
  lines: number;
}

/** What lies beyond the plane: its mirror image, or nothing. */
export type Beyond = 'mirrored' | 'nothing';

/**
 * Greatest value over a square of `2 × half + 1` places, by running extremes over blocks of the window's length
 * (M. van Herk 1992, Pattern Recognition Letters 13).
 */
export function greatestAround(plane: Plane, half: number, beyond: Beyond): Uint8Array {
  return acrossLines({ ...plane, bytes: alongLines(plane, half, beyond) }, half, beyond);
}

/** Least value over a square, likewise. */
export function leastAround(plane: Plane, half: number, beyond: Beyond): Uint8Array {
  // The least of values is what is left of the greatest of what they lack.
  return lacking(greatestAround({ ...plane, bytes: lacking(plane.bytes) }, half, beyond));
}

function lacking(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length);
  for (let k = 0; k < bytes.length; k++) out[k] = 255 - bytes[k]!;
  return out;
}

/** Place of the plane that stands for place `i`, which may lie beyond it. */
function placeOf(i: number, length: number, beyond: Beyond): number {
  // Nothing beyond is as good as the end once more: windows that reach beyond it hold it.
  const k = beyond === 'nothing' ? i : i < 0 ? -i : i >= length ? 2 * (length - 1) - i : i;
  return Math.min(length - 1, Math.max(0, k));
}

function alongLines({ bytes, length, lines }: Plane, half: number, beyond: Beyond): Uint8Array {
  const window = 2 * half + 1;
  const out = new Uint8Array(bytes.length);
  const long = length + 2 * half;
  const line = new Uint8Array(long);
  const forth = new Uint8Array(long);
  const back = new Uint8Array(long);
  for (let y = 0; y < lines; y++) {
    const at = y * length;
    line.set(bytes.subarray(at, at + length), half);
    for (let i = 0; i < half; i++) {
      line[i] = line[half + placeOf(i - half, length, beyond)]!;
      line[half + length + i] = line[half + placeOf(length + i, length, beyond)]!;
    }
    let most = 0;
    for (let i = 0, left = 0; i < long; i++) {
      const value = line[i]!;
      if (left === 0) {
        most = value;
        left = window;
      } else if (value > most) most = value;
      left--;
      forth[i] = most;
    }
    for (let i = long - 1, left = long % window; i >= 0; i--) {
      const value = line[i]!;
      if (left === 0) {
        most = value;
        left = window;
      } else if (value > most || i === long - 1) most = value;
      left--;
      back[i] = most;
    }
    for (let x = 0; x < length; x++) {
      out[at + x] = Math.max(back[x]!, forth[x + window - 1]!);
    }
  }
  return out;
}

/** The same across lines, whole lines compared at once: that keeps to the order in which they lie. */
function acrossLines({ bytes, length, lines }: Plane, half: number, beyond: Beyond): Uint8Array {
  const window = 2 * half + 1;
  const high = lines + 2 * half;
  const forth = new Uint8Array(high * length);
  const back = new Uint8Array(high * length);
  const extend = (into: Uint8Array, i: number, from: number, fresh: boolean) => {
    const at = i * length;
    const source = placeOf(i - half, lines, beyond) * length;
    if (fresh) {
      into.set(bytes.subarray(source, source + length), at);
      return;
    }
    for (let x = 0; x < length; x++) into[at + x] = Math.max(bytes[source + x]!, into[from + x]!);
  };
  for (let i = 0; i < high; i++) extend(forth, i, (i - 1) * length, i % window === 0);
  for (let i = high - 1; i >= 0; i--) {
    extend(back, i, (i + 1) * length, i === high - 1 || (i + 1) % window === 0);
  }
  const out = new Uint8Array(bytes.length);
  const shift = (window - 1) * length;
  for (let k = 0; k < out.length; k++) out[k] = Math.max(back[k]!, forth[k + shift]!);
  return out;
}
