/** The report as a document of blocks, before it is HTML or PDF. Plain data. */
import type { Picture } from '../picture/picture.ts';
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

/** A photo of the evidence, or word of one that is named and not there. */
export interface PhotoItem {
  number: number;
  /** What it shows. */
  caption: string;
  /** File, size and fingerprint, or why it is not printed. */
  facts: string;
  /** Null where it is missing or of a kind that is kept in the case only. */
  picture: Picture | null;
}

/** What any block may carry besides. */
export interface BlockMarks {
  /** By which the assessor strikes it or adds text after it. Set when the document is put together. */
  key?: string;
  /** Always printed: it cannot be struck. */
  lasting?: boolean;
  /** What became of the assessor's wish to strike it. */
  struck?: 'struck' | 'kept';
}

export type Block = BlockMarks & BlockBody;

type BlockBody =
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
      /** On paper the table after it may go first, where that fills a page that the figure would not fit. */
      floats?: boolean;
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
  | {
      kind: 'signature';
      statement: string;
      lines: { label: string; value: string; image?: Picture; alarm?: boolean }[];
    }
  | { kind: 'photos'; items: PhotoItem[] }
  | { kind: 'addition'; title: string; paragraphs: string[] };

/** A file that travels inside the report. */
export interface ReportAttachment {
  name: string;
  bytes: Uint8Array;
  /** For example `application/zip`. */
  mime: string;
  description?: string;
}

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
  /** The firm above the title of the first page, and small at the head of the others. */
  letterhead?: { lines: string[]; logo: Picture | null; logoText: string };
  words: {
    page: (n: number, of: number) => string;
    figure: string;
    table: string;
    continued: string;
    contents: string;
    photo: string;
    struck: string;
    kept: string;
    evidence: string;
  };
  blocks: Block[];
}
