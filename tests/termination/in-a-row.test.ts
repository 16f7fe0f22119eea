import { describe, expect, test } from 'vitest';
import { BARREN, basalt, metresOf, outcome, row, situation, times } from './build.ts';

const tail = (forM: number) => ({ inARow: { where: BARREN, forM } });

describe('so many metres in a row', () => {
  test('are met when the last so many metres of the log all hold', () => {
    const found = outcome(tail(3), situation(metresOf([5, 0, 0, 0])));
    expect(found.state).toBe('met');
    expect(found.progress).toEqual({
      haveMm: 3000,
      needMm: 3000,
      text: 'pyrite < 1 % for 3 of 3 m in a row',
    });
    expect(found.deciding).toEqual([{ fromMm: 1000, toMm: 4000 }]);
    expect(found.sinceMm).toBe(4000);
    expect(found.earliestMm).toBe(4000);
  });

  test('are not met where a metre cuts them off, and say which and what it holds', () => {
    const found = outcome(tail(3), situation(metresOf([0, 0, 2, 0])));
    expect(found.state).toBe('not met');
    expect(found.reason).toBe('pyrite < 1 % for 1 of 3 m in a row: pyrite 2 % at 2–3');
    expect(found.deciding).toEqual([{ fromMm: 2000, toMm: 3000 }]);
    expect(found.earliestMm).toBe(6000);
  });

  test('count by length, not by rows: two composites of 4 m are 8 m', () => {
    const rows = [row(0, 1, 5), row(1, 5, 0), row(5, 9, 0)];
    expect(outcome(tail(8), situation(rows)).state).toBe('met');
    expect(outcome(tail(8.001), situation(rows)).state).toBe('not met');
  });

  test('have been met since the depth at which the last metre needed was there, even inside a composite', () => {
    expect(outcome(tail(6), situation([row(0, 1, 5), row(1, 9, 0)])).sinceMm).toBe(7000);
  });

  test.each([
    ['no return', 'no return at 2–3'],
    ['asked', 'a question is open at 2–3'],
    ['not observed', 'pyrite not observed at 2–3'],
    ['not logged', 'log 2–3'],
  ] as const)('can’t be told where a metre is %s', (said, why) => {
    const found = outcome(tail(3), situation(metresOf([0, 0, said, 0])));
    expect(found.state).toBe('cannot tell');
    expect(found.reason).toBe(`pyrite < 1 % for 1 of 3 m in a row: ${why}`);
    expect(found.deciding).toEqual([{ fromMm: 2000, toMm: 3000 }]);
  });

  test('are not met, whatever a metre in doubt would say, where too few metres stand below one that fails', () => {
    expect(outcome(tail(4), situation(metresOf([0, 2, 'no return', 0]))).state).toBe('not met');
  });

  test('are met below a metre in doubt that is not needed', () => {
    expect(outcome(tail(2), situation(metresOf(['no return', 0, 0]))).state).toBe('met');
  });

  test('count an honest metre without sulphides as barren, and a trace as the schema says', () => {
    expect(outcome(tail(2), situation(metresOf([0, 'trace']))).state).toBe('met');
  });

  test('are counted from the drilled head: metres drilled and not logged can’t be barren, and what it costs is said', () => {
    const found = outcome(tail(3), situation(metresOf([5, 0, 0, 0]), { drilledM: 12 }));
    expect(found).toMatchObject({
      state: 'cannot tell',
      progress: { haveMm: 3000, text: 'pyrite < 1 % for 3 of 3 m in a row to 4 m: log 8 m more' },
      reason: 'pyrite < 1 % for 3 of 3 m in a row to 4 m: log 8 m more',
      deciding: [{ fromMm: 9000, toMm: 12_000 }],
      earliestMm: 12_000,
    });
  });

  test('read rows below a gap: rich rock there ends the run, whatever the gap holds', () => {
    const rows = [...metresOf(times(25, 0)), ...metresOf([4, 5, 5], 27)];
    const found = outcome(tail(20), situation(rows, { loggedM: 25, drilledM: 30 }));
    expect(found).toMatchObject({
      state: 'not met',
      reason: 'pyrite < 1 % for 0 of 20 m in a row: pyrite 5 % at 29–30',
    });
  });

  test('ask for the gap and the metres behind the rig by name, and for nothing that is above the window', () => {
    const rows = [...metresOf(times(20, 0)), ...metresOf(times(5, 0), 22), ...metresOf(times(3, 0), 28)];
    const found = outcome(tail(8), situation(rows, { loggedM: 20, drilledM: 34 }));
    expect(found.reason).toBe('pyrite < 1 % for 3 of 8 m in a row to 31 m: log 27–28 and 3 m more');
  });

  test('don’t reach above the start of the log, where a pre-collar is', () => {
    const header = { logFromMm: 30_000, intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: 0 };
    const at = situation(metresOf([0, 0], 30), { header: header as never });
    expect(outcome(tail(2), at).state).toBe('met');
    expect(outcome(tail(3), at)).toMatchObject({ state: 'not met', progress: { haveMm: 2000 } });
  });

  test('are not met in an empty log', () => {
    expect(outcome(tail(1), situation([]))).toMatchObject({ state: 'not met', earliestMm: 1000 });
  });

  test('name the rock where the condition asks for a code', () => {
    const where = { field: 'rock', is: 'GRN' } as const;
    const found = outcome({ inARow: { where, forM: 1 } }, situation([row(0, 1, basalt(0))]));
    expect(found.reason).toBe('rock is granite for 0 of 1 m in a row: rock basalt at 0–1');
  });
});
