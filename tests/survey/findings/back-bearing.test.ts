import { expect, test } from 'vitest';
import { checkBackBearing } from '../../../src/survey/checks/back-bearing.ts';
import { AT, pointing, problemsOf, station } from '../build.ts';

test('an azimuth 180° from where the hole was set is its back-bearing', () => {
  const findings = checkBackBearing([station(30, 268, -60)], pointing(90, -60), AT);
  expect(problemsOf(findings)).toEqual(['this azimuth is the back-bearing: 180° from where the hole goes']);
  expect(findings[0]?.excerpt).toBe('azimuth 268.0° grid; the hole goes 090.0° grid');
});

test('a hole that turned, however far short of that, raises nothing', () => {
  expect(checkBackBearing([station(30, 130, -60)], pointing(90, -60), AT)).toEqual([]);
});

test('a steep hole raises nothing: its azimuth may be anything', () => {
  expect(checkBackBearing([station(30, 268, -88)], pointing(90, -88), AT)).toEqual([]);
});
