import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  conversionFactor,
  conversionWords,
  convertedTo,
  unitInHeading,
} from '../../../src/sampling/laboratory/units.ts';

const UNITS = ['ppb', 'ppm', 'g/t', 'mg/kg', 'µg/g', '%', 'kg/t'] as const;

describe('units of results', () => {
  // By definition of the mass fractions (SI Brochure, 9th edition, 5.4.7: parts per million and percent are ratios of like quantities).
  test.each([
    [5, 'ppb', 'ppm', 0.005],
    [1.25, 'g/t', 'ppm', 1.25],
    [0.12, '%', 'ppm', 1200],
    [2500, 'ppm', '%', 0.25],
    [3, 'kg/t', '%', 0.3],
    [7, 'µg/kg', 'ppb', 7],
    [1.1, 'PPM', 'ppb', 1100],
  ])('%d %s is %d %s', (value, from, to, expected) => {
    expect(convertedTo(value, from, to)).toBe(expected);
  });

  test('a unit that is not a mass fraction is converted into itself and into nothing else', () => {
    expect(convertedTo(3, 'cps', 'cps')).toBe(3);
    expect(convertedTo(3, 'cps', 'ppm')).toBeUndefined();
    expect(conversionFactor('ppm', 'constructor')).toBeUndefined();
  });

  test('there and back again is where it was', () => {
    const unit = fc.constantFrom(...UNITS);
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1e6, noNaN: true }), unit, unit, (value, from, to) => {
        const there = convertedTo(value, from, to) ?? Number.NaN;
        expect(Math.abs((convertedTo(there, to, from) ?? 0) / value - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('a conversion is said with its factor', () => {
    expect(conversionWords('ppb', 'ppm')).toBe('ppb, counted in ppm (÷ 1000)');
    expect(conversionWords('%', 'ppm')).toBe('%, counted in ppm (× 10000)');
    expect(conversionWords('g/t', 'ppm')).toBe('g/t, counted in ppm');
    expect(conversionWords('ppm', 'ppm')).toBe('ppm');
  });

  test.each([
    ['Au_ppb', 'ppb'],
    ['Au (g/t)', 'g/t'],
    ['Fe %', '%'],
    ['Au', undefined],
    ['Appm', undefined],
  ])('the heading %s says %s', (heading, unit) => {
    expect(unitInHeading(heading)).toBe(unit);
  });
});
