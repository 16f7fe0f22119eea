import { describe, expect, test } from 'vitest';
import { metresPerHour, share, spanFigures } from '../../src/shift/span-figures.ts';
import { at, doing, ended, hole, RULES, rod, STARTED } from './build.ts';

const shift = ended(
  doing(
    STARTED,
    ['06:30', { activity: 'drilling', hole: 'ZQRC004' }],
    ['09:00', { activity: 'breakdown', remark: 'hose' }],
    ['09:40', { activity: 'standby', remark: 'no water' }],
    ['10:00', { activity: 'drilling', hole: 'ZQRC004' }],
    ['12:00', { activity: 'breakdown', remark: 'hose' }],
  ),
  '12:30',
);
const holes = [hole('ZQRC004', { rods: [rod('08:00', 18), rod('11:30', 36)] })];

describe('figures over a span of shifts', () => {
  const { byClass, lost, pace } = spanFigures([shift], holes, RULES, at('20:00'));

  test('are minutes by class that make the length of the shifts, what no one recorded among them', () => {
    expect(byClass.reduce((sum, each) => sum + each.minutes, 0)).toBe(390);
    expect(Object.fromEntries(byClass.map(({ charge, minutes }) => [charge, minutes]))).toMatchObject({
      metres: 270,
      'standby hourly': 20,
      'no charge': 70,
      'not recorded': 30,
    });
  });

  test('are time lost by cause, the longest first', () => {
    expect(lost).toEqual([
      { cause: 'Breakdown: hose', minutes: 70 },
      { cause: 'Standby: no water', minutes: 20 },
    ]);
  });

  test('are the pace of each hole in each shift: 36 m in 4:30 is 8.0 m an hour', () => {
    expect(pace).toEqual([{ shift: 'RIG1 2026-03-14 day', hole: 'ZQRC004', mm: 36_000, minutes: 270 }]);
    expect(pace.map(metresPerHour)).toEqual(['8.0']);
    expect(metresPerHour({ shift: '', hole: '', mm: 6000, minutes: 0 })).toBeUndefined();
    expect([share(1, 3), share(0, 0)]).toEqual(['33 %', '0 %']);
  });
});
