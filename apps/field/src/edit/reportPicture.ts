/** A logo or signature for the report: any picture the browser can show becomes a small PNG. */
import { InputFault } from '@standfast/engine';

/** Longest side kept, px: sharp in print at the size a logo has. */
const LONGEST_PX = 900;

/**
 * The picture as a PNG of at most 900 px, with what is see-through left so.
 * @throws InputFault when the browser cannot show it
 */
export async function reportPicture(file: File): Promise<Uint8Array> {
  const picture = await decoded(file);
  const factor = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * factor));
  canvas.height = Math.max(1, Math.round(picture.height * factor));
  canvas.getContext('2d')?.drawImage(picture.source, 0, 0, canvas.width, canvas.height);
  picture.done();
  return pngOf(canvas);
}

/** A drawing as PNG bytes. */
export async function pngOf(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new InputFault('This browser could not keep the picture.', '');
  return new Uint8Array(await blob.arrayBuffer());
}

interface Decoded {
  source: CanvasImageSource;
  width: number;
  height: number;
  done: () => void;
}

/** By an image element, which shows SVG too; one without a size of its own is taken as large as it may be. */
async function decoded(file: File): Promise<Decoded> {
  const url = URL.createObjectURL(file);
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
  } catch {
    URL.revokeObjectURL(url);
    throw new InputFault(
      'This picture cannot be shown by this browser: choose a PNG, JPEG or SVG.',
      file.name,
    );
  }
  return {
    source: image,
    width: image.naturalWidth || LONGEST_PX,
    height: image.naturalHeight || LONGEST_PX / 3,
    done: () => URL.revokeObjectURL(url),
  };
}
