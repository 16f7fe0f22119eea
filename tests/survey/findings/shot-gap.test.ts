import { expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkShotGaps } from '../../../src/survey/checks/shot-gap.ts';
import { AT, problemsOf, remediesOf } from '../build.ts';

const check = (depthsM: readonly number[], drilledM: number) =>
  checkShotGaps(depthsM.map(depthFromMetres), depthFromMetres(drilledM), { longestGapM: 40 }, AT);

test('more metres between two shots than allowed is a finding that says which', () => {
  const findings = check([0, 12, 60, 72], 80);
  expect(problemsOf(findings)).toEqual(['48 m without a shot; 40 m is allowed']);
  expect(findings[0]?.place).toEqual({ hole: 'ZQRC004', fromMm: 12_000, toMm: 60_000 });
});

test('metres drilled since the last shot count too: a shot is overdue', () => {
  expect(remediesOf(check([0, 30], 71))).toEqual([
    'Ask the driller to take a shot at the next rod: it is overdue.',
  ]);
});

test('gaps of just the allowed length raise nothing', () => {
  expect(check([0, 40, 80], 120)).toEqual([]);
});
