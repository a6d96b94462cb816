/** How far a share counted among so many may be from the true one. */

/** The normal's 97.5 % point: intervals here hold the truth nineteen times in twenty. */
const Z = 1.959963984540054;

export interface CountedShare {
  held: number;
  of: number;
  share: number;
  low: number;
  high: number;
}

/**
 * A share with its 95 % score interval (Wilson 1927, Journal of the American Statistical Association 22:209), which stays
 * within 0 and 1 and holds for few trials, as the usual one of mean and standard error does not (Newcombe 1998).
 */
export function countedShare(held: number, of: number): CountedShare {
  if (of === 0) return { held, of, share: Number.NaN, low: 0, high: 1 };
  const share = held / of;
  const scale = 1 + (Z * Z) / of;
  const middle = (share + (Z * Z) / (2 * of)) / scale;
  const half = (Z / scale) * Math.sqrt((share * (1 - share)) / of + (Z * Z) / (4 * of * of));
  return {
    held,
    of,
    share,
    // At the ends the interval reaches 0 and 1 exactly; rounding must not put it beyond.
    low: held === 0 ? 0 : Math.max(0, middle - half),
    high: held === of ? 1 : Math.min(1, middle + half),
  };
}
