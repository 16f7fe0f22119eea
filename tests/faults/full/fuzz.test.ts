import { describe, expect, it } from 'vitest';
import { TARGETS } from '../../trust/fuzz/targets.ts';

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);

describe('100,000 cases of what may come from anywhere', () => {
  it('are as many as that', () => {
    expect(TARGETS.reduce((sum, [, cases]) => sum + cases, 0)).toBeGreaterThanOrEqual(100_000);
  });

  it.each(TARGETS.map(([target, cases]) => ({ ...target, cases })))(
    `are taken or refused with place and remedy, none of them in more than a second: $name (seed ${SEED})`,
    ({ hold, cases }) => hold({ runs: cases, seed: SEED, longestMs: 1000 }),
  );
});
