import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { checkRatesSoFar, rateRows, ratesSoFar } from '../../../src/sampling/scheme/rates-so-far.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, primary, SETTINGS, sampling, spoiledBag } from '../build.ts';

const wanting = (wanted: object) => sampling({ controls: { ...SETTINGS.controls, wanted } });
const metres = (count: number): readonly Bag[] =>
  Array.from({ length: count }, (_, index) => primary(`ZQ${index}`, index, index + 1));
const standard = (index: number, reason?: string): Bag => ({
  number: `ZQS${index}`,
  kind: 'standard',
  ...(reason === undefined ? {} : { reason }),
});

describe('rates of controls so far', () => {
  test('count what is in bags beside the primaries, forced ones too, spoiled ones not', () => {
    const bags = [...metres(50), standard(1), standard(2, 'placed by hand'), spoiledBag('ZQ99')];
    const [first] = ratesSoFar(wanting({ standardPercent: 5 }), bags);
    expect(first).toMatchObject({
      kind: 'standard',
      wantedPercent: 5,
      count: 2,
      forced: 1,
      primaries: 50,
      achievedPercent: 4,
    });
    expect(first?.slotsPercent).toBeCloseTo(100 / 37, 9);
    expect(rateRows(ratesSoFar(wanting({ standardPercent: 5 }), bags))[1]).toEqual([
      'standards',
      '5.0',
      '2.7',
      '4.0',
      '2 beside 50, 1 by hand',
    ]);
  });

  test('are not there before the first primary, and a kind that no one wants is none', () => {
    const [first] = ratesSoFar(sampling(), []);
    expect(first).not.toHaveProperty('achievedPercent');
    expect(rateRows(ratesSoFar(sampling(), []))[1]?.slice(0, 4)).toEqual(['standards', '–', '2.7', '–']);
  });

  test('are remarked on only where more than two are missing', () => {
    const behind = (have: number) =>
      checkRatesSoFar(wanting({ standardPercent: 5 }), [
        ...metres(100),
        ...Array.from({ length: have }, (_, index) => standard(index)),
      ]).map((each) => each.problem);
    expect(behind(3)).toEqual([]);
    expect(behind(2)).toEqual(['2 standards beside 100 samples; at the rate wanted it would be 5.']);
  });

  test('of a stream as the scheme issues it stay within one of what the slots give in every 200 primaries', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 200, max: 400 }), (serial, depthM) => {
        const first = `ZQ${String(serial).padStart(6, '0')}`;
        const bags = issue(sampling(), { ...atCollar(first, 'ZQ009000'), drilledMm: depthM * 1000 });
        for (const { slotsPercent, count, primaries } of ratesSoFar(sampling(), bags))
          expect(Math.abs(count - (slotsPercent * primaries) / 100)).toBeLessThanOrEqual(1 + primaries / 200);
      }),
      { numRuns: 60 },
    );
  });
});
