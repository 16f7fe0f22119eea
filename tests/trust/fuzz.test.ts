import { describe, it } from 'vitest';
import { TARGETS } from './fuzz/targets.ts';

const SEED = 20260314;
/** One case in so many of the long run (tests/faults/full/fuzz.test.ts). */
const SHARE = 100;

describe('what may come from anywhere', () => {
  it.each(TARGETS.map(([target, cases]) => ({ ...target, cases })))(
    `is taken or refused with place and remedy, and never stops the program: $name (seed ${SEED})`,
    ({ hold, cases }) => hold({ runs: cases / SHARE, seed: SEED }),
  );
});
