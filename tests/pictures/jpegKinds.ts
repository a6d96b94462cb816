/**
 * JPEGs of the kinds that cameras, scanners and print shops make and the usual small encoders do not: grey, CMYK as
 * print programs store it (inverted, with their marker), progressive. ITU-T T.81; the codes are flat, not the usual ones.
 */
import type { StripImage } from '@standfast/engine';

type Plane = Float64Array;
interface Kind {
  planes: readonly Plane[];
  progressive?: boolean;
  /** The print programs' marker, with how the colours are stored: 0 as they are. */
  adobe?: boolean;
}

const QUANTUM = 6;
/** Order of the coefficients (T.81, figure 5): place in the block by place in the stream. */
const ZIGZAG = zigzag();
const COSINES = Float64Array.from({ length: 64 }, (_, k) => {
  const [x, u] = [k >> 3, k & 7];
  return Math.cos(((2 * x + 1) * u * Math.PI) / 16) * (u === 0 ? Math.SQRT1_2 : 1) * 0.5;
});
/** Symbols with codes of one length: sizes of the mean in four bits, runs with sizes in eight. */
const DC_SYMBOLS = Array.from({ length: 12 }, (_, size) => size);
const AC_SYMBOLS = [0x00, 0xf0];
for (let run = 0; run < 16; run++) for (let size = 1; size <= 10; size++) AC_SYMBOLS.push((run << 4) | size);
const AC_CODE = new Map(AC_SYMBOLS.map((symbol, code) => [symbol, code]));

/** The picture in shades of grey, one component. */
export function greyJpeg(image: StripImage): Uint8Array {
  return jpeg(image, { planes: [planeOf(image, (r, g, b) => 0.299 * r + 0.587 * g + 0.114 * b)] });
}

/** The picture in cyan, magenta, yellow and black, stored inverted as print programs do. */
export function cmykJpeg(image: StripImage): Uint8Array {
  const most = (r: number, g: number, b: number) => Math.max(r, g, b, 1);
  const planes = [
    planeOf(image, (r, g, b) => (255 * r) / most(r, g, b)),
    planeOf(image, (r, g, b) => (255 * g) / most(r, g, b)),
    planeOf(image, (r, g, b) => (255 * b) / most(r, g, b)),
    planeOf(image, most),
  ];
  return jpeg(image, { planes, adobe: true });
}

/** The picture in several scans, coarse ones first. */
export function progressiveJpeg(image: StripImage): Uint8Array {
  const planes = [
    planeOf(image, (r, g, b) => 0.299 * r + 0.587 * g + 0.114 * b),
    planeOf(image, (r, g, b) => 128 - 0.168736 * r - 0.331264 * g + 0.5 * b),
    planeOf(image, (r, g, b) => 128 + 0.5 * r - 0.418688 * g - 0.081312 * b),
  ];
  return jpeg(image, { planes, progressive: true });
}

function planeOf(
  { widthPx, heightPx, rgba }: StripImage,
  of: (r: number, g: number, b: number) => number,
): Plane {
  return Float64Array.from({ length: widthPx * heightPx }, (_, k) =>
    of(rgba[4 * k]!, rgba[4 * k + 1]!, rgba[4 * k + 2]!),
  );
}

