import { describe, expect, it } from 'vitest';
import { seededNumbers, sweep, type Tally } from '../runs.ts';
import { SCENARIOS } from '../scenarios.ts';

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);
const LONG = 1_800_000;

const tally: Tally = { points: 0, failures: [] };

describe(`the long fault run, seed ${SEED}`, () => {
  it.each(SCENARIOS)(
    'keeps what was shown as saved, and says what was not: %s',
    { timeout: LONG },
    async (name, begin) => {
      const before = tally.points;
      const random = seededNumbers(SEED);
      await sweep(await begin(), { cuts: 12, cutsAFault: 8, pairs: 300, every: 1 }, random, tally);
      console.log(`${tally.points - before} fault points: ${name}`);
      expect(tally.failures).toEqual([]);
    },
  );

  it('tried at least twenty thousand fault points', () => {
    console.log(`${tally.points} fault points, ${tally.failures.length} lost or unsaid, seed ${SEED}`);
    expect(tally.points).toBeGreaterThanOrEqual(20_000);
  });
});
