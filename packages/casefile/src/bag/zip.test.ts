import fc from 'fast-check';
import { strToU8, type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { BAG_LIMITS } from './bag.ts';
import { bagFromZip } from './bagFromZip.ts';
import { pathProblem } from './paths.ts';
import { zipDirectory } from './zipDirectory.ts';
import { zipOfBag } from './zipOfBag.ts';

const zipOf = (files: Zippable) => zipSync(files);
const text = strToU8;

/** Changes a byte in every list entry and file header of a zip, at an offset from the entry's start. */
function patched(
  zip: Uint8Array,
  change: (view: DataView, listAt: number, headerAt: number) => void,
): Uint8Array {
  const copy = zip.slice();
  const view = new DataView(copy.buffer);
  let listAt = view.getUint32(copy.length - 22 + 16, true);
  for (const { headerAt } of zipDirectory(zip, 'x')) {
    change(view, listAt, headerAt);
    listAt +=
      46 +
      view.getUint16(listAt + 28, true) +
      view.getUint16(listAt + 30, true) +
      view.getUint16(listAt + 32, true);
  }
  return copy;
}

describe('zip', () => {
  it('gives back what was put in, whatever it is', () => {
    const path = fc
      .array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 3 })
      .map((parts) => parts.join('/'))
      .filter(
        (each) => pathProblem(each) === null && !/(^|\/)(\.DS_Store|Thumbs\.db|desktop\.ini)$/i.test(each),
      );
    const files = fc.dictionary(path, fc.uint8Array({ maxLength: 300 }), { maxKeys: 8 });
    fc.assert(
      fc.property(files, (dictionary) => {
        const bag = new Map([...Object.entries(dictionary), ['case.json', text('{}')] as const]);
        const back = bagFromZip(zipOfBag(bag));
        expect([...back].sort()).toEqual([...bag].sort());
      }),
      { numRuns: 100 },
    );
  });

  it('is the same bytes for the same files, in whatever order they come', () => {
    const files: [string, Uint8Array][] = [
      ['traces/d1.csv', text('a'.repeat(1000))],
      ['case.json', text('{}')],
      ['photos/ü.jpg', new Uint8Array([1, 2, 3])],
    ];
    expect(zipOfBag(new Map(files))).toEqual(zipOfBag(new Map([...files].reverse())));
  });

  it('takes a case in the one top folder, and leaves clutter out', () => {
    const zip = zipOf({
      'T12/': new Uint8Array(),
      'T12/case.json': text('{}'),
      'T12/traces/d1.csv': text('x'),
      'T12/.DS_Store': text('x'),
      '__MACOSX/T12/._case.json': text('x'),
    });
    expect([...bagFromZip(zip).keys()]).toEqual(['case.json', 'traces/d1.csv']);
  });

  it('keeps paths as they are when there are several top folders', () => {
    const zip = zipOf({ 'a/case.json': text('{}'), 'b/case.json': text('{}') });
    expect([...bagFromZip(zip).keys()]).toEqual(['a/case.json', 'b/case.json']);
  });

  it('reads the backslashes of some Windows programs', () => {
    expect([...bagFromZip(zipOf({ 'traces\\d1.csv': text('x') })).keys()]).toEqual(['traces/d1.csv']);
  });

  it.each([
    ['../evil.txt', /^z\.zip: \.\.\/evil\.txt: the zip is refused: the path climbs out of the case/],
    ['a/../../evil.txt', /climbs out/],
    ['..\\evil.txt', /climbs out/],
    ['/etc/cron.d/evil', /starts at the root/],
    ['C:\\evil.txt', /names a drive/],
  ])('refuses the path %s', (path, message) => {
    expect(() => bagFromZip(zipOf({ 'case.json': text('{}'), [path]: text('x') }), 'z.zip')).toThrow(message);
  });

  it('refuses what unpacks to more than the limits, before unpacking it', () => {
    const zip = zipOf({ 'case.json': text('{}'), 'traces/d1.csv': new Uint8Array(3_000_000) });
    expect(zip.length).toBeLessThan(10_000);
    const limits = { ...BAG_LIMITS, maxFileBytes: 2_000_000 };
    expect(() => bagFromZip(zip, 'z.zip', limits)).toThrow(
      'z.zip: traces/d1.csv: is 3 MB, more than the 2 MB that are read',
    );
    expect(() => bagFromZip(zip, 'z.zip', { ...BAG_LIMITS, maxTotalBytes: 2_000_000 })).toThrow(
      'z.zip: holds 3 MB in all',
    );
    expect(() => bagFromZip(zip, 'z.zip', { ...BAG_LIMITS, maxFiles: 1 })).toThrow(
      'z.zip: holds 2 files, more than the 1',
    );
  });

  it('refuses a file that is larger than it claims, however much larger', () => {
    const zip = patched(zipOf({ 'a.csv': new Uint8Array(3_000_000) }), (view, listAt, headerAt) => {
      view.setUint32(listAt + 24, 100, true);
      view.setUint32(headerAt + 22, 100, true);
    });
    expect(() => bagFromZip(zip, 'z.zip')).toThrow(/^z\.zip: a\.csv: the file inside the zip is /);
  });

  it('refuses a file that is smaller than it claims', () => {
    const zip = patched(zipOf({ 'a.csv': text('hello hello hello') }), (view, listAt) => {
      view.setUint32(listAt + 24, 1000, true);
    });
    expect(() => bagFromZip(zip, 'z.zip')).toThrow(
      'z.zip: a.csv: the file inside the zip is not as long as it claims (1000 bytes)',
    );
  });

  it('refuses a file whose checksum differs', () => {
    const zip = zipOf({ 'a.csv': [text('hello'), { level: 0 }] });
    const [entry] = zipDirectory(zip, 'x');
    zip[entry!.headerAt + 30 + 5]! ^= 1;
    expect(() => bagFromZip(zip, 'z.zip')).toThrow(
      'z.zip: a.csv: the file inside the zip is damaged (its checksum differs)',
    );
  });

  it('refuses a locked zip, a link, another method of packing', () => {
    const zip = zipOf({ 'a.csv': text('hello') });
    const locked = patched(zip, (view, listAt) => view.setUint16(listAt + 8, 1, true));
    expect(() => bagFromZip(locked, 'z.zip')).toThrow('z.zip: a.csv: the zip is locked with a password');
    const link = patched(zip, (view, listAt) => view.setUint32(listAt + 38, 0o120777 * 65536, true));
    expect(() => bagFromZip(link, 'z.zip')).toThrow(
      'z.zip: a.csv: the zip is refused: it holds a link, not a file',
    );
    const packed = patched(zip, (view, listAt) => view.setUint16(listAt + 10, 14, true));
    expect(() => bagFromZip(packed, 'z.zip')).toThrow('z.zip: a.csv: packed by method 14');
  });

  it('refuses a path that is there twice', () => {
    const zip = zipOf({ 'a1.csv': text('1'), 'a2.csv': text('2') });
    const twice = patched(zip, (view, listAt) => view.setUint8(listAt + 46 + 1, 49));
    expect(() => bagFromZip(twice, 'z.zip')).toThrow('z.zip: a1.csv: the zip holds this file twice');
  });

  it('refuses what is no zip or only the start of one', () => {
    const zip = zipOf({ 'case.json': text('{"a": 1}'), 'traces/d1.csv': text('x'.repeat(5000)) });
    expect(() => bagFromZip(text('hello'), 'z.zip')).toThrow('z.zip: this is not a zip file');
    expect(() => bagFromZip(new Uint8Array(), 'z.zip')).toThrow('z.zip: this is not a zip file');
    for (let length = 4; length < zip.length; length++) {
      expect(() => bagFromZip(zip.slice(0, length), 'z.zip')).toThrow('z.zip: the zip is cut short');
    }
  });

  it('never crashes on a zip with a byte changed', () => {
    const zip = zipOf({ 'case.json': text('{"a": 1}'), 'traces/d1.csv': text('0,1\n'.repeat(50)) });
    for (let at = 0; at < zip.length; at++) {
      for (const mask of [1, 0x80, 0xff]) {
        const changed = zip.slice();
        changed[at]! ^= mask;
        try {
          bagFromZip(changed, 'z.zip');
        } catch (error) {
          expect((error as Error).name).toBe('InputFault');
        }
      }
    }
  });
});
