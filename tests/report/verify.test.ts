/** A report proves itself: honest ones stand, and whatever is changed by hand is named. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bagFromZip, openCase, saveCase, zipOfBag } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import { assess } from '@standfast/engine';
import { provenHtml, provenPdf, reportDocument, toPdf, verifyReport } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { unzlibSync, zlibSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'verify-'));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });

let honest: Uint8Array;
let fonts: Awaited<ReturnType<typeof loadFonts>>;
const options = { units: 'us', generatedOn: '2026-07-02' } as const;

async function opened() {
  const bag = await demoBag();
  const { caseFile, engineInput, notices } = openCase(bag);
  const assessed = assess(engineInput, { draws: 200, seed: 7 });
  return { bag, caseFile, assessment: { ...assessed, notices: [...notices, ...assessed.notices] } };
}

beforeAll(async () => {
  fonts = await loadFonts();
  honest = await provenPdf({ ...(await opened()), options }, { fonts });
}, 60_000);

const latin = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');
const verified = (bytes: Uint8Array) => verifyReport(bytes, 'report.pdf', { fonts });

/** The file with its streams changed by `change` (given unpacked; null leaves one), packed anew with a mended table. */
function rewritten(pdf: Uint8Array, change: (stream: Buffer) => Uint8Array | null): Uint8Array {
  const out: string[] = [];
  const offsets: number[] = [];
  let length = 0;
  const put = (text: string) => {
    out.push(text);
    length += text.length;
  };
  const text = latin(pdf);
  const table = text.lastIndexOf('\nxref');
  put('%PDF-1.7\n');
  let at = text.indexOf('1 0 obj') > -1 ? text.search(/\d+ 0 obj/) : 0;
  while (at < table) {
    const head = /(\d+) 0 obj\n/y;
    head.lastIndex = at;
    const found = head.exec(text);
    if (!found) break;
    offsets[Number(found[1])] = length;
    const streamAt = text.indexOf('stream\n', at);
    const endAt = text.indexOf('endobj', at);
    if (streamAt < 0 || streamAt > endAt) {
      put(text.slice(at, endAt + 7));
      at = endAt + 7;
      continue;
    }
    const dict = text.slice(at, streamAt);
    const size = Number(/\/Length (\d+)/.exec(dict)![1]);
    const raw = Buffer.from(text.slice(streamAt + 7, streamAt + 7 + size), 'latin1');
    const packed = dict.includes('FlateDecode');
    const changed = change(packed ? Buffer.from(unzlibSync(raw)) : raw);
    const body = changed === null ? raw : packed ? zlibSync(changed) : changed;
    put(dict.replace(/\/Length \d+/, `/Length ${body.length}`));
    put(`stream\n${latin(body)}\nendstream\nendobj\n`);
    at = text.indexOf('endobj', streamAt + 7 + size) + 7;
  }
  const xref = length;
  put(`xref\n0 ${offsets.length}\n0000000000 65535 f \n`);
  for (let i = 1; i < offsets.length; i++) put(`${String(offsets[i] ?? 0).padStart(10, '0')} 00000 n \n`);
  put(text.slice(text.indexOf('trailer', table)).replace(/startxref\n\d+/, `startxref\n${xref}`));
  return Buffer.from(out.join(''), 'latin1');
}

/** Flips one bit so many bytes from the end of the first stream that is meant: a page must be named for it. */
async function expectPageNamed(pdf: Uint8Array, isMeant: (stream: Buffer) => boolean, fromEnd: number) {
  let done = false;
  const forged = rewritten(pdf, (stream) => {
    if (done || !isMeant(stream)) return null;
    done = true;
    const changed = Buffer.from(stream);
    changed[changed.length - fromEnd]! ^= 1;
    return changed;
  });
  expect(done).toBe(true);
  const found = await verified(forged);
  expect(found.stands).toBe(false);
  expect(found.pages.differing.length).toBeGreaterThan(0);
}

it('an honest report stands, also packed anew', async () => {
  const found = await verified(honest);
  expect(found).toMatchObject({ stands: true, caseUnchanged: true, seed: 7, draws: 200, others: [] });
  expect(found.figures.compared).toBeGreaterThan(1000);
  expect(found.figures.differing).toEqual([]);
  expect(found.pages.compared).toBeGreaterThan(10);
  expect((await verified(rewritten(honest, () => null))).stands).toBe(true);
}, 60_000);

