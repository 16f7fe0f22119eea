import { describe, expect, test } from 'vitest';
import { azimuth } from '../../../src/quantity/azimuth.ts';
import {
  assessCompass,
  type CompassReading,
  expectedReading,
  formatExpected,
  recogniseReading,
} from '../../../src/survey/collar/compass.ts';
import { meanOnCircle } from '../../../src/survey/norths/circle.ts';
import { surveySettingsOf } from '../../../src/survey/settings.ts';
import { AT } from '../build.ts';

const SETTINGS = surveySettingsOf({ compassNearestM: 20, compassAgreementDeg: 2 });
const PLANNED = azimuth(1, 'magnetic', 2026.2);
const read = (deg: number, distanceM: number, sightedBack = false): CompassReading => ({
  deg,
  distanceM,
  sightedBack,
});
const assess = (readings: readonly CompassReading[], settings = SETTINGS) =>
  assessCompass(readings, PLANNED, settings, AT);

describe('angles on the circle', () => {
  test('359° and 1° make 0°, not 180°', () => {
    expect(meanOnCircle([359, 1])).toEqual({ meanDeg: 0, spreadDeg: expect.closeTo(1, 9) });
  });

  test('opposite angles and no angles have no mean', () => {
    expect(meanOnCircle([0, 180])).toBeUndefined();
    expect(meanOnCircle([])).toBeUndefined();
  });
});

describe('the number to expect', () => {
  test('is the azimuth along the hole and the back-bearing sighted back', () => {
    expect(expectedReading(PLANNED, false).deg).toBe(1);
    expect(expectedReading(PLANNED, true).deg).toBe(181);
    expect(formatExpected(azimuth(88.5, 'magnetic'))).toBe(
      'expect 088.5° magnetic along the hole, 268.5° magnetic sighted back',
    );
  });

  test('a reading that is the other one is recognised', () => {
    expect(recogniseReading(3, PLANNED)).toBe('as expected');
    expect(recogniseReading(179, PLANNED)).toBe('the other way round');
    expect(recogniseReading(91, PLANNED)).toBe('neither');
  });
});

describe('compass readings', () => {
  test('at two distances that agree are averaged on the circle', () => {
    const answer = assess([read(359.5, 20), read(0.5, 20), read(1, 30), read(1, 30)]);
    expect(answer.azimuth?.deg).toBeCloseTo(0.5, 4);
    expect(answer.azimuth?.north).toBe('magnetic');
    expect(answer.findings).toEqual([]);
  });

  test('sighted back are turned, and one given the wrong way round is taken as what it is', () => {
    const answer = assess([read(181, 20, true), read(181, 30, false)]);
    expect(answer.azimuth?.deg).toBeCloseTo(1, 9);
    expect(answer.readings.map((one) => one.recognised)).toEqual(['as expected', 'the other way round']);
  });

  test('that disagree between distances are not used', () => {
    const answer = assess([read(1, 20), read(6, 40)]);
    expect(answer.azimuth).toBeUndefined();
    expect(answer.findings.map((one) => one.problem)).toEqual([
      'compass readings at different distances disagree by 5.0°: not used',
    ]);
  });

  test('too near the rig are left out, and one distance left is not enough', () => {
    const answer = assess([read(1, 5), read(1, 30)]);
    expect(answer.azimuth).toBeUndefined();
    expect(answer.findings.map((one) => one.problem)).toEqual([
      'the compass was read at 1 distance clear of the rig, not two',
    ]);
  });

  test('alone are refused in magnetic ground, however well they agree', () => {
    const answer = assess([read(1, 20), read(1, 30)], { ...SETTINGS, magneticGround: true });
    expect(answer.azimuth).toBeUndefined();
    expect(answer.findings.map((one) => one.code)).toEqual(['survey-compass-magnetic-ground']);
  });
});
