/** A simulated camera: the sheet seen at a tilt, curled, shadowed, creased, blurred, grainy, and packed as JPEG. */
import jpeg from 'jpeg-js';
import { type Random, randomFrom } from '../../../packages/engine/src/random.ts';
import { homographyFrom, inverseHomography, project } from '../../../packages/engine/src/strip/homography.ts';
import type { StripImage } from '../../../packages/engine/src/strip/types.ts';
import type { PrintedStrip } from './printStrip.ts';

export interface CameraStyle {
  widthPx: number;
  /** Tilt of the camera against the sheet about its level and upright axis, and its turn, degrees. */
  tiltDeg: number;
  swingDeg: number;
  turnDeg: number;
  /** Depth of a soft shadow, share of the light, and a second one across a corner. */
  shadow: number;
  /** Colour of the light. */
  light: readonly [number, number, number];
  /** Standard deviation of the blur, pixels of the photo. */
  blurPx: number;
  /** Standard deviation of the grain, of 255. */
  noise: number;
  /** JPEG quality, or null for no packing. */
  jpegQuality: number | null;
  creases: number;
  /** Bow of the sheet's long edges, share of its width. */
  curl: number;
}

export interface Photograph {
  image: StripImage;
  cornersPx: [number, number][];
  /** Where a point of the chart (shares of its width and height) lies on the photo. */
  toPhoto: (u: number, v: number) => [number, number];
}

/** Takes the photo. The table under the sheet is dark wood. */
export function photograph(strip: PrintedStrip, style: CameraStyle, seed: number): Photograph {
  const random = randomFrom(seed);
  const { sheet, corners } = strip;
  const corner = viewer(sheet.width, sheet.height, style);
  const outline = [
    corner(0, 0),
    corner(sheet.width - 1, 0),
    corner(sheet.width - 1, sheet.height - 1),
    corner(0, sheet.height - 1),
  ];
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  const bow = style.curl * sheet.width;
  const left = Math.min(...xs);
  const span = Math.max(...xs) - left;
  const pad = 0.03 * style.widthPx;
  const scale = (style.widthPx - 2 * pad) / span;
  const heightPx = Math.ceil((Math.max(...ys) - Math.min(...ys) + 2 * Math.abs(bow)) * scale + 2 * pad);
  const shiftY = pad - (Math.min(...ys) - Math.abs(bow)) * scale;
  const placed = outline.map(([x, y]): [number, number] => [pad + (x - left) * scale, shiftY + y * scale]);
  const flat: [number, number][] = [
    [0, 0],
    [sheet.width - 1, 0],
    [sheet.width - 1, sheet.height - 1],
    [0, sheet.height - 1],
  ];
  const toPhoto = homographyFrom(flat, placed)!;
  const toSheet = inverseHomography(toPhoto);
  // A curled sheet: its long edges bow, ends at rest.
  const bowAt = (x: number) => {
    const u = (2 * x) / (sheet.width - 1) - 1;
    return bow * (1 - u * u);
  };

  const { widthPx } = style;
  const light = lightOver(widthPx, heightPx, style, random);
  const creases = creasesOver(sheet.width, sheet.height, style.creases, random);
  let linear: Float32Array = new Float32Array(3 * widthPx * heightPx);
  const fold = Math.max(1, Math.min(3, Math.ceil(1 / scale)));
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      let r = 0;
      let g = 0;
      let b = 0;
      for (let s = 0; s < fold * fold; s++) {
        const px = x + ((s % fold) + 0.5) / fold - 0.5;
        const py = y + (Math.floor(s / fold) + 0.5) / fold - 0.5;
        const [sx, flatY] = project(toSheet, px, py);
        const sy = flatY + bowAt(sx);
        if (sx < 0 || sy < 0 || sx > sheet.width - 1.001 || sy > sheet.height - 1.001) {
          const grainy = 0.16 + 0.03 * Math.sin(py / 9 + 2 * Math.sin(px / 160));
          r += grainy * 1.2;
          g += grainy;
          b += grainy * 0.8;
          continue;
        }
        const x0 = Math.floor(sx);
        const y0 = Math.floor(sy);
        const fx = sx - x0;
        const fy = sy - y0;
        const k = 3 * (y0 * sheet.width + x0);
        const below = k + 3 * sheet.width;
        const crease = creases(sx, sy);
        const p = sheet.reflect;
        const at = (c: number) =>
          crease *
          ((1 - fy) * ((1 - fx) * p[k + c]! + fx * p[k + 3 + c]!) +
            fy * ((1 - fx) * p[below + c]! + fx * p[below + 3 + c]!));
        r += at(0);
        g += at(1);
        b += at(2);
      }
      const k = 3 * (y * widthPx + x);
      const shine = light(x, y) / (fold * fold);
      linear[k] = r * shine * style.light[0];
      linear[k + 1] = g * shine * style.light[1];
      linear[k + 2] = b * shine * style.light[2];
    }
  }
  if (style.blurPx > 0) linear = blurred(linear, widthPx, heightPx, style.blurPx);
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let k = 0, p = 0; p < rgba.length; k += 3, p += 4) {
    for (let c = 0; c < 3; c++) rgba[p + c] = 235 * linear[k + c]! + style.noise * random.normal();
    rgba[p + 3] = 255;
  }
  let image: StripImage = { widthPx, heightPx, rgba };
  if (style.jpegQuality !== null) image = unpackJpeg(packJpeg(image, style.jpegQuality));
  const chartToPhoto = (u: number, v: number): [number, number] => {
    const sx = corners[0]![0] + u * (corners[1]![0] - corners[0]![0]);
    const sy = corners[0]![1] + v * (corners[3]![1] - corners[0]![1]);
    return project(toPhoto, sx, sy - bowAt(sx));
  };
  return {
    image,
    cornersPx: [chartToPhoto(0, 0), chartToPhoto(1, 0), chartToPhoto(1, 1), chartToPhoto(0, 1)],
    toPhoto: chartToPhoto,
  };
}

