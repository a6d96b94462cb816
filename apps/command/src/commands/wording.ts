/** `standfast wording`: the texts of the report that a firm may word, with their places, as a file to edit. */
import { onDisk, writeWhole } from '@standfast/casefile/node';
import { LANGUAGES, type LanguageCode, wordingTexts } from '@standfast/report';
import { checkOutput } from '../files/output.ts';

/** Writes key and present text of each; what can only be added to has no text yet. */
export async function wording({
  language = 'en',
  out,
}: {
  language?: LanguageCode;
  out?: string;
}): Promise<void> {
  const texts = wordingTexts(LANGUAGES[language].report).map(({ key, text, adds }) => [
    key,
    adds ? '' : text,
  ]);
  const json = `${JSON.stringify(Object.fromEntries(texts), null, 2)}\n`;
  if (out === undefined) {
    process.stdout.write(json);
    return;
  }
  await checkOutput(out, []);
  await onDisk(out, () => writeWhole(out, new TextEncoder().encode(json)));
  process.stdout.write(`Wrote ${out}\n`);
}
