/** Photos of paper strips, off the page's thread: decoded the right way up, searched for a chart, and read. */
import {
  type ChartFound,
  type ChartKnown,
  type ChartSeen,
  type CornersPx,
  InputFault,
  readStrip,
  type StripImage,
  type StripProgress,
  type StripProvenance,
  type StripReading,
  seeChart,
  settleChart,
  settleCorners,
} from '@standfast/engine';
import { expose, transfer } from 'comlink';
import { brokenPhoto, checkPhotoFile, type PhotoKind } from '../edit/photoFile.ts';
import { practiceStrip } from './practiceStrip.ts';

export type StripOutcome<T> = { ok: true; value: T } | { ok: false; message: string };

/** How corners and scale were come by, before a person said that they are right. */
export interface StripOrigin {
  /** The chart found, while the corners are still its. */
  found: ChartFound | null;
  /** Null for what the known chart itself says. */
  scaleFrom: StripProvenance['scaleFrom'] | null;
}

/** A decoded photo, upright, for the screen to draw. */
export interface OpenPhoto {
  bitmap: ImageBitmap;
  /** The same, smaller: what a screen can show of the whole photo, quick to draw. */
  small: ImageBitmap;
  kind: PhotoKind;
  /** Pixels of the photo as it was taken along one of the bitmap. */
  photoScale: number;
}

/** More pixels than this show no more of a pen line, and cost a phone its memory. */
const ENOUGH_PIXELS = 16e6;
/** Pixels along the longer side of the small copy. */
const SMALL_SIDE = 1600;
/** How far from corners set by hand printed lines are looked for, share of the photo's longer side. */
const SNAP_SHARE = 0.02;

/** Practice is on drawings so large, as shares of a photo: the first are quick, and leave most of the code compiled. */
const PRACTICE = [0.2, 0.2, 0.35, 0.6, 1, 1];

let image: StripImage | null = null;
/** Over as soon as there is a photo. */
let practising = false;

/** Lets the worker see to what it has been asked meanwhile. */
const turn = () => new Promise<void>((resolve) => setTimeout(resolve));

async function told<T>(name: string, step: () => T | Promise<T>): Promise<StripOutcome<T>> {
  try {
    return { ok: true, value: await step() };
  } catch (thrown) {
    if (thrown instanceof InputFault) return { ok: false, message: asSentence(thrown.what) };
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    return { ok: false, message: `${name} could not be read: ${message}` };
  }
}

/** What is wrong, as it stands on a line of its own. */
const asSentence = (what: string) => what.charAt(0).toUpperCase() + what.slice(1);

function opened(): StripImage {
  if (!image) throw new InputFault('No photo is open: choose it again.', 'photo');
  return image;
}

async function open(bytes: Uint8Array, name: string, tell: StripProgress): Promise<OpenPhoto> {
  practising = false;
  // No browser tells how far a picture is decoded: the shares are those that the steps usually take.
  tell(0, 'unpacking');
  const kind = checkPhotoFile(bytes, name);
  const whole = await createImageBitmap(new Blob([bytes as Uint8Array<ArrayBuffer>]), {
    imageOrientation: 'from-image',
  }).catch(() => {
    throw new InputFault(brokenPhoto(kind), name);
  });
  tell(0.6, 'laying out its pixels');
  const photoScale = Math.max(1, Math.sqrt((whole.width * whole.height) / ENOUGH_PIXELS));
  const width = Math.round(whole.width / photoScale);
  const height = Math.round(whole.height / photoScale);
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new InputFault('This browser gives no room to decode the photo: close other tabs.', name);
  // See-through places show white paper.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(whole, 0, 0, width, height);
  const { data } = pen.getImageData(0, 0, width, height);
  image = { widthPx: width, heightPx: height, rgba: data };
  tell(0.8, 'making it ready for the screen');
  const shrink = Math.min(1, SMALL_SIDE / Math.max(width, height));
  // A JPEG has no see-through places: as it was decoded it can be shown.
  const asDecoded = kind === 'jpeg' && photoScale === 1;
  const [bitmap, small] = await Promise.all([
    asDecoded ? whole : createImageBitmap(canvas),
    createImageBitmap(canvas, {
      resizeWidth: Math.max(1, Math.round(shrink * width)),
      resizeHeight: Math.max(1, Math.round(shrink * height)),
      resizeQuality: 'medium',
    }),
  ]);
  if (!asDecoded) whole.close();
  tell(1, 'done');
  return { bitmap, small, kind, photoScale };
}

const api = {
  /** Decodes a photo; the ones below work on it. */
  async open(bytes: Uint8Array, name: string, onProgress: StripProgress): Promise<StripOutcome<OpenPhoto>> {
    const outcome = await told(name, () => open(bytes, name, onProgress));
    return outcome.ok ? transfer(outcome, [outcome.value.bitmap, outcome.value.small]) : outcome;
  },

  /** The chart by its frame or grid, and its scale by its printed numbers; null when there is none to be seen. */
  find: (onProgress: StripProgress): Promise<StripOutcome<ChartSeen | null>> =>
    told('The photo', () => seeChart(opened(), onProgress)),

  /** Corners moved onto the printed lines near them. */
  snap: (corners: CornersPx): Promise<StripOutcome<{ corners: CornersPx; seen: number[] }>> =>
    told('The photo', () => {
      const photo = opened();
      return settleCorners(photo, corners, SNAP_SHARE * Math.max(photo.widthPx, photo.heightPx));
    }),

  /** Makes room for the next photo. */
  putAway(): void {
    image = null;
  },

  /** Finds and reads a drawn chart a few times, so that the code for it is compiled when a photo comes. */
  async practise(): Promise<void> {
    practising = true;
    for (const size of PRACTICE) {
      const strip = practiceStrip(size);
      if (!strip) return;
      seeChart(strip.image);
      await turn();
      if (!practising) return;
      readStrip(strip.image, strip.chart);
      await turn();
      if (!practising) return;
    }
  },

  /** The lines on the chart. */
  read: (
    known: ChartKnown,
    { found, scaleFrom }: StripOrigin,
    onProgress: StripProgress,
  ): Promise<StripOutcome<StripReading>> =>
    told('The photo', () => {
      const photo = opened();
      const settled = settleChart(photo, known, { photo: 'photo', chart: 'chart' });
      if (!settled.chart)
        throw new InputFault('The depths and levels of the chart are still missing.', 'chart');
      return readStrip(photo, settled.chart, {
        onProgress,
        scaleFrom: scaleFrom ?? settled.scaleFrom,
        where: 'photo',
        ...(found ? { cornersFound: found } : {}),
      });
    }),
};

export type StripApi = typeof api;

expose(api);
