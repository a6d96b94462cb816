/**
 * A misspelt field is read by nobody and missed by nobody, so the likely spelling is offered.
 */

/** The known name that was most likely meant by an unknown one, or null when none is near. */
export function nearestName(unknown: string, known: Iterable<string>): string | null {
  const wanted = plain(unknown);
  let best: string | null = null;
  let bestDistance = 3;
  for (const name of known) {
    const candidate = plain(name);
    const shorter = Math.min(candidate.length, wanted.length);
    const begins = shorter >= 4 && (candidate.startsWith(wanted) || wanted.startsWith(candidate));
    const distance = begins ? 1 : editDistance(wanted, candidate, bestDistance);
    if (distance < bestDistance && distance < shorter / 2) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]/g, '');
}

/** Levenshtein distance, or `limit` when it is that or more. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitute = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(substitute, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return Math.min(row[b.length]!, limit);
}
