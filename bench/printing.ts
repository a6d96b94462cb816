/** How figures of speed are printed. */
import { table } from '../apps/command/src/terminal/text.ts';

/** What a photo of 12 megapixels may take. */
export const STRIP_TARGET_MS = 1500;

export const say = (text = '') => process.stdout.write(`${text}\n`);

/** Milliseconds with as many digits as mean something. */
export const ms = (value: number) =>
  value >= 100 ? value.toFixed(0) : value >= 1 ? value.toFixed(1) : value.toFixed(3);

/** Rows of what was done, how many milliseconds it took, and a remark. */
export function print(rows: string[][]): void {
  for (const line of table(
    [
      { head: 'what', align: 'left' },
      { head: 'ms', align: 'right' },
      { head: '', align: 'left' },
    ],
    rows,
  )) {
    say(`  ${line}`);
  }
}
