import { mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BAG_LIMITS, type CaseBag } from '../bag/bag.ts';
import { zipOfBag } from '../bag/zipOfBag.ts';
import { bagFromFolder, bagFromPath } from './bagFromDisk.ts';
import { writeFolder, writeZipFile } from './writeBag.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const BAG: CaseBag = new Map([
  ['case.json', encode('{}')],
  ['photos/ü b.jpg', new Uint8Array([1, 2, 3])],
  ['traces/d1.csv', encode('x')],
]);

let place = '';
beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'casefile-'));
});
afterEach(async () => {
  await rm(place, { recursive: true, force: true });
});

const everything = async (folder: string) => (await readdir(folder, { recursive: true })).sort();

describe('a case on disk', () => {
  it('comes back from a folder, its case.json, or a zip', async () => {
    await writeFolder(BAG, join(place, 'deep/case'));
    await writeZipFile(BAG, join(place, 'case.zip'));
    expect([...(await bagFromPath(join(place, 'deep/case')))]).toEqual([...BAG]);
    expect([...(await bagFromPath(join(place, 'deep/case/case.json')))]).toEqual([...BAG]);
    expect([...(await bagFromPath(join(place, 'case.zip')))]).toEqual([...BAG]);
    expect(await everything(place)).toEqual([
      'case.zip',
      'deep',
      'deep/case',
      'deep/case/case.json',
      'deep/case/photos',
      'deep/case/photos/ü b.jpg',
      'deep/case/traces',
      'deep/case/traces/d1.csv',
    ]);
  });

  it('may be written into an empty folder, never into a full one', async () => {
    const folder = join(place, 'case');
    await mkdir(folder);
    await writeFolder(BAG, folder);
    const changed = new Map(BAG).set('case.json', encode('{"a":1}'));
    await expect(writeFolder(changed, folder)).rejects.toThrow(
      `${folder}: the folder is not empty, and nothing in it was touched: choose a new or empty one`,
    );
    expect(await readFile(join(folder, 'case.json'), 'utf8')).toBe('{}');
  });

  it('is updated file by file, and what is not in the bag stays', async () => {
    const folder = join(place, 'case');
    await writeFolder(BAG, folder);
    await writeFile(join(folder, 'mine.txt'), 'mine');
    await writeFolder(
      new Map([
        ['case.json', encode('{"a":1}')],
        ['traces/d2.csv', encode('y')],
      ]),
      folder,
      { update: true },
    );
    expect(await everything(folder)).toEqual([
      'case.json',
      'mine.txt',
      'photos',
      'photos/ü b.jpg',
      'traces',
      'traces/d1.csv',
      'traces/d2.csv',
    ]);
    expect(await readFile(join(folder, 'case.json'), 'utf8')).toBe('{"a":1}');
  });

  it('is not written over other things', async () => {
    await writeFile(join(place, 'file'), 'x');
    await expect(writeFolder(BAG, join(place, 'file'))).rejects.toThrow('this is a file');
    await expect(writeFolder(BAG, place, { update: true })).rejects.toThrow(
      'holds other things and no case.json',
    );
    await expect(writeZipFile(BAG, join(place, 'file'))).rejects.toThrow('this exists already');
    await expect(writeZipFile(BAG, place, { overwrite: true })).rejects.toThrow('this exists already');
    await writeZipFile(BAG, join(place, 'file'), { overwrite: true });
    expect(new Uint8Array(await readFile(join(place, 'file')))).toEqual(zipOfBag(BAG));
  });

  it('leaves nothing half written when it fails', async () => {
    const folder = join(place, 'case');
    // A file stands where a folder is needed.
    const impossible: CaseBag = new Map([...BAG, ['traces', encode('x')]]);
    await expect(writeFolder(impossible, folder)).rejects.toThrow();
    expect(await everything(place)).toEqual([]);
    await writeFolder(BAG, folder);
    const before = await everything(folder);
    await expect(writeFolder(impossible, folder, { update: true })).rejects.toThrow();
    expect(await everything(folder)).toEqual(before);
  });

  it('is not written outside its folder', async () => {
    await expect(writeFolder(new Map([['../x', encode('x')]]), join(place, 'case'))).rejects.toThrow(
      'climbs out',
    );
    expect(await everything(place)).toEqual([]);
  });

  it('follows links inside, and refuses those that lead out or nowhere', async () => {
    const folder = join(place, 'case');
    await writeFolder(BAG, folder);
    await symlink(join(folder, 'traces/d1.csv'), join(folder, 'traces/d2.csv'));
    expect((await bagFromFolder(folder)).get('traces/d2.csv')).toEqual(encode('x'));
    await writeFile(join(place, 'secret'), 'secret');
    await symlink('../../secret', join(folder, 'traces/d3.csv'));
    await expect(bagFromFolder(folder)).rejects.toThrow(
      `${join(folder, 'traces/d3.csv')}: this link leads out of the case folder: put the file itself there`,
    );
    await rm(join(folder, 'traces/d3.csv'));
    await symlink(place, join(folder, 'out'));
    await expect(bagFromFolder(folder)).rejects.toThrow('leads out of the case folder');
    await rm(join(folder, 'out'));
    await symlink('nothing', join(folder, 'gone'));
    await expect(bagFromFolder(folder)).rejects.toThrow('this link leads nowhere');
    await rm(join(folder, 'gone'));
    await symlink('.', join(folder, 'round'));
    await expect(bagFromFolder(folder)).rejects.toThrow('deep');
  });

  it('leaves hidden files out and holds to the limits', async () => {
    const folder = join(place, 'case');
    await writeFolder(BAG, folder);
    await writeFile(join(folder, '.DS_Store'), 'x');
    expect((await bagFromFolder(folder)).has('.DS_Store')).toBe(false);
    await expect(bagFromFolder(folder, { ...BAG_LIMITS, maxFileBytes: 2 })).rejects.toThrow(
      `${join(folder, 'photos/ü b.jpg')}: is 3 bytes, more than the 2 bytes that are read`,
    );
    await expect(bagFromFolder(folder, { ...BAG_LIMITS, maxTotalBytes: 4 })).rejects.toThrow(
      'holds 6 bytes in all',
    );
    await expect(bagFromFolder(folder, { ...BAG_LIMITS, maxFiles: 2 })).rejects.toThrow(
      'holds 3 files, more than the 2',
    );
  });

  it('says what is wrong with a path', async () => {
    await expect(bagFromPath(join(place, 'none'))).rejects.toThrow(
      `${join(place, 'none')}: there is no such file or folder: check the path`,
    );
    await writeFile(join(place, 'notes.txt'), 'x');
    await expect(bagFromPath(join(place, 'notes.txt'))).rejects.toThrow('this is not a zip file');
    await expect(bagFromPath(join(place, 'notes.txt/x'))).rejects.toThrow(
      'a part of the path is a file, not a folder',
    );
    expect((await stat(place)).isDirectory()).toBe(true);
  });
});
