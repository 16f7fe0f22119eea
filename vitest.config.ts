import { statfsSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** A gigabyte. */
const ENOUGH_BYTES = 2 ** 30;

/**
 * Where the folders of tests are made: in memory where the system has a place there (Linux), for on a disk each folder is waited for, and on a
 * loaded machine for minutes. What a disk does is tried by `npm run faults`, on a disk.
 */
function folderInMemory(): string | undefined {
  try {
    const { bavail, bsize } = statfsSync('/dev/shm');
    return bavail * bsize > ENOUGH_BYTES ? '/dev/shm' : undefined;
  } catch {
    return undefined;
  }
}

// For the one bundle, too, whose folder is made before any test.
const inMemory = folderInMemory();
if (process.env.TMPDIR === undefined && inMemory !== undefined) process.env.TMPDIR = inMemory;

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
    globalSetup: ['tests/support/one-bundle.ts'],
    reporters: ['default'],
    env: { TZ: 'UTC' },
  },
});
