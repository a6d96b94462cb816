/**
 * Reading the JSON of `standfast section`: an outline and its voids, field by field.
 */
import { InputFault } from '../faults.ts';
import { checkOutlineShape, checkRing } from './check-outline.ts';
import type { SectionToMeasure } from './properties.ts';
import type { Outline, PointMm } from './types.ts';

type Fields = Record<string, unknown>;

/** Fields beside outline and voids that may stand in the document without a remark. */
const LABELS = new Set(['format', 'version', 'id', 'name', 'label', 'note']);

const OUTLINE_FIELDS: Record<Outline['kind'], readonly string[]> = {
  circle: ['diameterMm'],
  ellipse: ['longMm', 'shortMm', 'longAxisDeg'],
  radii: ['radii'],
  polygon: ['points'],
};

/**
 * An outline and voids from parsed JSON: `{"outline": {…}, "voids": [[[xMm, yMm], …], …]}`, voids optional. Unknown
 * fields are let by with a warning, so that a misspelt one is noticed.
 *
 * @param where what the JSON came from, for example the file's name; faults name the field after it.
 * @throws InputFault naming the field that is missing, of the wrong kind or impossible.
 */
export function sectionInputFrom(json: unknown, where: string): SectionToMeasure & { warnings: string[] } {
  const document = fieldsOf(json, where, 'an object with an "outline" and, if there are any, "voids"');
  const outline = outlineFrom(document.outline, at(where, 'outline'));
  checkOutlineShape(outline, at(where, 'outline'));
  const voids = (
    document.voids === undefined ? [] : listOf(document.voids, at(where, 'voids'), 'a list of rings')
  ).map((ring, i) => {
    const points = pointsFrom(ring, `${at(where, 'voids')}[${i}]`);
    checkRing(points, `${at(where, 'voids')}[${i}]`, 'void');
    return points;
  });
  const known = new Set(['outline', 'voids', ...LABELS]);
  const warnings = [
    ...unknown(document, known, ''),
    ...unknown(document.outline as Fields, new Set(['kind', ...OUTLINE_FIELDS[outline.kind]]), 'outline.'),
  ];
  return { outline, voids, warnings };
}

/**
 * An outline from parsed JSON, its fields' kinds checked; `checkOutline` or `checkOutlineShape` checks its sense.
 *
 * @throws InputFault naming the field that is missing or of the wrong kind.
 */
export function outlineFrom(json: unknown, where: string): Outline {
  const fields = fieldsOf(json, where, 'an object with a "kind"');
  switch (fields.kind) {
    case 'circle':
      return { kind: 'circle', diameterMm: numberFrom(fields, 'diameterMm', where) };
    case 'ellipse':
      return {
        kind: 'ellipse',
        longMm: numberFrom(fields, 'longMm', where),
        shortMm: numberFrom(fields, 'shortMm', where),
        longAxisDeg: numberFrom(fields, 'longAxisDeg', where),
      };
    case 'radii':
      return {
        kind: 'radii',
        radii: listOf(fields.radii, `${where}.radii`, 'a list of {"azimuthDeg", "radiusMm"}').map(
          (item, i) => {
            const place = `${where}.radii[${i}]`;
            const radius = fieldsOf(item, place, 'an object with "azimuthDeg" and "radiusMm"');
            return {
              azimuthDeg: numberFrom(radius, 'azimuthDeg', place),
              radiusMm: numberFrom(radius, 'radiusMm', place),
            };
          },
        ),
      };
    case 'polygon':
      return { kind: 'polygon', points: pointsFrom(fields.points, `${where}.points`) };
    default:
      throw new InputFault(
        `The kind of outline is ${fields.kind === undefined ? 'missing' : JSON.stringify(fields.kind)}. Use "circle", "ellipse", "radii" or "polygon".`,
        `${where}.kind`,
      );
  }
}

function at(where: string, field: string): string {
  return where ? `${where}: ${field}` : field;
}

function fieldsOf(json: unknown, where: string, wanted: string): Fields {
  if (json === null || typeof json !== 'object' || Array.isArray(json)) {
    throw new InputFault(`This is ${nameOf(json)}. Give ${wanted}.`, where);
  }
  return json as Fields;
}

function listOf(json: unknown, where: string, wanted: string): unknown[] {
  if (!Array.isArray(json)) throw new InputFault(`This is ${nameOf(json)}. Give ${wanted}.`, where);
  return json;
}

function numberFrom(fields: Fields, field: string, where: string): number {
  const value = fields[field];
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new InputFault(`This is ${nameOf(value)}. Give a number without quotes.`, `${where}.${field}`);
  }
  return value;
}

function pointsFrom(json: unknown, where: string): PointMm[] {
  return listOf(json, where, 'a list of points [x, y]').map((point, i) => {
    const pair = Array.isArray(point) ? (point as unknown[]) : [];
    const [x, y] = pair;
    if (pair.length !== 2 || typeof x !== 'number' || typeof y !== 'number') {
      throw new InputFault(
        `This is ${Array.isArray(point) ? JSON.stringify(point).slice(0, 60) : nameOf(point)}. Give a point as two numbers, [x east, y north] in millimetres.`,
        `${where}[${i}]`,
      );
    }
    return [x, y];
  });
}

function nameOf(value: unknown): string {
  if (value === undefined) return 'missing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return `the text ${JSON.stringify(value.slice(0, 40))}`;
  return String(value);
}

function unknown(fields: Fields, known: ReadonlySet<string>, prefix: string): string[] {
  return Object.keys(fields)
    .filter((field) => !known.has(field))
    .map((field) => `The field "${prefix}${field}" is not known and was not used.`);
}
