/** Polygons traced on a felled section, from a JSON file. */
import { type CaseFelled, jsonTrouble, parseCase } from '@standfast/casefile';
import { InputFault } from '@standfast/engine';

/**
 * What was traced, from the text of a JSON file: `{ "unsound": [ring, …], "incipient": [ring, …], "outline": …, "source":
 * …, "note": … }` as a case file holds it, the same under `"felled"`, or a bare list of rings of unsound wood. A
 * ring is a list of [x east, y north] in mm from the section's origin.
 *
 * @throws InputFault naming the field that cannot be read
 */
export function felledFromJson(text: string, name: string): CaseFelled {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    throw new InputFault(`This is not valid JSON${jsonTrouble(text)}.`, name);
  }
  const held = isObject(value) && 'felled' in value ? value.felled : value;
  const felled = Array.isArray(held) ? { unsound: held } : held;
  if (!isObject(felled) || !('unsound' in felled)) {
    throw new InputFault(
      'There is no list of polygons named “unsound” in it: rings of [x east, y north] in mm, an empty list where all was sound.',
      name,
    );
  }
  try {
    const { caseFile } = parseCase({
      format: 'standfast-case',
      version: 1,
      tree: {},
      sections: [{ id: 's', heightM: 1, outline: { kind: 'circle', diameterMm: 1 }, felled }],
    });
    return caseFile.sections[0]!.felled!;
  } catch (thrown) {
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    throw new InputFault(message.replace(/case\.json: sections\[0\]\.felled\.?/g, ''), name);
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
