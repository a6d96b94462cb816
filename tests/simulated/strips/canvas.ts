/** A sheet to draw on: reflectance of red, green and blue (0 black, 1 white paper), antialiased strokes. */

export interface Sheet {
  width: number;
  height: number;
  /** Three reflectances a pixel. */
  reflect: Float32Array;
}

export type Colour = readonly [number, number, number];

export function blankSheet(width: number, height: number, paper: Colour): Sheet {
  const reflect = new Float32Array(3 * width * height);
  for (let k = 0; k < reflect.length; k += 3) reflect.set(paper, k);
  return { width, height, reflect };
}

export interface Stroke {
  /** x, y, x, y, … of the path; the pixel centre is at whole numbers. */
  path: readonly number[];
  width: number;
  colour: Colour;
  /** How much of the paper the ink hides: 1 all. May depend on x. */
  opacity?: number | ((x: number) => number);
  /** Dash and gap length; solid when left out. */
  dash?: readonly [number, number];
}

/** Prints a box full of one colour, its sides at whole or part pixels. */
export function fillBox(
  sheet: Sheet,
  [left, top, right, bottom]: readonly [number, number, number, number],
  colour: Colour,
): void {
  for (let y = Math.max(0, Math.floor(top)); y <= Math.min(sheet.height - 1, Math.ceil(bottom)); y++) {
    const down = Math.min(1, Math.max(0, Math.min(y + 0.5, bottom) - Math.max(y - 0.5, top)));
    for (let x = Math.max(0, Math.floor(left)); x <= Math.min(sheet.width - 1, Math.ceil(right)); x++) {
      const part = down * Math.min(1, Math.max(0, Math.min(x + 0.5, right) - Math.max(x - 0.5, left)));
      const k = 3 * (y * sheet.width + x);
      for (let c = 0; c < 3; c++) {
        const under = sheet.reflect[k + c]!;
        sheet.reflect[k + c] = under + part * (Math.min(under, colour[c]!) - under);
      }
    }
  }
}

/** Draws a stroke with round joins. Where it crosses itself it is no darker. */
export function drawStroke(sheet: Sheet, stroke: Stroke): void {
  const { width, height } = sheet;
  const radius = stroke.width / 2;
  // A stroke is gathered in bands of columns, so that its coverage is the greatest of its pieces'.
  const cover = new Map<number, number>();
  const path = stroke.dash ? undefined : stroke.path;
  const pieces: number[][] = path ? [[...path]] : dashed(stroke.path, stroke.dash!);
  for (const piece of pieces) {
    for (let i = 0; i + 3 < piece.length || (i === 0 && piece.length === 2); i += 2) {
      const x0 = piece[i]!;
      const y0 = piece[i + 1]!;
      const x1 = piece[i + 2] ?? x0;
      const y1 = piece[i + 3] ?? y0;
      const dx = x1 - x0;
      const dy = y1 - y0;
      const length2 = dx * dx + dy * dy;
      const left = Math.max(0, Math.floor(Math.min(x0, x1) - radius - 1));
      const right = Math.min(width - 1, Math.ceil(Math.max(x0, x1) + radius + 1));
      const top = Math.max(0, Math.floor(Math.min(y0, y1) - radius - 1));
      const bottom = Math.min(height - 1, Math.ceil(Math.max(y0, y1) + radius + 1));
      for (let y = top; y <= bottom; y++) {
        for (let x = left; x <= right; x++) {
          const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / length2)) : 0;
          const distance = Math.hypot(x - x0 - t * dx, y - y0 - t * dy);
          const part = Math.min(1, Math.min(1, 2 * radius) * Math.max(0, radius + 0.5 - distance));
          if (part <= 0) continue;
          const k = y * width + x;
          const had = cover.get(k);
          if (had === undefined || part > had) cover.set(k, part);
        }
      }
    }
  }
  const { opacity = 1, colour } = stroke;
  for (const [k, part] of cover) {
    const a = part * (typeof opacity === 'number' ? opacity : opacity(k % width));
    for (let c = 0; c < 3; c++) {
      const under = sheet.reflect[3 * k + c]!;
      sheet.reflect[3 * k + c] = under + a * (Math.min(under, colour[c]!) - under);
    }
  }
}

function dashed(path: readonly number[], [on, off]: readonly [number, number]): number[][] {
  const out: number[][] = [];
  let phase = 0;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const length = Math.hypot(path[i + 2]! - path[i]!, path[i + 3]! - path[i + 1]!);
    let at = -phase;
    while (at < length) {
      const a = Math.max(0, at) / length;
      const b = Math.min(length, at + on) / length;
      if (b > a) {
        const point = (t: number) => [
          path[i]! + t * (path[i + 2]! - path[i]!),
          path[i + 1]! + t * (path[i + 3]! - path[i + 1]!),
        ];
        out.push([...point(a), ...point(b)]);
      }
      at += on + off;
    }
    phase = (length + phase) % (on + off);
  }
  return out;
}

