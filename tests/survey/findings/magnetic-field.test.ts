import { expect, test } from 'vitest';
import { checkMagneticField } from '../../../src/survey/checks/magnetic-field.ts';
import { AT, runOf, withShots } from '../build.ts';

const FIELD = {
  declinationDeg: 1,
  dipDeg: -65.2,
  horizontalNt: 24_000,
  totalNt: 57_000,
  model: 'WMM-2025',
  epoch: 2026.2,
  validTo: '2029-11',
};
const SETTINGS = { fieldToleranceNt: 1000, magneticDipToleranceDeg: 1 };
const RUN = runOf([[30, 88, -60]], { toolClass: 'magnetic', north: 'magnetic' });
const check = (said: { fieldNt?: number; magneticDipDeg?: number; azimuthRejected?: string }) =>
  checkMagneticField(withShots(RUN, said), FIELD, SETTINGS, AT);

test('a total field off the model by more than the tolerance makes the azimuth doubtful', () => {
  expect(check({ fieldNt: 58_400 })[0]).toMatchObject({
    excerpt: 'total field 58400 nT, expected 57000 nT',
    problem: "the field at this shot is not the Earth's by WMM-2025: its azimuth is doubtful",
  });
});

test('so does a magnetic dip off the model, and both are told in one finding', () => {
  const findings = check({ fieldNt: 55_000, magneticDipDeg: -63 });
  expect(findings.map((one) => one.excerpt)).toEqual([
    'total field 55000 nT, expected 57000 nT; magnetic dip -63.0°, expected -65.2°',
  ]);
});

test('inside the tolerances, not measured, or already rejected raises nothing', () => {
  expect(check({ fieldNt: 58_000, magneticDipDeg: -64.2 })).toEqual([]);
  expect(check({})).toEqual([]);
  expect(check({ fieldNt: 70_000, azimuthRejected: 'magnetite' })).toEqual([]);
});

test('one shot is told one thing: off in strength and its dip without a sign, the azimuth does not stand', () => {
  const [only, ...more] = check({ fieldNt: 58_063, magneticDipDeg: 65.2 });
  expect(more).toEqual([]);
  expect(only?.excerpt).toBe('total field 58063 nT, expected 57000 nT');
  expect(only?.remedy).toContain('Reject the azimuth alone');
  expect(only?.remedy).toContain('Its magnetic dip lacks its sign: down is positive, here -65.2°.');
  expect(check({ magneticDipDeg: 65.2 })[0]?.remedy).toContain('The azimuth is kept.');
});
