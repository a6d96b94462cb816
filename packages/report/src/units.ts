/** Numbers in words, in metric or US customary units. Exact factors: 1 in = 25.4 mm, 1 ft = 0.3048 m. */
import { language } from './words/spoken.ts';

export type Units = 'metric' | 'us';

const NARROW = '\u00a0';

/** A number with a fixed count of decimals, the language's decimal mark, a true minus sign, and thin groups from 10,000 on. */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const [whole, rest] = text.split('.') as [string, string | undefined];
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, NARROW) : whole;
  const sign = value < 0 && Number(text) !== 0 ? '−' : '';
  return sign + (rest === undefined ? grouped : grouped + language().numbers.decimalMark + rest);
}

/** A round number with the decimals it has, the language's decimal mark and a true minus sign. */
export function roundNumber(value: number): string {
  return String(value).replace('-', '−').replace('.', language().numbers.decimalMark);
}

interface Scale {
  unit: string;
  perSi: number;
  decimals: number;
}

const scales = {
  lengthMm: {
    metric: { unit: 'mm', perSi: 1, decimals: 0 },
    us: { unit: 'in', perSi: 1 / 25.4, decimals: 1 },
  },
  heightM: {
    metric: { unit: 'm', perSi: 1, decimals: 1 },
    us: { unit: 'ft', perSi: 1 / 0.3048, decimals: 1 },
  },
  speedMs: {
    metric: { unit: 'm/s', perSi: 1, decimals: 1 },
    us: { unit: 'mph', perSi: 1 / 0.44704, decimals: 0 },
  },
  momentNm: {
    metric: { unit: 'kN·m', perSi: 1e-3, decimals: 0 },
    us: { unit: 'kip·ft', perSi: 1 / (4.4482216152605 * 304.8), decimals: 0 },
  },
  areaM2: {
    metric: { unit: 'm²', perSi: 1, decimals: 1 },
    us: { unit: 'ft²', perSi: 1 / 0.09290304, decimals: 0 },
  },
  pressurePa: {
    metric: { unit: 'Pa', perSi: 1, decimals: 0 },
    us: { unit: 'psf', perSi: 0.09290304 / 4.4482216152605, decimals: 1 },
  },
  modulusM3: {
    metric: { unit: 'cm³', perSi: 1e6, decimals: 0 },
    us: { unit: 'in³', perSi: 1 / 0.0254 ** 3, decimals: 0 },
  },
} satisfies Record<string, Record<Units, Scale>>;

export type Quantity = keyof typeof scales;

/** Unit's name for a quantity. */
export function unitOf(quantity: Quantity, units: Units): string {
  return scales[quantity][units].unit;
}

/** A value of SI (or mm) in the chosen units, without rounding. */
export function inUnits(value: number, quantity: Quantity, units: Units): number {
  return value * scales[quantity][units].perSi;
}

/** The number alone, rounded as the quantity is. */
export function number(value: number, quantity: Quantity, units: Units): string {
  const { perSi, decimals } = scales[quantity][units];
  return fixed(value * perSi, decimals);
}

/** The number with its unit, held together. */
export function measure(value: number, quantity: Quantity, units: Units): string {
  return `${number(value, quantity, units)}${NARROW}${unitOf(quantity, units)}`;
}

/** `low to high unit` of an interval. */
export function span(low: number, high: number, quantity: Quantity, units: Units): string {
  return language().numbers.range(number(low, quantity, units), measure(high, quantity, units));
}

/** The compass point nearest to an azimuth, in words. */
export function compassPoint(azimuthDeg: number): string {
  return language().numbers.compassPoints[Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8]!;
}

/** `140° (south-east)`. */
export function bearing(azimuthDeg: number): string {
  return `${Math.round(azimuthDeg)}° (${compassPoint(azimuthDeg)})`;
}
