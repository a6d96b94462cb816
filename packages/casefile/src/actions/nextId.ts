/**
 * The next free name of a row of names: s1, s2 …; d1, d2 … (drillings are counted through the whole case, so that a
 * name spoken in the field means one needle pass).
 */
import type { CaseFile } from '../schema/schema.ts';

export function nextId(caseFile: CaseFile, kind: 'section' | 'flare' | 'drilling'): string {
  const { sections, flares } = caseFile;
  if (kind === 'section') return nextOf('s', sections);
  if (kind === 'flare') return nextOf('f', flares);
  return nextOf(
    'd',
    [...sections, ...flares].flatMap((place) => place.drillings),
  );
}

function nextOf(letter: string, taken: readonly { id: string }[]): string {
  const pattern = new RegExp(`^${letter}(\\d+)$`, 'i');
  const numbers = taken.map(({ id }) => Number(pattern.exec(id)?.[1] ?? 0));
  return `${letter}${Math.max(0, ...numbers) + 1}`;
}
