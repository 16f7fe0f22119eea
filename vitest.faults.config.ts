import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** Test files that make a search or a sweep: by the words that they make it with. */
const searching = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.test\.tsx?$/.test(file))
  .map((file) => `tests/${file.replaceAll('\\', '/')}`)
  .filter((file) => /fast-check|support\/long-run/.test(readFileSync(file, 'utf8')));

/**
 * The long run: every fault point, every power cut, many kills, and every search and sweep of the default suite at its full size
 * with random seeds. Minutes, not seconds; `npm run faults`.
 */
export default defineConfig({
  test: {
    include: ['tests/faults/full/**/*.test.ts', ...searching],
    setupFiles: ['tests/support/setup.ts'],
    globalSetup: ['tests/support/one-run.ts'],
    environment: 'node',
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
    env: { TZ: 'UTC', OFFSIDER_LONG_RUN: 'yes' },
  },
});
