/** `npm run accuracy [WORD]`: runs the simulated studies (those whose path holds WORD) that write docs/accuracy. */
import { existsSync, readdirSync } from 'node:fs';
import { run } from './lib/child.mjs';
import { fromRoot } from './lib/root.mjs';
import { runScript, Stop, say } from './lib/say.mjs';
import { setup } from './lib/setup.mjs';

await runScript(async () => {
  await setup({ only: ['tables'] });
  const word = process.argv[2] ?? '';
  const studies = ['tests/simulated', 'tests/outside']
    .flatMap((folder) =>
      readdirSync(fromRoot(folder), { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => `${folder}/${entry.name}/study.ts`),
    )
    .filter((file) => existsSync(fromRoot(file)) && file.includes(word));
  if (!studies.length) throw new Stop(`No study matches "${word}" below tests/simulated and tests/outside.`);
  for (const study of studies) {
    say(study);
    const status = await run(process.execPath, ['--import', 'tsx', fromRoot(study)]);
    if (status !== 0) throw new Stop(`${study} failed (see above).`);
  }
});
