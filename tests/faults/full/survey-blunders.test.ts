import { describe, expect, test } from 'vitest';
import { BESIDE, BLUNDER_KINDS, cleanHole, tally } from '../../survey/blunders/blunder-trials.ts';

const TRIALS = 40;
const CLEAN = 1000;

describe('blunders of surveys, 40 trials of each kind beside each thing', () => {
  test.each(BLUNDER_KINDS.map((kind) => [kind.name, kind] as const))('%s', (_, kind) => {
    const all = { over: 0, named: 0 };
    for (const beside of BESIDE) {
      const { over, named, missed, hidden, hiddenNamed, hiddenWrong } = tally(kind, beside, TRIALS);
      const part = over === 0 ? 'none' : `${named} of ${over} named`;
      console.log(
        [
          `${kind.name}, beside ${beside}: over three sigma ${part}; under ${hidden.length} (${hiddenNamed} named, ${hiddenWrong} called something else)`,
          ...missed.map((each) => `    missed: ${each}`),
          ...(hidden.length === 0 ? [] : [`    hidden, degrees/sigma: ${hidden.join(' ')}`]),
        ].join('\n'),
      );
      // Beside a plan alone nothing finds north, and a misaligned gyro has nothing to be misaligned to.
      if (kind.name === 'misaligned gyro' && beside === 'plan') continue;
      all.over += over;
      all.named += named;
      // 40 trials beside one thing may fall short of nine in ten by chance, not by much.
      if (over > 0) expect(named / over, beside).toBeGreaterThanOrEqual(0.85);
    }
    expect(all.named / all.over, 'beside all of them').toBeGreaterThanOrEqual(0.9);
  });
});

test('1,000 clean holes of realistic noise, line-up errors included: no more than 2 % are doubted', () => {
  const doubted = Array.from({ length: CLEAN }, (_, index) => cleanHole(index + 1).findings).filter(
    (findings) => findings.length > 0,
  );
  console.log(`clean holes doubted: ${doubted.length} of ${CLEAN}`);
  for (const [first] of doubted) console.log(`    ${first?.problem} ${first?.excerpt ?? ''}`);
  expect(doubted.length / CLEAN).toBeLessThanOrEqual(0.02);
});
