/** Tables of readings, off the page's thread: a long one must not freeze the screen. */
import { guessTable, previewTable, readTable, type TableGuess, writeTraceTable } from '@standfast/casefile';
import { InputFault, type Notice } from '@standfast/engine';
import { expose } from 'comlink';

export type TableOutcome<T> = { ok: true; value: T } | { ok: false; message: string };

/** A trace read from a table, as the file that the case keeps. */
export interface KeptTrace {
  label: string;
  csv: Uint8Array;
  samples: number;
  deepestMm: number;
}

async function told<T>(step: () => Promise<T>): Promise<TableOutcome<T>> {
  try {
    return { ok: true, value: await step() };
  } catch (thrown) {
    if (thrown instanceof InputFault) return { ok: false, message: thrown.message };
    return { ok: false, message: thrown instanceof Error ? thrown.message : String(thrown) };
  }
}

const api = {
  guess: (bytes: Uint8Array, name: string) => told(() => guessTable(bytes, name)),
  preview: (bytes: Uint8Array, guess: TableGuess) => told(() => previewTable(bytes, guess)),
  read: (bytes: Uint8Array, guess: TableGuess) =>
    told(async (): Promise<{ traces: KeptTrace[]; notices: Notice[] }> => {
      const { traces, notices } = await readTable(bytes, guess);
      return {
        notices,
        traces: traces.map(({ label, trace }) => ({
          label,
          csv: writeTraceTable(trace, [`read from ${guess.name}`]),
          samples: trace.depthMm.length,
          deepestMm: trace.depthMm.at(-1) ?? 0,
        })),
      };
    }),
};

export type TablesApi = typeof api;

expose(api);
