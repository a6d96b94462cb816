/** The line that was found, drawn on the photo, to be checked by eye. */
import type { StripImage, StripLine, StripProvenance } from '@standfast/engine';

type Colour = readonly [number, number, number];

const LINE: Colour = [255, 0, 170];
const UNSURE: Colour = [255, 150, 0];
const CORNERS: Colour = [0, 150, 255];
const UNSURE_BELOW = 0.5;

/** A copy of the photo with the chart's corners and the line on it; the line's colour tells where it is unsure. */
export function withLine(photo: StripImage, line: StripLine, provenance: StripProvenance): StripImage {
  const rgba = new Uint8Array(photo.rgba);
  const image = { ...photo, rgba };
  const thick = Math.max(0, Math.round(photo.widthPx / 1600) - 1);
  const { linePx, confidence, depthMm } = line;
  const usual = medianStep(depthMm);
  for (let i = 0; i + 1 < confidence.length; i++) {
    // Where rows are left out the line is not drawn either.
    if (depthMm[i + 1]! - depthMm[i]! > 1.5 * usual) continue;
    const colour = confidence[i]! < UNSURE_BELOW ? UNSURE : LINE;
    segment(image, linePx[2 * i]!, linePx[2 * i + 1]!, linePx[2 * i + 2]!, linePx[2 * i + 3]!, thick, colour);
  }
  const corners = provenance.cornersPx;
  corners.forEach((corner, i) => {
    const size = Math.max(6, photo.widthPx / 100);
    for (const other of [corners[(i + 1) % 4]!, corners[(i + 3) % 4]!]) {
      const length = Math.hypot(other[0] - corner[0], other[1] - corner[1]);
      const dx = ((corner[0] - other[0]) / length) * size;
      const dy = ((corner[1] - other[1]) / length) * size;
      segment(image, corner[0], corner[1], corner[0] + dx, corner[1] + dy, thick + 1, CORNERS);
    }
  });
  return image;
}

function medianStep(depthMm: Float64Array): number {
  const steps = Array.from(depthMm.subarray(1), (depth, i) => depth - depthMm[i]!).sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 0;
}

function segment(
  { widthPx, heightPx, rgba }: StripImage,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  thick: number,
  colour: Colour,
): void {
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0))));
  for (let s = 0; s <= steps; s++) {
    const cx = Math.round(x0 + ((x1 - x0) * s) / steps);
    const cy = Math.round(y0 + ((y1 - y0) * s) / steps);
    for (let y = Math.max(0, cy - thick); y <= Math.min(heightPx - 1, cy + thick); y++) {
      for (let x = Math.max(0, cx - thick); x <= Math.min(widthPx - 1, cx + thick); x++) {
        rgba.set(colour, 4 * (y * widthPx + x));
      }
    }
  }
}
