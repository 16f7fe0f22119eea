import { expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkDepthSlips } from '../../../src/survey/checks/depth-slip.ts';
import { checkShotOrder } from '../../../src/survey/checks/shot-order.ts';
import { AT, problemsOf, runOf, withShots } from '../build.ts';

const SETTINGS = { firstShotM: 30, shotEveryM: 30 };
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

test.each<[string, readonly number[], 'in' | 'out']>([
  ['typed late', [30, 90, 60, 180, 150, 120], 'in'],
  ['of an out run typed in the order of the sheet', [30, 60, 90, 120, 150, 180], 'out'],
  ['of an out run typed so, as soon as there are two', [30, 60], 'out'],
  ['typed late, each a metre off its step', [31, 90, 60, 121, 150], 'in'],
])('shots that keep one step are none the worse for being %s', (_what, depths, pass) => {
  const run = runOf(
    depths.map((depth) => [depth, 90, -60] as const),
    { pass },
  );
  expect(checkShotOrder(run, AT)).toEqual([]);
  expect(checkDepthSlips(run, depthFromMetres(200), SETTINGS, AT).findings).toEqual([]);
});

test('a depth that was misread leaves a gap, and is out of order as before', () => {
  const run = runOf([30, 60, 90, 210, 150, 180].map((depth) => [depth, 90, -60] as const));
  expect(checkShotOrder(run, AT)).toHaveLength(1);
  expect(checkDepthSlips(run, depthFromMetres(220), SETTINGS, AT).findings).toHaveLength(1);
});
