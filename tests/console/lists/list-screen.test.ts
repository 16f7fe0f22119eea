import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from '../support/sitting.ts';

const sit = (): Promise<Sitting> => sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
const text = (sitting: Sitting, columns = 100, rows = 30): string => sitting.screen(columns, rows).join('\n');
const times = (count: number, key: string): readonly string[] => Array.from({ length: count }, () => key);

describe('a list', () => {
  it('does not run past its end unseen: one key up moves it again', async () => {
    const sitting = await sit();
    sitting.press('f7', ...times(40, 'page-down'));
    const atEnd = text(sitting);
    sitting.press('up');
    expect(text(sitting)).not.toBe(atEnd);
  });

  it('is searched by typing: only what holds every word stays, under its heading', async () => {
    const sitting = await sit();
    sitting.press('f7');
    sitting.type('pyrit');
    const screen = text(sitting);
    expect(screen).toContain('search: pyrit');
    expect(screen).toContain('PYR');
    expect(screen).toContain('sulphides');
    expect(screen).not.toContain('basalt');
  });

  it('says that nothing was found, and Escape ends the search before it leads back', async () => {
    const sitting = await sit();
    sitting.press('f7');
    sitting.type('qqqq');
    expect(text(sitting)).toContain('No match');
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'codes', find: '' });
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log' });
  });

  it('leads back to the row that was open, and its line is never left at the logged head', async () => {
    const sitting = await sit();
    sitting.type('p3');
    sitting.press('up');
    const row = sitting.state().screen;
    const line = sitting.state().draft;
    sitting.press('f9', 'f3', 'f1', 'escape', 'escape');
    expect(sitting.state().screen).toEqual(row);
    expect(sitting.state().draft).toEqual(line);
    sitting.press('f6', 'escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log', cursor: 'head' });
    expect(sitting.state().draft.text).toBe('p3');
  });
});

describe('the history', () => {
  it('says of an amended row what stood before and after, in the words of the log sheet', async () => {
    const sitting = await sit();
    sitting.press('up');
    const [, before] = rowsDown(sitting.hole('MBRC003')).at(-1) ?? [];
    expect(before?.cells.sulphides).toEqual({ percents: { PYR: 2 } });
    sitting.press(...times(12, 'backspace'));
    sitting.enter('p3');
    sitting.press('f9');
    expect(text(sitting)).toMatch(/45–46 sulphides: pyrite 2 % → pyrite 3 %/);
    expect(text(sitting)).not.toMatch(/[{}]|carried/);
  });

  it('says what an undone row held', async () => {
    const sitting = await sit();
    sitting.enter('p3');
    sitting.enter(';u');
    sitting.press('f9');
    expect(text(sitting)).toMatch(/taken out 46–47: basalt, [\s\S]*pyrite 3 %/);
  });
});

describe('an earlier state of a hole', () => {
  it('is shown edit by edit from the history, and by its number from the log; Escape leads back', async () => {
    const sitting = await sit();
    const edits = sitting.hole('MBRC003').history.length;
    sitting.enter('p3');
    sitting.enter('p5');
    sitting.press('f9');
    expect(text(sitting)).toContain(`${edits + 2} edits · chain verified`);
    sitting.press('left');
    expect(text(sitting)).toContain(`after edit ${edits + 1} of ${edits + 2} · chain verified`);
    sitting.type('46–47');
    expect(text(sitting)).toMatch(/46–47: basalt, [\s\S]*pyrite 3 %/);
    sitting.press('escape', 'left');
    expect(text(sitting)).toContain(`after edit ${edits} of`);
    sitting.type('46–47');
    expect(text(sitting)).toContain('No match');
    sitting.press('escape', 'right', 'right');
    expect(text(sitting)).toContain('history, latest first');
    sitting.press('left', 'escape');
    expect(text(sitting)).toContain('history, latest first');
    sitting.press('escape');
    sitting.enter(';history 1');
    expect(text(sitting)).toContain(`after edit 1 of ${edits + 2}`);
    sitting.press('left');
    expect(sitting.state().message?.text).toBe('That is the first edit.');
    sitting.press('escape', 'escape');
    sitting.enter(';history 4000');
    expect(sitting.state().message?.text).toBe(`Type the number of an edit, 1 to ${edits + 2}: ;history 12`);
  });
});

describe('the help', () => {
  it.each([80, 100])('cuts nothing off at %i columns, wherever it is scrolled to', async (columns) => {
    const sitting = await sit();
    sitting.press('f1');
    for (let page = 0; page < 20; page += 1) {
      expect(text(sitting, columns, columns === 80 ? 24 : 30)).not.toContain('…');
      sitting.press('page-down');
    }
  });

  it('begins with the keys of the screen that it was asked on', async () => {
    const sitting = await sit();
    sitting.press('f1');
    expect(text(sitting)).toContain('the entry line');
    sitting.press('escape', 'f10', 'f1');
    const lines = sitting.screen();
    const keys = lines.findIndex((each) => each.includes('on the list of holes'));
    expect(keys).toBeGreaterThan(0);
    expect(lines.slice(0, keys).join(' ')).toContain('no warning is no clearance');
  });

  it('can be searched for what a key does', async () => {
    const sitting = await sit();
    sitting.press('f1');
    sitting.type('rod done');
    expect(text(sitting)).toMatch(/F2 or ;rod +Rod done/);
  });
});

describe('the whole row', () => {
  it('says each field once, with what was left as above', async () => {
    const sitting = await sit();
    sitting.press('up', 'f11');
    expect(text(sitting)).toMatch(/weathering +fresh {2}\(as above\)/);
    expect(text(sitting)).toMatch(/sulphides +pyrite 2 %/);
  });
});

describe('the advice in full', () => {
  it('says of a rule what it asks for and what is there now, and nothing twice', async () => {
    const sitting = await sit();
    sitting.press('f5', 'page-down', 'page-down');
    const screen = text(sitting).replaceAll(/[│\s]+/g, ' ');
    expect(screen).toContain('If met: may end. Now: sulphides 2 % at 45–46.');
    expect(screen.match(/drilled 54 of 132 m/g)?.length ?? 0).toBeLessThan(2);
  });
});

describe('the shift record', () => {
  it('counts the hours of a shift that no one ended to its planned end, and says that the end is presumed', async () => {
    const sitting = await sit();
    sitting.press('f8');
    expect(text(sitting)).toMatch(/08:33 +0:35 +Drilling/);
    sitting.wait(3 * 24 * 60);
    expect(text(sitting)).toMatch(/08:33 +9:27 +Drilling/);
    expect(text(sitting)).toContain('18:00 PRESUMED');
    expect(text(sitting)).toContain('no activity');
  });
});