it('names a figure changed in the attached figures', async () => {
  const forged = rewritten(honest, (stream) => {
    if (!stream.subarray(0, 40).includes('standfast-assessment')) return null;
    const json = JSON.parse(stream.toString());
    json.safety.governing.p50 += 0.5;
    return Buffer.from(JSON.stringify(json));
  });
  const found = await verified(forged);
  expect(found.stands).toBe(false);
  expect(found.figures.differing.map((d) => d.where)).toEqual(['safety.governing.p50']);
  expect(found.pages.differing).toEqual([]);
}, 60_000);

it('names the figures and pages that a changed case no longer bears', async () => {
  const forged = rewritten(honest, (stream) => {
    if (stream.subarray(0, 2).toString() !== 'PK') return null;
    const bag = new Map(bagFromZip(new Uint8Array(stream)));
    const file = JSON.parse(new TextDecoder().decode(bag.get('case.json')));
    file.tree.heightM = 15;
    bag.set('case.json', new TextEncoder().encode(JSON.stringify(file)));
    return zipOfBag(bag);
  });
  const found = await verified(forged);
  expect(found).toMatchObject({ stands: false, caseUnchanged: false });
  expect(found.figures.differing.map((d) => d.where)).toContain('wind.momentNm');
  expect(found.pages.differing[0]!.page).toBe(1);
}, 60_000);

it('names the page and the words where a figure was changed by hand', async () => {
  // A digit on the first page is given the glyph of another that the same font draws.
  let done = false;
  const forged = rewritten(honest, (stream) => {
    const text = stream.toString('latin1');
    const run = done ? null : /\[<([0-9a-f]{4})([0-9a-f]{4})([0-9a-f]{4,})> 0\] TJ/.exec(text);
    if (!run || run[1] === run[2]) return null;
    done = true;
    return Buffer.from(text.replace(run[0], run[0].replace(run[1]! + run[2]!, run[2]! + run[1]!)), 'latin1');
  });
  expect(done).toBe(true);
  const found = await verified(forged);
  expect(found.stands).toBe(false);
  expect(found.figures.differing).toEqual([]);
  expect(found.pages.differing).toHaveLength(1);
  expect(found.pages.differing[0]!.inReport).toHaveLength(1);
  expect(found.pages.differing[0]!.recomputed).toHaveLength(1);
}, 60_000);

it('sees a font whose letters were redrawn, though the words read the same', async () => {
  await expectPageNamed(honest, (stream) => stream.subarray(0, 300).includes('glyf'), 1);
}, 60_000);

it('refuses what is no report that carries its case', async () => {
  await expect(verified(new TextEncoder().encode('hello'))).rejects.toThrow('this is not a PDF');
  await expect(verified(honest.subarray(0, honest.length - 300))).rejects.toThrow('cut off');
  const { assessment, caseFile } = await opened();
  const bare = await toPdf(reportDocument({ assessment, caseFile, options }), { fonts });
  await expect(verified(bare)).rejects.toThrow('carries no case.zip');
}, 60_000);

it('refuses a report written anew by another program, and its case comes out whole', async () => {
  const [from, to] = [join(folder, 'a.pdf'), join(folder, 'b.pdf')];
  writeFileSync(from, honest);
  execFileSync('qpdf', ['--object-streams=generate', from, to]);
  await expect(verified(readFileSync(to))).rejects.toThrow('written anew by another program');
  execFileSync('pdfdetach', ['-savefile', 'case.zip', '-o', join(folder, 'case.zip'), from]);
  const bag = bagFromZip(new Uint8Array(readFileSync(join(folder, 'case.zip'))));
  expect([...bag.keys()].sort()).toEqual([...(await demoBag()).keys()].sort());
}, 60_000);

