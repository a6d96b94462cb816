/** A key for every block, by which the assessor strikes it or adds after it. */
import type { Block } from './blocks.ts';

/**
 * Gives each block the key `chapter/kind-n`: the id of the nearest heading before it, and which of its kind it is there. Keys
 * do not depend on language, units or figures. Page breaks have none.
 */
export function keyed(blocks: readonly Block[]): Block[] {
  let chapter = 'title';
  let counts = new Map<string, number>();
  return blocks.map((block): Block => {
    if (block.kind === 'pageBreak') return block;
    if (block.kind === 'heading') {
      chapter = block.id;
      counts = new Map();
      return { ...block, key: chapter };
    }
    if (block.kind === 'figure') return { ...block, key: `${chapter}/${block.id}` };
    const n = (counts.get(block.kind) ?? 0) + 1;
    counts.set(block.kind, n);
    return { ...block, key: `${chapter}/${block.kind}-${n}` };
  });
}
