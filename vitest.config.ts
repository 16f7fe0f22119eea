import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/faults/full/**', 'tests/bench/**', '**/node_modules/**'],
    environment: 'node',
    // All cores: left to itself, vitest keeps one free, which is half of a two-core machine.
    maxWorkers: '100%',
    // Modules are loaded once a worker: loading them anew for each file was a quarter of the time. No module of ours keeps a state.
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // One fixed seed for every property.
    setupFiles: ['tests/support/setup.ts'],
    globalSetup: ['tests/support/one-run.ts'],
    reporters: ['default'],
    env: { TZ: 'UTC' },
  },
});
