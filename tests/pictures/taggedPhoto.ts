/** PNGs tagged with the way up that the camera was held (third edition, eXIf). */

const TAG = 0x0112;
/** A PNG's signature and its first chunk. */
const HEAD = 8 + 25;

/** The PNG with its tag behind the header. */
export function taggedPng(png: Uint8Array, orientation: number): Uint8Array {
  const body = Buffer.concat([Buffer.from('eXIf', 'latin1'), exif(orientation)]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(checksum(body), body.length + 4);
  return Buffer.concat([png.subarray(0, HEAD), chunk, png.subarray(HEAD)]);
}

/** A directory of one entry, the orientation (CIPA DC-008). */
function exif(orientation: number): Buffer {
  const out = Buffer.alloc(26);
  out.write('II*\0', 0, 'latin1');
  out.writeUInt32LE(8, 4);
  out.writeUInt16LE(1, 8);
  out.writeUInt16LE(TAG, 10);
  out.writeUInt16LE(3, 12);
  out.writeUInt32LE(1, 14);
  out.writeUInt16LE(orientation, 18);
  return out;
}

/** CRC-32 of a chunk (PNG, third edition, section 5.5). */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
