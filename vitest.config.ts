import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', 'tests/browser/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: '100%',
    // The code under test keeps no state from one file to the next (tests/architecture.test.ts), so a process goes on
    // to the next file with the engine loaded and warm.
    isolate: false,
  },
});
