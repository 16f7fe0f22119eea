import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** The console as the demo opens it, on the log of the hole that is being drilled. */
async function demo(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T09:31:00+08:00');
  if (sitting.state().screen.name === 'holes') sitting.press('enter');
  expect(sitting.state().screen.name).toBe('log');
  return sitting;
}

const rows = (sitting: Sitting) => rowsDown(sitting.hole('MBRC003')).map(([, row]) => row);
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';

/** What the README says can be typed, from its table of the entry line. */
function readmeExamples(): readonly string[] {
  const text = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
  const [, table = ''] = /## The entry line\n[\s\S]*?\|---\|---\|\n([\s\S]*?)\n\n/.exec(text) ?? [];
  return table
    .split('\n')
    .flatMap((line) =>
      [...(line.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, typed]) => typed ?? ''),
    );
}

describe('the lines that the README shows', () => {
  it('are there to be tried', () => {
    expect(readmeExamples().length).toBeGreaterThan(12);
    expect(readmeExamples()).toContain('p3');
  });

  it.each(readmeExamples())('%s is taken in the demo, and nothing is asked', async (typed) => {
    const sitting = await demo();
    const before = rows(sitting).length;
    sitting.enter(typed);
    if (typed.startsWith(';')) {
      expect(sitting.state().prompt?.kind).toBe('preview');
      return;
    }
    expect(said(sitting)).not.toContain('Add = to accept it');
    expect(rows(sitting)).toHaveLength(before + 1);
    expect(rows(sitting).at(-1)?.asked).toBeUndefined();
  });
});

describe('restating what stands', () => {
  it('is said in the echo and again when the row is saved, and stops nothing', async () => {
    const sitting = await demo();
    sitting.enter('bacl2py1');
    const before = rows(sitting).length;
    sitting.type('bacl2py2');
    expect(sitting.screen().join('\n')).toContain('same as the row above: basalt, chlorite');
    sitting.press('enter');
    expect(rows(sitting)).toHaveLength(before + 1);
    expect(said(sitting)).toMatch(/same as the row above: basalt, chlorite$/);
    sitting.enter('hl0');
    expect(said(sitting)).toMatch(/not in the row above either: chalcopyrite$/);
    sitting.enter('p3');
    expect(said(sitting)).not.toContain('row above');
  });
});

describe('where something begins', () => {
  it.each(['bacl0py0vn0 =', 'bacl0py0vn0'])(
    'below %s a first vein, sulphide or mineral at a common amount is not asked',
    async (barren) => {
      const sitting = await demo();
      sitting.enter(barren);
      if (said(sitting).includes('Add =')) sitting.enter('=');
      const before = rows(sitting).length;
      for (const line of ['vn5', 'vn0', 'py2', 'py0', 'py5', 'py0', 'cl2']) sitting.enter(line);
      expect(rows(sitting)).toHaveLength(before + 7);
      sitting.enter('vn20');
      expect(said(sitting)).toBe('veins goes from 0 % to 20 % in one row. Add = to accept it, or fix it.');
      expect(rows(sitting)).toHaveLength(before + 7);
    },
  );
});

describe('a repeat that is asked about', () => {
  async function asked(): Promise<{ readonly sitting: Sitting; readonly before: number }> {
    const sitting = await demo();
    sitting.enter('bacl1py1');
    for (let row = 1; row < 18; row += 1) sitting.enter('.');
    const before = rows(sitting).length;
    sitting.enter('.');
    expect(said(sitting)).toBe(
      '18 rows alike: look again, then = if it is right. Add = to accept it, or fix it.',
    );
    expect(rows(sitting)).toHaveLength(before);
    return { sitting, before };
  }

  it('holds further dots, counts them in words, and logs them behind it', async () => {
    const { sitting, before } = await asked();
    sitting.enter('.');
    expect(said(sitting)).toBe('1 more dot waits: = and Enter logs this row and that one, Esc drops them.');
    sitting.enter('.');
    sitting.enter('.');
    expect(sitting.state().draft.text).toBe('.');
    expect(said(sitting)).toContain('3 more dots wait');
    expect(sitting.screen().join('\n')).toContain('3 more rows wait');
    sitting.enter('=');
    expect(rows(sitting)).toHaveLength(before + 4);
    expect(sitting.state().draft.text).toBe('');
    expect(sitting.state().held).toEqual([]);
    sitting.enter('.');
    expect(rows(sitting)).toHaveLength(before + 5);
  });

  it('takes dots without Enter between as a row each, and drops them with Esc', async () => {
    const { sitting, before } = await asked();
    sitting.type('...');
    expect(said(sitting)).toContain('3 more dots wait');
    sitting.press('escape');
    expect(sitting.state().held).toEqual([]);
    sitting.enter('p2');
    expect(rows(sitting)).toHaveLength(before + 1);
  });

  it('can be fixed instead, and what waits follows', async () => {
    const { sitting, before } = await asked();
    sitting.enter('.');
    sitting.press('backspace');
    sitting.enter('p2');
    expect(rows(sitting)).toHaveLength(before + 2);
  });
});

describe('= where a person puts it', () => {
  it.each(['vn30/on joints=', 'vn30/on joints =', 'vn30 =/on joints', 'vn30=/on joints'])(
    '%s accepts the line and keeps the remark',
    async (typed) => {
      const sitting = await demo();
      sitting.enter('bavn1');
      const before = rows(sitting).length;
      sitting.enter(typed);
      expect(rows(sitting)).toHaveLength(before + 1);
      expect(rows(sitting).at(-1)).toMatchObject({ remark: 'on joints', cells: { veins: { percent: 30 } } });
      expect(rows(sitting).at(-1)?.asked).toBeUndefined();
    },
  );

  it.each(['=', ' =', '= '])('%j behind the line that was asked about accepts all of it', async (typed) => {
    const sitting = await demo();
    sitting.enter('bacl1vn1py1');
    const before = rows(sitting).length;
    sitting.enter('vn30py20/on joints');
    expect(said(sitting)).toContain('Add = to accept it');
    sitting.enter(typed);
    expect(rows(sitting)).toHaveLength(before + 1);
    expect(rows(sitting).at(-1)?.asked).toBeUndefined();
  });
});

describe('a dot below a metre that gave nothing', () => {
  it.each([
    ['vr', 'void or old workings'],
    ['ln', 'loss of return'],
    ['nr', 'no return'],
  ])('below %s asks which metre it repeats, and takes the last one seen with =', async (line, words) => {
    const sitting = await demo();
    sitting.enter('bawx1ox1cl2');
    sitting.enter(line);
    const before = rows(sitting).length;
    sitting.enter('.');
    expect(said(sitting)).toContain(`${words} directly above: . repeats the last metre that was seen`);
    expect(rows(sitting)).toHaveLength(before);
    sitting.enter('=');
    expect(rows(sitting)).toHaveLength(before + 1);
    expect(rows(sitting).at(-1)?.cells.rock).toMatchObject({ code: 'BAS' });
    // Below that one a dot is a dot again.
    sitting.enter('.');
    expect(rows(sitting)).toHaveLength(before + 2);
  });

  it('is never asked of a line that says what was seen', async () => {
    const sitting = await demo();
    sitting.enter('bawx1ox1cl2');
    sitting.enter('vr');
    const before = rows(sitting).length;
    sitting.enter('bawx1ox1cl1');
    expect(rows(sitting)).toHaveLength(before + 1);
  });
});
