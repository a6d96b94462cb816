/**
 * Bundles the command line: one small entry that starts fast, the heavy parts in chunks loaded when a command
 * needs them, and the demonstration case beside it.
 */
import { cpSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fromRoot } from './root.mjs';
import { Stop } from './say.mjs';

const app = fromRoot('apps/command');
const next = path.join(app, 'dist.next');
const dist = path.join(app, 'dist');

/** Bundled CommonJS packages ask for Node's own modules by `require`, which ES modules do not have. */
const REQUIRE_FOR_COMMONJS = `import { createRequire as __createRequire } from 'node:module';
const require = __createRequire(import.meta.url);
import { fileURLToPath as __fileURLToPath } from 'node:url';
const __filename = __fileURLToPath(import.meta.url);
const __dirname = __fileURLToPath(new URL('.', import.meta.url));`;

export async function buildCommand() {
  const esbuild = await import('esbuild');
  rmSync(next, { recursive: true, force: true });
  const building = esbuild.build({
    absWorkingDir: app,
    entryPoints: { main: 'src/main.ts', 'batch-worker': 'src/batch/worker.ts' },
    outdir: next,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.11',
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
    banner: { js: REQUIRE_FOR_COMMONJS },
    // They find further files of theirs beside their own code.
    external: ['pdfkit', 'tinypool', '@jsquash/webp'],
  });
  await building.catch(() => {
    throw new Stop('Bundling the command line failed (see above).');
  });
  for (const demonstration of ['demo', 'demo-second-visit'])
    cpSync(fromRoot('packages/casefile', demonstration), path.join(next, demonstration), { recursive: true });

  rmSync(dist, { recursive: true, force: true });
  renameSync(next, dist);
}
