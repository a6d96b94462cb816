/**
 * Which part of a photo is on screen. A photo's pixel has its centre at whole numbers; on screen it covers the square
 * around it.
 */
import type { PointPx } from '@standfast/engine';

export interface StageView {
  /** Screen px along one photo pixel. */
  scale: number;
  /** Photo coordinates of the stage's top left. */
  x: number;
  y: number;
}

export interface Size {
  width: number;
  height: number;
}

/** Screen px along one photo pixel beyond which nothing more is to be seen. */
const MOST_SCALE = 12;

/** A part of the photo as large as it goes, in the middle of the stage. */
export function fitted(stage: Size, left: number, top: number, part: Size): StageView {
  const scale = Math.min(stage.width / part.width, stage.height / part.height);
  return {
    scale,
    x: left + part.width / 2 - stage.width / (2 * scale) - 0.5,
    y: top + part.height / 2 - stage.height / (2 * scale) - 0.5,
  };
}

/** The view of the whole photo. */
export function wholePhoto(stage: Size, photo: Size): StageView {
  return fitted(stage, 0, 0, photo);
}

export function toStage({ scale, x, y }: StageView, [px, py]: PointPx): [number, number] {
  return [(px - x) * scale, (py - y) * scale];
}

export function toPhoto({ scale, x, y }: StageView, [sx, sy]: readonly [number, number]): PointPx {
  return [x + sx / scale, y + sy / scale];
}

/** Nearer or farther about a point of the stage, which stays where it is; never farther than the whole photo. */
export function zoomed(
  view: StageView,
  factor: number,
  about: readonly [number, number],
  stage: Size,
  photo: Size,
): StageView {
  const least = wholePhoto(stage, photo).scale;
  const scale = Math.min(Math.max(MOST_SCALE, least), Math.max(least, view.scale * factor));
  const [px, py] = toPhoto(view, about);
  return kept({ scale, x: px - about[0] / scale, y: py - about[1] / scale }, stage, photo);
}

/** The view moved back until the photo fills the stage as far as it can. */
export function kept(view: StageView, stage: Size, photo: Size): StageView {
  const along = (at: number, room: number, length: number) => {
    const shown = room / view.scale;
    if (shown >= length) return (length - shown) / 2 - 0.5;
    return Math.min(length - shown - 0.5, Math.max(-0.5, at));
  };
  return {
    scale: view.scale,
    x: along(view.x, stage.width, photo.width),
    y: along(view.y, stage.height, photo.height),
  };
}

/** Where a magnifier goes: above the thumb, beside it where there is no room above. */
export function lensPlace([sx, sy]: readonly [number, number], stage: Size, size: number): [number, number] {
  const away = 44;
  const inside = (at: number, room: number) => Math.min(Math.max(0, room - size), Math.max(0, at));
  const above = sy - away - size;
  if (above >= 0) return [inside(sx - size / 2, stage.width), above];
  const right = sx + away + size <= stage.width;
  return [right ? sx + away : Math.max(0, sx - away - size), inside(sy - size / 2, stage.height)];
}
