import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkDepthSlips } from '../../../src/survey/checks/depth-slip.ts';
import { AT, checkedRuns, problemsOf, straightRun } from '../build.ts';

const SCHEDULE = { firstShotM: 12, shotEveryM: 30 };
const check = (depths: readonly number[], said: Parameters<typeof straightRun>[1] = {}, drilledM = 400) =>
  checkDepthSlips(straightRun(0, said, 'zq1-1', depths), depthFromMetres(drilledM), SCHEDULE, AT).findings;
const SINGLE = { pass: 'single' } as const;

describe('two digits swapped', () => {
  test.each([
    [[12, 24, 72, 102], 'with two digits swapped it would be 42.0 m'],
    [[21, 42, 72, 102], 'with two digits swapped it would be 12.0 m'],
    [[12, 42, 72, 120], 'with two digits swapped it would be 102.0 m'],
    [[12, 24], 'with two digits swapped it would be 42.0 m'],
    [[12, 42, 201], 'with two digits swapped it would be 102.0 m'],
    [[12, 42, 72, 201], 'with two digits swapped it would be 102.0 m'],
  ] as const)('are told by the schedule of single shots: %j', (depths, words) => {
    expect(problemsOf(check(depths, SINGLE)).join()).toContain(words);
  });

  test('are told in a run by its own steps, in and out', () => {
    const depths = [10, 20, 30, 40, 5, 60, 70];
    expect(problemsOf(check(depths))).toHaveLength(1);
    expect(problemsOf(check([...depths].reverse(), { pass: 'out' }))[0]).toContain('50.0 m, in step');
  });

  test('are looked for in the depth of the bit too', () => {
    // The bit at 15 and 54 for 45, the sensor 3 m behind it.
    expect(problemsOf(check([12, 51, 72, 102], { ...SINGLE, toolOffsetMm: 3000 })).join()).toContain(
      '42.0 m',
    );
  });

  test.each([
    ['the first shot, where the run begins below the schedule', [42, 54, 84, 114], '24.0 m'],
    ['the first shot, typed below the second', [81, 48, 78, 108], '18.0 m'],
    ['beside stations left out', [12, 24, 72, 102, 162], '42.0 m'],
    ['the last shot, the one above it left out', [12, 42, 72, 102, 126], '162.0 m'],
  ])('are named in single shots that keep no even step: %s', (_, depths, right) => {
    expect(problemsOf(check(depths, SINGLE)).join()).toContain(
      `with two digits swapped it would be ${right}`,
    );
  });

  test('are not guessed at where a shot came early or late, was left out, or the run has no step of its own', () => {
    expect(check([12, 42, 66, 102], SINGLE)).toEqual([]);
    expect(check([12, 42, 102, 132], SINGLE)).toEqual([]);
    expect(check([12, 42, 192], SINGLE)).toEqual([]);
    expect(check([12, 42, 154], SINGLE)).toEqual([]);
    expect(check([12, 42, 72, 81], SINGLE)).toEqual([]);
    expect(check([7, 19, 24, 55, 61])).toEqual([]);
    // The first shot of another tool, at the foot of the hole: the bit at 54 is not a slip of 45.
    expect(check([51], { ...SINGLE, toolOffsetMm: 3000 }, 54)).toEqual([]);
  });
});

test('the gaps beside a run in feet are those of the hole in metres', () => {
  const run = straightRun(0, {}, 'zq1-1', [98, 197, 295, 394, 492, 591]);
  const problems = problemsOf(checkedRuns([run], {}, { drilledM: 185 }).findings);
  expect(problems.join()).toContain('read as feet');
  expect(problems.filter((each) => each.includes('without a shot'))).toEqual([]);
});

test('a depth with two digits swapped is no gap: no one surveys the hole again for it', () => {
  const run = straightRun(0, {}, 'zq1-1', [30, 60, 90, 102, 150, 180]);
  const problems = problemsOf(checkedRuns([run], {}, { drilledM: 185 }).findings);
  expect(problems.join()).toContain('with two digits swapped it would be 120.0 m, in step');
  expect(problems.filter((each) => each.includes('without a shot'))).toEqual([]);
});

describe('feet', () => {
  test.each([
    ['one shot alone, where the first stations would be left out', [98], SINGLE],
    ['the first two of a run, the same', [98, 197], {}],
    ['single shots by the schedule', [39, 138, 236], SINGLE],
    ['the first two of them, as soon as they are there', [39, 138], SINGLE],
    ['single shots, a station left out', [39, 138, 335, 433], SINGLE],
    ['a run in whole feet, a station left out', [33, 66, 131, 164], {}],
    ['a run in whole feet', [33, 66, 98, 131, 164], {}],
    ['a run in decimals', [32.8, 65.6, 98.4, 131.2], {}],
  ] as const)('are told wherever they lie, inside the drilled hole too: %s', (_, depths, said) => {
    const [finding, ...more] = check(depths, said);
    expect(finding?.problem).toContain('read as feet');
    expect(finding?.place).toMatchObject({
      fromMm: depths[0] * 1000,
      ...(depths.length > 1 ? { toMm: depths[depths.length - 1]! * 1000 } : {}),
    });
    expect(more).toEqual([]);
  });

  test('are told of one shot among others', () => {
    expect(problemsOf(check([12, 138, 72, 102], SINGLE)).join()).toContain('as feet it would be 42.1 m');
    expect(problemsOf(check([12, 42, 236], SINGLE)).join()).toContain('as feet it would be 71.9 m');
  });

  test('are not seen in metres, whole or not', () => {
    expect(check([10, 20, 30, 40, 50])).toEqual([]);
    expect(check([9.7, 19.7, 29.7, 39.7])).toEqual([]);
    expect(check([12, 111], SINGLE)).toEqual([]);
    for (const depth of [30, 60, 66, 96, 99]) expect(check([depth], SINGLE)).toEqual([]);
  });
});
