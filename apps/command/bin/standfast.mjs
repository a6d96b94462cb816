#!/usr/bin/env node
/** The committed launcher: the command itself is built beside it by `npm run setup`. */
import { existsSync } from 'node:fs';

const built = new URL('../dist/main.js', import.meta.url);
if (existsSync(built)) {
  await import(built.href);
} else {
  process.stderr.write('standfast is not built yet: run npm run setup in the repository first.\n');
  process.exitCode = 1;
}
