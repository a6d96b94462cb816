import { describe, expect, it } from 'vitest';
import { sortIncoming } from './incoming.ts';

const file = (path: string, text = 'x') => ({
  path,
  file: new File([text], path.split('/').pop() ?? path),
});

describe('files brought in', () => {
  it('are told apart: folder, zip, tables, unknown', async () => {
    const found = await sortIncoming([
      file('oak/case.json', '{}'),
      file('oak/traces/d1.csv'),
      file('oak/.DS_Store'),
      file('beech.zip'),
      file('loose.CSV'),
      file('sheet.xlsx'),
      file('movie.mp4'),
    ]);
    expect(found.map(({ kind }) => kind)).toEqual(['folder', 'zip', 'unknown', 'tables']);
    const [folder, , , tables] = found;
    expect(folder?.kind === 'folder' && [...folder.bag.keys()]).toEqual(['case.json', 'traces/d1.csv']);
    expect(tables?.kind === 'tables' && tables.tables.map(({ name }) => name)).toEqual([
      'loose.CSV',
      'sheet.xlsx',
    ]);
  });

  it('are photos by their name or by what the device says of them', async () => {
    const nameless = { path: '1000012345', file: new File([''], '1000012345', { type: 'image/jpeg' }) };
    const found = await sortIncoming([file('a.JPG'), nameless, file('b.webp'), file('c')]);
    const photos = found.find(({ kind }) => kind === 'photos');
    expect(photos?.kind === 'photos' && photos.photos.map(({ name }) => name)).toEqual([
      'a.JPG',
      '1000012345',
      'b.webp',
    ]);
    expect(found.map(({ kind }) => kind)).toEqual(['unknown', 'photos']);
  });

  it('take a chosen folder’s own files as the case, and several folders as several cases', async () => {
    const alone = await sortIncoming([file('case.json', '{}'), file('traces/d1.csv')]);
    expect(alone.map(({ kind }) => kind)).toEqual(['folder']);
    const two = await sortIncoming([file('a/case.json'), file('b/case.json')]);
    expect(two.map((each) => each.kind === 'folder' && each.name)).toEqual(['a', 'b']);
  });
});
