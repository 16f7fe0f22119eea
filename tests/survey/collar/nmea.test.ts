import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFixes } from '../../../src/survey/collar/fixes.ts';
import { nmeaChecksum, readNmea } from '../../../src/survey/collar/nmea.ts';

const sentence = (between: string) => `$${between}*${nmeaChecksum(between)}`;
const gga = (lat: string, lon: string, rest = '1,08,0.9,402.0,M,-30.0,M,,') =>
  sentence(`GNGGA,010203.00,${lat},S,${lon},E,${rest}`);

describe('one sentence', () => {
  test('south and west are negative', () => {
    expect(readNmea(sentence('GPRMC,010203,A,3030.0000,S,12115.0000,W,0.0,0.0,140326,,'))).toMatchObject({
      fix: { latDeg: -30.5, lonDeg: -121.25 },
    });
  });

  test('gives satellites, dilution and height when it has them', () => {
    expect(readNmea(gga('3030.0000', '12115.0000'))).toMatchObject({
      fix: { sentence: 'GGA', satellites: 8, dilution: 0.9, heightM: 402 },
    });
  });

  test('without a fix says so', () => {
    expect(readNmea(sentence('GPGGA,010203,,,,,0,00,,,M,,M,,'))).toMatchObject({ kind: 'no fix' });
    expect(readNmea(sentence('GPRMC,010203,V,,,,,,,140326,,'))).toMatchObject({ kind: 'no fix' });
    expect(readNmea(sentence('GPGSV,1,1,00'))).toMatchObject({ kind: 'no fix' });
  });

  test('that is estimated, typed in or simulated is not a fix', () => {
    for (const quality of ['6', '7', '8'])
      expect(readNmea(gga('3030.0000', '12115.0000', `${quality},08,0.9,402.0,M,,M,,`))).toMatchObject({
        kind: 'no fix',
      });
    for (const mode of ['E', 'M', 'S', 'N'])
      expect(
        readNmea(sentence(`GPRMC,010203,A,3030.0000,S,12115.0000,E,0.0,0.0,140326,,,${mode}`)),
      ).toMatchObject({ kind: 'no fix' });
  });

  test('says how it was made', () => {
    expect(readNmea(gga('3030.0000', '12115.0000', '4,14,0.6,402.0,M,,M,,'))).toMatchObject({
      fix: { kind: 'kinematic fixed' },
    });
    expect(readNmea(sentence('GPRMC,010203,A,3030.0000,S,12115.0000,E,0.0,0.0,140326,,,D'))).toMatchObject({
      fix: { kind: 'differential' },
    });
  });

  test('with 60 minutes, 91 degrees or a missing side is not a position', () => {
    for (const bad of ['3060.0000,S,12115.0000,E', '9100.0000,S,12115.0000,E', '3030.0000,,12115.0000,E'])
      expect(readNmea(sentence(`GPGGA,010203,${bad},1,08,0.9,402.0,M,,M,,`))).toMatchObject({ kind: 'bad' });
  });

  test('without a checksum, or longer than the standard allows, is not believed', () => {
    expect(readNmea('$GPGGA,010203,3030.0000,S,12115.0000,E,1,08,0.9,402.0,M,,M,,')).toMatchObject({
      kind: 'bad',
    });
    expect(readNmea(sentence(`GPGGA,${'0'.repeat(90)}`))).toMatchObject({ kind: 'bad' });
  });

  test('whatever comes down the cable, it never throws', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void readNmea(text)));
    fc.assert(fc.property(fc.string(), (between) => void readNmea(sentence(between))));
  });
});

describe('fixes', () => {
  test('are averaged, with their scatter and their worst quality', () => {
    const { average, leftOut } = readFixes(
      [gga('3030.0000', '12115.0000'), gga('3030.0020', '12115.0000', '1,05,2.1,404.0,M,-30.0,M,,'), ''].join(
        '\r\n',
      ),
    );
    expect(leftOut).toEqual([]);
    expect(average).toMatchObject({
      fixes: 2,
      kinds: ['plain'],
      heightM: 403,
      fewestSatellites: 5,
      worstDilution: 2.1,
      lonDeg: expect.closeTo(121.25, 9),
      latDeg: expect.closeTo(-(30 + 30.001 / 60), 9),
      scatterM: expect.closeTo(1.853, 2),
    });
  });

  test('on both sides of the date line average on it', () => {
    const west = sentence('GPGGA,010203,1000.0000,S,17959.9990,W,1,08,0.9,5.0,M,,M,,');
    const { average } = readFixes(`${gga('1000.0000', '17959.9990')}\n${west}`);
    expect(Math.abs(average?.lonDeg ?? 0)).toBeCloseTo(180, 9);
  });

  test('of the two kinds are not counted twice', () => {
    const rmc = sentence('GPRMC,010203,A,3030.1000,S,12115.0000,E,0.0,0.0,140326,,');
    expect(readFixes(`${gga('3030.0000', '12115.0000')}\n${rmc}`).average?.fixes).toBe(1);
    expect(readFixes(rmc).average).toMatchObject({ fixes: 1, heightM: undefined });
  });

  test('that are none leave no average, and every line left out is named with its reason', () => {
    expect(readFixes('hello\n$GPGGA*00')).toEqual({
      average: undefined,
      leftOut: [
        { line: 1, text: 'hello', reason: 'no NMEA sentence with a checksum' },
        { line: 2, text: '$GPGGA*00', reason: expect.stringContaining('does not fit') },
      ],
    });
  });
});
