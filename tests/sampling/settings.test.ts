import { describe, expect, test } from 'vitest';
import { resolveSampling } from '../../src/sampling/sampling.ts';
import { samplingSettings } from '../../src/sampling/settings.ts';
import { SETTINGS, sampling } from './build.ts';

const refusedPaths = (changed: object): readonly string[] => {
  const read = samplingSettings.safeParse({ ...SETTINGS, ...changed });
  return read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'));
};

test('the settings of a project read as they were written', () => {
  expect(samplingSettings.parse(SETTINGS)).toEqual(SETTINGS);
});

test('metres and kilograms become whole millimetres and grams, once', () => {
  const resolved = sampling({
    sampled: { rank: 'composite', lengthM: 4 },
    split: { targetKg: 2.5, tolerancePercent: 30 },
    trays: { compartments: 20, metresPerCompartment: 0.5 },
  });
  expect(resolved).toMatchObject({
    rank: 'composite',
    lengthMm: 4000,
    splitTargetG: 2500,
    tray: { compartments: 20, compartmentMm: 500 },
  });
});

test('a slot is read with its kind, or its usual kind and the kinds it can be', () => {
  expect(sampling().slots).toEqual([
    { every: 40, at: 0, kind: 'standard', oneOf: [] },
    { every: 40, at: 13, kind: 'field duplicate', oneOf: [] },
    { every: 40, at: 27, kind: 'blank', oneOf: ['blank', 'standard'] },
  ]);
});

describe('what is refused when the file is read', () => {
  test.each<[string, object, string]>([
    ['a member that is not known', { sacks: 5 }, ''],
    ['a prefix in lower case', { numbers: { ...SETTINGS.numbers, prefixes: ['zq'] } }, 'numbers.prefixes.0'],
    ['a target split in grams', { split: { targetKg: 3000, tolerancePercent: 30 } }, 'split.targetKg'],
    ['a sample of no length', { sampled: { rank: 'metre', lengthM: 0 } }, 'sampled.lengthM'],
    ['a sack for no bags', { sackBags: 0 }, 'sackBags'],
  ])('%s', (_, changed, path) => {
    expect(refusedPaths(changed)).toEqual([path]);
  });
});

test("a block whose numbers have not the project's form is refused with the number", () => {
  const blocks = [{ rig: 'Rig 1', first: 'ZQ000001', last: 'ZQ99999' }];
  const resolved = resolveSampling({ ...SETTINGS, numbers: { ...SETTINGS.numbers, blocks } });
  expect(resolved.ok ? [] : resolved.findings).toMatchObject([
    { code: 'bag-number-not-ours', excerpt: 'ZQ99999', remedy: 'Write ZQ and 6 digits.' },
  ]);
});
