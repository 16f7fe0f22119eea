import { describe, expect, it, vi } from 'vitest';
import { codeInHand } from '../../src/console/log/codes-list.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const sit = async (find = ''): Promise<Sitting> => {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
  sitting.press('f7');
  sitting.type(find);
  return sitting;
};
const rock = (sitting: Sitting, code: string) =>
  sitting.state().project.schema.lists.rocks?.codes.find((each) => each.code === code);
const saved = (sitting: Sitting): Promise<void> =>
  vi.waitFor(() => expect(sitting.state().prompt).toBeUndefined());
const retype = (sitting: Sitting, text: string): void => {
  sitting.press('ctrl-u');
  sitting.type(text);
};

describe('the screen of codes', () => {
  it('has one code in hand, which ↑ and ↓ move and a search narrows', async () => {
    const sitting = await sit();
    expect(codeInHand(sitting.state())?.code.code).toBe('SAN');
    sitting.press('down');
    expect(codeInHand(sitting.state())?.code.code).toBe('CLA');
    expect(sitting.screen(80, 24).find((line) => line.includes('▸'))).toContain('CLA');
    sitting.type('komatiite');
    expect(codeInHand(sitting.state())?.code.code).toBe('KOM');
  });

  it('says in its title what the check finds', async () => {
    expect((await sit()).screen()[1]).toContain('check: nothing found');
  });

  it('comes to its end and no further, and the one in hand is always in sight', async () => {
    const sitting = await sit();
    sitting.press(...Array.from({ length: 60 }, () => 'page-down'));
    const end = sitting.screen(80, 24);
    expect(end.filter((line) => line.includes('▸'))).toHaveLength(1);
    sitting.press('up');
    expect(sitting.screen(80, 24)).not.toEqual(end);
  });
});

describe('a code that is changed on the screen of codes', () => {
  it('is written to logging.json over the style it comes from, and is at once', async () => {
    const sitting = await sit('komatiite');
    sitting.press('enter', 'down');
    expect(sitting.screen().join('\n')).toContain('KOM · list rocks');
    retype(sitting, 'Dark green, needles of olivine');
    sitting.press('enter');
    sitting.type('y');
    await saved(sitting);
    expect(rock(sitting, 'KOM')?.look).toBe('Dark green, needles of olivine');
    expect(JSON.parse(sitting.desk.logging()?.text ?? '').lists.rocks.codes.at(-1)).toEqual({
      code: 'KOM',
      look: 'Dark green, needles of olivine',
    });
    expect(sitting.state().screen).toMatchObject({ name: 'codes', find: 'komatiite' });
  });

  it('is held to the check as it is typed: what is wrong is there before Enter, and Enter refuses it', async () => {
    const sitting = await sit('komatiite');
    sitting.press('enter', 'down', 'down');
    retype(sitting, 'ba');
    expect(sitting.screen().join(' ')).toContain('fault: ba types komatiite, and basalt too');
    sitting.press('enter');
    expect(sitting.state().message?.tone).toBe('alert');
    retype(sitting, 'kq');
    expect(sitting.screen().join(' ')).toContain('check: nothing found');
    sitting.press('enter');
    sitting.type('y');
    await saved(sitting);
    expect(rock(sitting, 'KOM')?.pair).toBe('kq');
  });

  it('is not given another meaning where rows of an open hole hold it', async () => {
    const sitting = await sit('BAS');
    expect(codeInHand(sitting.state())?.code.code).toBe('BAS');
    sitting.press('enter');
    retype(sitting, 'andesite');
    expect(sitting.screen().join(' ')).toContain('BAS was basalt and is now andesite');
    sitting.press('enter');
    expect(sitting.state().prompt).toBeDefined();
    expect(rock(sitting, 'BAS')?.label).toBe('basalt');
  });

  it('is retired from today with Enter alone, and can then not be used again', async () => {
    const sitting = await sit('lamprophyre');
    sitting.press('enter', 'down', 'down', 'down', 'down', 'enter');
    sitting.type('y');
    await saved(sitting);
    expect(rock(sitting, 'LAM')).toMatchObject({ retiredSince: '2026-03-14' });
    expect(sitting.screen().join(' ')).toContain('(retired 2026-03-14)');
    sitting.press('escape', 'escape');
    sitting.enter('lp');
    expect(sitting.state().message?.tone).toBe('alert');
  });

  it('is led to from what the check finds about it, and agreed with camp by taking its mark away', async () => {
    const sitting = await sit();
    sitting.press('ctrl-k');
    sitting.enter('tuffaceous schist');
    await saved(sitting);
    sitting.type('tuffaceous');
    expect(sitting.screen().join(' ')).toContain('(provisional)');
    sitting.press('enter', 'down', 'down', 'down', 'down', 'down', 'enter');
    sitting.type('y');
    await saved(sitting);
    expect(rock(sitting, 'TUF')).not.toHaveProperty('provisional');
  });

  it('is moved behind another one of its list, or to the front', async () => {
    const sitting = await sit('komatiite');
    const place = async (typed: string): Promise<readonly (string | undefined)[]> => {
      sitting.press('enter', ...Array.from({ length: 9 }, () => 'down'));
      sitting.type(typed);
      sitting.press('enter');
      sitting.type('y');
      await saved(sitting);
      const codes = sitting.state().project.schema.lists.rocks?.codes.map(({ code }) => code) ?? [];
      return [codes[codes.indexOf('KOM') - 1], codes[codes.indexOf('KOM') + 1]];
    };
    expect(await place('san')).toEqual(['SAN', 'CLA']);
    expect(await place('-')).toEqual([undefined, 'SAN']);
    const own = JSON.parse(sitting.desk.logging()?.text ?? '').lists.rocks.codes.at(-1);
    expect(own).toEqual({ code: 'KOM', before: 'SAN' });
    sitting.press('enter', ...Array.from({ length: 9 }, () => 'down'));
    sitting.type('stone');
    expect(sitting.screen().join(' ')).toContain('Type the code of the list that it comes after');
  });

  it('is on the disk, with the former file kept', async () => {
    const sitting = await sit('komatiite');
    sitting.press('enter', 'down');
    retype(sitting, 'needles');
    sitting.press('enter');
    sitting.type('y');
    await saved(sitting);
    const again = await sitting.reopen();
    expect(rock(again, 'KOM')?.look).toBe('needles');
  });

  it('leaves levels of a scale to logging.json, and says so', async () => {
    const sitting = await sit('moderately weathered');
    sitting.press('enter');
    expect(sitting.state().message?.text).toContain('Levels of a scale are changed in logging.json');
  });

  it('is laid out for 80×24', async () => {
    const sitting = await sit('komatiite');
    sitting.press('enter');
    const screen = sitting.screen(80, 24);
    expect(screen).toHaveLength(23);
    expect(screen.join('\n')).toMatch(/▸ called +komatiite/);
    expect(screen.join('\n')).toContain('Esc leaves it.');
  });
});
