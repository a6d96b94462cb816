/** Sentences of the assessment, which are written in SI, as a reader of US customary units is given them. */
import { measure, number, type Quantity, type Units } from '../units.ts';
import { language } from '../words/spoken.ts';

const SPACE = '[ \u00a0]';

const UNITS: Record<string, { quantity: Quantity; toSi: number }> = {
  'm/s': { quantity: 'speedMs', toSi: 1 },
  kN·m: { quantity: 'momentNm', toSi: 1000 },
  'm²': { quantity: 'areaM2', toSi: 1 },
  mm: { quantity: 'lengthMm', toSi: 1 },
  cm: { quantity: 'lengthMm', toSi: 10 },
  m: { quantity: 'heightM', toSi: 1 },
};

/** A number, or numbers joined by `to`, `and` or a comma, before one unit, as the language writes them. */
function measured(decimalMark: string, to: string, and: string): RegExp {
  const grouping = decimalMark === '.' ? '\\u00a0,' : '\\u00a0';
  const decimals = `(?:\\${decimalMark}\\d+)?`;
  return new RegExp(
    `(?<![\\w.])(\\d[\\d${grouping}]*${decimals})((?:(?:,${SPACE}|${SPACE}(?:${to}|${and})${SPACE})\\d+${decimals})*)${SPACE}(m/s|kN·m|m²|mm|cm|m)(?![\\w²³·/])`,
    'g',
  );
}

/** The sentence with its lengths, speeds, areas and moments in the chosen units. Metric is left as written. */
export function textInUnits(text: string, units: Units): string {
  if (units === 'metric') return text;
  const { decimalMark, to, and } = language().numbers;
  return text.replace(measured(decimalMark, to, and), (_, first: string, others: string, unit: string) => {
    const { quantity, toSi } = UNITS[unit]!;
    const plain = (digits: string) =>
      Number(
        (decimalMark === '.' ? digits.replace(/[\u00a0,]/g, '') : digits.replace(/\u00a0/g, '')).replace(
          decimalMark,
          '.',
        ),
      ) * toSi;
    const last = measure(0, quantity, units).replace(/^[\d.,]+/, '');
    const converted = (digits: string) => number(plain(digits), quantity, units);
    const each = new RegExp(`\\d+(?:\\${decimalMark}\\d+)?`, 'g');
    return `${converted(first)}${others.replace(each, converted)}${last}`;
  });
}
