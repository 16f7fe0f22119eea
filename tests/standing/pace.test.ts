import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { aboveDepth } from '../../src/standing/above.ts';
import { paceKnown, paceOf } from '../../src/standing/pace.ts';
import { resolveStyle } from '../support/styles.ts';
import { holeWith, rod, row } from './support/hole.ts';

const schema = resolveStyle('orogenic-gold')!;
const plan = { azimuthDeg: 270, azimuthNorth: 'grid', dipDeg: -60, depthMm: 30_000 };
const drilling = { method: 'RC', rig: 'RC7', fromMm: 0, startedAt: '2026-03-14T07:30:00+08:00' };

describe('pace', () => {
  it('is metres over hours between rods, and tells when the planned depth is reached at it', () => {
    const hole = holeWith({
      plan: [plan],
      rods: [rod(1, 6, '08:00:00'), rod(2, 12, '08:30:00'), rod(3, 18, '09:00:00')],
    });
    expect(paceOf(hole)).toEqual({ metresPerHour: 12, plannedReachedAt: '2026-03-14T10:00:00+08:00' });
  });

  it('is not told from one rod, nor where the clock did not move on', () => {
    expect(paceOf(holeWith({ rods: [rod(1, 6)] }))).toBeUndefined();
    expect(paceOf(holeWith({ rods: [rod(1, 6), rod(2, 12)] }))).toBeUndefined();
    expect(paceOf(holeWith({ rods: [rod(1, 6, '09:00:00'), rod(2, 12, '08:00:00')] }))).toBeUndefined();
  });

  it('is taken over the latest five rods', () => {
    const slow = [rod(1, 6, '00:00:00'), rod(2, 12, '05:00:00')];
    const quick = [3, 4, 5, 6, 7].map((count) =>
      rod(count, count * 6, `${String(count + 3).padStart(2, '0')}:00:00`),
    );
    expect(paceOf(holeWith({ rods: [...slow, ...quick] }))?.metresPerHour).toBeCloseTo(6, 9);
  });

  it('was known at each rod, with the hours since drilling began', () => {
    const hole = holeWith({ drilling: [drilling], rods: [rod(2, 12, '08:30:00'), rod(1, 6, '08:00:00')] });
    expect(paceKnown(hole)).toEqual([
      { atMm: 6000, hoursOnHole: 0.5 },
      { atMm: 12_000, metresPerHour: 12, hoursOnHole: 1 },
    ]);
  });
});

describe('what is above a depth', () => {
  const above = (rows: Parameters<typeof holeWith>[0][string], fromMm: number) =>
    aboveDepth(schema, rowsDown(holeWith({ rows })), fromMm);

  it('is nothing below a row without return: it is the row directly above, and the last one seen is kept for the dot', () => {
    const { above: carries, seen, previous } = above([row(0, 1), row(1, 2, { noReturn: true })], 2000);
    expect(carries).toBeUndefined();
    expect(seen).toMatchObject({ fromMm: 0 });
    expect(previous).toMatchObject({ fromMm: 1000, noReturn: true });
  });

  it('counts rows alike in an unbroken run; a gap or another row ends it', () => {
    expect(above([row(0, 1), row(1, 2), row(2, 3)], 3000).repeats).toBe(3);
    expect(above([row(0, 1), row(2, 3)], 3000).repeats).toBe(1);
    expect(above([row(0, 1), row(1, 2, { cells: { rock: { code: 'DOL' } } })], 2000).repeats).toBe(1);
    expect(above([row(0, 1)], 5000).repeats).toBe(0);
    expect(above([], 0)).toEqual({ above: undefined, seen: undefined, previous: undefined, repeats: 0 });
  });
});
