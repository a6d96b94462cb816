/**
 * Seeded random numbers. The engine never draws from anywhere else, so the same input gives the same bytes out.
 */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random numbers. */
export interface Random {
  /** Uniform on [0, 1), 32 bits. */
  uniform(): number;
  /** Standard normal, by the polar method (Marsaglia & Bray 1964). */
  normal(): number;
  /** A stream that is a function of this stream's seed and the label only, for parts that must not disturb each other. */
  fork(label: string): Random;
}

/** A stream from a seed (an integer; other numbers are truncated). */
export function randomFrom(seed: number): Random {
  const generator = xoroshiro128plus(seed | 0);
  const uniform = () => (generator.next() >>> 0) / 4294967296;
  let spare = 0;
  let hasSpare = false;
  return {
    uniform,
    normal() {
      if (hasSpare) {
        hasSpare = false;
        return spare;
      }
      for (;;) {
        const u = 2 * uniform() - 1;
        const v = 2 * uniform() - 1;
        const s = u * u + v * v;
        if (s > 0 && s < 1) {
          const scale = Math.sqrt((-2 * Math.log(s)) / s);
          spare = v * scale;
          hasSpare = true;
          return u * scale;
        }
      }
    },
    fork: (label) => randomFrom(hash(label, seed)),
  };
}

/** FNV-1a over the label's code units, started from the seed. */
function hash(label: string, seed: number): number {
  let h = 2166136261 ^ seed;
  for (let i = 0; i < label.length; i++) h = Math.imul(h ^ label.charCodeAt(i), 16777619);
  return h | 0;
}
