/** A firm's letterhead and signature on a report, and the report verified as others would. */
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { bagFromZip } from '@standfast/casefile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { caseJson, writeCase } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const PICTURES = path.join(import.meta.dirname, '../report/pictures');
const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });
const folder = temporaryFolder();
const firm = { units: 'us', letterhead: { lines: ['Firm of Record'], logo: 'logo.png' } };

beforeAll(() => {
  buildCommand();
  writeCase(folder.at('case'), caseJson());
  mkdirSync(folder.at('firm'));
  copyFileSync(path.join(PICTURES, 'logo.png'), folder.at('firm', 'logo.png'));
  writeFileSync(
    folder.at('firm', 'firm.json'),
    JSON.stringify({ ...firm, signature: { image: 'logo.png', name: 'Ada' } }),
  );
}, 180_000);
afterAll(() => folder.remove());

describe('assess --firm', () => {
  beforeAll(() => {
    const ran = standfast([
      'assess',
      folder.at('case'),
      '--firm',
      folder.at('firm'),
      '--signed-on',
      '2026-06-20',
      '--paper',
      'a4',
      '--draws',
      '200',
      '--report',
      folder.at('r.pdf'),
      '--html',
      folder.at('r.html'),
    ]);
    expect(ran.status, ran.err).toBe(0);
  }, 120_000);

  it.each(['r.pdf', 'r.html'])(
    '%s stands, for anyone who has only the file',
    (file) => {
      const ran = standfast(['verify', folder.at(file)]);
      expect(ran.status, ran.out + ran.err).toBe(0);
      expect(ran.out).toContain('stands.');
    },
    60_000,
  );

  it('is printed, and written into the case inside', () => {
    const text = run('pdftotext', folder.at('r.pdf'), '-');
    expect(text).toContain('Firm of Record');
    expect(text).not.toContain('not signed');
    run('pdfdetach', '-savefile', 'case.zip', '-o', folder.at('case.zip'), folder.at('r.pdf'));
    const bag = bagFromZip(new Uint8Array(readFileSync(folder.at('case.zip'))));
    expect(JSON.parse(new TextDecoder().decode(bag.get('case.json'))).report).toEqual({
      units: 'us',
      paper: 'a4',
      letterhead: { lines: ['Firm of Record'], logo: 'report/logo.png' },
      signature: { image: 'report/logo.png', name: 'Ada', signedOn: '2026-06-20' },
    });
    expect(bag.get('report/logo.png')).toEqual(new Uint8Array(readFileSync(folder.at('firm', 'logo.png'))));
  });

  it('leaves the case on disk as it was', () => {
    expect(JSON.parse(readFileSync(folder.at('case', 'case.json'), 'utf8')).report).toBeUndefined();
  });

  it('names the part of the HTML where a figure was changed', () => {
    const html = readFileSync(folder.at('r.html'), 'utf8');
    const forged = html.replace(/(<dd class="v">)\d/, '$19');
    expect(forged).not.toBe(html);
    writeFileSync(folder.at('forged.html'), forged);
    const ran = standfast(['verify', folder.at('forged.html')]);
    expect(ran.status).toBe(1);
    expect(ran.out).toMatch(/does NOT stand/);
    expect(ran.out).toMatch(/part \d+: “9/);
  }, 60_000);
});

it.each([
  [{ letterhead: { logo: 'gone.png' } }, /firm\.json: letterhead\.logo: names gone\.png/],
  [{ added: [] }, /firm\.json: added: belongs to one case/],
  [{ paper: 'a3' }, /firm\.json: paper/],
])('refuses a firm that says %j', (content, message) => {
  mkdirSync(folder.at('bad'), { recursive: true });
  writeFileSync(folder.at('bad', 'firm.json'), JSON.stringify(content));
  const ran = standfast(['assess', folder.at('case'), '--firm', folder.at('bad')]);
  expect(ran.status).toBe(1);
  expect(ran.err).toMatch(message);
});

it('refuses a day of signing that is none', () => {
  const ran = standfast(['assess', folder.at('case'), '--signed-on', '2026-02-30']);
  expect(ran.status).toBe(2);
  expect(ran.err).toContain('Give a day as year-month-day');
});
