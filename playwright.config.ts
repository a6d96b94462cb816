/**
 * The real app in a real browser: built and served as `npm start` does it, and opened in Debian's chromium.
 */
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { defineConfig } from '@playwright/test';

/** The runner's own processes read this file again, so the port chosen first is handed on to them. */
process.env.STANDFAST_BROWSER_PORT ??= String(await freePort());
const PORT = Number(process.env.STANDFAST_BROWSER_PORT);

/** A port nobody listens on now, so that two runs at once, or another server, do no harm. */
function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  existsSync,
);

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  // Two cores are the machine we count on; the assessment takes one of them.
  workers: 2,
  fullyParallel: true,
  // A browser may be three times slower on one machine than on another; what a test waits for has its own limit.
  timeout: 150_000,
  expect: { timeout: 20_000 },
  reporter: 'line',
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    browserName: 'chromium',
    locale: 'en-GB',
    viewport: { width: 1280, height: 900 },
    contextOptions: { reducedMotion: 'reduce' },
    // Each test begins in a new browser: keeping the whole app for use offline there takes longer than many a test.
    // Those of the app offline let it.
    serviceWorkers: 'block',
    launchOptions: {
      executablePath: CHROMIUM,
      args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu'],
    },
  },
  webServer: {
    command: `node scripts/start.mjs --port ${PORT}`,
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
    // The app may have to be built first.
    timeout: 300_000,
  },
});
