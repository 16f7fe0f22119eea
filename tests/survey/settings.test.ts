import { expect, test } from 'vitest';
import { surveySettings, surveySettingsOf } from '../../src/survey/settings.ts';

test('everything is optional, and the usual figures stand in for what is unsaid', () => {
  expect(surveySettings.safeParse({}).success).toBe(true);
  expect(surveySettingsOf({ shotEveryM: 20 })).toMatchObject({ shotEveryM: 20, firstShotM: 12 });
});

test('one class of tool can be given its figures and the others keep theirs', () => {
  const own = {
    azimuthRandomDeg: 1,
    azimuthSystematicDeg: 2,
    dipRandomDeg: 0.1,
    dipSystematicDeg: 0.1,
    depthRandomM: 0,
    depthSystematicPerCent: 0,
  };
  const settings = surveySettingsOf({ toolErrors: { magnetic: own } });
  expect(settings.toolErrors.magnetic).toEqual(own);
  expect(settings.toolErrors['north-seeking gyro'].azimuthRandomDeg).toBeGreaterThan(0);
});

test('a name that is not known is refused, as is a tolerance of nothing', () => {
  expect(surveySettings.safeParse({ shotEvery: 30 }).success).toBe(false);
  expect(surveySettings.safeParse({ dipToleranceDeg: 0 }).success).toBe(false);
});

test('the grid is a register code or a name with a proj string', () => {
  const reads = (grid: unknown) => surveySettings.safeParse({ grid }).success;
  expect(reads({ epsg: 7850 })).toBe(true);
  expect(reads({ name: 'site', proj: '+proj=utm +zone=50 +south' })).toBe(true);
  expect(reads({ epsg: 7850, name: 'site' })).toBe(false);
});
