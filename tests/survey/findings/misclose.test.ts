import { expect, test } from 'vitest';
import { checkMisclose } from '../../../src/survey/checks/misclose.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { AT, problemsOf, runOf } from '../build.ts';

const BY = { north: 'true', anglesOf: () => ({}), settings: surveySettingsOf() } as const;

const IN = runOf([
  [30, 90, -60],
  [60, 91, -59],
]);
const out = (azimuthDeg: number) =>
  runOf(
    [
      [60.2, azimuthDeg, -59],
      [30.1, 90, -60],
    ],
    { pass: 'out' },
    'zq1-2',
  );

test('in and out runs that differ at the same place by more than allowed are a misclose', () => {
  const findings = checkMisclose(IN, out(94), BY, AT);
  expect(problemsOf(findings)).toEqual(['tool 7, in and tool 7, out differ by up to 1.5°; 1.3° is allowed']);
  expect(findings[0]?.place).toMatchObject({ fromMm: 60_000 });
});

test('an azimuth difference counts as the angle in space, less where the hole is steep', () => {
  expect(checkMisclose(IN, out(92.5), BY, AT)).toEqual([]);
});
