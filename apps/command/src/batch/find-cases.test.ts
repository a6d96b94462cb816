import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { findCases } from './find-cases.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'standfast-find-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function file(...parts: string[]): void {
  const name = path.join(folder, ...parts);
  mkdirSync(path.dirname(name), { recursive: true });
  writeFileSync(name, '');
}

it('finds case folders and zips at any depth, in order', async () => {
  file('2026', 'park', 'b', 'case.json');
  file('2026', 'park', 'a', 'case.json');
  file('2026', 'yard.zip');
  file('2026', 'notes.txt');
  expect(await findCases(folder)).toEqual(['2026/park/a', '2026/park/b', '2026/yard.zip']);
});

it('does not look inside a case, hidden folders or links', async () => {
  file('one', 'case.json');
  file('one', 'photos', 'more.zip');
  file('.trash', 'old', 'case.json');
  symlinkSync(folder, path.join(folder, 'round'));
  expect(await findCases(folder)).toEqual(['one']);
});

it('takes the folder itself when it is a case', async () => {
  file('case.json');
  expect(await findCases(folder)).toEqual(['.']);
});
