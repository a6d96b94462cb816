/** The evidence in pictures: signs, drillings with their strips, felled sections; what is missing is said. */
import { type CaseFile, findFile, pathProblem, type ReadonlyCaseBag } from '@standfast/casefile';
import { pictureOf } from '../../picture/picture.ts';
import { bearing, fixed, measure } from '../../units.ts';
import { term } from '../../words/spoken.ts';
import type { Block, PhotoItem } from '../blocks.ts';
import type { Context } from '../context.ts';
import { heading } from '../make.ts';

interface Named {
  path: string;
  caption: string;
}

/** The photos that a case names, in its order, each with what it shows. */
function photosNamed({ c, w, units }: Context): Named[] {
  const named: Named[] = [];
  const add = (path: string | undefined, ...parts: (string | undefined)[]) => {
    if (path !== undefined)
      named.push({
        path,
        caption: `${parts.filter((part) => part !== undefined && part !== '').join(', ')}.`,
      });
  };
  const note = (text: string | undefined) => text?.trim().replace(/\.$/, '');
  for (const s of c.signs)
    add(
      s.photo,
      term('sign', s.kind),
      s.where,
      s.azimuthDeg === undefined ? undefined : bearing(s.azimuthDeg),
      s.heightM === undefined ? undefined : w.photos.height(measure(s.heightM, 'heightM', units)),
      note(s.note),
    );
  const drillings = (place: string, list: CaseFile['sections'][number]['drillings']) => {
    for (const d of list)
      add(d.photo, w.photos.drilling(d.id), w.photos.at(place, bearing(d.azimuthDeg)), note(d.note));
  };
  for (const s of c.sections) {
    drillings(w.photos.section(s.id), s.drillings);
    add(s.felled?.photo, w.photos.felled(s.id), note(s.felled?.note));
  }
  for (const f of c.flares) drillings(w.photos.flare(f.id), f.drillings);
  return named;
}

export function photos(context: Context): Block[] {
  const { w } = context;
  const named = photosNamed(context);
  if (named.length === 0) return [];
  const items = named.map((one, i) => photo(context, one, i + 1));
  const rows: Block[] = [];
  for (let i = 0; i < items.length; i += 2) rows.push({ kind: 'photos', items: items.slice(i, i + 2) });
  return [heading(1, w.photos.heading, 'photos'), { kind: 'paragraph', text: w.photos.intro }, ...rows];
}

function photo({ c, w, options, files }: Context, { path, caption }: Named, number: number): PhotoItem {
  const bytes = files === null ? undefined : fileOf(files, path);
  if (bytes === undefined)
    return {
      number,
      caption,
      facts: files === null ? w.photos.inCase(path) : w.photos.missing(path),
      picture: null,
    };
  const picture = pictureOf(bytes);
  const reduced = c.report?.reduced?.find((one) => one.photo === path);
  const facts = [
    picture === null
      ? w.photos.notPrinted(path)
      : w.photos.file(path, fixed(picture.widthPx, 0), fixed(picture.heightPx, 0)),
    w.photos.fingerprint(options.fingerprints?.get(path.toLowerCase()) ?? w.notRecorded),
    reduced === undefined
      ? ''
      : w.photos.reduced(reduced.originalSha256, fixed(reduced.originalBytes / 1e6, 1)),
  ];
  return { number, caption, facts: facts.filter((text) => text !== '').join(' '), picture };
}

/** The file of a path, by the same loose comparison as on opening the case. */
export function fileOf(files: ReadonlyCaseBag, path: string): Uint8Array | undefined {
  return pathProblem(path) === null ? findFile(files, path, 'case.json')?.bytes : undefined;
}
