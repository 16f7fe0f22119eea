import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it, vi } from 'vitest';
import { enter } from '../../../src/commands/enter.ts';
import { copyOfSample, hear } from '../support/outside.ts';

const HOLE = 'MBRC003';

async function pipe(lines: readonly string[], keepGoing = false, folder = copyOfSample(), by?: string) {
  const heard = hear(lines.join('\n'));
  const code = await enter(heard.outside, { folder, hole: HOLE, keepGoing, by });
  const tables = JSON.parse(readFileSync(join(folder, `holes/${HOLE}.json`), 'utf8')).tables;
  return { code, out: heard.out(), err: heard.err(), folder, tables };
}

/** What the row that starts at a depth says. */
function rowAt(tables: { rows: Record<string, { fromMm: number }> }, metres: number) {
  return Object.values(tables.rows).find((row) => row.fromMm === metres * 1000);
}

describe('lines from a pipe', () => {
  it('log rows from the logged head, with comments and blank lines passed over', async () => {
    const { code, out, tables } = await pipe(['# from the field book', '', 'p1/tray 3', '.', '  # done']);
    expect(code).toBe(0);
    expect(out).toBe('3: 46–47\n4: 47–48\n');
    expect(rowAt(tables, 46)).toMatchObject({
      remark: 'tray 3',
      cells: { sulphides: { percents: { PYR: 1 } } },
    });
    expect(rowAt(tables, 47)).toMatchObject({ repeat: true });
  });

  it('of another encoding are refused where they are, and nothing is logged with its letters lost', async () => {
    const heard = hear('');
    const folder = copyOfSample();
    const latin = Buffer.from('p3/plain\np2/caf\xe9\n', 'latin1');
    const code = await enter(
      { ...heard.outside, stdin: Readable.from([latin]) as never },
      { folder, hole: HOLE, keepGoing: false },
    );
    expect([code, heard.out()]).toEqual([1, '1: 46–47\n']);
    expect(heard.err()).toContain('line:2:7, MBRC003: it holds bytes that are no text in UTF-8');
  });

  it('that never came are said: an empty file or a folder is not a shift logged', async () => {
    const { code, err } = await pipe([]);
    expect(code).toBe(1);
    expect(err).toContain('no line came: nothing was logged');
  });

  it('record rods, the sample stream, shots and bags, by the time and the person of the pipe', async () => {
    const { code, out, tables } = await pipe([
      ';moist',
      ';rod 508 x7',
      ';shot 60 -59.5 271.2',
      ';spoiled MB000510 torn',
    ]);
    expect([code, out]).toEqual([
      0,
      '1: moist at 54–60\n2: rod 10 done at 60 m\n3: shot at 60 m\n4: bag MB000510 spoiled: torn\n',
    ]);
    expect(Object.values(tables.rods).at(-1)).toMatchObject({
      depthMm: 60_000,
      at: '2026-03-14T09:30:00+08:00',
    });
    expect(Object.values(tables.shots).at(-1)).toMatchObject({ depthMm: 60_000, by: 'NOK' });
  });

  it('want the first row after a handover said in full, also behind a metre without return', async () => {
    const short = await pipe(['.'], false, copyOfSample(), 'JPE');
    expect(short.code).toBe(1);
    expect(short.err).toContain('The first row after NOK is logged in full: nothing carries');
    const empty = await pipe(['nr', 'p3'], false, short.folder, 'JPE');
    expect(empty.out).toMatch(/^1: CAUTION no return: .* 46–47\n$/);
    expect(empty.err).toContain('No row above carries pyrite into this one');
    const full = await pipe(['bawx1ox1py2', 'p3'], false, short.folder, 'JPE');
    expect([full.code, full.out]).toEqual([0, '1: 47–48\n2: 48–49\n']);
    expect(rowAt(full.tables, 47)).not.toHaveProperty('carried');
  });

  it('stop at the first line that is not taken, with its number, the place in it and what to do', async () => {
    const { code, out, err, tables } = await pipe(['p1', 'p1 zz', '.']);
    expect(code).toBe(1);
    expect(out).toBe('1: 46–47\n');
    expect(err).toContain('line:2:4, MBRC003: zz is unknown\n  | p1 zz\n');
    expect(rowAt(tables, 47)).toBeUndefined();
  });

  it('go on behind it when told to, and report them all', async () => {
    const { code, err, tables } = await pipe(['zz', 'p1', ';nosuch', '.'], true);
    expect(code).toBe(1);
    expect(err).toContain('line:1:1');
    expect(err).toContain('line:3:2');
    expect(rowAt(tables, 47)).toBeDefined();
  });

  it('save a line that would be asked about marked, report it, and go on', async () => {
    const { code, out, err, tables } = await pipe(['p20', 'p15']);
    expect(code).toBe(1);
    expect(out).toContain('1: 46–47 saved, marked ?');
    expect(err).toContain('pyrite goes from 2 % to 20 % in one row');
    expect(rowAt(tables, 46)).toMatchObject({ asked: expect.any(Array) });
    expect(rowAt(tables, 47)).toBeDefined();
  });

  it('take = at the end as having been asked', async () => {
    const { code, tables } = await pipe(['p20=']);
    expect(code).toBe(0);
    expect(rowAt(tables, 46)).not.toHaveProperty('asked');
  });

  it('settle the oldest marked row by = alone', async () => {
    const { tables } = await pipe(['p20', '=']);
    expect(rowAt(tables, 46)).not.toHaveProperty('asked');
  });

  it('change several rows only with = in the place of the preview, which is said', async () => {
    const shown = await pipe([';44-46 vn3']);
    expect(shown.code).toBe(1);
    expect(shown.err).toContain('it changes several rows and no one sees its preview');
    const done = await pipe([';44-46 vn3 ='], false, shown.folder);
    expect(done.code).toBe(0);
    expect(rowAt(done.tables, 45)).toMatchObject({ cells: { veins: { percent: 3 } } });
  });

  it('undo what this pipe did, and nothing before it', async () => {
    const { code, out, err, tables } = await pipe(['p1', ';u', ';u']);
    expect(out).toContain('2: undone: ');
    expect([code, err]).toEqual([1, expect.stringContaining('line:3')]);
    expect(rowAt(tables, 46)).toBeUndefined();
    expect(rowAt(tables, 45)).toBeDefined();
  });

  it('refuse a rod whose bags don’t match, with the mismatch named, and record it noted when told to go on', async () => {
    const strict = await pipe([';rod 999']);
    expect(strict.code).toBe(1);
    expect(strict.err).toContain('the bags don’t match: MB000508 is expected last');
    expect(Object.keys(strict.tables.rods)).toHaveLength(9);
    const noted = await pipe([';rod 999'], true, strict.folder);
    expect(noted.code).toBe(1);
    expect(Object.values(noted.tables.rods).at(-1)).toMatchObject({
      lastBag: '999',
      mismatch: expect.any(String),
    });
  });

  it('answer the look that a mismatch asks for, and mend it as is chosen', async () => {
    const asked = await pipe([';rod 509 x7']);
    expect(asked.code).toBe(1);
    expect(asked.err).toContain('To be sure: ');
    const chosen = await pipe([';rod 509 x7 first502 fix:skipped:2'], false, asked.folder);
    expect(chosen.err).toBe('');
    expect(chosen.out).toContain(
      '1: rod 10 done at 60 m, fixed as a number skipped: MB000504 is spoiled; MB000505–506 hold 56–58; ',
    );
    expect(Object.values(chosen.tables.rods).at(-1)).toMatchObject({
      lastBag: 'MB000509',
      mismatch: 'skipped',
    });
  });

  it('mend a mismatch that was noted before', async () => {
    const noted = await pipe([';rod 509 x7'], true);
    const asked = await pipe([';fix'], false, noted.folder);
    expect(asked.err).toContain('rod 10: the bags don’t match');
    const mended = await pipe([';fix fix:skipped'], false, noted.folder);
    expect(mended.err).toBe('');
    expect(mended.out).toContain('1: rod 10 afterwards fixed as a number skipped: MB000502 is spoiled; ');
    expect(Object.values(mended.tables.rods).at(-1)).not.toHaveProperty('unmended');
    const nothing = await pipe([';fix'], false, noted.folder);
    expect(nothing.err).toContain('no bag mismatch is open');
  });

  it('hold a bag against where it lies', async () => {
    const { code, out, err } = await pipe([';scan 53 MB000501', ';scan 50 501']);
    expect(out).toMatch(/^1: MB000501 is the .*, and is where it belongs\n/);
    expect([code, err]).toEqual([1, expect.stringContaining('line:2')]);
  });

  it('leave at ;q', async () => {
    const { code, tables } = await pipe(['p1', ';q', '.']);
    expect(code).toBe(0);
    expect(rowAt(tables, 47)).toBeUndefined();
  });

  it('look a bag up, and refuse one that is not of this hole', async () => {
    const known = await pipe(['MB000441']);
    expect([known.code, known.out]).toEqual([0, '1: MB000441 is the primary 0–1\n']);
    const foreign = await pipe(['MB000121']);
    expect([foreign.code, foreign.err]).toEqual([1, expect.stringContaining('labelled for MBRC001')]);
  });

  it('start drilling a planned hole where a rig is named, and then take its rods', async () => {
    const folder = copyOfSample();
    const lines = ';numbered MB000701 MB000760\n;rod\nstwx6ox3tnrd\n';
    const asked = { folder, hole: 'MBRC004', keepGoing: false };
    const unstarted = hear(lines);
    expect(await enter(unstarted.outside, asked)).toBe(1);
    expect(unstarted.err()).toContain('line:2, MBRC004: the hole is planned');
    const started = hear(lines.split('\n').slice(1).join('\n'));
    expect(await enter(started.outside, { ...asked, rig: 'rc7' })).toBe(0);
    expect(started.out()).toBe(
      'drilling from 0 m with RC7; Drilling on MBRC003 ended at 09:30 in the shift record\nNOT LINED UP, cautions not read: Ctrl-Y (offsider line-up).\nOld pits west of the pads: stay behind the bunting.\n1: rod 1 done at 6 m\n2: 0–1\n',
    );
    const unknown = hear();
    expect(await enter(unknown.outside, { ...asked, rig: 'RC9' })).toBe(2);
    expect(unknown.err()).toContain('no rig is called RC9');
  });

  it('take a bag out of use that was filled already: its number is spoiled, its metre stays on record', async () => {
    const { code, out, tables } = await pipe([';spoiled MB000442 torn on the ute']);
    expect([code, out]).toEqual([0, '1: bag MB000442 spoiled: torn on the ute\n']);
    const bag = Object.values(tables.bags as Record<string, { number: string }>).find(
      (each) => each.number === 'MB000442',
    );
    expect(bag).toMatchObject({ kind: 'spoiled', reason: 'torn on the ute', fromMm: 1000, toMm: 2000 });
  });
});

