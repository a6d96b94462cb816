import { sectionInputFrom, sectionProperties } from '@standfast/engine';
import { readJson } from '../files/read.ts';
import { printJson } from '../json.ts';
import { direction, fixed } from '../terminal/numbers.ts';
import { newPage } from '../terminal/page.ts';

/** More than any outline that was ever measured, less than what fills the memory. */
const LIMIT_BYTES = 64 * 1024 * 1024;
/** These are exact properties, so more digits are kept than of an estimate. */
const EXACT_DIGITS = 12;

/**
 * Prints the exact section properties of an outline with voids.
 * @throws InputFault when the file is no JSON, or the outline or a void makes no sense
 */
export async function section(file: string, options: { json?: boolean }): Promise<void> {
  const input = sectionInputFrom(await readJson(file, 'a section', LIMIT_BYTES), file);
  const properties = sectionProperties(input);
  if (options.json) {
    const { areaMm2, centroidMm, ixxMm4, iyyMm4, ixyMm4, modulusMm3, remaining, ...more } = properties;
    printJson({ areaMm2, centroidMm, ixxMm4, iyyMm4, ixyMm4, modulusMm3, remaining, ...more }, EXACT_DIGITS);
    return;
  }

  const page = newPage();
  page.heading(file);
  page.table(
    [
      { head: 'property', align: 'left' },
      { head: 'value', align: 'right' },
      { head: 'unit', align: 'left' },
    ],
    [
      ['area of wood', scientific(properties.areaMm2), 'mm²'],
      ['centroid, east', fixed(properties.centroidMm[0], 2), 'mm'],
      ['centroid, north', fixed(properties.centroidMm[1], 2), 'mm'],
      ['Ixx about the centroid', scientific(properties.ixxMm4), 'mm⁴'],
      ['Iyy about the centroid', scientific(properties.iyyMm4), 'mm⁴'],
      ['Ixy about the centroid', scientific(properties.ixyMm4), 'mm⁴'],
    ],
  );
  page.gap();
  page.table(
    [
      { head: 'bending toward', align: 'left' },
      { head: 'modulus mm³', align: 'right' },
      { head: 'left of the sound section', align: 'right' },
    ],
    properties.modulusMm3.map(({ directionDeg, value }, i) => [
      direction(directionDeg),
      scientific(value),
      `${fixed(properties.remaining[i]!.value * 100, 1)} %`,
    ]),
  );
  const least = properties.remaining.reduce((a, b) => (b.value < a.value ? b : a));
  page.gap();
  page.text(
    `Least left: ${fixed(least.value * 100, 1)} %, bending toward ${direction(least.directionDeg)}. Computed from the outline and voids as given, so exact for them; how well they were measured is not in it.`,
  );
  page.print();
}

const scientific = (value: number) => value.toExponential(5);
