import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { azimuth } from '../../../src/quantity/azimuth.ts';
import { dip } from '../../../src/quantity/dip.ts';
import { angleBetweenDeg, type Direction, degrees, directionOf } from '../../../src/survey/direction.ts';
import {
  alongArc,
  arcBetween,
  displacement,
  ratioFactor,
} from '../../../src/survey/path/minimum-curvature.ts';
import { length, minus, plus, times, type Vector } from '../../../src/survey/path/vector.ts';
import { pointing } from '../build.ts';

const direction = fc
  .record({
    bearing: fc.double({ min: 0, max: 360, noNaN: true, maxExcluded: true }),
    dipDeg: fc.double({ min: -90, max: 30, noNaN: true }),
  })
  .map(({ bearing, dipDeg }): Direction => ({ azimuth: azimuth(bearing, 'grid'), dip: dip(dipDeg) }));
const lengthM = fc.double({ min: 0.1, max: 500, noNaN: true });
const bent = fc
  .record({ from: direction, to: direction, lengthM })
  .filter(({ from, to }) => angleBetweenDeg(from, to) < 150);

const near = (a: Vector, b: Vector, within: number) => expect(length(minus(a, b))).toBeLessThan(within);

/** A quarter of a turn about the vertical. */
const turned = (d: Direction): Direction => ({ ...d, azimuth: azimuth(d.azimuth.deg + 90, 'grid') });

describe('laws of minimum curvature', () => {
  test('splitting a leg on its arc changes nothing', () => {
    fc.assert(
      fc.property(bent, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ({ from, to, lengthM }, part) => {
        const whole = arcBetween(from, to, lengthM);
        const middle = directionOf(alongArc(whole, part * lengthM).tangent, 'grid');
        const upper = displacement(arcBetween(from, middle, part * lengthM));
        const lower = displacement(arcBetween(middle, to, (1 - part) * lengthM));
        near(plus(upper, lower), displacement(whole), 1e-6);
      }),
    );
  });

  test('a straight leg is straight and as long as it says', () => {
    fc.assert(
      fc.property(direction, lengthM, (one, metres) => {
        const moved = displacement(arcBetween(one, one, metres));
        expect(length(moved)).toBeCloseTo(metres, 9);
        near(times(moved, 0.5), alongArc(arcBetween(one, one, metres), metres / 2).offset, 1e-9);
      }),
    );
  });

  test('out along an arc and back along it returns to the start', () => {
    const back = (d: Direction): Direction => ({
      azimuth: azimuth(d.azimuth.deg + 180, 'grid'),
      dip: dip(-d.dip),
    });
    fc.assert(
      fc.property(bent, ({ from, to, lengthM }) => {
        const out = displacement(arcBetween(from, to, lengthM));
        const home = displacement(arcBetween(back(to), back(from), lengthM));
        near(plus(out, home), { north: 0, east: 0, down: 0 }, 1e-9);
      }),
    );
  });

  test('turning both directions turns the displacement and nothing else', () => {
    fc.assert(
      fc.property(bent, ({ from, to, lengthM }) => {
        const plain = displacement(arcBetween(from, to, lengthM));
        const spun = displacement(arcBetween(turned(from), turned(to), lengthM));
        near(spun, { north: -plain.east, east: plain.north, down: plain.down }, 1e-9);
      }),
    );
  });

  test('the end of the arc is where the displacement says, and points the way the second station does', () => {
    fc.assert(
      fc.property(bent, ({ from, to, lengthM }) => {
        const arc = arcBetween(from, to, lengthM);
        const foot = alongArc(arc, lengthM);
        near(foot.offset, displacement(arc), 1e-6);
        near(foot.tangent, arc.end, 1e-7);
      }),
    );
  });

  test('a chord is never longer than its arc', () => {
    fc.assert(
      fc.property(bent, ({ from, to, lengthM }) => {
        expect(length(displacement(arcBetween(from, to, lengthM)))).toBeLessThanOrEqual(
          lengthM * (1 + 1e-12),
        );
      }),
    );
  });
});

describe('small angles', () => {
  test('the series meets the closed form where one gives way to the other', () => {
    const below = ratioFactor(1e-3 * (1 - 1e-12));
    const above = ratioFactor(1e-3 * (1 + 1e-12));
    expect(Math.abs(below - above)).toBeLessThan(1e-15);
    expect(ratioFactor(0)).toBe(1);
  });

  test('an angle of a ten-millionth of a degree is not lost', () => {
    const arc = arcBetween(pointing(10, -30), pointing(10, -29.9999999), 30);
    expect(degrees(arc.betaRad)).toBeCloseTo(1e-7, 13);
  });
});
