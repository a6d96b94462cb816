/** Where a fault is, in words and as a place to go to. */
import { valueAt } from './fieldPath.ts';

/** Groups of the tree's place whose name in the address is not that of the field. */
const TREE_GROUPS: Record<string, string> = {
  place: 'where',
  rootCuts: 'root-cuts',
  rootSpace: 'root-space',
  staticTests: 'static-tests',
};

/** The place of the case where a field is edited, with the group to go to. */
export function placeOfPath(path: string, caseFile: unknown): string {
  const [drilling, holder] = /^((?:sections|flares)\.\d+)\.drillings\.\d+/.exec(path) ?? [];
  if (drilling && holder) {
    const ids = [valueAt(caseFile, `${holder}.id`), valueAt(caseFile, `${drilling}.id`)];
    return `section/${encodeURIComponent(ids.join(':'))}`;
  }
  if (/^(sections|flares|traces)/.test(path)) return 'section';
  if (/^(client|assessor|visitedOn|instrument|purpose|notes|title|weather)/.test(path)) return 'report';
  if (/^(decision|timeFrameYears)/.test(path)) return 'decision';
  if (/^advice/.test(path)) return 'decision/advice';
  const [, group] = /^(place|site|signs|targets|rootCuts|rootSpace|staticTests)\b/.exec(path) ?? [];
  return group === undefined ? 'tree' : `tree/${TREE_GROUPS[group] ?? group}`;
}

/** Field paths in plain words, for people: `sections.0.barkMm` → `section s1, bark`. */
export function fieldWords(path: string, caseFile: unknown): string {
  const words: string[] = [];
  const keys = path.split('.');
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i]!;
    if (/^\d+$/.test(key)) continue;
    const next = keys[i + 1];
    if (next !== undefined && /^\d+$/.test(next)) {
      const id = valueAt(caseFile, [...keys.slice(0, i + 2), 'id'].join('.'));
      words.push(`${plain(key).replace(/s$/, '')} ${typeof id === 'string' ? id : Number(next) + 1}`);
    } else {
      words.push(plain(key));
    }
  }
  return words.join(', ');
}

/** `stemDiameterMm` → `stem diameter`. */
function plain(key: string): string {
  return key
    .replace(/(Mm|Ms|Deg|M)$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}
