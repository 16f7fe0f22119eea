import { describe, expect, test } from 'vitest';
import { anglesAt, siteOf } from '../../../src/survey/norths/site.ts';
import type { SurveySettingsFile } from '../../../src/survey/settings.ts';
import { AT, problemsOf, WHEN } from '../build.ts';

const FILE = { file: 'project.json' };
const site = (file: SurveySettingsFile) => {
  const read = siteOf(file, FILE);
  if (!read.ok) throw new Error(problemsOf(read.findings).join());
  return read.value;
};
const PEGS: SurveySettingsFile['mineGrid'] = {
  rotationDeg: 30,
  mapOrigin: { eastM: 745_000, northM: 6_500_000 },
  mineOrigin: { eastM: 1000, northM: 5000 },
};

describe('the site of a project', () => {
  test('has no grid if none is given', () => {
    expect(site({})).toEqual({ grid: undefined, mineGrid: undefined, declinationDeg: undefined });
  });

  test('has its grid by code or by proj string, and its mine grid either way', () => {
    expect(site({ grid: { epsg: 7850 } }).grid?.name).toBe('GDA2020 / MGA zone 50');
    expect(site({ grid: { name: 'site', proj: '+proj=utm +zone=50 +south' } }).grid?.name).toBe('site');
    expect(site({ mineGrid: PEGS }).mineGrid).toMatchObject({ rotationDeg: 30, scale: 1 });
    const pegs: SurveySettingsFile['mineGrid'] = {
      pegs: [
        { map: { eastM: 0, northM: 0 }, mine: { eastM: 0, northM: 0 } },
        { map: { eastM: 1000, northM: 0 }, mine: { eastM: 0, northM: 1000 } },
      ],
    };
    expect(site({ mineGrid: pegs }).mineGrid?.rotationDeg).toBeCloseTo(90, 9);
  });

  test('is refused for a code that is not a projected grid, in the place where it is said', () => {
    const read = siteOf({ grid: { epsg: 4326 } }, FILE);
    expect(read.ok ? [] : read.findings).toMatchObject([
      { place: { file: 'project.json', field: 'grid' }, excerpt: 'EPSG 4326' },
    ]);
  });
});

describe('the angles at a place and time', () => {
  const here = { eastM: 745_000, northM: 6_500_000 };

  test('are all known with a grid, a position and a mine grid', () => {
    const { angles, field, findings } = anglesAt(
      site({ grid: { epsg: 7850 }, mineGrid: PEGS }),
      here,
      400,
      WHEN,
      AT,
    );
    expect(angles.mineGridRotationDeg).toBe(30);
    expect(angles.declinationDeg).toBe(field?.declinationDeg);
    // East of the central meridian (117°E) in the south, grid north lies west of true north: about 2.57° × sin 31.6°.
    expect(angles.convergenceDeg).toBeCloseTo(-1.35, 1);
    expect(findings).toEqual([]);
  });

  test('without a position are those that need none', () => {
    expect(anglesAt(site({ grid: { epsg: 7850 }, mineGrid: PEGS }), undefined, 0, WHEN, AT)).toEqual({
      angles: { mineGridRotationDeg: 30 },
      field: undefined,
      findings: [],
    });
  });

  test("take the project's own declination before the model's, and still give the model's field", () => {
    const own = site({ grid: { epsg: 7850 }, declination: { deg: 2.5, source: 'national survey, 2031' } });
    const { angles, field } = anglesAt(own, here, 400, WHEN, AT);
    expect(angles.declinationDeg).toBe(2.5);
    expect(field?.declinationDeg).not.toBe(2.5);
  });
});
