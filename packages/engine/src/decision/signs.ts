/** What each recorded sign means for the decision, by the tables of signs and fungi. */
import type { SignReading } from '../assessment.ts';
import type { SignInput } from '../case.ts';
import { signName, signSpeaksOf, statusNote } from '../reference/index.ts';
import { failureSigns, fungi, rootSigns, type Status, signReadings } from '../reference/tables.generated.ts';
import { FAILURE_LIKELIHOODS, type FailureLikelihood } from './words.ts';

const BEARS_ON = ['breakage', 'uprooting', 'limb', 'decay'] as const;

const sourceOf = (row: { source: string; status: Status }) => row.source + statusNote(row.status);

function floorOf(word: string): FailureLikelihood | null {
  if (word === '') return null;
  const found = FAILURE_LIKELIHOODS.find((each) => each === word);
  if (!found) throw new Error(`sign-readings.csv: no likelihood "${word}"`);
  return found;
}

function bearing(word: string): SignReading['bearsOn'] {
  const found = BEARS_ON.find((each) => each === word);
  if (!found) throw new Error(`sign-readings.csv: "${word}" is nothing a sign can bear on`);
  return found;
}

/** Whether a sign names a fungus of the table, by species or by genus. */
export function namesFungus(sign: SignInput, name: string): boolean {
  return name
    .toLowerCase()
    .split(' ')
    .every((part) => signSpeaksOf(sign, `\\b${part}\\b`));
}

/** Every meaning of every sign, in the order of the signs. A sign may have none, or several. */
export function readSigns(signs: readonly SignInput[]): SignReading[] {
  return signs.flatMap((sign, index) => {
    const of = (rest: Omit<SignReading, 'index' | 'sign'>): SignReading => ({
      index,
      sign: signName(sign),
      ...rest,
    });
    const begun = [...failureSigns, ...rootSigns.filter((row) => row.severity === 'serious')]
      .filter((row) => signSpeaksOf(sign, row.pattern))
      .map((row) =>
        of({ bearsOn: 'failure begun', text: row.text, floor: 'imminent', source: sourceOf(row) }),
      );
    const roots = rootSigns
      .filter((row) => row.severity !== 'serious' && signSpeaksOf(sign, row.pattern))
      .map((row) =>
        of({
          bearsOn: 'uprooting',
          text: row.text,
          floor: row.doubt === 'yes' ? 'possible' : null,
          source: sourceOf(row),
        }),
      );
    const readings = signReadings
      .filter((row) => signSpeaksOf(sign, row.pattern))
      .map((row) =>
        of({
          bearsOn: bearing(row.bearsOn),
          text: row.text,
          floor: floorOf(row.floor),
          source: sourceOf(row),
        }),
      );
    const named = fungi
      .filter((row) => namesFungus(sign, row.name))
      .map((row) =>
        of({
          bearsOn: 'decay',
          text: `${row.name} rots ${row.position} (${row.rot} rot): ${row.note}.`,
          floor: 'possible',
          source: sourceOf(row),
        }),
      );
    return [...begun, ...roots, ...readings, ...named];
  });
}
