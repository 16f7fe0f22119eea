import { describe, expect, test } from 'vitest';
import { runs } from '../../support/long-run.ts';
import { BESIDE, BLUNDER_KINDS, cleanHole, tally } from './blunder-trials.ts';

// Each kind of blunder beside one thing a trial, declinations from 1° to 25° of both signs; the long run of it is in tests/faults/full.
const TRIALS = 12;

describe('a blunder of a survey whose effect is over three sigma of what is known', () => {
  test.each(BLUNDER_KINDS.map((kind) => [kind.name, kind] as const))(
    'is named first, nine times of ten: %s',
    (_, kind) => {
      const all = BESIDE.map((beside) => tally(kind, beside, TRIALS)).filter(
        // A gyro aligned to no one knows what is compared with nothing but a plan: too few are over three sigma to count.
        ({ beside }) => !(kind.name === 'misaligned gyro' && beside === 'plan'),
      );
      const over = all.reduce((sum, each) => sum + each.over, 0);
      const named = all.reduce((sum, each) => sum + each.named, 0);
      expect(over, 'there are some to name').toBeGreaterThanOrEqual(5);
      expect(named / over, all.flatMap((each) => each.missed).join('\n')).toBeGreaterThanOrEqual(0.9);
    },
  );
});

test('of clean holes, the errors of the line-up among the noise, no more than 2 % are doubted', () => {
  const doubted = Array.from({ length: runs(150, 50) }, (_, index) => cleanHole(index + 1).findings).filter(
    (findings) => findings.length > 0,
  );
  expect(doubted.length, doubted.map(([first]) => first?.problem).join('\n')).toBeLessThanOrEqual(
    0.02 * runs(150, 50),
  );
});
