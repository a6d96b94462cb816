/**
 * `npm run bench`: measures speed, of the engine on one core where the system can hold a process to one, of the app on
 * all of them. With `--write` docs/speed.md is made of what was measured.
 */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { programExists, runHeard } from './lib/child.mjs';
import { fromRoot } from './lib/root.mjs';
import { runScript, Stop, say } from './lib/say.mjs';
import { setup } from './lib/setup.mjs';

const PAGE = 'docs/speed.md';

await runScript(async () => {
  await setup();
  const oneCore = programExists('taskset');
  say(oneCore ? 'Held to one core.\n' : 'Not held to one core: there is no taskset here.\n');
  const engine = await measured('bench/run.ts', oneCore ? ['taskset', '-c', '0'] : []);
  say('\nOn all cores.\n');
  const app = await measured('bench/runInApp.ts', []);
  if (process.argv.includes('--write')) {
    writeFileSync(fromRoot(PAGE), page(engine, app, oneCore));
    say(`\nWrote ${PAGE}.`);
  }
});

/**
 * Runs one part, held by what is put before it, and gives what it printed.
 * @param {string} file
 * @param {string[]} before
 */
async function measured(file, before) {
  const [program, ...args] = [...before, process.execPath, '--import', 'tsx', fromRoot(file)];
  const { status, heard } = await runHeard(program, args);
  if (status !== 0) throw new Stop(`${file} failed (see above).`);
  return heard.trim();
}

/**
 * @param {string} engine
 * @param {string} app
 * @param {boolean} oneCore
 */
function page(engine, app, oneCore) {
  const [first] = cpus();
  return `# Speed

Made by \`npm run bench -- --write\` on ${cpus().length} cores of ${first?.model ?? 'an unknown make'}, Node ${process.versions.node}. Another machine, and a
busy one, gives other figures; what is held to is a whole assessment under 1 s and a photo of 12 megapixels under 1.5 s.

## The engine${oneCore ? ', held to one core' : ''}

\`\`\`text
${engine}
\`\`\`

## The app, on all cores

\`\`\`text
${app}
\`\`\`

A photo "chosen at once" meets an app that has just been opened, whose code is not yet compiled and whose workers are busy
with the case. The others are chosen five seconds later, as long as it takes to take a photo; by then the app has practised.
`;
}
