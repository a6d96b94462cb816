/** Short ways to make blocks. Numbers of figures, tables and headings are set when the document is put together. */
import type { Scene } from '../scene/scene.ts';
import type { Block, TableColumn } from './blocks.ts';

export function heading(level: 1 | 2, text: string, id: string): Block {
  return { kind: 'heading', level, text, id, number: '' };
}

export function figure(scene: Scene, caption: string, id: string, keep = 0): Block {
  return { kind: 'figure', scene, caption, id, number: 0, ...(keep > 0 ? { keep } : {}) };
}

/** A figure that lets the table after it go first on paper, where that fills a page which the figure would not fit. */
export function floating(...make: Parameters<typeof figure>): Block {
  return { ...(figure(...make) as Extract<Block, { kind: 'figure' }>), floats: true };
}

/** A table whose columns take the given shares of its width. */
export function table(
  caption: string,
  titles: readonly string[],
  shares: readonly number[],
  rows: string[][],
  align: readonly ('start' | 'end')[] = [],
): Block {
  const columns = titles.map(
    (title, i): TableColumn => ({
      title,
      share: shares[i]!,
      ...(align[i] === 'end' ? { align: 'end' } : {}),
    }),
  );
  return { kind: 'table', caption, number: 0, columns, rows };
}
