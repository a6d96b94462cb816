import { createHash, randomBytes } from 'node:crypto';
import type { CaseFile } from '@standfast/casefile';
import { parseCase } from '@standfast/casefile';
import { expect, it, vi } from 'vitest';
import { reducePhotos } from './reducePhotos.ts';

const jpegOf = (size: number) => new Uint8Array([0xff, 0xd8, ...randomBytes(size - 2)]);
const caseWith = (...photos: string[]): CaseFile =>
  parseCase({
    format: 'standfast-case',
    version: 1,
    tree: {},
    signs: photos.map((photo) => ({ kind: 'crack', photo })),
  }).caseFile;
/** Photos are held against each other by their hashes: byte by byte takes a minute. */
const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const shrink = vi.fn(async (bytes: Uint8Array, longest: number) => bytes.slice(0, longest * 1000));

it('leaves photos that fit as they are', async () => {
  const bag = new Map([['photos/a.jpg', jpegOf(1000)]]);
  const caseFile = caseWith('photos/a.jpg');
  expect(await reducePhotos(caseFile, bag, shrink)).toEqual({ caseFile, bag });
});

it('makes large photos smaller, and records what they were made from', async () => {
  const [large, png, small] = [jpegOf(6e6), jpegOf(4e6), jpegOf(5000)];
  const bag = new Map([
    ['photos/a.jpg', large],
    ['photos/b.png', png],
    ['photos/c.jpg', small],
    ['photos/d.heic', new Uint8Array(10)],
  ]);
  const made = await reducePhotos(
    caseWith('photos/A.jpg', 'photos/b.png', 'photos/c.jpg', 'photos/d.heic'),
    bag,
    shrink,
  );
  // Two of 1600 and of 1200 kB fit in 5 MB together: the first step is enough.
  expect(sha(made.bag.get('photos/a.jpg')!)).toBe(sha(large.slice(0, 1_600_000)));
  expect(sha(made.bag.get('photos/b.png.jpg')!)).toBe(sha(png.slice(0, 1_600_000)));
  expect(made.bag.has('photos/b.png')).toBe(false);
  expect(made.bag.get('photos/c.jpg')).toBe(small);
  expect(made.caseFile.signs.map(({ photo }) => photo)).toEqual([
    'photos/a.jpg',
    'photos/b.png.jpg',
    'photos/c.jpg',
    'photos/d.heic',
  ]);
  expect(made.caseFile.report?.reduced).toEqual([
    { photo: 'photos/a.jpg', originalSha256: sha(large), originalBytes: 6e6 },
    { photo: 'photos/b.png.jpg', originalSha256: sha(png), originalBytes: 4e6 },
  ]);
  expect(parseCase(made.bag.get('case.json')!).caseFile).toEqual(made.caseFile);
});

it('goes on making them smaller until they fit', async () => {
  const names = Array.from({ length: 6 }, (_, i) => `photos/${i}.jpg`);
  const bag = new Map(names.map((name) => [name, jpegOf(2e6)]));
  const made = await reducePhotos(caseWith(...names), bag, shrink);
  const total = [...made.bag].reduce(
    (sum, [path, bytes]) => sum + (path === 'case.json' ? 0 : bytes.length),
    0,
  );
  expect(total).toBeLessThanOrEqual(5e6);
});

it('keeps a photo that cannot be decoded', async () => {
  const broken = jpegOf(6e6);
  const bag = new Map([['photos/a.jpg', broken]]);
  const made = await reducePhotos(caseWith('photos/a.jpg'), bag, async () => null);
  expect(made.bag.get('photos/a.jpg')).toBe(broken);
  expect(made.caseFile.report?.reduced).toEqual([]);
});
