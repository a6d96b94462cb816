/** Adds up what the two test runners report. */
import { readFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number }} Counts */

/** A runner that left no report has failed, whatever else it said. */
const NO_REPORT = { passed: 0, failed: 1 };

/**
 * Vitest's JSON report. A file that could not even be loaded holds no test and counts as one failure.
 * @param {string} file
 * @returns {Counts}
 */
export function vitestCounts(file) {
  const report = readReport(file);
  if (!report) return NO_REPORT;
  const unloaded = report.testResults.filter(
    (/** @type {{ status: string, assertionResults: unknown[] }} */ one) =>
      one.status === 'failed' && one.assertionResults.length === 0,
  ).length;
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded };
}

/**
 * Playwright's JSON report. A test that passed on a second try has passed; errors outside tests are failures.
 * @param {string} file
 * @returns {Counts}
 */
export function playwrightCounts(file) {
  const report = readReport(file);
  if (!report) return NO_REPORT;
  const { expected, flaky, unexpected } = report.stats;
  return { passed: expected + flaky, failed: unexpected + report.errors.length };
}

/** @param {string} file */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}
