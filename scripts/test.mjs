/** `npm test`: makes the clone ready, runs the unit tests and the browser tests, and adds up the result. */
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { run } from './lib/child.mjs';
import { fromRoot } from './lib/root.mjs';
import { runScript, say } from './lib/say.mjs';
import { setup } from './lib/setup.mjs';
import { playwrightCounts, vitestCounts } from './lib/test-counts.mjs';
import { testTools } from './lib/test-tools.mjs';

await runScript(async () => {
  await setup();
  const missing = await testTools();
  const reports = mkdtempSync(path.join(os.tmpdir(), 'standfast-test-'));
  try {
    const unit = await unitTests(path.join(reports, 'vitest.json'));
    const browser = missing.includes('chromium')
      ? { passed: 0, failed: 1 }
      : await browserTests(path.join(reports, 'playwright.json'));
    if (missing.includes('chromium')) say('Browser tests: not run, which counts as one failure.');
    const passed = unit.passed + browser.passed;
    const failed = unit.failed + browser.failed;
    say(`\n${passed} passed, ${failed} failed`);
    return failed > 0 || passed === 0 ? 1 : 0;
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }
});

/** @param {string} report */
async function unitTests(report) {
  say('Unit tests');
  const status = await run(process.execPath, [
    fromRoot('node_modules/vitest/vitest.mjs'),
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  return countsThatAgree(vitestCounts(report), status);
}

/** @param {string} report */
async function browserTests(report) {
  say('Browser tests');
  const status = await run(
    process.execPath,
    [fromRoot('node_modules/@playwright/test/cli.js'), 'test', '--reporter=dot,json'],
    { env: { PLAYWRIGHT_JSON_OUTPUT_NAME: report } },
  );
  return countsThatAgree(playwrightCounts(report), status);
}

/**
 * A runner that ended badly with no failed test (a crash, an unhandled error) still counts as a failure.
 * @param {import('./lib/test-counts.mjs').Counts} counts
 * @param {number} status
 */
function countsThatAgree(counts, status) {
  return status !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}
