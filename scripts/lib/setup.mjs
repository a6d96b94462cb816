/**
 * Makes a clone ready: packages, the engine's tables, the command line, the app. Each step is done only when
 * what it reads has changed since it was last done.
 */
import { existsSync } from 'node:fs';
import { buildCommand } from './build-command.mjs';
import { run } from './child.mjs';
import { fingerprint } from './fingerprint.mjs';
import { oneAtATime } from './one-at-a-time.mjs';
import { installPackages, packagesAreInstalled } from './packages.mjs';
import { fromRoot } from './root.mjs';
import { Stop, say } from './say.mjs';
import { markDone, readStamp } from './stamp.mjs';

/** The packages every program is built from, and what decides how they are built. */
const SHARED = [
  'package-lock.json',
  'tsconfig.base.json',
  'packages/engine/src',
  'packages/engine/package.json',
  'packages/casefile/src',
  'packages/casefile/demo',
  'packages/casefile/demo-second-visit',
  'packages/casefile/package.json',
  'packages/report/src',
  'packages/report/package.json',
];

/** @type {{ name: string, title: string, inputs: string[], output: string, build: () => Promise<void> }[]} */
const STEPS = [
  {
    name: 'tables',
    title: 'reference tables',
    inputs: ['scripts/build-tables.mjs', 'packages/engine/src/reference'],
    output: 'packages/engine/src/reference/tables.generated.ts',
    build: () => nodeScript(['scripts/build-tables.mjs']),
  },
  {
    name: 'command',
    title: 'command line',
    inputs: [...SHARED, 'apps/command/src', 'apps/command/package.json', 'scripts/lib/build-command.mjs'],
    output: 'apps/command/dist/main.js',
    build: buildCommand,
  },
  {
    name: 'app',
    title: 'app',
    inputs: [...SHARED, 'apps/field'],
    output: 'apps/field/dist/index.html',
    build: () =>
      nodeScript([fromRoot('node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'], 'apps/field'),
  },
];

export const STEP_NAMES = STEPS.map((step) => step.name);

/**
 * @param {{ only?: string[] }} [options] names of the steps wanted; all of them when left out
 */
export async function setup({ only = STEP_NAMES } = {}) {
  refuseOldNode();
  await oneAtATime(async () => {
    if (!packagesAreInstalled()) {
      say('Installing packages…');
      await installPackages();
    }
    for (const step of STEPS.filter(({ name }) => only.includes(name))) await upToDate(step);
  });
}

/** @param {(typeof STEPS)[number]} step */
async function upToDate(step) {
  const print = fingerprint(step.inputs);
  if (readStamp()[step.name] === print && existsSync(fromRoot(step.output))) return;
  const started = Date.now();
  await step.build();
  if (!existsSync(fromRoot(step.output)))
    throw new Stop(`Building the ${step.title} wrote no ${step.output}.`);
  markDone(step.name, print);
  say(`Built the ${step.title} in ${((Date.now() - started) / 1000).toFixed(1)} s.`);
}

/**
 * @param {string[]} args
 * @param {string} [folder]
 */
async function nodeScript(args, folder = '.') {
  const status = await run(process.execPath, args, { cwd: fromRoot(folder) });
  if (status !== 0) throw new Stop(`${args[0]} failed (see above).`);
}

function refuseOldNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 11)) return;
  throw new Stop(`Standfast needs Node.js 20.11 or newer; this is ${process.versions.node}.`);
}
