import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { copyOfSample, hear } from './support/outside.ts';

const ID = 'RC7_2026-03-13_DAY';
async function run(folder: string, args: readonly string[], stdin = '') {
  const heard = hear(stdin);
  const code = await runCommandLine([...args, '--project', folder], {
    outside: heard.outside,
    openConsole: async () => 0,
  });
  return { code, out: heard.out(), err: heard.err() };
}

describe('offsider plod', () => {
  it('records a sheet from a pipe, lists it, answers a query and signs, all by command', async () => {
    const folder = copyOfSample();
    const made = await run(
      folder,
      ['plod', 'new', '0413', '--shift', ID],
      '# by hand\n05:32-06:00 p\n-17:40 s\n',
    );
    expect([made.code, made.out]).toEqual([0, `${ID}: plod 0413 recorded, 2 lines\n`]);
    expect((await run(folder, ['plod'])).out).toMatch(/RC7_2026-03-13_DAY +0413 .* 12:08 /);
    const agreed = await run(folder, ['plod', 'agree', '10:45', 'he', 'was', 'there', '--shift', ID]);
    expect([agreed.code, agreed.out]).toEqual([0, expect.stringContaining('query 10:45 agreed')]);
    const signed = await run(folder, ['plod', 'sign', '0413', '--shift', ID]);
    expect([signed.code, signed.out]).toEqual([
      0,
      expect.stringMatching(/plod 0413 signed by \w+ with \d+ open queries/),
    ]);
    const again = await run(folder, ['plod', 'new', '0414', '--shift', ID], '1h s\n');
    expect([again.code, again.err]).toEqual([
      1,
      expect.stringContaining('sheet 0413 is recorded for it already, and signed'),
    ]);
  });

  it('is signed for us by a geologist or the camp, for the driller by the driller, and once only while nothing changed', async () => {
    const folder = copyOfSample();
    await run(folder, ['plod', 'new', '0413', '--shift', ID], '05:32-06:00 p\n-17:40 s\n');
    const sign = (by: string) => run(folder, ['plod', 'sign', '0413', '--by', by, '--shift', ID]);
    expect((await sign('MTA')).out).toContain('signed by MTA, the driller, with');
    expect((await run(folder, ['plod', 'new', '0414', '--shift', ID], '1h s\n')).err).not.toContain(
      'and signed',
    );
    for (const by of ['DRA', 'JPE']) {
      const refused = await sign(by);
      expect([refused.code, refused.err]).toEqual([
        1,
        expect.stringContaining('A geologist or the camp signs for us: NOK, IFA'),
      ]);
    }
    expect((await sign('NOK')).code).toBe(0);
    const again = await sign('NOK');
    expect([again.code, again.err]).toEqual([
      1,
      expect.stringContaining('no time or figure has changed since'),
    ]);
    expect((await run(folder, ['plod'])).out).toMatch(/0413 .* MTA for the driller, NOK$/m);
  });

  it('has a line put right that was taken down wrong, times from the line above too', async () => {
    const folder = copyOfSample();
    await run(folder, ['plod', 'new', '0413', '--shift', ID], '05:32-06:00 p\n-17:40 s\n');
    const made = await run(folder, ['plod', 'line', '1', '-05:50', 'p', '--shift', ID]);
    expect([made.code, made.out]).toEqual([
      0,
      `${ID}: plod 0413, line 1 corrected: 05:32–05:50  0:18  prestart; it was 05:32–06:00  0:28  prestart\n`,
    ]);
  });

  it('compares nothing with a plod that has not come, though the contract pays a minimum', async () => {
    const folder = copyOfSample();
    const file = join(folder, 'project.json');
    const settings = JSON.parse(readFileSync(file, 'utf8'));
    Object.assign(settings.shift.contract, { minimumShiftCents: 90_000_000, taxPercent: 10 });
    writeFileSync(file, JSON.stringify(settings));
    const span = ['plod', '--reconcile', '2026-03-13', '--json'];
    const { shifts, invoice, total } = JSON.parse((await run(folder, span)).out);
    expect(shifts).toMatchObject([{ plods: [], queries: [] }]);
    expect(shifts[0].plodCents).toBeUndefined();
    expect(total).toEqual({ own: 99_000_000, ownWithPlod: 0, plod: 0 });
    expect(invoice.reduce((sum: number, line: { own: number }) => sum + line.own, 0)).toBe(total.own);
    const text = (await run(folder, span.slice(0, 3))).out;
    expect(text).toMatch(/^total +990,000\.00 +0\.00 +0\.00 *$/m);
    const shift = (await run(folder, ['shift', '2026-03-13'])).out;
    expect(shift).toContain('no plod yet');
    expect(shift).not.toContain('QUERY');
  });

  it('records nothing where a line can not be taken, and names each', async () => {
    const folder = copyOfSample();
    const { code, err } = await run(
      folder,
      ['plod', 'new', '0413', '--shift', ID],
      '05:32-06:00 p\n05:50-17:40 s\nlunch\n',
    );
    expect(code).toBe(1);
    expect(err).toContain('line 2: it overlaps line 1');
    expect(err).toContain('line 3: lunch is not read');
    expect((await run(folder, ['plod'])).out).not.toContain('0413');
  });

  it('says the gap that a sheet leaves, and gives 1 for it', async () => {
    const { code, out } = await run(
      copyOfSample(),
      ['plod', 'new', '0413', '--shift', ID],
      '05:32-17:00 s\n',
    );
    expect([code, out]).toEqual([
      1,
      expect.stringContaining('0:40 h of the shift (05:32–17:40, 12:08 h) are not on any line'),
    ]);
  });

  it('has the crew and a remark from the options or from the pipe', async () => {
    for (const [options, lines] of [
      [['--crew', 'Bo Hale, Cy Tan', '--remark', 'late start'], ''],
      [[], 'crew Bo Hale, Cy Tan\nremark late start\n'],
    ] as const) {
      const folder = copyOfSample();
      const args = ['plod', 'new', '0413', '--shift', ID, ...options];
      expect((await run(folder, args, `${lines}05:32-17:40 s\n`)).code).toBe(0);
      const { sheets } = JSON.parse((await run(folder, ['plod', '--json'])).out);
      expect(sheets.at(-1)).toMatchObject({
        sheet: '0413',
        crew: ['Bo Hale', 'Cy Tan'],
        remark: 'late start',
      });
    }
    const { code, err } = await run(
      copyOfSample(),
      ['plod', 'new', '0413', '--shift', ID, '--crew', ' , '],
      '05:32-17:40 s\n',
    );
    expect([code, err]).toEqual([1, expect.stringContaining('crew needs names')]);
  });

  it('reads a CSV by the columns kept in the project', async () => {
    const folder = copyOfSample();
    const file = join(folder, 'plod.csv');
    writeFileSync(
      file,
      'Start,Finish,Task,Hole,From,To,Surveys,Notes\n05:32,06:00,Toolbox,,,,,\n06:00,17:40,Standby,,,,,dust\n',
    );
    const { code, out } = await run(folder, ['plod', 'new', '0413', '--shift', ID, '--from-csv', file]);
    expect([code, out]).toEqual([0, `${ID}: plod 0413 recorded, 2 lines\n`]);
  });

  it('reads a CSV of several shifts by its dates, all of it or nothing', async () => {
    const folder = copyOfSample();
    const settings = join(folder, 'project.json');
    const project = JSON.parse(readFileSync(settings, 'utf8'));
    Object.assign(project.shift.plodColumns, { date: 'Date', dates: 'd/m/y', sheet: 'No' });
    writeFileSync(settings, JSON.stringify(project));
    const file = join(folder, 'plod.csv');
    const rows = [
      'Date,No,Start,Finish,Task,Hole,From,To,Surveys,Notes',
      '13/3/2026,0413,05:32,06:00,Toolbox,,,,,',
      '14/3/2026,0414,06:00,08:00,Standby,,,,,dust',
      '13/3/2026,0413,06:00,17:40,Standby,,,,,',
    ];
    writeFileSync(file, [...rows, '15/3/2026,0415,06:00,07:00,Standby,,,,,'].join('\n'));
    const take = () => run(folder, ['plod', 'new', '0400', '--from-csv', file]);
    const refused = await take();
    expect([refused.code, refused.err]).toEqual([
      1,
      expect.stringContaining('no shift recorded that began on 2026-03-15'),
    ]);
    expect((await run(folder, ['plod'])).out).not.toMatch(/041[34]/);
    const late = '13/3/2026,0413,05:32,06:00,Toolbox,,,,,';
    writeFileSync(file, [rows[0], rows[3], late].join('\n'));
    expect((await take()).err).toContain('it begins before the line above it');
    writeFileSync(file, rows.join('\n'));
    const { code, out, err } = await take();
    expect(err).toBe('');
    expect(code).toBe(1);
    expect(out.split('\n')).toEqual([
      `${ID}: plod 0413 recorded, 2 lines`,
      expect.stringMatching(/^RC7_2026-03-14_DAY: plod 0414 recorded, one line; /),
      '',
    ]);
  });

  it('reconciles a span of days in one pass: text, data, CSV and a page, all with the same totals', async () => {
    const folder = copyOfSample();
    await run(folder, ['plod', 'new', '0413', '--shift', ID], '05:32-06:00 p\n-17:40 s\n');
    const span = ['plod', '--reconcile', '2026-03-12..2026-03-14'];
    const data = JSON.parse((await run(folder, [...span, '--json'])).out);
    const lines = data.invoice as { own: number; plod: number }[];
    expect(lines.reduce((sum, each) => sum + each.own, 0)).toBe(data.total.own);
    expect(lines.reduce((sum, each) => sum + each.plod, 0)).toBe(data.total.plod);
    expect(data.shifts).toHaveLength(3);
    const csv = (await run(folder, [...span, '--csv'])).out;
    expect(csv.trimEnd().split('\r\n').at(-1)).toBe(
      `total,,${data.total.own},${data.total.plod},${data.total.plod - data.total.ownWithPlod}`,
    );
    const { code, out } = await run(folder, span);
    expect(code).toBe(1);
    expect(out).toMatch(/^differs +\^/m);
    expect(out).toMatch(/^10:45 \[open\]/m);
    const page = (await run(folder, [...span, '--html'])).out;
    expect(page).toMatch(/^<!doctype html>/);
    expect(page).not.toMatch(/<script|https?:/);
    expect(page).toContain('Invoice expected');
  });

  it('refuses what is no span of dates', async () => {
    const { code, err } = await run(copyOfSample(), ['plod', '--reconcile', 'last week']);
    expect([code, err]).toEqual([2, expect.stringContaining('2026-03-12..2026-03-18')]);
  });
});
