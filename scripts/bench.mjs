/** `npm run bench`: measures speed, on one core where the system can hold a process to one. */
import { programExists, run } from './lib/child.mjs';
import { fromRoot } from './lib/root.mjs';
import { runScript, say } from './lib/say.mjs';
import { setup } from './lib/setup.mjs';

await runScript(async () => {
  await setup();
  const measure = [process.execPath, '--import', 'tsx', fromRoot('bench/run.ts')];
  const oneCore = programExists('taskset');
  say(oneCore ? 'Held to one core.\n' : 'Not held to one core: there is no taskset here.\n');
  const [program, ...args] = oneCore ? ['taskset', '-c', '0', ...measure] : measure;
  return run(program, args);
});
