import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type ShiftSettings, shiftSettings } from '../../src/shift/settings.ts';
import { activityNamed, resolveShiftRules } from '../../src/shift/shift-rules.ts';
import { RULES, SETTINGS, withContract } from './build.ts';

const faults = (settings: ShiftSettings): readonly string[] => {
  const resolved = resolveShiftRules(settings);
  return resolved.ok ? [] : resolved.findings.map((finding) => `${finding.place.field}: ${finding.problem}`);
};
const withActivities = (...activities: ShiftSettings['activities']): ShiftSettings => ({
  ...SETTINGS,
  activities: [...SETTINGS.activities, ...activities],
});
const spare = { code: 'spare', label: 'Spare', charge: 'no charge', key: 'x' } as const;

describe('the shift part of project.json', () => {
  test('comes out in minutes of the day and millimetres, a night past midnight as one stretch', () => {
    expect(RULES.shifts).toEqual([
      { name: 'day', fromMin: 360, toMin: 1080 },
      { name: 'night', fromMin: 1080, toMin: 1800 },
    ]);
    expect(RULES.contract.metreRates).toEqual([
      { fromMm: 0, toMm: 50_000, centsPerM: 8000 },
      { fromMm: 50_000, toMm: 100_000, centsPerM: 9550 },
      { fromMm: 100_000, centsPerM: 11_025 },
    ]);
    expect(RULES.tolerances).toEqual({ minutes: 15, metresMm: 500, shots: 0, consumables: 0, cents: 100 });
    expect(activityNamed(RULES, 'standby')?.charge).toBe('standby hourly');
    expect(activityNamed(RULES, 'lunch')).toBeUndefined();
  });

  test('may have one shift of twenty-four hours', () => {
    const one = { ...SETTINGS, shifts: [{ name: 'day', startsAt: '06:00', endsAt: '06:00' } as const] };
    const resolved = resolveShiftRules(one);
    expect(resolved.ok && resolved.value.shifts).toEqual([{ name: 'day', fromMin: 360, toMin: 1800 }]);
  });

  test.each<[string, ShiftSettings, string]>([
    [
      'two activities on one key',
      withActivities({ ...spare, key: 'd' }),
      'shift.activities: two have the key d',
    ],
    [
      'two activities of one code',
      withActivities({ ...spare, code: 'move' }),
      'shift.activities: two have the code move',
    ],
    [
      'two shifts of one name',
      { ...SETTINGS, shifts: SETTINGS.shifts.map((each) => ({ ...each, name: 'day' as const })) },
      'shift.shifts: two shifts are called day',
    ],
    [
      'a night that ends after the day has started',
      {
        ...SETTINGS,
        shifts: [...SETTINGS.shifts.slice(0, 1), { name: 'night', startsAt: '18:00', endsAt: '06:01' }],
      },
      'shift.shifts: the two shifts overlap',
    ],
    [
      'a day within the night',
      {
        ...SETTINGS,
        shifts: [{ name: 'day', startsAt: '20:00', endsAt: '23:00' }, ...SETTINGS.shifts.slice(1)],
      },
      'shift.shifts: the two shifts overlap',
    ],
    [
      'a last band with a foot',
      withContract({ metreRates: [{ toM: 50, centsPerM: 8000 }] }),
      'shift.contract.metreRates: the last band has a bottom, so deeper metres have no rate',
    ],
    [
      'bands out of order',
      withContract({ metreRates: [{ toM: 50, centsPerM: 1 }, { toM: 40, centsPerM: 1 }, { centsPerM: 1 }] }),
      'shift.contract.metreRates: the bands are not in order from the top down',
    ],
    [
      'a band without length',
      withContract({
        metreRates: [{ toM: 50, centsPerM: 1 }, { toM: 50, centsPerM: 1 }, { centsPerM: 1 }],
      }),
      'shift.contract.metreRates: the bands are not in order from the top down',
    ],
    [
      'a band in the middle without a foot',
      withContract({ metreRates: [{ centsPerM: 1 }, { centsPerM: 1 }] }),
      'shift.contract.metreRates: the bands are not in order from the top down',
    ],
    [
      'a lump sum for what is no lump',
      withContract({
        lumpSums: [
          { activity: 'move', cents: 1 },
          { activity: 'reaming', cents: 1 },
        ],
      }),
      'shift.contract.lumpSums: reaming is not an activity charged as a lump sum',
    ],
    [
      'a lump without a sum',
      withContract({ lumpSums: [] }),
      'shift.contract.lumpSums: move is charged as a lump sum, but none is given',
    ],
    [
      'free time on what is not paid by the hour',
      withContract({ freeTime: [{ activity: 'move', freeMinutes: 30 }] }),
      'shift.contract.freeTime: move is not an activity charged by the hour',
    ],
    [
      'an hourly rate for what is paid by the metre',
      withContract({ hourlyRates: [{ activity: 'drilling', centsPerHour: 1 }] }),
      'shift.contract.hourlyRates: drilling is not an activity charged by the hour',
    ],
    [
      'two hourly rates for one activity',
      withContract({ hourlyRates: [1, 2].map((centsPerHour) => ({ activity: 'travel', centsPerHour })) }),
      'shift.contract.hourlyRates: two have the activity travel',
    ],
    [
      'a consumable priced twice',
      withContract({ consumables: [0, 1].map(() => ({ item: 'bit', costCents: 1, plusPercent: 0 })) }),
      'shift.contract.consumables: two have the item bit',
    ],
  ])('with %s is refused', (_what, settings, fault) => {
    expect(faults(SETTINGS)).toEqual([]);
    expect(faults(settings)).toEqual([fault]);
  });

  test('names every fault at once', () => {
    expect(
      faults({
        ...withContract({ lumpSums: [] }),
        activities: withActivities({ ...spare, key: 'd' }).activities,
      }),
    ).toHaveLength(2);
  });

  test('has a JSON Schema that an independent validator takes the same settings by', () => {
    const validate = new Ajv2020({ strict: false }).compile(z.toJSONSchema(shiftSettings));
    expect(validate(SETTINGS)).toBe(true);
    expect(validate({ ...SETTINGS, surprise: 1 })).toBe(false);
    expect(validate(withContract({ activeHourlyCents: 0.5 }))).toBe(false);
    expect(validate({ ...SETTINGS, shifts: [{ name: 'day', startsAt: '24:00', endsAt: '06:00' }] })).toBe(
      false,
    );
  });
});

describe('what the JSON Schema of the shift settings can not say', () => {
  test.each([
    ['shifts', 'two may touch, not overlap'],
    ['activities', 'each code and key once'],
    ['contract.metreRates', 'each band starts where the one above ends, the last one has no bottom'],
    ['contract.lumpSums', 'each such activity has one'],
    ['contract.freeTime', 'each once'],
    ['contract.hourlyRates', 'each once'],
    ['contract.consumables', 'each item once'],
  ])('of %s its description says: %s', (path, words) => {
    let schema = z.toJSONSchema(shiftSettings);
    for (const part of path.split('.')) schema = schema.properties?.[part] as typeof schema;
    expect(schema.description).toContain(words);
  });
});
