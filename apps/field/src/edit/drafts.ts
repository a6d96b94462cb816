/**
 * Text that could not be read yet, by field path, after a change of the case: what belonged to a row that is gone, has
 * moved, or is now of another kind is let go, since its path would mean another field.
 */
import { valueAt } from './fieldPath.ts';

export function draftsAfter(
  before: unknown,
  after: unknown,
  drafts: Readonly<Record<string, string>>,
): Record<string, string> {
  const kept = Object.entries(drafts).filter(([path]) => sameHolders(before, after, path));
  return kept.length === Object.keys(drafts).length
    ? (drafts as Record<string, string>)
    : Object.fromEntries(kept);
}

function sameHolders(before: unknown, after: unknown, path: string): boolean {
  const keys = path.split('.');
  for (let depth = 1; depth < keys.length; depth++) {
    const holder = keys.slice(0, depth).join('.');
    const one = valueAt(before, holder);
    const other = valueAt(after, holder);
    if (Array.isArray(one) !== Array.isArray(other)) return false;
    if (Array.isArray(one) && Array.isArray(other) && one.length !== other.length) return false;
    if (valueAt(one, 'kind') !== valueAt(other, 'kind') || valueAt(one, 'id') !== valueAt(other, 'id'))
      return false;
  }
  return true;
}
