/**
 * Takes a GeoJSON FeatureCollection apart while it is still being read: each feature is handed on as soon as it is
 * complete, so a file of any size needs the memory of one feature. Only the outermost braces, the member names and the
 * strings are followed here; each feature is then read by the language's own JSON reader.
 */
import { InputFault } from '@standfast/engine';

/** A feature as it stands in the file. */
export interface FeatureText {
  /** Its place in the file, from 0. */
  index: number;
  text: string;
}

export interface FeatureScanner {
  /** Takes the next piece of the file's text and returns the features that it completes. */
  push(piece: string): FeatureText[];
  /** Says that the file has ended. @throws InputFault when it is no whole FeatureCollection */
  end(): void;
}

/** No tree or road of a sensible file is longer than this, characters. */
const LONGEST_ITEM = 16e6;
/** Members besides the features are read when they are no longer than this, characters. */
const LONGEST_MEMBER = 100_000;

/** @param name the file's name, for messages */
export function featureScanner(name: string): FeatureScanner {
  let depth = 0;
  let inString = false;
  let escaped = false;
  let inFeatures = false;
  let begun = false;
  let ended = false;
  let key: string | null = null;
  let index = 0;
  /** What was read of the present item in earlier pieces; null where none has begun. */
  let kept: string | null = null;
  let sawFeatures = false;
  let type: unknown = null;

  const noJson = () =>
    new InputFault(
      'this is not JSON: give a GeoJSON file (.geojson or .json), as GIS programs export it',
      name,
    );

  const takeMember = (text: string) => {
    if (key === null || text.length > LONGEST_MEMBER) return;
    if (key !== 'type' && key !== 'crs') return;
    let value: unknown;
    try {
      value = JSON.parse(text);
    } catch {
      throw noJson();
    }
    if (key === 'type') type = value;
    else checkCrs(value, name);
  };

  const push = (piece: string): FeatureText[] => {
    const found: FeatureText[] = [];
    let start = kept === null ? -1 : 0;
    const taken = (end: number): string => {
      const text = (kept ?? '') + piece.slice(start, end);
      kept = null;
      start = -1;
      return text;
    };
    for (let i = 0; i < piece.length; i++) {
      const code = piece.charCodeAt(i);
      if (inString) {
        if (escaped) escaped = false;
        else if (code === 92) escaped = true;
        else if (code === 34) inString = false;
        continue;
      }
      // Space, tab and line ends part things; a byte order mark may stand first.
      if (code === 32 || code === 9 || code === 10 || code === 13 || (code === 0xfeff && !begun)) continue;
      if (ended) throw new InputFault('something stands after the end of its JSON: export it anew', name);
      if (!begun) {
        begun = true;
        if (code === 91)
          throw new InputFault(
            'this is a JSON list, not a GeoJSON FeatureCollection: export it as GeoJSON',
            name,
          );
        if (code !== 123) throw noJson();
        depth = 1;
        continue;
      }
      if (code === 123 || code === 91) {
        if (code === 91 && depth === 1 && key === 'features' && start < 0) {
          inFeatures = true;
          sawFeatures = true;
          depth = 2;
          continue;
        }
        if (start < 0) start = i;
        depth++;
      } else if (code === 125 || code === 93) {
        depth--;
        if (inFeatures && depth === 1) {
          if (start >= 0) found.push({ index: index++, text: taken(i) });
          inFeatures = false;
          // The list is its member's whole value: nothing more belongs to this name.
          key = null;
        } else if (depth === 0) {
          if (start >= 0) takeMember(taken(i));
          ended = true;
        }
      } else if (code === 44 && depth === 2 && inFeatures) {
        if (start >= 0) found.push({ index: index++, text: taken(i) });
      } else if (code === 44 && depth === 1) {
        if (start >= 0) takeMember(taken(i));
        key = null;
      } else if (code === 58 && depth === 1 && key === null) {
        if (start < 0) throw noJson();
        try {
          key = String(JSON.parse(taken(i)));
        } catch {
          throw noJson();
        }
      } else {
        if (code === 34) inString = true;
        if (start < 0) start = i;
      }
    }
    if (start >= 0) {
      // A long member that nobody asks for is passed over, not gathered.
      const wanted = inFeatures || key === null || key === 'type' || key === 'crs';
      kept = wanted ? (kept ?? '') + piece.slice(start) : (kept ?? '') + (kept ? '' : '?');
      if (kept.length > LONGEST_ITEM)
        throw new InputFault(
          `${inFeatures ? `feature ${index}` : 'one of its members'} is longer than ${LONGEST_ITEM / 1e6} million characters: this is no file of trees or paths`,
          name,
        );
    }
    return found;
  };

  return {
    push,
    end() {
      if (!begun) throw new InputFault('the file is empty: give a GeoJSON file', name);
      if (!ended)
        throw new InputFault(
          `the file ends before its JSON is complete${sawFeatures ? `, after ${index} whole ${index === 1 ? 'feature' : 'features'}` : ''}: it was cut off; export or copy it anew`,
          name,
        );
      if (type !== 'FeatureCollection' || !sawFeatures)
        throw new InputFault(
          typeof type === 'string' && type !== 'FeatureCollection'
            ? `this is a ${type}, not a FeatureCollection: export the layer of trees as GeoJSON`
            : 'this is JSON, but no GeoJSON FeatureCollection with features: export the layer of trees as GeoJSON',
          name,
        );
    },
  };
}

/**
 * RFC 7946 knows one reference system, WGS 84, and no `crs` member. Older files say it; only one that says another
 * system is refused.
 * @throws InputFault
 */
function checkCrs(crs: unknown, name: string): void {
  if (crs === null || crs === undefined) return;
  const named = (crs as { properties?: { name?: unknown; code?: unknown } }).properties;
  const text = String(named?.name ?? named?.code ?? '');
  // Names in use for WGS 84: CRS84 (longitude first), EPSG 4326, and 4979 with heights.
  if (/CRS:{0,2}\s*84\b|(^|\D)(4326|4979)$|^urn:ogc:def:crs:OGC:.*:CRS84$/i.test(text)) return;
  throw new InputFault(
    `its crs member says ${text ? `“${text.slice(0, 80)}”` : 'another system without naming it'}: GeoJSON is in WGS 84 longitude and latitude (RFC 7946). Export it as WGS 84 (EPSG:4326)`,
    `${name}: crs`,
  );
}
