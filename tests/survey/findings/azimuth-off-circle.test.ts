import { expect, test } from 'vitest';
import { checkAzimuthOnCircle } from '../../../src/survey/checks/azimuth-off-circle.ts';
import { AT, remediesOf } from '../build.ts';

test.each([
  [365, 'Type it again: a slipped digit, or 005.0°?'],
  [-10, 'Type it again: a slipped digit, or 350.0°?'],
  [Number.NaN, 'Type degrees, like 087.5.'],
])('%f is not an azimuth, and is not folded in silence', (typed, remedy) => {
  expect(remediesOf(checkAzimuthOnCircle(typed, AT))).toEqual([remedy]);
});

test.each([0, 87.5, 360])('%f is an azimuth', (typed) => {
  expect(checkAzimuthOnCircle(typed, AT)).toEqual([]);
});