it('a file that another program writes while lines come in is taken in, and said beside the answer', async () => {
  const folder = copyOfSample();
  const path = join(folder, `holes/${HOLE}.json`);
  const heard = hear();
  async function* lines() {
    yield 'p1\n';
    await vi.waitFor(() => expect(heard.out()).toContain('46–47'));
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.replace('"state": "drilling"', '"state": "suspended"'));
    yield '.\n';
  }
  const outside = { ...heard.outside, stdin: Readable.from(lines()) as unknown as NodeJS.ReadStream };
  const code = await enter(outside, { folder, hole: HOLE, keepGoing: false });
  expect([code, heard.out()]).toEqual([0, '1: 46–47\n2: 47–48\n']);
  expect(heard.err()).toContain(
    'MBRC003: another program wrote this file while the project was open; the change was taken in',
  );
  const { tables } = JSON.parse(readFileSync(path, 'utf8'));
  expect(tables.hole.hole.state).toBe('suspended');
  expect(rowAt(tables, 47)).toMatchObject({ repeat: true });
});

describe('a danger or a loss that the pipe comes to', () => {
  it('says a void that the rods come near, as the pane beside the log does', async () => {
    const { out } = await pipe([';expect old stope 72-76 void', ';rod', ';rod']);
    const first = out.slice(out.indexOf('2: '), out.indexOf('3: '));
    expect(first).toContain('VOID (old stope): the bit may drop from 72 m');
    expect(first).toContain('The rod in hand ends at 66 m');
  });

  it('names the metres that no label is left for, at the rod', async () => {
    const { out } = await pipe(Array.from({ length: 17 }, () => ';rod'));
    expect(out).toMatch(/rod 2\d done at \d+ m[^\n]*; \d+–\d+ has no bag: no numbered one is left/);
    expect(out.split('\n')[0]).not.toContain('has no bag');
  });

  it('keeps what may be carried to the metre that was seen: below a void the line is refused with why', async () => {
    const { err, out } = await pipe(['vr', 'nr', 'cl2']);
    expect(out).toContain('CAUTION no return right below it, so it may go on.');
    expect(err).toContain('Log the row below no return in full: nothing carries across it');
  });
});
