import { type ConditionedTrace, quantile } from './conditionTrace.ts';
import { type Rings, SEEN } from './rings.ts';

/** Half width of the running median that level is taken from, and of the neighbourhood scatter is taken over, mm. */
const MEDIAN_REACH_MM = 5;
const SCATTER_REACH_MM = 8;
/** Half width of the narrower median that keeps a thin shell, mm. */
const NARROW_REACH_MM = 3;
/** Scatter beyond what is seen locally: a share of the level over the lowest, and a least, percent of full scale. */
const ROUGHNESS = 0.05;
const LEAST_SCATTER_PCT = 0.25;
/** Shares of a cell's step across itself, and of its distance off the running median, that count as scatter. */
const ACROSS = 0.3;
const OFF = 0.4;
/** How much more than the quietest still counts as quiet, natural logarithm. */
const QUIET_TOLERANCE = 0.8;
/** Normal consistency of the median absolute deviation. */
const MAD_TO_SD = 1.4826;

export interface Texture {
  /** Running median of the level, percent of full scale: keeps edges, loses rings and notches. */
  smoothPct: Float64Array;
  /**
   * Scatter of cells about their stretch, percent of full scale: ring pattern and noise as seen, and a little for what
   * no model holds. It is one for all kinds and levels tried: a kind told to be smoother would win any quiet stretch.
   */
  scatterPct: Float64Array;
  /** The same with rings wider than the running median left out: what a notch stands out of. */
  fineScatterPct: Float64Array;
  /**
   * How much more restless the trace is in each cell than at its quietest, natural logarithm beyond a tolerance, cut to
   * 0 to 1.5. Air and voids are quiet; bark is ragged; wood has its texture.
   */
  unrest: Float64Array;
  /** Local scatter that is usual in this trace, percent of full scale. */
  typicalPct: number;
  /** Size of each cell's second difference, scaled to the standard deviation of white noise, percent of full scale. */
  roughPct: Float64Array;
  /** Standard deviation of second differences, scaled alike, where the trace is at its quietest. */
  quietRoughPct: number;
}

/** Running median and local robust scatter of a conditioned trace, cell by cell. */
export function textureOf(c: ConditionedTrace): Texture {
  const smoothPct = runningMedian(c.levelPct, Math.max(1, Math.round(MEDIAN_REACH_MM / c.cellMm)));
  const n = smoothPct.length;
  // A thin shell of sound wood must not pass for scatter: it is lost to the wide median, not to the narrow one.
  const narrowPct = runningMedian(c.levelPct, Math.max(1, Math.round(NARROW_REACH_MM / c.cellMm)));
  const off = Float64Array.from(c.levelPct, (y, i) =>
    Math.min(Math.abs(y - smoothPct[i]!), Math.abs(y - narrowPct[i]!)),
  );
  const local = runningMedian(off, Math.max(1, Math.round(SCATTER_REACH_MM / c.cellMm)));
  const least = Math.max(0.15, c.cellNoisePct);
  const typical = quantile(local, 0.5) * MAD_TO_SD;
  const lowest = Math.min(quantile(smoothPct, 0.01), 5);
  const scatterPct = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const s = local[i]! * MAD_TO_SD;
    // A few neighbours tell the scatter poorly: lean a little on the trace's own typical scatter.
    const seen = Math.max(least, 0.8 * s + 0.2 * Math.min(typical, 3 * s));
    // A cell across an edge, or one far off its neighbours, must not outweigh the rest of its stretch.
    const across = c.levelPct[Math.min(n - 1, i + 1)]! - c.levelPct[Math.max(0, i - 1)]!;
    scatterPct[i] = Math.hypot(
      seen,
      ROUGHNESS * Math.max(0, smoothPct[i]! - lowest),
      LEAST_SCATTER_PCT,
      ACROSS * across,
      OFF * off[i]!,
    );
  }
  const quiet = Math.max(least, quantile(local, 0.05) * MAD_TO_SD);
  const unrest = local.map((v) =>
    Math.min(1.5, Math.max(0, Math.log(Math.max(v * MAD_TO_SD, quiet) / quiet) - QUIET_TOLERANCE)),
  );
  const roughPct = Float64Array.from(c.levelPct, (y, i) =>
    i === 0 || i === n - 1
      ? 0
      : Math.abs(y - 0.5 * (c.levelPct[i - 1]! + c.levelPct[i + 1]!)) / Math.sqrt(1.5),
  );
  const rough = runningMedian(roughPct, Math.max(1, Math.round(SCATTER_REACH_MM / c.cellMm)));
  const quietRoughPct = Math.max(0.1, quantile(rough, 0.05) * MAD_TO_SD);
  return {
    smoothPct,
    scatterPct,
    fineScatterPct: scatterPct,
    unrest,
    typicalPct: typical,
    roughPct,
    quietRoughPct,
  };
}

