/** Sentences of the assessment, which are written in SI, as a reader of US customary units is given them. */
import { measure, number, type Quantity, type Units } from '../units.ts';

const NUMBER = String.raw`(?<![\w.])(\d[\d\u00a0,]*(?:\.\d+)?)`;
const SPACE = '[ \u00a0]';

const UNITS: Record<string, { quantity: Quantity; toSi: number }> = {
  'm/s': { quantity: 'speedMs', toSi: 1 },
  kN·m: { quantity: 'momentNm', toSi: 1000 },
  'm²': { quantity: 'areaM2', toSi: 1 },
  mm: { quantity: 'lengthMm', toSi: 1 },
  cm: { quantity: 'lengthMm', toSi: 10 },
  m: { quantity: 'heightM', toSi: 1 },
};

/** A number, or numbers joined by `to`, `and` or a comma, before one unit. */
const MEASURED = new RegExp(
  `${NUMBER}((?:(?:,${SPACE}|${SPACE}(?:to|and)${SPACE})\\d+(?:\\.\\d+)?)*)${SPACE}(m/s|kN·m|m²|mm|cm|m)(?![\\w²³·/])`,
  'g',
);

/** The sentence with its lengths, speeds, areas and moments in the chosen units. Metric is left as written. */
export function textInUnits(text: string, units: Units): string {
  if (units === 'metric') return text;
  return text.replace(MEASURED, (_, first: string, others: string, unit: string) => {
    const { quantity, toSi } = UNITS[unit]!;
    const plain = (digits: string) => Number(digits.replace(/[\u00a0,]/g, '')) * toSi;
    const last = measure(0, quantity, units).replace(/^[\d.]+/, '');
    const converted = (digits: string) => number(plain(digits), quantity, units);
    return `${converted(first)}${others.replace(/\d+(?:\.\d+)?/g, converted)}${last}`;
  });
}
