/**
 * The layout holds: imports point down only (apps -> report -> casefile -> engine), and the engine stays pure.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/** What each room may import of ours, besides itself. */
const MAY_IMPORT: Record<string, string[]> = {
  'packages/engine': [],
  'packages/casefile': ['@standfast/engine'],
  'packages/report': ['@standfast/casefile', '@standfast/engine'],
  'apps/field': ['@standfast/report', '@standfast/casefile', '@standfast/engine'],
  'apps/command': ['@standfast/report', '@standfast/casefile', '@standfast/engine'],
};

/** Everything from outside that the pure engine may import. */
const ENGINE_LIBRARIES = ['pure-rand', 'polyclip-ts'];

/** Globals that would let the clock, the machine or hidden randomness into the engine. */
const IMPURE =
  /\b(Math\.random|Date\.now|new Date|performance\.now|process\.|globalThis\.|setTimeout|console\.)/;

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

function importsOf(file: string): string[] {
  return ts
    .preProcessFile(readFileSync(file, 'utf8'), true, true)
    .importedFiles.map((found) => found.fileName);
}

describe.each(Object.keys(MAY_IMPORT))('%s', (room) => {
  const files = sourceFiles(join(ROOT, room, 'src'));

  it('has sources', () => {
    expect(files.length).toBeGreaterThan(0);
  });

  it('imports only what lies below it', () => {
    const faults: string[] = [];
    for (const file of files) {
      for (const name of importsOf(file)) {
        const ours = /^@standfast\/[a-z]+/.exec(name)?.[0];
        const leavesRoom = name.startsWith('.') && !resolve(dirname(file), name).startsWith(join(ROOT, room));
        const testHelp =
          leavesRoom &&
          /\.test\.tsx?$/.test(file) &&
          resolve(dirname(file), name).startsWith(join(ROOT, 'tests'));
        if ((ours && !MAY_IMPORT[room]?.includes(ours)) || (leavesRoom && !testHelp)) {
          faults.push(`${relative(ROOT, file)} imports ${name}`);
        }
      }
    }
    expect(faults).toEqual([]);
  });
});

describe('the engine', () => {
  const files = sourceFiles(join(ROOT, 'packages/engine/src')).filter((file) => !file.endsWith('.test.ts'));

  it('imports no library but the listed ones', () => {
    const outside = files.flatMap((file) =>
      importsOf(file)
        .filter((name) => !name.startsWith('.'))
        .filter(
          (name) => !ENGINE_LIBRARIES.some((library) => name === library || name.startsWith(`${library}/`)),
        )
        .map((name) => `${relative(ROOT, file)} imports ${name}`),
    );
    expect(outside).toEqual([]);
  });

  it('touches neither clock nor machine nor hidden randomness', () => {
    const impure = files.filter((file) => IMPURE.test(withoutComments(readFileSync(file, 'utf8'))));
    expect(impure.map((file) => relative(ROOT, file))).toEqual([]);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
}
