import { expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkShotBelowDrilled } from '../../../src/survey/checks/shot-below-drilled.ts';
import { AT, problemsOf, remediesOf, runOf } from '../build.ts';

const check = (depthM: number, toolOffsetMm = 0, drilledM = 60, pass: 'in' | 'single' = 'in') =>
  checkShotBelowDrilled(
    runOf([[depthM, 90, -60]], { toolOffsetMm, pass }),
    depthFromMetres(drilledM),
    { firstShotM: 12, shotEveryM: 30 },
    AT,
  );

test('a shot deeper than the hole is a fault', () => {
  expect(problemsOf(check(72))).toEqual(['the shot is at 72 m, the hole is drilled to 60 m']);
});

test('feet given for metres are named as the likely cause, with the factor', () => {
  expect(remediesOf(check(177))).toEqual([
    'Likely feet: × 0.3048 it is 53.9 m. Check the unit on the sheet.',
  ]);
});

test('feet are named at the foot of the hole too, though whole feet are a little off the metres', () => {
  expect(remediesOf(check(591, 0, 180))[0]).toContain('Likely feet: × 0.3048 it is 180.1 m.');
});

test('a bit depth given for a station depth is named as the likely cause', () => {
  expect(remediesOf(check(66, 6000))).toEqual(['Likely the bit depth: less the tool offset it is 60 m.']);
});

test('what no likely cause explains says where to look', () => {
  expect(remediesOf(check(600))).toEqual(['Check the digits and the hole; is a rod done not recorded?']);
});

test('a shot at the foot of the hole raises nothing', () => {
  expect(check(60)).toEqual([]);
});

test('of two causes the one that falls on the schedule of single shots is named: swapped digits for 102, feet for 42', () => {
  expect(remediesOf(check(201, 0, 150, 'single'))).toEqual([
    'Likely digits swapped: 102.0 m is on the schedule of shots. Check the sheet.',
  ]);
  expect(remediesOf(check(138, 0, 60, 'single'))[0]).toContain('Likely feet: × 0.3048 it is 42.1 m');
});

test('a depth with its digits swapped is the next of its own run, never one above the shots that stand', () => {
  const shots = [30, 60, 90, 210].map((depthM) => [depthM, 90, -60] as const);
  const found = checkShotBelowDrilled(
    runOf(shots, { pass: 'single' }),
    depthFromMetres(180),
    { firstShotM: 12, shotEveryM: 30 },
    AT,
  );
  expect(remediesOf(found)).toEqual([
    'Likely digits swapped: 120.0 m is on the schedule of shots. Check the sheet.',
  ]);
});
