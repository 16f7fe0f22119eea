import { describe, expect, test } from 'vitest';
import { mostLikely } from '../../src/sampling/rod/likely.ts';
import { runs } from '../support/long-run.ts';
import { type DayOutcome, day, days } from './second-rig-day.ts';
import { figuresOf } from './second-rig-figures.ts';

/** The first seed of holes that no weight was ever set by. */
const FIRST_SEED = 77_000_000;
const HOLES = runs(180, 60);

/** Sentences on the numbers, each with when it is true in the simulated world. */
const CLAIMS: readonly (readonly [says: RegExp, isTrue: (outcome: DayOutcome) => boolean])[] = [
  [/belongs to no hole and to no block/, ({ world }) => world?.whose === 'no one'],
  [/foreign/, ({ world }) => world?.whose === 'no one'],
];

/** Everything that a check says of its likeliest mismatch. */
function sentences({ checks = [] }: DayOutcome): readonly string[] {
  return checks.flatMap(({ named: [likeliest] }) => (likeliest === undefined ? [] : [mostLikely(likeliest)]));
}

describe.each(['digits', 'digits and count'] as const)('a second rig, read by %s', (reading) => {
  const outcomes = days(FIRST_SEED, HOLES, reading);
  const figures = figuresOf(outcomes);

  test('whatever shows is found, and no rod before it is called wrong', () => {
    expect(figures.shown).toBeGreaterThan(0.75 * HOLES);
    expect(figures.detected).toBe(1);
    expect(figures.falseAlarms).toBe(0);
  });

  test('what is said is said as likely, and what is said of the numbers is true', () => {
    const said = outcomes.flatMap((outcome) => sentences(outcome).map((text) => ({ outcome, text })));
    expect(said.length).toBeGreaterThan(HOLES / 2);
    expect(said.filter(({ text }) => !/^Most likely .* \((over|under)? ?\d+ in 10\): /.test(text))).toEqual(
      [],
    );
    const untrue = said.filter(({ outcome, text }) =>
      CLAIMS.some(([says, isTrue]) => says.test(text) && !isTrue(outcome)),
    );
    expect(untrue.map(({ outcome, text }) => [outcome.seed, text])).toEqual([]);
  });
});

test('with digits and count, more than nineteen in twenty are named rightly after one look', () => {
  expect(figuresOf(days(FIRST_SEED, HOLES, 'digits and count')).afterOne).toBeGreaterThanOrEqual(0.95);
});

test('on clean days, some rods unread and sachets put in late, nothing is called wrong', () => {
  const alarms = Array.from(
    { length: runs(100, 40) },
    (_, index) =>
      day(FIRST_SEED + HOLES + index, 'none', index % 2 === 0 ? 'digits' : 'digits and count').falseAlarms,
  );
  expect(alarms.filter((count) => count > 0)).toEqual([]);
});
