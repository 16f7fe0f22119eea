import { expect, test } from 'vitest';
import { checkDeclinationSlip } from '../../../src/survey/checks/declination-slip.ts';
import { AT, problemsOf } from '../build.ts';

const pairs = (offset: number, wobble = 0.2) =>
  [0, 1, 2, 3].map((index) => ({
    measuredDeg: 90 + index + offset + (index % 2 === 0 ? wobble : -wobble),
    referenceDeg: 90 + index,
  }));

test('a constant offset of the declination means that it was applied twice', () => {
  expect(problemsOf(checkDeclinationSlip(pairs(4), 4, AT))).toEqual([
    'the run is turned by about the declination: it was likely applied twice',
  ]);
});

test('a constant offset against the declination means that it was not applied', () => {
  expect(problemsOf(checkDeclinationSlip(pairs(-4), 4, AT))).toEqual([
    'the run is turned by about the declination: it was likely applied not at all',
  ]);
});

test('no offset, another offset, and an offset that is not constant raise nothing', () => {
  expect(checkDeclinationSlip(pairs(0), 4, AT)).toEqual([]);
  expect(checkDeclinationSlip(pairs(9), 4, AT)).toEqual([]);
  expect(checkDeclinationSlip(pairs(4, 3), 4, AT)).toEqual([]);
});

test('two shots, or a declination lost in the noise, tell nothing', () => {
  expect(checkDeclinationSlip(pairs(4).slice(0, 2), 4, AT)).toEqual([]);
  expect(checkDeclinationSlip(pairs(0.5), 0.5, AT)).toEqual([]);
});
