import { describe, expect, it } from 'vitest';
import { seededNumbers } from '../../faults/runs.ts';
import { LONG_RUN, runs } from '../../support/long-run.ts';
import { dust } from './dust.ts';

describe('keys pressed by chance, in a window of any size', () => {
  it('never leave the console without its screen', async () => {
    const { reached } = await dust(runs(1500, 500), seededNumbers(20260314));
    expect(reached.size).toBeGreaterThan(LONG_RUN ? 12 : 6);
  });
});
