import { describe, expect, test } from 'vitest';
import { nmeaChecksum, readNmea } from '../../src/survey/collar/nmea.ts';

/** Sentences as they are published, their checksums as printed. */
const HOLDS = [
  // A widely published example pair.
  ['$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47', 48.1173, 11.51666667],
  ['$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A', 48.1173, 11.51666667],
  // A receiver's manual: the NMEA 2.0 and 3.0 forms.
  ['$GPRMC,001207.00,A,4911.2236,N,12254.4779,W,012.3,201.0,170109,,*2D', 49.18706, -122.907965],
  ['$GPRMC,222414.00,A,4915.3920,N,12259.8072,W,000.2,242.0,211210,,,A*49', 49.25653333, -122.99678667],
  // A public page on GPS, its placeholders for empty fields removed.
  ['$GPGGA,091915.00,5133.41632,N,00150.33776,W,1,04,2.22,117.1,M,47.7,M,,*4B', 51.55693867, -1.83896267],
] as const;

/** A public example whose printed checksum fits neither with blanks in its empty fields nor without. */
const FAILS = [
  ['$GPRMC,170047.00,A,4121.23302,N,00201.31654,W,2.703, ,200417, , ,A*64', '41'],
  ['$GPRMC,170047.00,A,4121.23302,N,00201.31654,W,2.703,,200417,,,A*64', '61'],
] as const;

describe('NMEA sentences', () => {
  test.each(HOLDS)('%s gives its position', (sentence, latDeg, lonDeg) => {
    const read = readNmea(sentence);
    expect(read).toMatchObject({
      kind: 'fix',
      fix: { latDeg: expect.closeTo(latDeg, 7), lonDeg: expect.closeTo(lonDeg, 7) },
    });
  });

  test.each(FAILS)('%s is not believed: its checksum does not fit', (sentence, computed) => {
    expect(nmeaChecksum(sentence.slice(1, sentence.indexOf('*')))).toBe(computed);
    expect(readNmea(sentence)).toEqual({
      kind: 'bad',
      reason: `checksum 64 does not fit: the characters give ${computed}`,
    });
  });
});
