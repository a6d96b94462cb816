/**
 * A work list as GeoJSON (RFC 7946): one point a case, its columns as properties. Written piece by piece, so that a
 * city's list needs no more memory than a street's. A case without a position has a null geometry, which section 3.2 of
 * the standard allows.
 */
import { LIST_COLUMN_NAMES } from './columns.ts';
import type { WorkRow } from './workRow.ts';

/** What stands before the first feature. */
export const GEOJSON_HEAD = '{"type":"FeatureCollection","features":[';
/** What stands after the last. */
export const GEOJSON_END = '\n]}\n';

/** A row as a feature, with the comma before it where it is not the first. */
export function geoJsonFeature(row: WorkRow, first: boolean): string {
  const { latitude, longitude } = row;
  const properties = Object.fromEntries(
    LIST_COLUMN_NAMES.filter((name) => name !== 'latitude' && name !== 'longitude').map((name) => [
      name,
      row[name],
    ]),
  );
  const feature = {
    type: 'Feature',
    id: row.case,
    geometry:
      latitude === null || longitude === null ? null : { type: 'Point', coordinates: [longitude, latitude] },
    properties,
  };
  return `${first ? '' : ','}\n${JSON.stringify(feature)}`;
}

/** The whole list. */
export function listGeoJson(rows: readonly WorkRow[]): string {
  return GEOJSON_HEAD + rows.map((row, i) => geoJsonFeature(row, i === 0)).join('') + GEOJSON_END;
}
