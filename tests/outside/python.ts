/** Python for the studies whose other side is written in it. Tests that anyone runs never need it. */
import { spawnSync } from 'node:child_process';

const CANDIDATES = [process.env.PYTHON, 'python3', '/usr/bin/python3'].filter((p) => p !== undefined);
/** Modules a program may need, and what Debian calls them. */
const PACKAGES = { numpy: 'python3-numpy', shapely: 'python3-shapely', cv2: 'python3-opencv' } as const;
export type PythonModule = keyof typeof PACKAGES;

/** The first interpreter that has these modules, null when there is none. */
export function pythonWith(modules: readonly PythonModule[]): string | null {
  const needed = `import ${modules.join(', ')}`;
  return CANDIDATES.find((python) => spawnSync(python, ['-c', needed]).status === 0) ?? null;
}

/** Runs a Python program with the first interpreter that has what it needs, and gives what it printed. */
export function runPython(
  args: readonly string[],
  modules: readonly PythonModule[] = ['numpy', 'shapely'],
): string {
  const python = pythonWith(modules);
  if (!python) {
    const debian = modules.map((name) => PACKAGES[name]).join(', ');
    throw new Error(
      `This study needs Python with ${modules.join(' and ')} (Debian: ${debian}). Install them, or name a Python in PYTHON.`,
    );
  }
  const run = spawnSync(python, [...args], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(`${args[0]} failed:\n${run.stderr}`);
  return run.stdout;
}
