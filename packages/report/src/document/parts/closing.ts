/** What was recorded, method, sources, limits, terms, sign-off and the annex: what an expert reads. */
import { type Picture, pictureOf } from '../../picture/picture.ts';
import { bearing, fixed, measure } from '../../units.ts';
import { language, term } from '../../words/spoken.ts';
import { ownTexts } from '../../words/wording.ts';
import type { Block, Severity } from '../blocks.ts';
import { type Context, longDate } from '../context.ts';
import { heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { momentsByDirection } from './load.ts';
import { fileOf } from './photos.ts';

const ORDER: Severity[] = ['serious', 'caution', 'note'];

export function record(context: Context): Block[] {
  const { a, c, w, units } = context;
  const t = c.tree;
  const rows: string[][] = [];
  const row = (what: string, value: string | undefined) =>
    rows.push([what, value === undefined || value === '' ? w.notRecorded : value]);
  const mm = (v: number | undefined) => (v === undefined ? undefined : measure(v, 'lengthMm', units));
  const m = (v: number | undefined) => (v === undefined ? undefined : measure(v, 'heightM', units));
  const joined = (...parts: (string | undefined)[]) =>
    parts.filter((part) => part !== undefined && part !== '').join(', ');
  row(w.facts.client, joined(c.client?.name, c.client?.address));
  row(w.facts.assessor, joined(c.assessor?.name, c.assessor?.credential, c.assessor?.firm));
  row(w.facts.place, joined(c.place?.name, coordinates(c.place?.latitude, c.place?.longitude)));
  row(w.facts.visited, c.visitedOn === undefined ? undefined : longDate(c.visitedOn, w.months));
  row(w.facts.weather, c.weather);
  const needle = mm(c.instrument?.needleLengthMm);
  row(
    w.facts.instrument,
    joined(
      c.instrument?.name,
      c.instrument?.serialNumber === undefined ? '' : w.facts.serial(c.instrument.serialNumber),
      needle === undefined ? '' : w.facts.needle(needle),
      c.instrument?.calibratedOn === undefined
        ? ''
        : w.facts.calibrated(longDate(c.instrument.calibratedOn, w.months)),
    ),
  );
  row(w.record.label, t.label);
  row(w.record.species, t.species);
  row(w.record.diameter, mm(t.stemDiameterMm));
  row(w.record.height, m(t.heightM));
  row(
    w.record.lean,
    t.leanDeg ? w.record.leanText(fixed(t.leanDeg, 0), bearing(t.leanTowardDeg ?? 0)) : w.record.noLean,
  );
  const crown = t.crown;
  row(
    w.record.crown,
    crown &&
      w.record.crownText(
        crown.shape === undefined ? w.notRecorded : term('crown', crown.shape),
        m(crown.baseHeightM) ?? w.notRecorded,
        m(crown.widthM) ?? w.notRecorded,
        crown.inLeaf === false ? w.record.leafless : w.record.inLeaf,
      ),
  );
  for (const s of c.sections)
    row(
      w.record.section(s.id),
      w.record.sectionText(
        measure(s.heightM, 'heightM', units),
        w.record.outlines[s.outline.kind],
        mm(s.barkMm) ?? w.notRecorded,
      ),
    );
  if (c.notes) row(w.record.notes, c.notes);

  const blocks: Block[] = [
    heading(1, w.record.heading, 'record'),
    heading(2, w.scope.heading, 'scope'),
    { kind: 'paragraph', text: w.scope.text },
    table(w.record.treeTable, w.record.columns, [0.34, 0.66], rows),
  ];
  if (c.signs.length === 0) blocks.push({ kind: 'paragraph', text: w.record.noSigns });
  else
    blocks.push(
      table(
        w.record.signsTable,
        w.record.signColumns,
        [0.22, 0.3, 0.48],
        c.signs.map((s) => [term('sign', s.kind), s.where ?? '–', s.note ?? '–']),
      ),
    );
  if (c.targets.length === 0) blocks.push({ kind: 'paragraph', text: w.record.noTargets });
  else
    blocks.push(
      table(
        w.record.targetsTable,
        w.record.targetColumns,
        [0.34, 0.22, 0.18, 0.26],
        c.targets.map((x) => [
          x.what,
          x.occupancy === undefined ? '–' : term('occupancy', x.occupancy),
          m(x.distanceM) ?? '–',
          x.directionDeg === undefined ? '–' : bearing(x.directionDeg),
        ]),
      ),
    );
  const notices = [...a.notices].sort((p, q) => ORDER.indexOf(p.severity) - ORDER.indexOf(q.severity));
  if (notices.length > 0) {
    blocks.push(heading(2, w.record.noticesHeading, 'notices'), {
      kind: 'paragraph',
      text: w.record.notices,
    });
    for (const n of notices)
      blocks.push({
        kind: 'callout',
        severity: n.severity,
        title:
          n.where === '' ? w.record.severity[n.severity] : `${w.record.severity[n.severity]}: ${n.where}`,
        text: textInUnits(n.text, units),
      });
  }
  return blocks;
}

function coordinates(latitude: number | undefined, longitude: number | undefined): string | undefined {
  if (latitude === undefined || longitude === undefined) return undefined;
  const part = (v: number, plus: string, minus: string) =>
    `${fixed(Math.abs(v), 5)}° ${v < 0 ? minus : plus}`;
  const { north, east, south, west } = language().numbers.compassLetters;
  return `${part(latitude, north, south)} ${part(longitude, east, west)}`;
}

export function closing(context: Context): Block[] {
  const { a, w } = context;
  return [
    heading(1, w.method.heading, 'method'),
    ...w.method.paragraphs.map((text): Block => ({ kind: 'paragraph', text })),
    heading(1, w.sources.heading, 'sources'),
    { kind: 'paragraph', text: w.sources.intro },
    { kind: 'list', items: [...a.sources] },
    heading(1, w.limits.heading, 'limits'),
    { kind: 'list', items: [...w.limits.items] },
    heading(1, w.definitions.heading, 'terms'),
    { kind: 'definitions', layout: 'list', items: [...w.definitions.items] },
    heading(1, w.signOff.heading, 'sign-off'),
    signOff(context),
    ...annex(context),
  ];
}

function signOff(context: Context): Block {
  const { c, w } = context;
  const { signature } = c.report ?? {};
  const name = signature?.name ?? c.assessor?.name ?? '';
  const signed = signatureOf(context);
  const { place, signedOn } = signature ?? {};
  const line = signed === null ? { value: w.signOff.notSigned, alarm: true } : signed;
  return {
    kind: 'signature',
    statement: w.signOff.statement,
    lines: [
      { label: w.signOff.name, value: name },
      { label: w.signOff.credential, value: c.assessor?.credential ?? '' },
      { label: w.signOff.firm, value: c.assessor?.firm ?? '' },
      { label: w.signOff.interests, value: '' },
      {
        label: w.signOff.date,
        value: [place ?? '', signedOn === undefined ? '' : longDate(signedOn, w.months)]
          .filter((s) => s !== '')
          .join(', '),
      },
      { label: w.signOff.signature, ...line },
    ],
  };
}

/** How the report is signed: by an image, or in type with name and date; null while it is not. */
export function signatureOf({
  c,
  w,
  files,
}: Context): { value: string; image?: Picture; alarm?: boolean } | null {
  const { image, name, signedOn } = c.report?.signature ?? {};
  if (signedOn === undefined) return null;
  if (image === undefined) return name === undefined ? null : { value: w.signOff.signedInType(name) };
  const bytes = files === null ? undefined : fileOf(files, image);
  const picture = bytes === undefined ? null : pictureOf(bytes);
  return picture === null
    ? { value: w.signOff.imageMissing(image), alarm: true }
    : { value: '', image: picture };
}

function annex(context: Context): Block[] {
  const { a, c, w, units, options } = context;
  const mm = (v: number) => measure(v, 'lengthMm', units);
  const all = [
    ...a.sections.flatMap((s) => s.drillings.map((d) => ({ name: `${s.id}/${d.id}`, d }))),
    ...a.flares.flatMap((f) => f.drillings.map((d) => ({ name: `${f.id}/${d.id}`, d }))),
  ];
  const blocks: Block[] = [
    heading(1, w.annex.heading, 'annex'),
    table(
      w.annex.table,
      w.annex.columns,
      [0.34, 0.66],
      [
        [w.annex.engine, a.engineVersion],
        [w.annex.seed, String(a.seed)],
        [w.annex.draws, fixed(a.draws, 0)],
        [w.facts.reported, longDate(options.generatedOn, w.months)],
        ...(options.caseSha256 === undefined ? [] : [[w.annex.fingerprint, options.caseSha256]]),
      ],
    ),
    {
      kind: 'paragraph',
      text: options.caseSha256 === undefined ? w.annex.repeat : `${w.annex.repeat} ${w.annex.verify}`,
      tone: 'small',
    },
  ];
  const own = ownTexts(language().report, c.report?.wording ?? {});
  if (own.length > 0)
    blocks.push({ kind: 'paragraph', text: w.annex.ownTexts(own.join(', ')), tone: 'small' });
  if (all.length > 0)
    blocks.push(
      table(
        w.annex.poses,
        w.annex.poseColumns,
        [0.15, 0.19, 0.13, 0.14, 0.13, 0.13, 0.13],
        all.map(({ name, d }) => [
          name,
          bearing(d.azimuthDeg),
          `${fixed(d.offRadialDeg, 0)}°`,
          `${fixed(d.downDeg, 0)}°`,
          mm(d.barkFromMm),
          mm(d.woodFromMm),
          mm(d.zones.at(-1)?.toMm ?? 0),
        ]),
      ),
    );
  blocks.push(...momentsByDirection(context));
  return blocks;
}
