import { expect, test } from 'vitest';
import { PUBLISHED_LOWEST, ratesOf } from '../../src/sampling/scheme/rates.ts';
import { checkScheme } from '../../src/sampling/scheme/scheme-check.ts';
import { withSlots } from '../sampling/build.ts';

// Abzalov 2008, Exploration and Mining Geology 17, 131–144, abstract: field duplicates 5–10 %, standards 3–5 % of a batch,
// blanks included. Simón, Control Sample Insertion Rate: Is There an Industry Standard?, abstract: all controls near 20 %.
test('the lowest rates published are those that the check holds a scheme against', () => {
  expect(PUBLISHED_LOWEST).toEqual({ 'field duplicate': 5, 'standard and blank': 3 });
});

test('a scheme within the published ranges is not remarked on, one below them is', () => {
  const within = withSlots([
    { every: 20, at: 0, kind: 'field duplicate' },
    { every: 30, at: 5, kind: 'standard' },
    { every: 30, at: 15, kind: 'blank' },
  ]);
  expect(ratesOf(within)['field duplicate']).toBeGreaterThanOrEqual(5);
  expect(checkScheme(within)).toEqual([]);
  const below = withSlots([{ every: 50, at: 0, kind: 'field duplicate' }]);
  expect(checkScheme(below).map((each) => each.code)).toEqual(['scheme-rate-unusual', 'scheme-rate-unusual']);
});
