import { expect, test } from 'vitest';
import { checkDipSlip } from '../../../src/survey/checks/dip-slip.ts';
import { AT, codesOf, remediesOf } from '../build.ts';

test('+60 typed for -60 points upwards', () => {
  const findings = checkDipSlip(60, -60, AT);
  expect(codesOf(findings)).toEqual(['survey-dip-upwards']);
  expect(remediesOf(findings)).toEqual(['Downwards is negative: -60.0°?']);
});

test.each([
  [30.5, -60],
  [-30.5, -60],
  [1.2, -89],
])('%f where %f is expected is likely an inclination from vertical', (typed, expected) => {
  expect(codesOf(checkDipSlip(typed, expected, AT))).toEqual(['survey-dip-from-vertical']);
});

test('the dip it would be is named', () => {
  expect(remediesOf(checkDipSlip(30.5, -60, AT))).toEqual([
    'Record -59.5° if the tool counts from vertical.',
  ]);
});

test('a dip near the expected one raises nothing, at 45° as elsewhere', () => {
  expect(checkDipSlip(-57, -60, AT)).toEqual([]);
  expect(checkDipSlip(-45, -45, AT)).toEqual([]);
  expect(checkDipSlip(-49, -42, AT)).toEqual([]);
});

test('a hole meant to go up may', () => {
  expect(checkDipSlip(12, 15, AT)).toEqual([]);
});
