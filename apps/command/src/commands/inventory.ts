import { randomUUID } from 'node:crypto';
import { createReadStream, existsSync, readdirSync } from 'node:fs';
import { mkdir, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import {
  CASE_JSON,
  caseOfTree,
  caseText,
  featureScanner,
  type InventoryMapping,
  type InventorySurvey,
  labelCounter,
  propertyText,
  type RepeatedLabels,
  repeatsInWords,
  surveyor,
  treeOrFault,
} from '@standfast/casefile';
import { onDisk } from '@standfast/casefile/node';
import { InputFault } from '@standfast/engine';
import { look } from '../files/read.ts';
import { folderNames } from '../list/folder-names.ts';
import { UsageFault } from '../outcome.ts';
import { newPage, type Page } from '../terminal/page.ts';

interface Options {
  label?: string;
  species?: string;
  skipFaulty?: boolean;
  look?: boolean;
}

/** Folders written side by side. */
const LANES = 8;

/**
 * Makes a case folder of each tree of a GeoJSON inventory. The file is looked over as a whole before anything is written.
 * @throws InputFault when the file or the folder is at fault
 */
export async function inventory(file: string, folder: string, options: Options): Promise<void> {
  await checkFile(file);
  if (!options.look) checkFolder(folder);
  const survey = await surveyed(file);
  const mapping = mappingOf(survey, options);
  const page = newPage();
  told(page, file, survey, mapping, options);
  if (options.look) {
    page.text('Nothing was written (--look).');
    page.print();
    return;
  }
  if (survey.faulty > 0 && !options.skipFaulty) {
    const { index, text } = survey.faults[0]!;
    throw new InputFault(
      `${survey.faulty} of ${survey.trees + survey.faulty} features are no tree with a position, and nothing was written; the first: ${text}. Mend the file, or take the others with --skip-faulty (--look lists the faults)`,
      `${file}: features[${index}]`,
    );
  }
  const repeats = await writeCases(file, folder, mapping, survey.trees);
  for (const sentence of repeatsInWords(repeats)) page.item('!', sentence);
  page.text(
    `Wrote ${survey.trees.toLocaleString('en')} ${survey.trees === 1 ? 'case' : 'cases'} into ${folder}`,
  );
  page.print();
}

async function checkFile(file: string): Promise<void> {
  if ((await look(file)).isDirectory())
    throw new InputFault('this is a folder: give the GeoJSON file of the trees', file);
}

function checkFolder(folder: string): void {
  if (existsSync(folder) && readdirSync(folder).length > 0)
    throw new InputFault(
      'the folder is not empty, and nothing in it was touched: choose a new or empty one',
      folder,
    );
}

/** The file's text, piece by piece. @throws InputFault where it is not UTF-8 */
async function* textOf(file: string): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const decoded = (bytes?: Uint8Array) => {
    try {
      return bytes ? decoder.decode(bytes, { stream: true }) : decoder.decode();
    } catch {
      throw new InputFault('this is not UTF-8 text, so not GeoJSON: export it as UTF-8', file);
    }
  };
  const pieces = createReadStream(file, { highWaterMark: 1 << 18 })[Symbol.asyncIterator]();
  for (;;) {
    const { done, value } = await onDisk(file, () => pieces.next());
    if (done) break;
    yield decoded(value as Uint8Array);
  }
  yield decoded();
}

async function surveyed(file: string): Promise<InventorySurvey> {
  const looking = surveyor(file);
  for await (const piece of textOf(file)) looking.push(piece);
  return looking.end();
}

function mappingOf({ properties, guess }: InventorySurvey, { label, species }: Options): InventoryMapping {
  const chosen = (option: string | undefined, flag: string, guessed: string | null) => {
    if (option === undefined) return guessed;
    if (properties.some(({ name }) => name === option)) return option;
    throw new UsageFault(
      `${flag} ${option}: no tree has this property. There are ${
        properties
          .slice(0, 20)
          .map(({ name }) => name)
          .join(', ') || 'none'
      }.`,
    );
  };
  return {
    label: chosen(label, '--label', guess.label),
    species: chosen(species, '--species', guess.species),
  };
}

function told(
  page: Page,
  file: string,
  survey: InventorySurvey,
  mapping: InventoryMapping,
  options: Options,
): void {
  const { trees, faulty, faults, properties } = survey;
  page.text(`${file}: ${trees.toLocaleString('en')} ${trees === 1 ? 'tree' : 'trees'}.`, 'strong');
  const part = (what: 'label' | 'species') => {
    const property = properties.find(({ name }) => name === mapping[what]);
    const how = options[what] === undefined ? 'guessed' : 'as asked';
    page.item(
      '-',
      property
        ? `${what} from ${property.name} (${how}), for example ${property.examples.map((text) => `“${text}”`).join(', ') || 'nothing'}; filled for ${property.filled.toLocaleString('en')}`
        : `no ${what}: none of ${properties.map(({ name }) => name).join(', ') || 'no properties'} looks like one; name it with --${what}`,
    );
  };
  part('label');
  part('species');
  for (const { index, text } of faults) page.item('!', `features[${index}]: ${text}`);
  if (faulty > faults.length)
    page.text(`and ${(faulty - faults.length).toLocaleString('en')} more at fault`, 'quiet');
}

/** All cases are written beside the folder, which appears when every one is there: all or none. */
async function writeCases(
  file: string,
  folder: string,
  mapping: InventoryMapping,
  total: number,
): Promise<RepeatedLabels> {
  const target = path.resolve(folder);
  const part = path.join(path.dirname(target), `.${path.basename(target)}.${randomUUID().slice(0, 8)}.part`);
  try {
    await onDisk(folder, () => mkdir(part, { recursive: true }));
    const repeats = await writeInto(part, file, mapping, total);
    await onDisk(folder, async () => {
      if (existsSync(target)) await rmdir(target);
      await rename(part, target);
    });
    return repeats;
  } catch (error) {
    await rm(part, { recursive: true, force: true });
    throw error;
  }
}

async function writeInto(
  folder: string,
  file: string,
  mapping: InventoryMapping,
  total: number,
): Promise<RepeatedLabels> {
  const scanner = featureScanner(file);
  const labels = labelCounter();
  const folderName = folderNames();
  const progress = progressOn(process.stderr, total);
  let written = 0;
  for await (const piece of textOf(file)) {
    const waiting = scanner.push(piece).values();
    const lane = async () => {
      for (const feature of waiting) {
        const tree = treeOrFault(feature, file);
        if (tree instanceof InputFault) continue;
        const label = propertyText(tree, mapping.label);
        labels.count(label, tree.index);
        const place = path.join(folder, folderName(label, tree.index));
        await onDisk(place, async () => {
          await mkdir(place);
          await writeFile(path.join(place, CASE_JSON), caseText(caseOfTree(tree, mapping)));
        });
        progress(++written);
      }
    };
    await Promise.all(Array.from({ length: LANES }, lane));
  }
  return labels.repeats();
}

/** Tells how far it is, on one line, where that is a terminal. */
function progressOn(stream: NodeJS.WriteStream, total: number): (done: number) => void {
  if (!stream.isTTY) return () => undefined;
  return (done) => {
    if (done % 500 !== 0 && done !== total) return;
    stream.write(`\r${done} of ${total} cases${done === total ? '\n' : ''}`);
  };
}
