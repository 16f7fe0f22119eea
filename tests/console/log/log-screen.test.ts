import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../../src/hole/hole.ts';
import { type Files, type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const AT = '2026-03-14T09:08:00+08:00';
const line = (sitting: Sitting, find: RegExp, columns = 100): string =>
  sitting.screen(columns, columns < 100 ? 24 : 30).find((each) => find.test(each)) ?? '';

describe('the table of rows', () => {
  it('marks the first row of a new rock as a contact', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.enter('sh');
    sitting.enter('.');
    expect(line(sitting, / 46 +47/)).toMatch(/46 +47 ═ sha/);
    expect(line(sitting, / 47 +48/)).toMatch(/47 +48 {3}sha/);
  });

  it('marks a row that was asked about with ? until it is settled', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.burst('p20\rp10\r');
    expect(line(sitting, / 46 +47/)).toMatch(/46 +47 {2}\?bas/);
    sitting.enter('=');
    expect(line(sitting, / 46 +47/)).toMatch(/46 +47 {3}bas/);
  });

  it('shows three minerals of a row before it shows optional fields', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    expect(line(sitting, / 45 +46/)).toContain('chl2 sil1 src1');
  });

  it('counts the minerals that a column has no room for, and cuts none in half', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    expect(line(sitting, / 45 +46/, 80)).toContain('chl2 +2');
  });

  it('keeps required fields, alteration, sulphides and veins at 80 columns, with their titles', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const heading = line(sitting, /from/, 80);
    for (const title of ['rock', 'wx', 'ox', 'alt', 'sulph', 'vn']) expect(heading).toContain(title);
  });
});

describe('a command being typed', () => {
  it('names the words that begin so, and says what a whole word does, screens too', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.type(';co');
    for (const word of [';contaminated', ';codes', ';code '])
      expect(sitting.screen(80, 24).join('\n')).toContain(word);
    sitting.type('des');
    expect(sitting.screen(80, 24).join('\n')).toContain(';codes: Codes and what types them');
    expect(sitting.screen(80, 24).join('\n')).not.toContain('No command');
  });

  it('says that there is none where none begins so', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    sitting.type(';qqq');
    expect(sitting.screen().join('\n')).toContain('No command is called qqq');
  });
});

describe('rows alike in a run', () => {
  it('are asked about once, at the limit of the project: look again, then = if it is so', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const limit = sitting.state().project.schema.repeatsBeforeLook;
    const count = () => rowsDown(sitting.hole('MBRC003')).length;
    const before = count();
    for (let row = 1; row < limit; row += 1) sitting.enter('.');
    expect(count()).toBe(before + limit - 1);
    sitting.enter('.');
    expect(count()).toBe(before + limit - 1);
    expect(sitting.state().message?.text).toContain('look again');
    sitting.enter('=');
    expect(count()).toBe(before + limit);
    sitting.enter('.');
    expect(count()).toBe(before + limit + 1);
  });
});

describe('the foot of the log', () => {
  it.each([80, 100, 132])(
    'names log, rod done, the row above, Tab and help at %i columns',
    async (columns) => {
      const sitting = await sitDown(sampleFiles(), AT);
      const hints = sitting.screen(columns).at(-1) ?? '';
      for (const hint of ['Enter log', 'F2 rod done', '↑ earlier row', 'Tab complete', 'F1 help'])
        expect(hints).toContain(hint);
      expect(hints.length).toBeLessThanOrEqual(columns);
    },
  );

  it('heads the advice as advice at 80 columns too, with the depth that it rests on', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    expect(sitting.screen(80, 24).join('\n')).toContain('advice on ending, log 46 m');
  });

  it('while rows are not safe says which, and the echo and the messages still stand', async () => {
    const sitting = await sitDown(sampleFiles(), AT);
    const what = ['logged 46–47', 'logged 47–48', 'logged 48–49', 'logged 49–50'];
    sitting.happen({ kind: 'health', health: { pending: 4, unsafe: { reason: 'no space left', what } } });
    sitting.type('p3');
    const screen = sitting.screen(80, 24).join('\n');
    expect(screen).toContain('NOT SAVED: 4');
    expect(screen).toContain('NOT SAVED: logged 46–47 … logged 49–50, 4 in all.');
    expect(screen).toContain(';elsewhere');
    expect(screen).toContain('pyrite 2→3 %');
  });
});

describe('a handover', () => {
  const opened = (files: Files, person: string) => sitDown(files, AT, 'RC7', person);

  it('makes the first row of whoever takes over a full one: nothing carries and no single key stands', async () => {
    const sitting = await opened(sampleFiles(), 'TSM');
    expect(sitting.screen().join('\n')).toContain(
      'The first row after NOK is logged in full: nothing carries',
    );
    for (const short of ['p3', '.', 'py2']) {
      sitting.enter(short);
      expect(sitting.state().message?.tone).toBe('alert');
      sitting.press('escape');
    }
    sitting.enter('bawx1ox1cl2py2');
    const [, row] = rowsDown(sitting.hole('MBRC003')).at(-1) ?? [];
    expect(row).toMatchObject({ fromMm: 46_000 });
    expect(row?.carried ?? []).toEqual([]);
    sitting.enter('p3');
    expect(rowsDown(sitting.hole('MBRC003')).at(-1)?.[1]).toMatchObject({ fromMm: 47_000 });
  });

  it('asks nothing of the person who logged the row above', async () => {
    const sitting = await opened(sampleFiles(), 'NOK');
    expect(sitting.screen().join('\n')).toContain('keys above');
  });
});
