/**
 * A field of the case by its path, `sections.0.outline.diameterMm`, and edits as pure functions: what is not touched
 * is shared between the case before and after.
 */

type Holder = Record<string, unknown> | unknown[];

/** The value at a path, undefined where there is none. */
export function valueAt(root: unknown, path: string): unknown {
  let at: unknown = root;
  for (const key of path.split('.')) {
    if (at === null || typeof at !== 'object') return undefined;
    at = (at as Record<string, unknown>)[key];
  }
  return at;
}

/**
 * The same tree with the value at the path replaced; undefined takes the field out (an entry of a list: removes it).
 * Objects missing on the way are made. Returns the very same tree when nothing changes.
 */
export function withValueAt<T>(root: T, path: string, value: unknown): T {
  if (Object.is(valueAt(root, path), value)) return root;
  return put(root as Holder, path.split('.'), value) as T;
}

function put(holder: Holder | undefined, keys: string[], value: unknown): Holder {
  const [key = '', ...rest] = keys;
  if (Array.isArray(holder)) {
    const index = Number(key);
    const copy = holder.slice();
    if (rest.length > 0) copy[index] = put(holder[index] as Holder | undefined, rest, value);
    else if (value === undefined) copy.splice(index, 1);
    else copy[index] = value;
    return copy;
  }
  const copy: Record<string, unknown> = { ...holder };
  if (rest.length > 0) copy[key] = put(copy[key] as Holder | undefined, rest, value);
  else if (value === undefined) delete copy[key];
  else copy[key] = value;
  return copy;
}

/** The path a fault or notice speaks of, as fields are named here: `case.json: sections[0].barkMm` → `sections.0.barkMm`. */
export function pathOfWhere(where: string): string {
  return where
    .replace(/^case\.json:?\s*/, '')
    .replace(/\[(\d+)\]/g, '.$1')
    .replace(/^\./, '');
}
