/** Gathers what a command tells a person, and prints it at once. */
import { shown, type Terminal, type Tone, terminalOf, toned } from './terminal.ts';
import { type Align, table, wrapped } from './text.ts';

export interface Page {
  terminal: Terminal;
  heading(text: string): void;
  /** A paragraph, broken to the width. */
  text(text: string, tone?: Tone): void;
  /** An item of a list: a mark, then text hanging from it. */
  item(mark: string, text: string, tone?: Tone): void;
  table(columns: { head: string; align: Align }[], rows: string[][]): void;
  /** Lines as they are. */
  lines(lines: string[]): void;
  gap(): void;
  print(): void;
}

/** A page for standard output. */
export function newPage(terminal = terminalOf(process.stdout, process.env, process.platform)): Page {
  const out: string[] = [];
  const put = (line: string, tone?: Tone) => out.push(tone ? toned(line, tone, terminal) : line);
  const page: Page = {
    terminal,
    heading(text) {
      if (out.length) page.gap();
      put(shown(text, terminal), 'strong');
    },
    text(text, tone) {
      for (const line of wrapped(shown(text, terminal), terminal.width)) put(line, tone);
    },
    item(mark, text, tone) {
      const indent = ' '.repeat(mark.length + 1);
      for (const line of wrapped(`${mark} ${shown(text, terminal)}`, terminal.width, indent)) put(line, tone);
    },
    table(columns, rows) {
      const plain = (cell: string) => shown(cell, terminal);
      const lines = table(
        columns.map(({ head, align }) => ({ head: plain(head), align })),
        rows.map((row) => row.map(plain)),
      );
      lines.forEach((line, i) => {
        put(`  ${line}`, i === 0 ? 'quiet' : undefined);
      });
    },
    lines(lines) {
      for (const line of lines) put(line);
    },
    gap() {
      if (out[out.length - 1] !== '') out.push('');
    },
    print() {
      process.stdout.write(`${out.join('\n')}\n`);
    },
  };
  return page;
}
