/** A photo made smaller for a report by the browser's own decoder, which turns it upright. */

const QUALITY = 0.82;

/** The photo as a JPEG with no side longer than `longestPx`; null where this browser cannot decode it. */
export async function shrinkPhoto(bytes: Uint8Array, longestPx: number): Promise<Uint8Array | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(new Blob([bytes as Uint8Array<ArrayBuffer>]), {
      imageOrientation: 'from-image',
    });
  } catch {
    return null;
  }
  const factor = Math.min(1, longestPx / Math.max(picture.width, picture.height));
  const [width, height] = [picture.width, picture.height].map((side) =>
    Math.max(1, Math.round(side * factor)),
  );
  const canvas = new OffscreenCanvas(width!, height!);
  const context = canvas.getContext('2d');
  if (!context) return null;
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width!, height!);
  context.drawImage(picture, 0, 0, width!, height!);
  picture.close();
  const packed = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  return new Uint8Array(await packed.arrayBuffer());
}