describe('a report with letterhead, signature and photos', () => {
  const png = (path: string) => new Uint8Array(readFileSync(join(import.meta.dirname, 'pictures', path)));
  let pdf: Uint8Array;
  let html: string;

  beforeAll(async () => {
    const { bag, caseFile, assessment } = await opened();
    const files = new Map(bag)
      .set('report/logo.png', png('logo.png'))
      .set('photos/turned.jpg', png('turned.jpg'))
      .set('photos/plain.png', png('plain.png'));
    const changed = {
      ...caseFile,
      signs: caseFile.signs.map((sign, i) => ({
        ...sign,
        ...([{ photo: 'photos/turned.jpg' }, { photo: 'photos/plain.png' }, { photo: 'gone.jpg' }][i] ?? {}),
      })),
      report: {
        units: 'metric' as const,
        letterhead: { lines: ['Firm'], logo: 'report/logo.png' },
        signature: { image: 'report/logo.png', name: 'Ada', signedOn: '2026-07-01' },
        struck: ['method/paragraph-1'],
        added: [{ after: 'method/paragraph-1', text: 'Added words.' }],
      },
    };
    const made = saveCase(changed, files);
    const { notices } = openCase(made);
    const input = {
      assessment: {
        ...assessment,
        notices: [...notices, ...assessment.notices.slice(openCase(bag).notices.length)],
      },
      caseFile: changed,
      bag: made,
      options,
    };
    pdf = await provenPdf(input, { fonts });
    html = await provenHtml(input, { fonts });
    writeFileSync(join(folder, 'photos.pdf'), pdf);
  }, 60_000);

  const verifiedHtml = (text: string) =>
    verifyReport(new TextEncoder().encode(text), 'report.html', { fonts });

  it('stands as PDF and as HTML, also with the line ends of a mail', async () => {
    expect(await verified(pdf)).toMatchObject({ stands: true, kind: 'pdf', others: [] });
    expect(await verifiedHtml(html)).toMatchObject({ stands: true, kind: 'html', others: [] });
    expect((await verifiedHtml(html.replace(/\n/g, '\r\n'))).stands).toBe(true);
  }, 60_000);

  it('prints JPEG and PNG, turned as the camera was held, and says what is missing', () => {
    const path = join(folder, 'photos.pdf');
    expect(run('qpdf', '--check', path)).toContain('No syntax or stream');
    const list = run('pdfimages', '-list', path);
    expect(list).toMatch(/ image +40 +20 .* jpeg /);
    const text = run('pdftotext', path, '-').replace(/\s+/g, ' ');
    // Stored 40 wide and 20 high, turned a quarter: upright it is 20 by 40.
    expect(text).toContain('photos/turned.jpg, 20 × 40 px.');
    expect(text).toContain('photos/plain.png, 30 × 30 px.');
    expect(text).toContain('Missing: the record names gone.jpg');
    expect(html).toContain('width="20" height="40"');
  });

  it('names the part and the words where a figure in the HTML was changed', async () => {
    const forged = html.replace(
      /(<dd class="v">)(\d)/,
      (_, tag, digit) => `${tag}${(Number(digit) + 1) % 10}`,
    );
    expect(forged).not.toBe(html);
    const found = await verifiedHtml(forged);
    expect(found.stands).toBe(false);
    expect(found.figures.differing).toEqual([]);
    expect(found.pages.differing).toHaveLength(1);
    expect(found.pages.differing[0]!.inReport).toHaveLength(1);
    expect(found.pages.differing[0]!.recomputed).toHaveLength(1);
  }, 60_000);

  it('sees a caution hidden by a style, though the words read the same', async () => {
    const found = await verifiedHtml(html.replace('</style>', '#limits~ul{display:none}</style>'));
    expect(found.stands).toBe(false);
    expect(found.pages.differing.map(({ inReport }) => inReport)).toEqual([[]]);
  }, 60_000);

  it('names a figure changed in the HTML’s attached figures, and a case exchanged', async () => {
    const at = html.indexOf('data:application/json;base64,') + 'data:application/json;base64,'.length;
    const end = html.indexOf('"', at);
    const json = JSON.parse(Buffer.from(html.slice(at, end), 'base64').toString());
    json.safety.governing.p50 += 0.5;
    const forged = html.slice(0, at) + Buffer.from(JSON.stringify(json)).toString('base64') + html.slice(end);
    const found = await verifiedHtml(forged);
    expect(found.figures.differing.map((d) => d.where)).toEqual(['safety.governing.p50']);
    expect(found.stands).toBe(false);
  }, 60_000);

  it('names a photo exchanged in the PDF', async () => {
    await expectPageNamed(pdf, (stream) => stream[0] === 0xff && stream[1] === 0xd8, 3);
  }, 60_000);
});
