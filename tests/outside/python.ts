/** Python for the studies whose other side is written in it. Tests that anyone runs never need it. */
import { spawnSync } from 'node:child_process';

const CANDIDATES = [process.env.PYTHON, 'python3', '/usr/bin/python3'].filter((p) => p !== undefined);
const NEEDED = 'import numpy, shapely';

/**
 * Runs a Python program with the first interpreter that has numpy and shapely (Debian: python3-numpy, python3-shapely),
 * and gives what it printed.
 */
export function runPython(args: readonly string[]): string {
  const python = CANDIDATES.find((p) => spawnSync(p, ['-c', NEEDED]).status === 0);
  if (!python) {
    throw new Error(
      'This study needs Python with numpy and shapely. Install them, or name a Python in PYTHON.',
    );
  }
  const run = spawnSync(python, [...args], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(`${args[0]} failed:\n${run.stderr}`);
  return run.stdout;
}
