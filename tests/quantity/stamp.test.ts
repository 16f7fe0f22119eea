import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatMinutes,
  instantMs,
  localDate,
  localTime,
  minutesBetween,
  offsetMin,
  parseStamp,
  type Stamp,
  stamp,
} from '../../src/quantity/stamp.ts';

const anInstant = fc.integer({ min: Date.UTC(1970, 0, 1), max: Date.UTC(2199, 0, 1) });
const anOffset = fc.integer({ min: -14 * 60, max: 14 * 60 });

describe('a stamp', () => {
  test('holds the instant, to the second, and the offset it was stamped with', () => {
    fc.assert(
      fc.property(anInstant, anOffset, (ms, offset) => {
        const at = stamp(ms, offset);
        expect(parseStamp(at)).toBe(at);
        expect(instantMs(at)).toBe(Math.floor(ms / 1000) * 1000);
        expect(offsetMin(at)).toBe(offset + 0);
      }),
    );
  });

  test('says what the wall clock said on either side of a time-zone border and of midnight', () => {
    const instant = Date.UTC(2026, 2, 13, 16, 30);
    expect(stamp(instant, 8 * 60)).toBe('2026-03-14T00:30:00+08:00');
    expect(stamp(instant, 9 * 60 + 30)).toBe('2026-03-14T02:00:00+09:30');
    expect(stamp(instant, 0)).toBe('2026-03-13T16:30:00+00:00');
    expect(stamp(instant, -(3 * 60 + 30))).toBe('2026-03-13T13:00:00-03:30');
    expect(localDate(stamp(instant, 480))).toBe('2026-03-14');
    expect(localTime(stamp(instant, 480))).toBe('00:30');
    expect(localTime(stamp(instant, 480), true)).toBe('00:30:00');
  });

  test.each([
    '2026-02-30T00:00:00+08:00',
    '2025-02-29T00:00:00+08:00',
    '2026-03-14T24:00:00+08:00',
    '2026-03-14T25:00:00+08:00',
    '2026-03-14T23:59:60+08:00',
    '2026-13-01T00:00:00+08:00',
    '2026-03-14T07:42:10Z',
    '2026-03-14T07:42:10-00:00',
    '2026-03-14T07:42:10+08:60',
    '2026-03-14T07:42:10+14:01',
    '2026-03-14T07:42+08:00',
    '2026-03-14 07:42:10+08:00',
    '2026-03-14T07:42:10.5+08:00',
    ' 2026-03-14T07:42:10+08:00',
    '',
  ])('is not read from "%s"', (text) => {
    expect(parseStamp(text)).toBeUndefined();
  });

  test('is read on the leap day', () => {
    expect(parseStamp('2028-02-29T00:00:00+14:00')).toBe('2028-02-29T00:00:00+14:00');
  });

  test('is refused outside the years that it can write, and for an offset that no clock has', () => {
    expect(() => stamp(Date.UTC(10_000, 0, 1), 0)).toThrow(RangeError);
    expect(() => stamp(Date.UTC(9999, 11, 31, 23), 120)).toThrow(RangeError);
    expect(() => stamp(-8.64e15, -60)).toThrow(RangeError);
    expect(() => stamp(Number.NaN, 0)).toThrow(RangeError);
    expect(() => stamp(0, 14 * 60 + 1)).toThrow(RangeError);
    expect(() => stamp(0, 1.5)).toThrow(RangeError);
    expect(() => offsetMin('yesterday' as Stamp)).toThrow(RangeError);
  });
});

describe('minutes between two stamps', () => {
  test('do not depend on the offsets they were stamped with', () => {
    fc.assert(
      fc.property(anInstant, fc.nat({ max: 100_000 }), anOffset, anOffset, (ms, minutes, one, other) => {
        const from = stamp(ms, one);
        const to = stamp(ms + minutes * 60_000, other);
        expect(minutesBetween(from, to)).toBe(minutes);
        expect(minutesBetween(to, from)).toBe(0 - minutes);
      }),
    );
  });

  test('are rounded, and never minus zero', () => {
    expect(minutesBetween(stamp(0, 0), stamp(89_000, 0))).toBe(1);
    expect(Object.is(minutesBetween(stamp(20_000, 0), stamp(0, 0)), 0)).toBe(true);
  });

  test.each([
    [0, '0:00'],
    [42, '0:42'],
    [60, '1:00'],
    [754, '12:34'],
    [1.9, '0:01'],
    [-5, '0:00'],
  ])('of %s are printed as %s', (minutes, text) => {
    expect(formatMinutes(minutes)).toBe(text);
  });
});
