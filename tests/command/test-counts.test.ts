/** The last line of `npm test` must never claim more than the runners reported. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from './standfast.ts';

const folder = temporaryFolder();
afterAll(() => folder.remove());

const module = new URL('../../scripts/lib/test-counts.mjs', import.meta.url);

/** What the script counts in a report; no report at all when it is left out. */
function counted(runner: 'vitestCounts' | 'playwrightCounts', report?: unknown): unknown {
  const file = folder.at(report === undefined ? 'none.json' : 'report.json');
  if (report !== undefined) writeFileSync(file, typeof report === 'string' ? report : JSON.stringify(report));
  const code = `import { ${runner} as count } from ${JSON.stringify(module.href)};
    console.log(JSON.stringify(count(${JSON.stringify(file)})));`;
  const ran = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
    encoding: 'utf8',
    cwd: fileURLToPath(new URL('.', import.meta.url)),
  });
  return JSON.parse(ran.stdout);
}

describe('counting tests', () => {
  it('adds a file that could not be loaded to the failures', () => {
    const report = {
      numPassedTests: 7,
      numFailedTests: 2,
      testResults: [
        { status: 'passed', assertionResults: [{}] },
        { status: 'failed', assertionResults: [{}] },
        { status: 'failed', assertionResults: [] },
      ],
    };
    expect(counted('vitestCounts', report)).toEqual({ passed: 7, failed: 3 });
  });

  it('takes a browser test that passed on a second try as passed, and errors outside tests as failures', () => {
    const report = { stats: { expected: 9, flaky: 1, unexpected: 2, skipped: 0 }, errors: [{}] };
    expect(counted('playwrightCounts', report)).toEqual({ passed: 10, failed: 3 });
  });

  it.each(['vitestCounts', 'playwrightCounts'] as const)(
    'counts a missing or broken report as a failure: %s',
    (runner) => {
      expect(counted(runner)).toEqual({ passed: 0, failed: 1 });
      expect(counted(runner, '{"stats":')).toEqual({ passed: 0, failed: 1 });
    },
  );
});
