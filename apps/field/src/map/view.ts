/** What part of the plane is on screen, and how it moves. Pure, so that every gesture can be tested. */
import type { PlanePoint } from './plane.ts';

export interface MapView {
  /** Point of the plane at the middle of the screen. */
  x: number;
  y: number;
  /** Pixels to a metre of the plane. */
  scale: number;
}

export interface ScreenSize {
  width: number;
  height: number;
}

/** From the whole globe on a watch to a hand's breadth across a wall. */
const LEAST_SCALE = 2e-6;
const MOST_SCALE = 60;
/** A tree alone is shown with its surroundings, pixels to a metre. */
const CLOSEST_FIT = 3;
const MARGIN_PX = 48;

export function toScreen(view: MapView, size: ScreenSize, point: PlanePoint): PlanePoint {
  return {
    x: size.width / 2 + (point.x - view.x) * view.scale,
    y: size.height / 2 - (point.y - view.y) * view.scale,
  };
}

export function toPlanePoint(view: MapView, size: ScreenSize, screen: PlanePoint): PlanePoint {
  return {
    x: view.x + (screen.x - size.width / 2) / view.scale,
    y: view.y - (screen.y - size.height / 2) / view.scale,
  };
}

/** Moved with the finger by so many pixels. */
export function panned(view: MapView, dx: number, dy: number): MapView {
  return { ...view, x: view.x - dx / view.scale, y: view.y + dy / view.scale };
}

/** Zoomed by a factor, with the point under `at` staying where it is. */
export function zoomed(view: MapView, size: ScreenSize, factor: number, at: PlanePoint): MapView {
  const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, view.scale * factor));
  const held = toPlanePoint(view, size, at);
  return {
    scale,
    x: held.x - (at.x - size.width / 2) / scale,
    y: held.y + (at.y - size.height / 2) / scale,
  };
}

/** All the points on screen, with a margin. */
export function fitted(points: readonly PlanePoint[], size: ScreenSize): MapView {
  if (points.length === 0) return { x: 0, y: 0, scale: 1 };
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  const room = (pixels: number) => Math.max(40, pixels - 2 * MARGIN_PX);
  const wanted = Math.min(
    room(size.width) / Math.max(east - west, 1e-9),
    room(size.height) / Math.max(north - south, 1e-9),
  );
  const scale = Math.min(CLOSEST_FIT, Math.max(LEAST_SCALE, wanted));
  return { x: (west + east) / 2, y: (south + north) / 2, scale };
}

/** The greatest of 1, 2 or 5 times a power of ten that is not above a length. */
export function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return ([5, 2, 1].find((digit) => digit * power <= most * (1 + 1e-12)) ?? 1) * power;
}