/** Half width of the window a ring pattern's scatter is taken over: this share of a ring's width, and at least, mm. */
const RING_REACH = 1;
const LEAST_RING_REACH_MM = 4;
/** Share of the ring pattern's scatter that counts: over whole rings it evens out. */
const RING_SHARE = 0.85;
/** Most of a cell's scatter about its rings over what is usual in the trace: what is more is an edge. */
const OVER_USUAL = 1.3;

/**
 * The texture with the ring pattern counted as scatter: rings wider than the running median's reach are followed by it,
 * and latewood's narrow peaks hardly move a median deviation, so both would pass for the level of the wood.
 */
export function withRings(texture: Texture, c: ConditionedTrace, rings: Rings): Texture {
  if (!rings.visible) return texture;
  const { levelPct, cellMm } = c;
  const n = levelPct.length;
  const reach = Math.max(1, Math.round(Math.max(LEAST_RING_REACH_MM, RING_REACH * rings.widthMm) / cellMm));
  const sum = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    sum[i + 1] = sum[i]! + levelPct[i]!;
    squares[i + 1] = squares[i]! + levelPct[i]! ** 2;
  }
  const local = Float64Array.from(levelPct, (_, i) => {
    const a = Math.max(0, i - reach);
    const b = Math.min(n, i + reach + 1);
    const mean = (sum[b]! - sum[a]!) / (b - a);
    return Math.sqrt(Math.max(0, (squares[b]! - squares[a]!) / (b - a) - mean * mean));
  });
  const usual = quantile(
    local.filter((_, i) => rings.clarity[i]! > SEEN),
    0.5,
  );
  const scatterPct = texture.scatterPct.map((s, i) =>
    rings.clarity[i]! > SEEN ? Math.max(s, RING_SHARE * Math.min(local[i]!, OVER_USUAL * usual)) : s,
  );
  return { ...texture, scatterPct, typicalPct: Math.max(texture.typicalPct, usual) };
}

/** Running median over `2 reach + 1` values, the window cut at the ends. */
export function runningMedian(values: Float64Array, reach: number): Float64Array {
  const n = values.length;
  const out = new Float64Array(n);
  // The window is kept sorted: one value leaves, one enters.
  const window: number[] = [];
  const place = (v: number) => {
    let a = 0;
    let b = window.length;
    while (a < b) {
      const m = (a + b) >> 1;
      if (window[m]! < v) a = m + 1;
      else b = m;
    }
    return a;
  };
  for (let i = 0; i < Math.min(n, reach); i++) window.splice(place(values[i]!), 0, values[i]!);
  for (let i = 0; i < n; i++) {
    if (i + reach < n) window.splice(place(values[i + reach]!), 0, values[i + reach]!);
    if (i - reach - 1 >= 0) window.splice(place(values[i - reach - 1]!), 1);
    const m = window.length;
    out[i] = m % 2 ? window[m >> 1]! : 0.5 * (window[m / 2 - 1]! + window[m / 2]!);
  }
  return out;
}
