import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { readInput, readJson } from './read.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'standfast-read-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fileOf(text: string): string {
  const file = path.join(folder, 'input.json');
  writeFileSync(file, text);
  return file;
}

it('refuses a file larger than can be meant, before reading it', async () => {
  await expect(readInput(fileOf('x'.repeat(2000)), 'a note', 1000)).rejects.toThrow(/at most/);
});

it.each([
  ['{"a": 1,}', 'line 1, column 9'],
  ['{"a": [1, 2', 'ends too early'],
])('says where JSON breaks: %j', async (text, where) => {
  await expect(readJson(fileOf(text), 'a section', 1e6)).rejects.toThrow(where);
});
