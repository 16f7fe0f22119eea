import { expect, test } from 'vitest';
import { checkCollarOnPlan } from '../../../src/survey/checks/collar-off-plan.ts';
import { AT, problemsOf, remediesOf } from '../build.ts';

const PLANNED = { eastM: 400_000, northM: 6_500_000 };
const check = (eastM: number, northM: number) =>
  checkCollarOnPlan({ eastM, northM }, PLANNED, { collarToleranceM: 5 }, AT);

test('a collar away from its peg is a finding that says how far and which way', () => {
  expect(problemsOf(check(399_990, 6_500_000))).toEqual([
    'the collar is 10.0 m from where it was planned, towards 270° grid',
  ]);
});

test('a collar on the peg of another hole is told so', () => {
  const others = [{ hole: 'ZQRC005', at: { eastM: 400_040, northM: 6_500_000 } }];
  const found = (eastM: number) =>
    remediesOf(checkCollarOnPlan({ eastM, northM: 6_500_000 }, PLANNED, { collarToleranceM: 5 }, AT, others));
  expect(found(400_038)).toEqual(['It is on the peg of ZQRC005: the wrong peg, or the two exchanged?']);
  expect(found(400_020)[0]).toContain('Is the rig on the right peg?');
});

test('a collar within the tolerance raises nothing', () => {
  expect(check(400_003, 6_500_004)).toEqual([]);
});
