/** The npm packages: whether what is installed is what the lock asks for, and `npm ci` when it is not. */
import { existsSync, readFileSync } from 'node:fs';
import { run } from './child.mjs';
import { fromRoot } from './root.mjs';
import { Stop } from './say.mjs';

/**
 * Compares the lock with npm's own record of what it installed. Optional packages (built for other systems)
 * may be absent; everything else must be there in the same version.
 */
export function packagesAreInstalled() {
  const wanted = packagesIn(fromRoot('package-lock.json'));
  const installed = packagesIn(fromRoot('node_modules', '.package-lock.json'));
  if (!wanted)
    throw new Stop(
      'package-lock.json is missing or broken: get it back with `git checkout package-lock.json`.',
    );
  if (!installed) return false;
  return Object.entries(wanted).every(([where, entry]) => {
    if (!where.includes('node_modules/')) return true;
    const found = installed[where];
    if (!found) return Boolean(entry.optional || entry.devOptional || entry.peer);
    return found.version === entry.version && existsSync(fromRoot(where));
  });
}

/** @param {string} file */
function packagesIn(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return null;
  }
}

export async function installPackages() {
  const status = await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (status !== 0) {
    throw new Stop('npm ci failed (see above). It needs the network once; try again when it is there.');
  }
}
