/** Strips drawn for the reader to practise on: grid, frame, numbers and a pen's line, as photos of strips show them. */
import type { Chart, StripImage } from '@standfast/engine';

/** The drawing, in pixels of its full size; around the chart no more paper than its numbers need. */
const WIDTH = 3400;
const HEIGHT = 1100;
const CHART = { left: 200, top: 120, right: 3260, bottom: 960 };
const PARTS = 10;

/**
 * A strip drawn at a share of its full size, and its chart.
 * @returns null where the browser gives no canvas for it
 */
export function practiceStrip(size: number): { image: StripImage; chart: Chart } | null {
  const widthPx = Math.round(size * WIDTH);
  const heightPx = Math.round(size * HEIGHT);
  const pen = new OffscreenCanvas(widthPx, heightPx).getContext('2d', { willReadFrequently: true });
  if (!pen) return null;
  const { left, top, right, bottom } = CHART;
  pen.scale(size, size);
  pen.fillStyle = '#f2efe6';
  pen.fillRect(0, 0, WIDTH, HEIGHT);
  pen.fillStyle = '#333';
  pen.font = '34px sans-serif';
  pen.strokeStyle = '#c9b49a';
  pen.lineWidth = 3;
  for (let part = 0; part <= PARTS; part++) {
    const x = left + ((right - left) * part) / PARTS;
    const y = bottom + ((top - bottom) * part) / PARTS;
    pen.strokeRect(x, top, 0, bottom - top);
    pen.strokeRect(left, y, right - left, 0);
    pen.textAlign = 'center';
    pen.fillText(String(50 * part), x, bottom + 48);
    pen.textAlign = 'right';
    pen.fillText(String(10 * part), left - 14, y + 12);
  }
  pen.strokeStyle = '#222';
  pen.lineWidth = 5;
  pen.strokeRect(left, top, right - left, bottom - top);
  pen.strokeStyle = '#14376f';
  pen.lineWidth = 4;
  pen.beginPath();
  for (let x = left + 4; x < right - 4; x++) {
    // Rings of two widths on a slow rise and fall, with an upright stroke here and there.
    const rings = 0.1 * Math.sin(x / 9) + 0.05 * Math.sin(x / 3.7);
    const share = 0.5 + 0.22 * Math.sin(x / 700) + rings + (x % 500 < 3 ? 0.15 : 0);
    pen.lineTo(x, bottom + (top - bottom) * share);
  }
  pen.stroke();
  const corner = (x: number, y: number) => [size * x, size * y] as const;
  return {
    image: { widthPx, heightPx, rgba: pen.getImageData(0, 0, widthPx, heightPx).data },
    chart: {
      cornersPx: [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)],
      depthMm: [0, 500],
      resistance: [0, 100],
    },
  };
}
