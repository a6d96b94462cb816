/** `compare`, and `assess` of a case that holds its earlier visit, run as a person runs them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const folder = temporaryFolder();
const DRAWS = ['--draws', '300'];

beforeAll(() => {
  buildCommand();
  expect(standfast(['demo', folder.at('first')]).status).toBe(0);
  expect(standfast(['demo', folder.at('second'), '--second-visit']).status).toBe(0);
}, 120_000);
afterAll(() => folder.remove());

describe('compare', () => {
  it('prints what changed, and the same as JSON', () => {
    const { status, out, err } = standfast(['compare', folder.at('first'), folder.at('second'), ...DRAWS]);
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('Change since 2026-06-18, 4.0 years');
    expect(out).toContain('Decay has moved towards the bark at d5 and d10.');
    const json = standfast(['compare', folder.at('first'), folder.at('second'), '--json', ...DRAWS]);
    const document = JSON.parse(json.out) as {
      format: string;
      drillings: { laterId: string; verdict: string }[];
    };
    expect(document.format).toBe('standfast-change');
    expect(document.drillings.find(({ laterId }) => laterId === 'd5')?.verdict).toBe('moved');
  }, 60_000);

  it('says the same as assess of the case with the earlier visit inside', () => {
    const { out } = standfast(['assess', folder.at('second'), '--json', ...DRAWS]);
    const assessed = JSON.parse(out) as { change: { summary: string[] } };
    const compared = standfast(['compare', folder.at('first'), folder.at('second'), '--json', ...DRAWS]);
    expect(assessed.change.summary).toEqual((JSON.parse(compared.out) as { summary: string[] }).summary);
  }, 60_000);

  it('refuses visits in the wrong order, and a case that is none', () => {
    const turned = standfast(['compare', folder.at('second'), folder.at('first')]);
    expect(turned.status).not.toBe(0);
    expect(turned.err).toMatch(/is not before that of/);
    const missing = standfast(['compare', folder.at('nowhere'), folder.at('first')]);
    expect(missing.status).not.toBe(0);
    expect(missing.err).toMatch(/no such file or folder/);
  }, 60_000);

  it('writes a report that verifies', () => {
    const report = folder.at('change.pdf');
    const made = standfast([
      'compare',
      folder.at('first'),
      folder.at('second'),
      '--report',
      report,
      ...DRAWS,
    ]);
    expect([made.status, made.err]).toEqual([0, '']);
    expect(standfast(['verify', report]).out).toContain('stands');
  }, 120_000);
});
