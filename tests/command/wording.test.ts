/** A firm's own wording, from the list of texts to the report, in French. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { caseJson, writeCase } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });
const folder = temporaryFolder();

beforeAll(() => {
  buildCommand();
  writeCase(folder.at('case'), caseJson());
}, 180_000);
afterAll(() => folder.remove());

describe('wording', () => {
  it('lists texts that can be used as they are', () => {
    const ran = standfast(['wording', '--language', 'fr', '--out', folder.at('wording.json')]);
    expect(ran.status, ran.err).toBe(0);
    const texts = JSON.parse(readFileSync(folder.at('wording.json'), 'utf8')) as Record<string, string>;
    expect(texts['safety.intro']).toContain('coefficient de sécurité');
    expect(texts['limits.items.add']).toBe('');
    expect(JSON.parse(standfast(['wording']).out)['safety.intro']).toContain('The safety factor');
  });

  it('is printed in a French report that verifies', () => {
    const wording = {
      'safety.intro': 'Vu le {visitedOn} par {assessor}.',
      'limits.items.add': 'Pour {client} seul.',
    };
    writeFileSync(folder.at('own.json'), JSON.stringify(wording));
    const made = standfast([
      'assess',
      folder.at('case'),
      '--language',
      'fr',
      '--wording',
      folder.at('own.json'),
      '--draws',
      '200',
      '--report',
      folder.at('r.pdf'),
    ]);
    expect(made.status, made.err).toBe(0);
    const text = run('pdftotext', folder.at('r.pdf'), '-').replace(/\s+/g, ' ');
    expect(text).toMatch(/Vu le .+ par .+\./);
    expect(text).toMatch(/Pour .+ seul\./);
    expect(text).toMatch(/termes propres à l’entreprise : safety\.intro, limits\.items\.add/);
    const verified = standfast(['verify', folder.at('r.pdf')]);
    expect(verified.status, verified.out + verified.err).toBe(0);
  }, 120_000);

  it('tells of each text that cannot be used, and writes nothing', () => {
    writeFileSync(folder.at('bad.json'), JSON.stringify({ 'limits.items': 'aucune', 'safty.intro': 'x' }));
    const ran = standfast([
      'assess',
      folder.at('case'),
      '--wording',
      folder.at('bad.json'),
      '--report',
      folder.at('x.pdf'),
    ]);
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(
      /limits\.items: this text can be added to and not replaced.*and 1 more: safty\.intro/,
    );
  });
});
