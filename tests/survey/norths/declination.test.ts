import { describe, expect, test } from 'vitest';
import { type Stamp, stamp } from '../../../src/quantity/stamp.ts';
import { checkHorizontalField } from '../../../src/survey/checks/weak-horizontal-field.ts';
import { decimalYear, formatFieldSource, magneticField } from '../../../src/survey/norths/declination.ts';

const AT = { hole: 'ZQRC004' };
const on = (iso: string): Stamp => stamp(Date.parse(iso), 0);
const inland = { latDeg: -30, lonDeg: 121 };

describe('the declination', () => {
  test('comes with its model and epoch', () => {
    const { field, findings } = magneticField(inland, 400, on('2026-07-02T12:00:00Z'), AT);
    expect(field).toMatchObject({ model: 'WMM-2025' });
    expect(field?.epoch).toBeCloseTo(2026.5, 3);
    expect(formatFieldSource(field!)).toBe('World Magnetic Model WMM-2025 for 2026.5, valid to 2029-11');
    expect(findings).toEqual([]);
  });

  test('uses the model that was in force at the date of the shot', () => {
    expect(magneticField(inland, 400, on('2022-03-01T00:00:00Z'), AT).field?.model).toBe('WMM-2020');
  });

  test.each(['2029-12-01T00:00:00Z', '2009-06-01T00:00:00Z'])(
    'is not given at %s, and the reason is in plain words',
    (iso) => {
      const { field, findings } = magneticField(inland, 400, on(iso), AT);
      expect(field).toBeUndefined();
      expect(findings.map((one) => one.problem)).toEqual([
        `no World Magnetic Model is carried for ${iso.slice(0, 10)}: they cover December 2014 to November 2029`,
      ]);
    },
  );

  test('warns in a blackout zone near the magnetic pole', () => {
    const { findings } = magneticField({ latDeg: 86, lonDeg: 140 }, 0, on('2026-01-01T00:00:00Z'), AT);
    expect(findings.map((one) => one.code)).toEqual(['survey-compass-blackout']);
  });
});

test('under 2,000 nT a compass is unusable, under 6,000 nT it wants caution, at 6,000 nT it is fine', () => {
  const codes = (nT: number) => checkHorizontalField(nT, AT).map((one) => one.code);
  expect(codes(1999.9)).toEqual(['survey-compass-blackout']);
  expect(codes(2000)).toEqual(['survey-compass-caution']);
  expect(codes(5999.9)).toEqual(['survey-compass-caution']);
  expect(codes(6000)).toEqual([]);
});

test('a decimal year runs evenly through a leap year', () => {
  expect(decimalYear(Date.UTC(2028, 0, 1))).toBe(2028);
  expect(decimalYear(Date.UTC(2028, 6, 2))).toBe(2028.5);
});
