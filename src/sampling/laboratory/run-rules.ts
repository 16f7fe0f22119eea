/** A run that chance seldom gives, in words, with the place of the point that completes it. */
export interface RunSignal {
  readonly at: number;
  readonly words: string;
}

/** A whole run: from its first point on that side to its latest, with every rule that it breaks in words. */
export interface Run extends RunSignal {
  readonly from: number;
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

/**
 * The runs, each once, at the point that it had come to last: signals of one side whose windows overlap are one run, which every rule
 * that it breaks is said of. A single point over 3 SD is a failure by itself, not a run.
 */
export function runsIn(scores: readonly number[]): readonly Run[] {
  const runs: { from: number; at: number; side: number; rules: readonly string[] }[] = [];
  for (const { at, words } of runSignals(scores)) {
    const test = ZONE_TESTS.find((each) => each.words === words);
    if (test === undefined || test.window === 1) continue;
    const side = Math.sign(scores[at] ?? 0);
    const before = runs.findLast((run) => run.side === side);
    const start = Math.max(0, at - test.window + 1);
    const from = scores.findIndex((score, index) => index >= start && score * side > test.beyond);
    if (before === undefined || start > before.at) runs.push({ from, at, side, rules: [words] });
    else {
      before.from = Math.min(before.from, from);
      before.at = at;
      before.rules = [...new Set([...before.rules, words])];
    }
  }
  return runs
    .sort((a, b) => a.at - b.at)
    .map(({ from, at, rules }) => ({ from, at, words: rules.join('; ') }));
}
