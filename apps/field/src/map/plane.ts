/**
 * The plane that the map is drawn in: Mercator's projection about the middle of the trees, in metres that are true
 * there. It keeps angles everywhere, so north is up and shapes hold however far one looks.
 *
 * Source: J. P. Snyder 1987, Map projections: a working manual, eq. 7-1 to 7-5 (sphere), radius 6 371 008.8 m (mean of
 * GRS 80).
 */

export interface LonLat {
  longitude: number;
  latitude: number;
}

/** A point of the plane: metres east and north of the middle. */
export interface PlanePoint {
  x: number;
  y: number;
}

export interface Plane {
  toPlane(place: LonLat): PlanePoint;
  toGlobe(point: PlanePoint): LonLat;
  /** True metres to one metre of the plane at this height of it: 1 at the middle, less toward the poles. */
  trueMetres(y: number): number;
}

const RADIUS_M = 6_371_008.8;
const RAD = Math.PI / 180;
/** Mercator never reaches a pole. */
const MOST_LATITUDE = 85;

/** @param places what the map is of; without any, the middle is on the equator */
export function planeAround(places: readonly LonLat[]): Plane {
  const middle = middleOf(places);
  const scale = RADIUS_M * Math.cos(middle.latitude * RAD);
  const northAtMiddle = stretched(middle.latitude);
  return {
    toPlane: ({ longitude, latitude }) => ({
      x: scale * RAD * nearest(longitude - middle.longitude),
      y: scale * (stretched(latitude) - northAtMiddle),
    }),
    toGlobe: ({ x, y }) => ({
      longitude: nearest(middle.longitude + x / scale / RAD),
      latitude: Math.atan(Math.sinh(y / scale + northAtMiddle)) / RAD,
    }),
    trueMetres: (y) => 1 / Math.cosh(y / scale + northAtMiddle) / Math.cos(middle.latitude * RAD),
  };
}

function stretched(latitude: number): number {
  const held = Math.min(MOST_LATITUDE, Math.max(-MOST_LATITUDE, latitude));
  return Math.asinh(Math.tan(held * RAD));
}

/** A difference of longitude the short way round, so that trees on both sides of the date line lie together. */
function nearest(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180;
}

function middleOf(places: readonly LonLat[]): LonLat {
  if (places.length === 0) return { longitude: 0, latitude: 0 };
  let [east, north, south] = [0, -90, 90];
  let [sin, cos] = [0, 0];
  for (const { longitude, latitude } of places) {
    sin += Math.sin(longitude * RAD);
    cos += Math.cos(longitude * RAD);
    north = Math.max(north, latitude);
    south = Math.min(south, latitude);
  }
  east = Math.atan2(sin, cos) / RAD;
  const latitude = (north + south) / 2;
  return { longitude: east, latitude: Math.min(80, Math.max(-80, latitude)) };
}
