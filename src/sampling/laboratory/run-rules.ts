/** A run that chance seldom gives, in words, with the place of the point that completes it. */
export interface RunSignal {
  readonly at: number;
  readonly words: string;
}

/** A zone test: of the last `window` points, at least `count` lie beyond `beyond` standard deviations on one side. */
interface ZoneTest {
  readonly count: number;
  readonly window: number;
  readonly beyond: number;
  readonly words: string;
}

/** The zone tests of Western Electric, Statistical Quality Control Handbook, 1956, in plain words. */
const ZONE_TESTS: readonly ZoneTest[] = [
  { count: 1, window: 1, beyond: 3, words: 'more than 3 SD off' },
  { count: 2, window: 3, beyond: 2, words: '2 of 3 more than 2 SD off on one side' },
  { count: 4, window: 5, beyond: 1, words: '4 of 5 more than 1 SD off on one side' },
  { count: 8, window: 8, beyond: 0, words: '8 in a row on one side' },
];

/** Every signal in a series of z-scores, in the order they were reported: the point itself lies on the side that is counted. */
export function runSignals(scores: readonly number[]): readonly RunSignal[] {
  return scores.flatMap((score, at) =>
    ZONE_TESTS.filter((test) => {
      const side = Math.sign(score);
      const out = (each: number): boolean => each * side > test.beyond;
      const last = scores.slice(Math.max(0, at - test.window + 1), at + 1);
      return side !== 0 && out(score) && last.filter(out).length >= test.count;
    }).map((test) => ({ at, words: test.words })),
  );
}

/** The signals but those of a single point: one over 3 SD is a failure by itself, not a run. */
export function runsIn(scores: readonly number[]): readonly RunSignal[] {
  return runSignals(scores).filter((signal) => signal.words !== ZONE_TESTS[0]?.words);
}
