import { expect, test } from 'vitest';
import { azimuthUnusable, checkMagneticInSteel } from '../../../src/survey/checks/magnetic-in-steel.ts';
import { AT, problemsOf, remediesOf, runOf, withShots } from '../build.ts';

const SETTINGS = { steelM: 6 };
const MAGNETIC = { toolClass: 'magnetic', north: 'magnetic' } as const;
const shots = [[30, 88, -60]] as const;

test('a magnetic azimuth inside rods is unusable, and the remedy keeps the dip', () => {
  const findings = checkMagneticInSteel(runOf(shots, { ...MAGNETIC, inside: 'rods' }), SETTINGS, AT);
  expect(problemsOf(findings)).toEqual(['a magnetic azimuth inside or near steel is unusable']);
  expect(remediesOf(findings)[0]).toContain('the dip is kept');
});

test('so is one nearer to steel than allowed', () => {
  expect(azimuthUnusable({ ...MAGNETIC, inside: 'open hole', steelMm: 5999 }, 6)).toBe(true);
  expect(azimuthUnusable({ ...MAGNETIC, inside: 'open hole', steelMm: 6000 }, 6)).toBe(false);
});

test('a gyro inside rods, and an azimuth already rejected, raise nothing', () => {
  expect(checkMagneticInSteel(runOf(shots, { inside: 'rods' }), SETTINGS, AT)).toEqual([]);
  const rejected = withShots(runOf(shots, { ...MAGNETIC, inside: 'rods' }), { azimuthRejected: 'in rods' });
  expect(checkMagneticInSteel(rejected, SETTINGS, AT)).toEqual([]);
});