function jpeg({ widthPx, heightPx }: StripImage, { planes, progressive, adobe }: Kind): Uint8Array {
  const out: number[] = [0xff, 0xd8];
  const segment = (marker: number, body: readonly number[]) =>
    out.push(0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 255, ...body);
  const components = planes.map((_, i) => i + 1);
  // "Adobe", version, flags, transform.
  if (adobe) segment(0xee, [65, 100, 111, 98, 101, 0, 100, 0, 0, 0, 0, 0]);
  segment(0xdb, [0, ...Array<number>(64).fill(QUANTUM)]);
  segment(progressive ? 0xc2 : 0xc0, [
    8,
    heightPx >> 8,
    heightPx & 255,
    widthPx >> 8,
    widthPx & 255,
    planes.length,
    ...components.flatMap((id) => [id, 0x11, 0]),
  ]);
  const counts = (length: number, symbols: number) =>
    Array.from({ length: 16 }, (_, i) => (i + 1 === length ? symbols : 0));
  segment(0xc4, [0x00, ...counts(4, DC_SYMBOLS.length), ...DC_SYMBOLS]);
  segment(0xc4, [0x10, ...counts(8, AC_SYMBOLS.length), ...AC_SYMBOLS]);
  const blocks = planes.map((plane) => blocksOf(plane, widthPx, heightPx));
  const scan = (of: readonly number[], [from, to, before, after]: readonly number[], bits: Bits) => {
    segment(0xda, [of.length, ...of.flatMap((id) => [id, 0]), from!, to!, (before! << 4) | after!]);
    for (const byte of bits.bytes()) out.push(byte);
  };
  const count = blocks[0]!.length;
  if (progressive) {
    const coarse = new Bits();
    const finer = new Bits();
    const last = components.map(() => 0);
    for (let k = 0; k < count; k++) {
      blocks.forEach((list, c) => {
        const mean = list[k]![0]!;
        putMean(coarse, (mean >> 1) - last[c]!);
        last[c] = mean >> 1;
        finer.put(mean & 1, 1);
      });
    }
    scan(components, [0, 0, 0, 1], coarse);
    for (const [from, to] of [
      [1, 5],
      [6, 63],
    ] as const) {
      blocks.forEach((list, c) => {
        const bits = new Bits();
        for (const block of list) putRest(bits, block, from, to);
        scan([components[c]!], [from, to, 0, 0], bits);
      });
    }
    scan(components, [0, 0, 1, 0], finer);
  } else {
    const bits = new Bits();
    const last = components.map(() => 0);
    for (let k = 0; k < count; k++) {
      blocks.forEach((list, c) => {
        putMean(bits, list[k]![0]! - last[c]!);
        last[c] = list[k]![0]!;
        putRest(bits, list[k]!, 1, 63);
      });
    }
    scan(components, [0, 63, 0, 0], bits);
  }
  out.push(0xff, 0xd9);
  return Uint8Array.from(out);
}

/** Blocks of eight by eight, transformed and quantised, their coefficients in stream order. */
function blocksOf(plane: Plane, width: number, height: number): Int16Array[] {
  const blocks: Int16Array[] = [];
  const rows = new Float64Array(64);
  for (let top = 0; top < height; top += 8) {
    for (let left = 0; left < width; left += 8) {
      for (let y = 0; y < 8; y++) {
        const line = Math.min(height - 1, top + y) * width;
        for (let u = 0; u < 8; u++) {
          let sum = 0;
          for (let x = 0; x < 8; x++) {
            sum += COSINES[8 * x + u]! * (plane[line + Math.min(width - 1, left + x)]! - 128);
          }
          rows[8 * y + u] = sum;
        }
      }
      blocks.push(
        Int16Array.from(ZIGZAG, (place) => {
          const [v, u] = [place >> 3, place & 7];
          let sum = 0;
          for (let y = 0; y < 8; y++) sum += COSINES[8 * y + v]! * rows[8 * y + u]!;
          return Math.round(sum / QUANTUM);
        }),
      );
    }
  }
  return blocks;
}

function putMean(bits: Bits, step: number): void {
  const size = sizeOf(step);
  bits.put(size, 4);
  bits.put(step < 0 ? step + (1 << size) - 1 : step, size);
}

function putRest(bits: Bits, block: Int16Array, from: number, to: number): void {
  let run = 0;
  for (let i = from; i <= to; i++) {
    const value = block[i]!;
    if (value === 0) {
      run++;
      continue;
    }
    for (; run > 15; run -= 16) bits.put(AC_CODE.get(0xf0)!, 8);
    const size = sizeOf(value);
    bits.put(AC_CODE.get((run << 4) | size)!, 8);
    bits.put(value < 0 ? value + (1 << size) - 1 : value, size);
    run = 0;
  }
  if (run > 0) bits.put(AC_CODE.get(0x00)!, 8);
}

const sizeOf = (value: number) => (value === 0 ? 0 : 32 - Math.clz32(Math.abs(value)));

/** Bits put one after another into bytes; a byte of ones is followed by a nought (T.81, B.1.1.5). */
class Bits {
  #bytes: number[] = [];
  #held = 0;
  #count = 0;

  put(value: number, length: number): void {
    for (let i = length - 1; i >= 0; i--) {
      this.#held = (this.#held << 1) | ((value >> i) & 1);
      if (++this.#count < 8) continue;
      this.#bytes.push(this.#held);
      if (this.#held === 0xff) this.#bytes.push(0);
      this.#held = 0;
      this.#count = 0;
    }
  }

  bytes(): readonly number[] {
    while (this.#count > 0) this.put(1, 1);
    return this.#bytes;
  }
}

function zigzag(): number[] {
  const order: number[] = [];
  for (let sum = 0; sum < 15; sum++) {
    for (let i = 0; i <= sum; i++) {
      const [row, column] = sum % 2 === 0 ? [sum - i, i] : [i, sum - i];
      if (row < 8 && column < 8) order.push(8 * row + column);
    }
  }
  return order;
}
