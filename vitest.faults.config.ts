import { defineConfig } from 'vitest/config';

/** The long run: every fault point, every power cut, many kills. Minutes, not seconds; `npm run faults`. */
export default defineConfig({
  test: {
    include: ['tests/faults/full/**/*.test.ts'],
    environment: 'node',
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
    env: { TZ: 'UTC' },
  },
});
