import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultsOnOpening, filesOf, hostileStart, spoiled, spoiling } from '../../files/hostile.ts';

const SEED = Number(process.env.OFFSIDER_SEED ?? 20260314);
const CASES_A_FILE = 10_000;

describe('a project with one file spoiled in any way', async () => {
  const start = await hostileStart();
  it.each([...filesOf(start).keys()])(
    `opens with its reasons or is refused with them: %s (seed ${SEED})`,
    {
      timeout: 1_800_000,
    },
    async (path) => {
      await fc.assert(
        fc.asyncProperty(fc.array(spoiling, { minLength: 1, maxLength: 4 }), async (how) => {
          expect(await faultsOnOpening(spoiled(start, path, how))).toEqual([]);
        }),
        { numRuns: CASES_A_FILE, seed: SEED },
      );
    },
  );
});
