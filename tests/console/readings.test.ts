import { describe, expect, it, vi } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const sit = (): Promise<Sitting> => sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
const HOLE = 'MBRC003';

/** What the rows hold in a column, from the top down, as far as they hold something. */
const held = (sitting: Sitting, field = 'magsus') =>
  rowsDown(sitting.hole(HOLE)).flatMap(([, row]) => {
    const cell = row.cells[field];
    return cell === undefined || ('absent' in cell && cell.absent === 'not observed')
      ? []
      : [[row.fromMm / 1000, cell] as const];
  });
const metreInHand = (sitting: Sitting): string | undefined =>
  sitting
    .screen()
    .find((line) => line.includes('▸'))
    ?.split('▸')[1]
    ?.trim()
    .split(' ')[0];

describe('a column of instrument readings', () => {
  it('is typed down the metres: a number, Enter, the next metre', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    expect(metreInHand(sitting)).toBe('0–1');
    sitting.enter('0.31');
    sitting.enter('12.5');
    expect(metreInHand(sitting)).toBe('2–3');
    expect(held(sitting)).toEqual([
      [0, { number: 0.31 }],
      [1, { number: 12.5 }],
    ]);
    expect(sitting.hole(HOLE).history.at(-1)).toMatchObject({
      what: 'magnetic susceptibility 12.50 1e-3 SI at 1–2',
      by: 'NOK',
    });
  });

  it('has each reading on the disk, with nothing else of its row changed', async () => {
    const sitting = await sit();
    const before = rowsDown(sitting.hole(HOLE))[0]?.[1];
    sitting.enter(';readings');
    sitting.enter('0.31');
    await vi.waitFor(() => expect(sitting.desk.health().unsafeEdits).toBe(0));
    const again = await sitting.reopen();
    expect(rowsDown(again.hole(HOLE))[0]?.[1]).toEqual({
      ...before,
      cells: { ...before?.cells, magsus: { number: 0.31 } },
    });
  });

  it('skips a metre with Enter alone, and goes on below the deepest reading when it is come back to', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.press('enter');
    sitting.enter('0.5');
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('log');
    sitting.enter(';readings');
    expect(metreInHand(sitting)).toBe('2–3');
    expect(held(sitting)).toEqual([[1, { number: 0.5 }]]);
  });

  it('refuses at once what is no reading of it, and keeps what is typed', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    for (const [typed, why] of [
      ['99999', 'it goes from -1 to 5000'],
      ['0.123', 'at most 2 decimals'],
      ['0,3', '0,3 is not a number'],
      ['<0.01', 'below what the instrument can tell'],
      ['none', 'always is something'],
    ] as const) {
      sitting.type(typed);
      expect(sitting.screen().join('\n')).toContain(why);
      sitting.press('enter');
      expect(sitting.state().message).toMatchObject({ tone: 'alert', text: expect.stringContaining(why) });
      expect(sitting.state().screen).toMatchObject({ typed: { text: typed } });
      sitting.press('escape');
    }
    expect(held(sitting)).toEqual([]);
    expect(metreInHand(sitting)).toBe('0–1');
  });

  it('goes back with ↑ and is amended there: history says what it was', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.enter('0.31');
    sitting.press('up');
    expect(metreInHand(sitting)).toBe('0–1');
    sitting.enter('0.13');
    expect(held(sitting)).toEqual([[0, { number: 0.13 }]]);
    expect(sitting.hole(HOLE).history.at(-1)?.what).toBe(
      'magnetic susceptibility 0.13 1e-3 SI at 0–1, was 0.31 1e-3 SI',
    );
    sitting.press('up');
    sitting.enter('nr');
    expect(held(sitting)).toEqual([]);
  });

  it('undoes with ;u where it is, and the metre comes up again', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.enter('0.31');
    sitting.enter('0.42');
    sitting.enter(';u');
    expect(held(sitting)).toEqual([[0, { number: 0.31 }]]);
    expect(metreInHand(sitting)).toBe('1–2');
    sitting.enter(';r');
    expect(held(sitting)).toHaveLength(2);
  });

  it('takes a burst in order; what is behind a refused reading waits and is never laid against its metre', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.burst('0.1\r0.2\r');
    expect(held(sitting)).toHaveLength(2);
    sitting.burst('9999999\r0.4\r');
    expect(held(sitting)).toHaveLength(2);
    expect(metreInHand(sitting)).toBe('2–3');
    sitting.press('ctrl-u');
    sitting.enter('0.3');
    expect(held(sitting)).toEqual([
      [0, { number: 0.1 }],
      [1, { number: 0.2 }],
      [2, { number: 0.3 }],
      [3, { number: 0.4 }],
    ]);
  });

  it('is another one with Tab, or named behind the word', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.press('tab');
    sitting.enter('120');
    expect(held(sitting, 'arsenic')).toEqual([[0, { number: 120 }]]);
    sitting.press('escape');
    sitting.enter(';readings arsenic');
    expect(metreInHand(sitting)).toBe('1–2');
    sitting.press('escape');
    sitting.enter(';readings lithium');
    expect(sitting.state().message?.text).toBe('No column is called lithium: magsus, arsenic.');
  });

  it('says what can hurt who takes it: a portable XRF leaves the ruling to the place and can’t read lithium', async () => {
    const sitting = await sit();
    sitting.enter(';readings arsenic');
    const screen = sitting
      .screen(80, 24)
      .join(' ')
      .replace(/[│\s]+/g, ' ');
    expect(screen).toContain('CAUTION');
    expect(screen).toContain('licence and radiation rules of the place');
    expect(screen).toContain('lithium');
    sitting.press('tab');
    expect(sitting.screen().join('\n')).not.toContain('CAUTION');
  });

  it('passes over metres without return, where nothing came up to be read', async () => {
    const sitting = await sit();
    sitting.enter('nr');
    const last = rowsDown(sitting.hole(HOLE)).at(-1)?.[1];
    sitting.enter(';readings');
    sitting.press(...Array.from({ length: 30 }, () => 'page-down'));
    expect(last?.noReturn).toBe(true);
    expect(metreInHand(sitting)).not.toBe(`${(last?.fromMm ?? 0) / 1000}–${(last?.toMm ?? 0) / 1000}`);
    sitting.enter('0.7');
    expect(held(sitting)).toHaveLength(1);
  });

  it('stays at the last metre, and says so', async () => {
    const sitting = await sit();
    sitting.enter(';readings');
    sitting.press(...Array.from({ length: 30 }, () => 'page-down'), 'enter');
    expect(sitting.state().message?.text).toMatch(/last logged metre/);
  });

  it('fits 80×24 with the keys at the foot', async () => {
    const sitting = await sit();
    sitting.enter(';readings arsenic');
    const screen = sitting.screen(80, 24);
    expect(screen).toHaveLength(23);
    expect(screen.at(-1)).toMatch(/Enter take.*Tab next column.*Esc log/);
  });
});
