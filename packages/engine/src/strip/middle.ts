/** The middle of values by size, the greater of two middle ones; sorts them in place. */
export function middleOf(values: number[]): number {
  return values.sort((p, q) => p - q)[values.length >> 1]!;
}
