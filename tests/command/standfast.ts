/** The real command, built and run as a person runs it. */
import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const launcher = path.join(root, 'apps/command/bin/standfast.mjs');

/** Brings the built command up to date with its sources. */
export function buildCommand(): void {
  const built = spawnSync(process.execPath, [path.join(root, 'scripts/setup.mjs'), 'tables', 'command'], {
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(`The command cannot be built:\n${built.stdout}${built.stderr}`);
}

export interface Ran {
  status: number | null;
  out: string;
  err: string;
}

/** Runs `standfast` with these arguments. */
export function standfast(args: string[], options: { cwd?: string; env?: NodeJS.ProcessEnv } = {}): Ran {
  const ran: SpawnSyncReturns<string> = spawnSync(process.execPath, [launcher, ...args], {
    cwd: options.cwd,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, NO_COLOR: '1', COLUMNS: '100', LANG: 'C.UTF-8', ...options.env },
  });
  return { status: ran.status, out: ran.stdout, err: ran.stderr };
}

/** An empty folder of the test's own, and how to remove it. */
export function temporaryFolder(): { at: (...parts: string[]) => string; remove: () => void } {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'standfast-command-'));
  return {
    at: (...parts) => path.join(folder, ...parts),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
