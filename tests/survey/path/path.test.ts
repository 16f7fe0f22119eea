import { describe, expect, test } from 'vitest';
import { azimuth } from '../../../src/quantity/azimuth.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { pathThrough, surveyedPoint } from '../../../src/survey/path/path.ts';
import { pathByMetre, pointAt } from '../../../src/survey/path/projection.ts';
import { length, minus } from '../../../src/survey/path/vector.ts';
import { AT, pathOf, station } from '../build.ts';

const at = depthFromMetres;

describe('a path', () => {
  test('starts at the collar with the line-up as station 0, marked as set', () => {
    const path = pathOf([0, 90, -60], [30, 90, -60]);
    const [first] = pathByMetre(path, at(30));
    expect(first).toEqual({
      depthMm: 0,
      azimuth: azimuth(90, 'grid'),
      dip: -60,
      offset: { north: 0, east: 0, down: 0 },
      basis: 'set',
    });
  });

  test('takes the direction of the first shot from the collar down when there is no line-up, and says so', () => {
    const path = pathOf([30, 90, -60], [60, 92, -59]);
    expect(path.stations[0]).toMatchObject({ depthMm: 0, basis: 'assumed', dip: -60 });
    expect(pointAt(path, at(30)).offset.down).toBeCloseTo(30 * Math.sin(Math.PI / 3), 9);
  });

  test('lies on the arc between stations, not on the chord', () => {
    const path = pathOf([0, 0, -90], [100, 0, 0]);
    const radius = 100 / (Math.PI / 2);
    const middle = pointAt(path, at(50));
    expect(middle.basis).toBe('on the arc');
    expect(middle.offset.down).toBeCloseTo(radius * Math.sin(Math.PI / 4), 9);
    expect(middle.offset.north).toBeCloseTo(radius * (1 - Math.cos(Math.PI / 4)), 9);
    expect(middle.dip).toBeCloseTo(-45, 9);
  });

  test('has a point at each metre and one at the foot', () => {
    const path = pathOf([0, 90, -60], [30, 91, -59]);
    const points = pathByMetre(path, at(32.4));
    expect(points).toHaveLength(34);
    expect(points[30]?.basis).toBe('measured');
    expect(points[33]).toMatchObject({ depthMm: 32_400, basis: 'projected straight' });
  });

  test('gives the same point one by one and by metre', () => {
    const path = pathOf([0, 90, -60], [18, 92, -59.5], [48, 95, -58], [78, 99, -57.2]);
    for (const point of pathByMetre(path, at(90), 'trend'))
      expect(pointAt(path, point.depthMm, 'trend')).toEqual(point);
  });

  test('is not known above the collar or, as surveyed, below the last shot', () => {
    const path = pathOf([0, 90, -60], [30, 91, -59]);
    expect(surveyedPoint(path, at(30.001))).toBeUndefined();
    expect(surveyedPoint(path, at(-1))).toBeUndefined();
    expect(() => pointAt(path, at(-1))).toThrow(RangeError);
  });
});

describe('below the last shot', () => {
  test('the straight projection keeps the last direction', () => {
    const path = pathOf([0, 90, -60], [30, 90, -60]);
    const below = pointAt(path, at(50));
    expect(below.basis).toBe('projected straight');
    expect(below.offset.east).toBeCloseTo(25, 9);
    expect(below.offset.down).toBeCloseTo(50 * Math.sin(Math.PI / 3), 9);
  });

  test('the trend bends on round the circle of the last 60 m or more', () => {
    const circle = pathOf([0, 0, -90], [30, 0, -81], [60, 0, -72], [90, 0, -63]);
    const onward = pointAt(circle, at(100), 'trend');
    const radius = 90 / ((27 * Math.PI) / 180);
    const angle = 100 / radius;
    expect(onward.basis).toBe('projected on the trend');
    expect(onward.offset.down).toBeCloseTo(radius * Math.sin(angle), 6);
    expect(onward.offset.north).toBeCloseTo(radius * (1 - Math.cos(angle)), 6);
    expect(onward.dip).toBeCloseTo(-60, 6);
  });

  test('a station just 60 m above the last is far enough to read the trend from', () => {
    const path = pathOf([0, 0, -70], [30, 0, -60], [90, 0, -58]);
    expect(pointAt(path, at(120), 'trend').dip).toBeCloseTo(-57, 6);
  });

  test('one leg of noise does not set the trend', () => {
    const path = pathOf([0, 0, -60], [30, 0, -60], [60, 0, -60], [63, 0, -59]);
    const trend = pointAt(path, at(93), 'trend');
    expect(trend.dip).toBeCloseTo(-59 + 30 / 63, 6);
  });

  test('the two projections leave the last shot together', () => {
    const path = pathOf([0, 90, -60], [30, 92, -58], [60, 95, -55]);
    const apart = minus(pointAt(path, at(60.001), 'trend').offset, pointAt(path, at(60.001)).offset);
    expect(length(apart)).toBeLessThan(1e-6);
  });

  test('with the line-up alone both run straight', () => {
    const path = pathOf([0, 90, -60]);
    expect(pointAt(path, at(40), 'trend').offset).toEqual(pointAt(path, at(40)).offset);
  });
});

describe('a path is refused', () => {
  const problem = (...stations: Parameters<typeof pathThrough>[0][number][]) => {
    const built = pathThrough(stations, AT);
    return built.ok ? 'no problem' : built.findings[0]?.problem;
  };

  test('without a direction', () => {
    expect(problem()).toBe('no direction is known');
  });

  test('when a station is not below the one before it', () => {
    expect(problem(station(0, 90, -60), station(30, 90, -60), station(30, 91, -60))).toBe(
      'the station at 30 m is not below the one before it',
    );
  });

  test('when norths are mixed', () => {
    const magnetic = { ...station(30, 90, -60), azimuth: azimuth(90, 'magnetic') };
    expect(problem(station(0, 90, -60), magnetic)).toBe('azimuths of grid and magnetic north are mixed');
  });

  test('when neighbours point opposite ways', () => {
    expect(problem(station(0, 90, 0), station(30, 270, 0))).toBe(
      'two neighbouring stations point opposite ways',
    );
  });
});
