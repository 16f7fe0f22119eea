import fc from 'fast-check';
import { expect } from 'vitest';
import type { Finding } from '../../../src/finding/finding.ts';
import { formatPlace } from '../../../src/finding/place.ts';

/** How many cases are tried, from which seed on, and how much processor time one may take: that of the clock is the machine's business. */
interface Trial {
  readonly runs: number;
  readonly seed: number;
  readonly longestMs?: number;
}

/** Something that takes what may come from anywhere. */
export interface Target {
  readonly name: string;
  /** Rejects with the smallest input that was found to be taken badly. */
  readonly hold: (trial: Trial) => Promise<void>;
}

/** A target by its inputs and by what is wrong with how one was taken; undefined where nothing is. */
export function target<T>(
  name: string,
  inputs: fc.Arbitrary<T>,
  fault: (input: T) => string | undefined | Promise<string | undefined>,
): Target {
  const hold = ({ runs, seed, longestMs }: Trial): Promise<void> =>
    fc.assert(
      fc.asyncProperty(inputs, async (input) => {
        const began = process.cpuUsage();
        expect(await fault(input)).toBeUndefined();
        const { user, system } = process.cpuUsage(began);
        if (longestMs !== undefined) expect((user + system) / 1000).toBeLessThan(longestMs);
      }),
      { numRuns: runs, seed },
    );
  return { name, hold };
}

/** A finding that a person could do nothing with, in words. */
export function unsound(findings: readonly Finding[]): string | undefined {
  for (const { code, place, problem, remedy } of findings) {
    if (formatPlace(place) === 'somewhere') return `${code} has no place: ${problem}`;
    if (problem.trim() === '' || remedy.trim() === '') return `${code} lacks problem or remedy`;
    if (/undefined|\[object|\bNaN\b|Invalid input/.test(`${problem}${remedy}`))
      return `${code}: ${problem} ${remedy}`;
  }
  return undefined;
}

/** What is wrong with a refusal: that it says nothing, or what unsound says. */
export const refusedBare = (findings: readonly Finding[]): string | undefined =>
  findings.length === 0 ? 'refused without a finding' : unsound(findings);
