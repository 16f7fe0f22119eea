import { expect, test } from 'vitest';
import { bendBetween } from '../../../src/survey/path/severity.ts';
import { pointing } from '../build.ts';

test('a hole that becomes shallower lifts, in degrees per 30 m', () => {
  expect(bendBetween(pointing(90, -60), pointing(90, -58), 60)).toEqual({
    severity: expect.closeTo(1, 9),
    lift: 1,
    turn: 0,
    turnAcross: 0,
  });
});

test('a turn to the right through north is positive, and weighs as the cosine of the dip', () => {
  const bend = bendBetween(pointing(358, -60), pointing(2, -60), 30);
  expect(bend.turn).toBe(4);
  expect(bend.turnAcross).toBeCloseTo(2, 9);
  expect(bend.severity).toBeCloseTo(2, 2);
});

test('a bend over no length is a fault of the caller', () => {
  expect(() => bendBetween(pointing(0, -60), pointing(0, -60), 0)).toThrow(RangeError);
});
