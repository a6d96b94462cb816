/** The passages of a report, for choosing what to strike and where to add text. */
import type { Block, ReportDocument } from './blocks.ts';
import { excerpt, mayStrike, wordsOf } from './changes.ts';

export interface Passage {
  key: string;
  kind: Block['kind'];
  /** Number and name of the chapter, for example `12 Method in plain words`. */
  chapter: string;
  /** What it says, the beginning. */
  words: string;
  mayStrike: boolean;
  struck: Block['struck'] | null;
}

/** Every block with a key, in the order of the report. */
export function passagesOf(report: ReportDocument): Passage[] {
  const passages: Passage[] = [];
  let chapter = report.title;
  for (const block of report.blocks) {
    if (block.kind === 'heading' && block.level === 1) chapter = `${block.number} ${block.text}`;
    if (block.key === undefined || (block.kind === 'heading' && block.level === 1)) continue;
    passages.push({
      key: block.key,
      kind: block.kind,
      chapter,
      words: excerpt(wordsOf(block), 160),
      mayStrike: mayStrike(block),
      struck: block.struck ?? null,
    });
  }
  return passages;
}
