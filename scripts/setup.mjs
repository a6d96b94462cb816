/** `npm run setup`: makes a fresh clone ready. Names of steps (tables, command, app) limit it to those. */
import { runScript, Stop } from './lib/say.mjs';
import { STEP_NAMES, setup } from './lib/setup.mjs';

await runScript(async () => {
  const only = process.argv.slice(2);
  const unknown = only.find((name) => !STEP_NAMES.includes(name));
  if (unknown) throw new Stop(`No step "${unknown}": there are ${STEP_NAMES.join(', ')}.`);
  await setup(only.length ? { only } : {});
});
