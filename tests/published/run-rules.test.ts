import { expect, test } from 'vitest';
import { runSignals } from '../../src/sampling/laboratory/run-rules.ts';
import { chance } from '../sampling/splitter.ts';
import { runs } from '../support/long-run.ts';

/** A normal deviate from two even ones (Box & Muller 1958, Annals of Mathematical Statistics 29, 610–611). */
function deviates(seed: number): () => number {
  const random = chance(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Points until the first signal, on average over many seeded series whose mean is `shift` standard deviations off. */
function averageRun(shift: number, series: number): number {
  let points = 0;
  for (let seed = 1; seed <= series; seed++) {
    const next = deviates(seed);
    const recent: number[] = [];
    for (;;) {
      recent.push(next() + shift);
      points += 1;
      // Eight points are all that the tests look back over.
      const window = recent.slice(-8);
      if (runSignals(window).some((signal) => signal.at === window.length - 1)) break;
    }
  }
  return points / series;
}

// From memory: Champ & Woodall 1987, Exact Results for Shewhart Control Charts with Supplementary Runs Rules, Technometrics 29,
// 393–399: with all four zone tests of Western Electric (1956) the average run length is 91.75 points in control, and 9.22 at a
// shift of one standard deviation. Of 6,000 runs the mean has a standard error near 1.2, and 0.1; of fewer it grows by the root.
const RUNS = runs(6000, 1500);
const wider = Math.sqrt(6000 / RUNS);
test('in control the four zone tests signal once in 91.75 points', () => {
  expect(Math.abs(averageRun(0, RUNS) - 91.75)).toBeLessThan(4 * wider);
});

test('at a shift of one standard deviation they signal after 9.22 points', () => {
  expect(Math.abs(averageRun(1, RUNS) - 9.22)).toBeLessThan(0.3 * wider);
});
