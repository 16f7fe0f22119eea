import { expect, test } from 'vitest';
import { checkShotOrder } from '../../../src/survey/checks/shot-order.ts';
import { AT, problemsOf, runOf, withShots } from '../build.ts';

const DOWN = [
  [12, 90, -60],
  [42, 90, -60],
  [32, 90, -60],
] as const;

test('a shot above the one before it in its run is out of order', () => {
  const [finding, ...others] = checkShotOrder(runOf(DOWN), AT);
  expect(others).toEqual([]);
  expect(finding).toMatchObject({
    place: { hole: 'ZQRC004', fromMm: 32_000, thing: 'tool 7, in' },
    excerpt: '42 m, then 32 m',
    problem: 'this depth is not below the one before it in the run',
  });
});

test('two shots at one depth are out of order', () => {
  expect(checkShotOrder(runOf([DOWN[0], DOWN[0]]), AT)).toHaveLength(1);
});

test('on the way out each shot is above the one before', () => {
  expect(problemsOf(checkShotOrder(runOf([...DOWN].reverse(), { pass: 'out' }), AT))).toEqual([
    'this depth is not above the one before it in the run',
  ]);
  expect(checkShotOrder(runOf([DOWN[1], DOWN[0]], { pass: 'out' }), AT)).toEqual([]);
});

test('shots in order, and rejected ones, raise nothing', () => {
  expect(checkShotOrder(runOf([DOWN[0], DOWN[1]]), AT)).toEqual([]);
  expect(checkShotOrder(withShots(runOf(DOWN), { rejected: 'wrong hole' }), AT)).toEqual([]);
});
