import { describe, expect, test } from 'vitest';
import { fromOwnDegrees, gridByCode, gridByProj } from '../../src/survey/norths/grids.ts';
import { secondOpinion } from '../support/projections/from-proj.ts';

const dms = (degrees: number, minutes: number, seconds: number) => degrees + minutes / 60 + seconds / 3600;

/**
 * Worked examples in print, each on its own ellipsoid, to the digits printed.
 * [S] IOGP Publication 373-7-2, Geomatics Guidance Note 7 part 2 (examples read as transcribed in public test code);
 * [S] Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395, p. 304 (polyconic; read in a transcription);
 * [S] swisstopo, Formulas and constants for the calculation of the Swiss conformal cylindrical projection, point Rigi (as transcribed).
 */
const FOOT = 1200 / 3937;
const LINK = 0.201166195164;
const EXAMPLES = [
  {
    name: 'Lambert conic conformal, one parallel: JAD69 Jamaica',
    proj: '+proj=lcc +lat_1=18 +lat_0=18 +lon_0=-77 +k_0=1 +x_0=250000 +y_0=150000 +ellps=clrk66',
    at: [dms(17, 55, 55.8), -dms(76, 56, 37.26)],
    printed: [255_966.58, 142_493.51],
    toM: 0.005,
  },
  {
    name: 'Lambert conic conformal, two parallels: Texas South Central, US survey feet',
    proj: `+proj=lcc +lat_1=${dms(28, 23, 0)} +lat_2=${dms(30, 17, 0)} +lat_0=${dms(27, 50, 0)} +lon_0=-99 +x_0=${2e6 * FOOT} +y_0=0 +ellps=clrk66`,
    at: [28.5, -96],
    printed: [2_963_503.91 * FOOT, 254_759.8 * FOOT],
    toM: 0.005 * FOOT + 0.0005,
  },
  {
    name: 'Krovak: S-JTSK, westing and southing with their signs changed',
    proj: '+proj=krovak +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 +ellps=bessel',
    at: [dms(50, 12, 32.442), dms(16, 50, 59.179)],
    printed: [-568_991.0, -1_050_538.63],
    toM: 0.0055,
  },
  {
    name: 'Hotine oblique Mercator, variant B: Timbalai 1948 RSO Borneo',
    proj: `+proj=omerc +lat_0=4 +lonc=115 +alpha=${dms(53, 18, 56.9537)} +gamma=${dms(53, 7, 48.3685)} +k=0.99984 +x_0=590476.87 +y_0=442857.65 +ellps=evrstSS`,
    at: [dms(5, 23, 14.1129), dms(115, 48, 19.8196)],
    printed: [679_245.73, 596_562.78],
    toM: 0.0055,
  },
  {
    name: 'oblique stereographic: Amersfoort RD New',
    proj: `+proj=sterea +lat_0=${dms(52, 9, 22.178)} +lon_0=${dms(5, 23, 15.5)} +k=0.9999079 +x_0=155000 +y_0=463000 +ellps=bessel`,
    at: [53, 6],
    printed: [196_105.283, 557_057.739],
    toM: 0.001,
  },
  {
    name: 'Cassini–Soldner: Trinidad 1903, links of Clarke',
    proj: `+proj=cass +lat_0=${dms(10, 26, 30)} +lon_0=${-dms(61, 20, 0)} +x_0=${430_000 * LINK} +y_0=${325_000 * LINK} +a=6378293.645208759 +rf=294.2606763692569`,
    at: [10, -62],
    printed: [66_644.94 * LINK, 82_536.22 * LINK],
    toM: 0.005,
  },
  {
    name: 'polyconic: Clarke 1866',
    proj: '+proj=poly +lat_0=30 +lon_0=-96 +x_0=0 +y_0=0 +ellps=clrk66',
    at: [40, -75],
    printed: [1_776_774.5, 1_319_657.8],
    toM: 0.06,
  },
  {
    name: 'Swiss conformal cylinder: Rigi in LV03',
    proj: `+proj=somerc +lat_0=${dms(46, 57, 8.66)} +lon_0=${dms(7, 26, 22.5)} +k_0=1 +x_0=600000 +y_0=200000 +ellps=bessel`,
    at: [dms(47, 3, 28.95659233), dms(8, 29, 11.11127154)],
    printed: [679_520.05, 212_273.44],
    toM: 0.0055,
  },
] as const;

describe('a worked example in print', () => {
  test.each(EXAMPLES)(
    '$name: by formulas of our own, so that these can be trusted',
    ({ proj, at, printed, toM }) => {
      const [east, north] = secondOpinion(proj)(at[0], at[1]);
      expect(Math.abs(east - printed[0])).toBeLessThan(toM);
      expect(Math.abs(north - printed[1])).toBeLessThan(toM);
    },
  );

  test.each(EXAMPLES)('$name: by the program', ({ proj, at, printed, toM }) => {
    const read = gridByProj('example', proj, {});
    if (!read.ok) throw new Error(read.findings[0]?.problem);
    const found = fromOwnDegrees(read.value, { latDeg: at[0], lonDeg: at[1] });
    expect(Math.abs(found!.eastM - printed[0])).toBeLessThan(toM);
    expect(Math.abs(found!.northM - printed[1])).toBeLessThan(toM);
  });

  test('the grid of the Netherlands in the table is that of the example', () => {
    const [east, north] = secondOpinion(gridByCode(28992)!.proj)(53, 6);
    expect([east, north].map((m) => m.toFixed(3))).toEqual(['196105.283', '557057.739']);
  });

  // [S] IOGP Publication 373-7-2, polar stereographic variants A and B (as transcribed): no row of the table, but a proj string may be one.
  test.each([
    [
      'A: WGS 84 UPS North',
      '+proj=stere +lat_0=90 +lon_0=0 +k=0.994 +x_0=2000000 +y_0=2000000 +datum=WGS84',
      [73, 44],
      [3_320_416.75, 632_668.43],
    ],
    [
      'B: WGS 84 Australian Antarctic',
      '+proj=stere +lat_0=-90 +lat_ts=-71 +lon_0=70 +k=1 +x_0=6000000 +y_0=6000000 +datum=WGS84',
      [-75, 120],
      [7_255_380.79, 7_053_389.56],
    ],
  ] as const)(
    'polar stereographic, variant %s, by a proj string',
    (_name, proj, [latDeg, lonDeg], printed) => {
      const read = gridByProj('example', proj, {});
      const found = read.ok ? fromOwnDegrees(read.value, { latDeg, lonDeg }) : undefined;
      expect(Math.abs(found!.eastM - printed[0])).toBeLessThan(0.0055);
      expect(Math.abs(found!.northM - printed[1])).toBeLessThan(0.0055);
    },
  );
});
