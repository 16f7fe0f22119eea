import { expect, test } from 'vitest';
import { expectedMass } from '../../src/sampling/recovery/recovery.ts';

// π/4·d²·L·ρ for the bit sizes of ISO 22475-1 Table C.19, a metre of hole, computed outside the project to the gram.
test.each([
  [114.3, 1.8, 18.469],
  [114.3, 2.7, 27.704],
  [120.65, 2.4, 27.438],
  [127, 2.65, 33.569],
  [130.175, 2.0, 26.618],
  [133.35, 2.9, 40.502],
  [139.7, 2.7, 41.385],
  [139.7, 3.3, 50.582],
  [142.875, 2.7, 43.288],
  [149.225, 2.65, 46.347],
  [152.4, 3.3, 60.197],
])('a metre of a %d mm hole in %d g/cm³ holds %d kg', (bitMm, density, kg) => {
  expect(Math.abs(expectedMass(bitMm, 1000, density) / 1000 - kg)).toBeLessThanOrEqual(0.001);
});

test('a bit worn from 143 to 137 mm drills 8 % less rock', () => {
  expect(1 - expectedMass(137, 1000, 2.7) / expectedMass(143, 1000, 2.7)).toBeCloseTo(0.082, 3);
});
