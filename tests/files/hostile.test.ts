import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../support/long-run.ts';
import { faultsOnOpening, filesOf, hostileStart, spoiled, spoiling } from './hostile.ts';

const SEED = 20260314;

describe('a project with one file spoiled in any way', async () => {
  const start = await hostileStart();
  it.each([...filesOf(start).keys()])(
    `opens with its reasons or is refused with them, never a crash: %s (seed ${SEED})`,
    async (path) => {
      await fc.assert(
        fc.asyncProperty(fc.array(spoiling, { minLength: 1, maxLength: 3 }), async (how) => {
          expect(await faultsOnOpening(spoiled(start, path, how))).toEqual([]);
        }),
        { numRuns: runs(120), seed: SEED },
      );
    },
  );
});
