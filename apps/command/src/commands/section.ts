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
  const properties = sectionProperties(
    sectionInputFrom(await readJson(file, 'a section', LIMIT_BYTES), file),
  );
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
    // Opposite directions have the same modulus: the greatest stress is only pull instead of push.
    properties.modulusMm3
      .filter(({ directionDeg }) => directionDeg < 180)
      .map(({ directionDeg, value }, i) => [
        `${directionDeg}° or ${directionDeg + 180}°`,
        scientific(value),
        `${fixed(properties.remaining[i]!.value * 100, 1)} %`,
      ]),
  );
  const { least, warnings } = properties;
  page.gap();
  page.text(
    `Weakest of all directions: toward ${direction(least.directionDeg)}, ${fixed(least.remaining * 100, 1)} % left.`,
  );
  page.text(
    'Computed from the outline and voids as given, and exact for them; how well they were measured is not in it.',
    'quiet',
  );
  for (const warning of warnings) page.item('caution:', warning);
  page.print();
}

const scientific = (value: number) => value.toExponential(5);
