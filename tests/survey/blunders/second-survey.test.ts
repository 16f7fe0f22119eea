import { describe, expect, test } from 'vitest';
import { LONG_RUN, runs } from '../../support/long-run.ts';
import { COMPANY, chanceOf, padOf } from './second-survey.ts';
import { BLUNDERS, cleanSurvey, count, needless } from './second-survey-trials.ts';

const TRIALS = runs(40, 6);
const CLEAN = runs(1000, 100);
const FIRST_SEED = 40_000;

describe('a second crew’s surveys: a blunder whose effect is over three sigma', () => {
  test.each(BLUNDERS.map((one) => [one.name, one] as const))(
    'is named first, nine times of ten: %s',
    (_, one) => {
      const beside = COMPANY.filter((company) => company !== one.never).map(
        (company) => [company, count(one, company, TRIALS, FIRST_SEED)] as const,
      );
      if (LONG_RUN)
        for (const [company, { over, named, under, underNamed, underWrong, missed }] of beside)
          console.log(
            [
              `${one.name}, beside ${company}: ${named} of ${over} named; under ${under} (${underNamed} named, ${underWrong.length} called something else)`,
              ...missed.map((each) => `    missed: ${each}`),
              ...underWrong.map((each) => `    under: ${each}`),
            ].join('\n'),
          );
      const all = beside.map(([, each]) => each);
      const over = all.reduce((sum, each) => sum + each.over, 0);
      const named = all.reduce((sum, each) => sum + each.named, 0);
      expect(over, 'there are some to name').toBeGreaterThanOrEqual(5);
      expect(named / over, all.flatMap((each) => each.missed).join('\n')).toBeGreaterThanOrEqual(0.9);
    },
  );
});

test('of a second crew’s clean holes no more than 2 % are doubted, but for shots beside magnetite and stations left out', () => {
  const holes = Array.from({ length: CLEAN }, (_, index) => cleanSurvey(index + 1));
  const doubted = holes.map(needless).filter((findings) => findings.length > 0);
  if (LONG_RUN) console.log(`clean holes doubted: ${doubted.length} of ${CLEAN}`);
  expect(
    doubted.length,
    doubted.map(([first]) => `${first?.problem} ${first?.excerpt ?? ''}`).join('\n'),
  ).toBeLessThanOrEqual(0.02 * CLEAN);
});

test('a hole with a shot beside magnetite is doubted', () => {
  const spiked = Array.from({ length: CLEAN }, (_, index) => cleanSurvey(index + 1)).filter(
    ({ spikes }) => spikes.length > 0,
  );
  expect(spiked.length).toBeGreaterThan(2);
  expect(spiked.filter(({ findings }) => findings.length === 0)).toEqual([]);
});

test('the pads have grids carried on beyond their zone, and declinations of both signs', () => {
  const pads = [-20, 20].map((wanted) => padOf(chanceOf(wanted + 100), wanted, 1));
  expect(pads.map(({ declination }) => Math.round(declination / 10))).toEqual([-2, 2]);
  for (const { convergence } of pads) expect(Math.abs(convergence)).toBeGreaterThan(0.1);
});
