/**
 * The real app in a real browser: built by scripts/setup.mjs (or `npx vite build` in apps/field), served as files,
 * and opened in Debian's chromium.
 */
import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';

const PORT = 4173;
const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  existsSync,
);

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  // Two cores are the machine we count on; the assessment takes one of them.
  workers: 2,
  fullyParallel: true,
  timeout: 60_000,
  expect: { timeout: 20_000 },
  reporter: 'line',
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    browserName: 'chromium',
    locale: 'en-GB',
    viewport: { width: 1280, height: 900 },
    contextOptions: { reducedMotion: 'reduce' },
    launchOptions: {
      executablePath: CHROMIUM,
      args: ['--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu'],
    },
  },
  webServer: {
    command: `npx vite preview --port ${PORT} --strictPort --host 127.0.0.1`,
    cwd: 'apps/field',
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
  },
});
