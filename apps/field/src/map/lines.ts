/** Lines of a GeoJSON file to see behind the trees: roads, paths, boundaries. Areas are taken by their edges. */
import { featureScanner } from '@standfast/casefile';
import { InputFault } from '@standfast/engine';

export interface LineSet {
  /** Longitude and latitude of each point, one line after another, degrees. */
  lonLatDeg: Float64Array;
  /** Place of each line's first point; the number of points at the end. */
  starts: Uint32Array;
}

/** More would not pan smoothly on a phone. */
const MOST_POINTS = 500_000;

export interface LineReader {
  push(piece: string): void;
  /** @throws InputFault when the file holds no line */
  end(): LineSet;
}

/**
 * @param name the file's name, for messages
 * @throws InputFault (while reading) when a coordinate is no longitude and latitude, or there are too many
 */
export function lineReader(name: string): LineReader {
  const scanner = featureScanner(name);
  const points: number[] = [];
  const starts: number[] = [];

  const takeLine = (line: unknown, index: number) => {
    if (!Array.isArray(line) || line.length < 2) return;
    const fault = (what: string) => new InputFault(what, `${name}: features[${index}]`);
    starts.push(points.length / 2);
    for (const position of line) {
      const [longitude, latitude] = Array.isArray(position) ? (position as unknown[]) : [];
      if (typeof longitude !== 'number' || typeof latitude !== 'number')
        throw fault('its coordinates are not [longitude, latitude]');
      if (!(Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90))
        throw fault(
          `the coordinates ${longitude}, ${latitude} are no longitude and latitude: export the file as WGS 84 (EPSG:4326)`,
        );
      points.push(longitude, latitude);
    }
    if (points.length / 2 > MOST_POINTS)
      throw new InputFault(
        `it has more than ${MOST_POINTS} points: cut it to the streets around the trees, or simplify it`,
        name,
      );
  };

  const takeGeometry = (geometry: unknown, index: number): void => {
    const { type, coordinates, geometries } = (geometry ?? {}) as Record<string, unknown>;
    const each = (list: unknown, take: (one: unknown) => void) => {
      if (Array.isArray(list)) list.forEach(take);
    };
    const line = (one: unknown) => takeLine(one, index);
    if (type === 'LineString') line(coordinates);
    if (type === 'MultiLineString' || type === 'Polygon') each(coordinates, line);
    if (type === 'MultiPolygon') each(coordinates, (polygon) => each(polygon, line));
    if (type === 'GeometryCollection') each(geometries, (one) => takeGeometry(one, index));
  };

  return {
    push(piece) {
      for (const { index, text } of scanner.push(piece)) {
        let feature: unknown;
        try {
          feature = JSON.parse(text);
        } catch {
          throw new InputFault(
            'this feature is not valid JSON: export the file anew',
            `${name}: features[${index}]`,
          );
        }
        takeGeometry((feature as { geometry?: unknown } | null)?.geometry, index);
      }
    },
    end() {
      scanner.end();
      if (starts.length === 0)
        throw new InputFault(
          'there is no line and no area in it: a background is made of roads, paths or boundaries; bring trees in as an inventory',
          name,
        );
      return {
        lonLatDeg: Float64Array.from(points),
        starts: Uint32Array.from([...starts, points.length / 2]),
      };
    },
  };
}