/** Bytes of a JPEG file of the image. */
export function packJpeg(image: StripImage, quality: number): Uint8Array {
  const packed = jpeg.encode(
    { width: image.widthPx, height: image.heightPx, data: image.rgba as Uint8Array },
    quality,
  );
  return new Uint8Array(packed.data);
}

function unpackJpeg(bytes: Uint8Array): StripImage {
  const { width, height, data } = jpeg.decode(bytes, { useTArray: true, maxMemoryUsageInMB: 2048 });
  return { widthPx: width, heightPx: height, rgba: data };
}

/** A pinhole camera two sheet widths away. */
function viewer(width: number, height: number, { tiltDeg, swingDeg, turnDeg }: CameraStyle) {
  const rad = Math.PI / 180;
  const distance = 2 * width;
  return (sx: number, sy: number): [number, number] => {
    let x = sx - width / 2;
    let y = sy - height / 2;
    let z = 0;
    const turn = turnDeg * rad;
    [x, y] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
    const tilt = tiltDeg * rad;
    [y, z] = [y * Math.cos(tilt), y * Math.sin(tilt)];
    const swing = swingDeg * rad;
    [x, z] = [x * Math.cos(swing) + z * Math.sin(swing), z * Math.cos(swing) - x * Math.sin(swing)];
    const near = distance / (distance + z);
    return [x * near, y * near];
  };
}

function lightOver(width: number, height: number, { shadow }: CameraStyle, random: Random) {
  const angle = random.uniform() * 2 * Math.PI;
  const ax = Math.cos(angle);
  const ay = Math.sin(angle);
  const edge = (0.35 + 0.3 * random.uniform()) * width;
  const softness = 0.02 * width + 0.05 * width * random.uniform();
  return (x: number, y: number) => {
    const across = ax * (x - width / 2) + ay * (y - height / 2) + width / 2;
    const soft = 1 - 0.5 * shadow * (across / width);
    const cast = 1 - (shadow * 0.8) / (1 + Math.exp((across - edge) / softness));
    return soft * cast;
  };
}

/** Creases: a dark and a bright side along a straight line. */
function creasesOver(width: number, height: number, count: number, random: Random) {
  const lines = Array.from({ length: count }, () => {
    const angle = (random.uniform() - 0.5) * 1.2;
    return {
      nx: Math.cos(angle),
      ny: Math.sin(angle),
      at: width * (0.15 + 0.7 * random.uniform()) + Math.sin(angle) * height * 0.5,
    };
  });
  return (x: number, y: number) => {
    let shine = 1;
    for (const { nx, ny, at } of lines) {
      const u = nx * x + ny * y - at;
      shine *= 1 - 0.22 * Math.exp(-((u / 3) ** 2)) + 0.08 * Math.exp(-(((u - 8) / 5) ** 2));
    }
    return shine;
  };
}

function blurred(pixels: Float32Array, width: number, height: number, sd: number): Float32Array {
  const reach = Math.ceil(3 * sd);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sd) ** 2));
  const sum = kernel.reduce((a, b) => a + b);
  const pass = (from: Float32Array, across: boolean) => {
    const out = new Float32Array(from.length);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (let c = 0; c < 3; c++) {
          let total = 0;
          for (let i = -reach; i <= reach; i++) {
            const xx = across ? Math.min(width - 1, Math.max(0, x + i)) : x;
            const yy = across ? y : Math.min(height - 1, Math.max(0, y + i));
            total += kernel[i + reach]! * from[3 * (yy * width + xx) + c]!;
          }
          out[3 * (y * width + x) + c] = total / sum;
        }
      }
    }
    return out;
  };
  return pass(pass(pixels, true), false);
}
