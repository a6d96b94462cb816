/** Inventories and backgrounds, off the page's thread: read as a stream, and kept in storage as they go by. */
import {
  CASE_JSON,
  type CaseFile,
  caseOfTree,
  caseText,
  featureScanner,
  type InventoryMapping,
  type InventorySurvey,
  inspectCase,
  labelCounter,
  propertyText,
  repeatsInWords,
  surveyor,
  treeOrFault,
} from '@standfast/casefile';
import { InputFault } from '@standfast/engine';
import { expose } from 'comlink';
import { type LineSet, lineReader } from '../map/lines.ts';
import { recordOf } from '../storage/cases.ts';
import { database } from '../storage/database.ts';
import { storageFaultOf } from '../storage/faults.ts';
import { summaryOf } from '../storage/summaries.ts';

export type InventoryOutcome<T> = { ok: true; value: T } | { ok: false; message: string };

/** Trees taken at a time; more belong to the command line, which makes folders of them. */
const MOST_TREES = 20_000;
/** Cases put away together. */
const TOGETHER = 400;

async function* textOf(file: File): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = file.stream().getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      yield done ? decoder.decode() : decoder.decode(value, { stream: true });
      if (done) return;
    }
  } catch (thrown) {
    if (thrown instanceof TypeError)
      throw new InputFault('this is not UTF-8 text, so not GeoJSON: export it as UTF-8', file.name);
    throw thrown;
  } finally {
    reader.releaseLock();
  }
}

async function told<T>(step: () => Promise<T>): Promise<InventoryOutcome<T>> {
  try {
    return { ok: true, value: await step() };
  } catch (thrown) {
    if (thrown instanceof InputFault) return { ok: false, message: thrown.message };
    return { ok: false, message: storageFaultOf(thrown).message };
  }
}

/** A case of a tree that nobody has visited, with all that it still lacks. */
function recordsOf(caseFile: CaseFile, now: number) {
  const record = recordOf(caseFile, {}, 'brought in', now);
  const bag = new Map([[CASE_JSON, new TextEncoder().encode(caseText(caseFile))]]);
  const faults = inspectCase(bag).faults.map(({ what, where }) => ({ what, where }));
  return { record, summary: summaryOf(record, { faults }) };
}

const api = {
  /** Looks the file over; keeps nothing. */
  survey: (file: File): Promise<InventoryOutcome<InventorySurvey>> =>
    told(async () => {
      const looking = surveyor(file.name);
      for await (const piece of textOf(file)) looking.push(piece);
      const survey = looking.end();
      if (survey.trees > MOST_TREES)
        throw new InputFault(
          `there are ${survey.trees} trees in it, and the app takes ${MOST_TREES} at a time: split the file by district, or use “standfast inventory” on the command line`,
          file.name,
        );
      return survey;
    }),

  /** Makes a case of each tree and returns what is to be told. Features at fault are passed over. */
  make: (file: File, mapping: InventoryMapping, onProgress: (done: number) => void) =>
    told(async () => {
      const scanner = featureScanner(file.name);
      const labels = labelCounter();
      let made = 0;
      let waiting: ReturnType<typeof recordsOf>[] = [];
      const put = async () => {
        const some = waiting;
        waiting = [];
        await database.transaction('rw', database.cases, database.summaries, async () => {
          await database.cases.bulkAdd(some.map(({ record }) => record));
          await database.summaries.bulkPut(some.map(({ summary }) => summary));
        });
        made += some.length;
        onProgress(made);
      };
      for await (const piece of textOf(file)) {
        for (const feature of scanner.push(piece)) {
          const tree = treeOrFault(feature, file.name);
          if (tree instanceof InputFault) continue;
          labels.count(propertyText(tree, mapping.label), tree.index);
          waiting.push(recordsOf(caseOfTree(tree, mapping), Date.now()));
          if (waiting.length >= TOGETHER) await put();
        }
      }
      if (waiting.length > 0) await put();
      return { made, notices: repeatsInWords(labels.repeats()) };
    }),

  /** Reads roads, paths and boundaries and keeps them as the map's background. */
  background: (file: File): Promise<InventoryOutcome<{ lines: number }>> =>
    told(async () => {
      const reader = lineReader(file.name);
      for await (const piece of textOf(file)) reader.push(piece);
      const set: LineSet = reader.end();
      await database.backgrounds.put({ id: 'background', name: file.name, ...set });
      return { lines: set.starts.length - 1 };
    }),
};

export type InventoryApi = typeof api;

expose(api);
