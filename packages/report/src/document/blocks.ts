/** The report as a document of blocks, before it is HTML or PDF. Plain data. */
import type { Scene } from '../scene/scene.ts';

export type Severity = 'note' | 'caution' | 'serious';

export interface KeyFigure {
  label: string;
  /** The middle estimate. */
  value: string;
  /** Its interval in words, for example `0.87 to 2.00`. */
  interval: string;
  /** What it rests on or how to take it. */
  note?: string;
}

export interface TableColumn {
  title: string;
  /** Share of the table's width. */
  share: number;
  align?: 'start' | 'end';
}

export type Block =
  | { kind: 'title'; text: string; subtitle: string; marker?: string }
  | { kind: 'heading'; level: 1 | 2; text: string; id: string; number: string }
  | { kind: 'paragraph'; text: string; tone?: 'plain' | 'lead' | 'small' }
  | { kind: 'list'; items: string[] }
  | { kind: 'keyFigures'; items: KeyFigure[] }
  | {
      kind: 'figure';
      scene: Scene;
      caption: string;
      id: string;
      number: number;
      /** How many of the next blocks should stand on the same page, where they fit one. */
      keep?: number;
    }
  | {
      kind: 'table';
      caption: string;
      number: number;
      columns: TableColumn[];
      /** Rows of cells; the first cell of a row is its heading. */
      rows: string[][];
    }
  | { kind: 'callout'; severity: Severity; title: string; text: string }
  | { kind: 'definitions'; items: { term: string; text: string }[]; layout: 'facts' | 'list' | 'answers' }
  | { kind: 'pageBreak' }
  | { kind: 'signature'; statement: string; lines: { label: string; value: string }[] };

export interface ReportDocument {
  title: string;
  /** Short name of the case for the head of each page. */
  caseLabel: string;
  subject: string;
  author: string;
  language: string;
  /** `2026-05-14`. */
  generatedOn: string;
  paper: 'a4' | 'letter';
  /** For the foot of each page: what made it. */
  producer: string;
  words: {
    page: (n: number, of: number) => string;
    figure: string;
    table: string;
    continued: string;
    contents: string;
  };
  blocks: Block[];
}