/** Characters as strokes on a box 4 wide and 6 high (y down), pieces parted by null. */
const GLYPHS: Record<string, (readonly [number, number] | null)[]> = {
  '0': [
    [1, 0],
    [3, 0],
    [4, 1.5],
    [4, 4.5],
    [3, 6],
    [1, 6],
    [0, 4.5],
    [0, 1.5],
    [1, 0],
  ],
  '1': [
    [0.8, 1.2],
    [2.2, 0],
    [2.2, 6],
  ],
  '2': [
    [0, 1.5],
    [0.6, 0.3],
    [2, 0],
    [3.6, 0.6],
    [3.8, 2],
    [0, 6],
    [4, 6],
  ],
  '3': [
    [0, 0.6],
    [2, 0],
    [3.7, 1],
    [3.3, 2.5],
    [1.6, 2.9],
    [3.6, 3.4],
    [4, 4.7],
    [3, 5.8],
    [1, 6],
    [0, 5.2],
  ],
  '4': [
    [3, 6],
    [3, 0],
    [0, 4.2],
    [4, 4.2],
  ],
  '5': [
    [3.8, 0],
    [0.5, 0],
    [0.3, 2.6],
    [2.4, 2.3],
    [3.9, 3.4],
    [3.7, 5.2],
    [2, 6],
    [0, 5.4],
  ],
  '6': [
    [3.6, 0.4],
    [2, 0],
    [0.4, 1.8],
    [0, 4.2],
    [1, 5.8],
    [3, 5.8],
    [4, 4.4],
    [3, 2.9],
    [1, 2.9],
    [0, 4.2],
  ],
  '7': [
    [0, 0],
    [4, 0],
    [1.4, 6],
  ],
  '8': [
    [2, 2.8],
    [0.4, 1.9],
    [0.7, 0.4],
    [2, 0],
    [3.3, 0.4],
    [3.6, 1.9],
    [2, 2.8],
    [0, 4],
    [0.4, 5.5],
    [2, 6],
    [3.6, 5.5],
    [4, 4],
    [2, 2.8],
  ],
  '9': [
    [4, 1.8],
    [3, 3.1],
    [1, 3.1],
    [0, 1.6],
    [1, 0.2],
    [3, 0.2],
    [4, 1.8],
    [3.6, 4.2],
    [2, 6],
    [0.4, 5.6],
  ],
  '%': [
    [4, 0],
    [0, 6],
    null,
    [0.2, 0.4],
    [1.2, 0.4],
    [1.2, 1.6],
    [0.2, 1.6],
    [0.2, 0.4],
    null,
    [2.8, 4.4],
    [3.8, 4.4],
    [3.8, 5.6],
    [2.8, 5.6],
    [2.8, 4.4],
  ],
  A: [[0, 6], [2, 0], [4, 6], null, [0.8, 3.8], [3.2, 3.8]],
  c: [
    [3.6, 2.8],
    [2, 2.2],
    [0.4, 3.2],
    [0.4, 5],
    [2, 6],
    [3.6, 5.4],
  ],
  e: [
    [0.3, 4],
    [3.7, 4],
    [3.4, 2.7],
    [2, 2.1],
    [0.5, 3],
    [0.4, 5],
    [2, 6],
    [3.6, 5.4],
  ],
  h: [[0.3, 0], [0.3, 6], null, [0.3, 3.4], [2, 2.2], [3.6, 3], [3.6, 6]],
  m: [
    [0.2, 6],
    [0.2, 2.2],
    null,
    [0.2, 3],
    [1.2, 2.2],
    [2, 3],
    [2, 6],
    null,
    [2, 3],
    [3, 2.2],
    [3.8, 3],
    [3.8, 6],
  ],
  r: [[0.6, 6], [0.6, 2.2], null, [0.6, 3.6], [2, 2.3], [3.4, 2.4]],
  T: [[0, 0], [4, 0], null, [2, 0], [2, 6]],
};

/** Writes text in strokes; unknown characters are left blank. `height` is that of a digit. */
export function drawText(
  sheet: Sheet,
  text: string,
  x: number,
  y: number,
  height: number,
  colour: Colour,
  align: 'left' | 'middle' | 'right' = 'left',
): void {
  const unit = height / 6;
  const advance = 5.4 * unit;
  const width = advance * text.length - 1.4 * unit;
  let at = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  for (const character of text) {
    let piece: number[] = [];
    const put = () => {
      if (piece.length) drawStroke(sheet, { path: piece, width: Math.max(1, height / 8), colour });
      piece = [];
    };
    for (const point of GLYPHS[character] ?? []) {
      if (point) piece.push(at + point[0] * unit, y + point[1] * unit);
      else put();
    }
    put();
    at += advance;
  }
}
