import { describe, expect, it, vi } from 'vitest';
import { codeLists, readNewCode } from '../../src/console/log/new-code.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const sit = (): Promise<Sitting> => sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
const added = (sitting: Sitting): Promise<void> =>
  vi.waitFor(() => expect(sitting.state().prompt).toBeUndefined());

describe('a code that the list lacks', () => {
  it('is in the list by its name alone, with a code and a pair proposed, and types the next row', async () => {
    const sitting = await sit();
    sitting.enter(';code');
    sitting.type('tuffaceous schist');
    expect(sitting.screen().join('\n')).toMatch(/TUF tuffaceous schist, typed [a-z]{2}, provisional/);
    sitting.press('enter');
    await added(sitting);
    const code = sitting.state().project.schema.lists.rocks?.codes.find((each) => each.code === 'TUF');
    expect(code).toMatchObject({ label: 'tuffaceous schist', provisional: true });
    sitting.enter(`${code?.pair}`);
    expect(rowsDown(sitting.hole('MBRC003')).at(-1)?.[1].cells.rock).toEqual({ code: 'TUF' });
  });

  it('is on the disk before it stands, so that no row can use it before', async () => {
    const sitting = await sit();
    sitting.enter(';code');
    sitting.enter('tuffaceous schist');
    expect(sitting.state().project.schema.lists.rocks?.codes.some((each) => each.code === 'TUF')).toBe(false);
    await added(sitting);
    const again = await sitting.reopen();
    expect(again.state().project.schema.lists.rocks?.codes.find((each) => each.code === 'TUF')).toMatchObject(
      {
        provisional: true,
      },
    );
    expect(again.desk.logging()?.text).toContain('vein breccia');
  });

  it('leaves what was typed on the line where it is', async () => {
    const sitting = await sit();
    sitting.type('p3');
    sitting.press('ctrl-k');
    sitting.enter('tuffaceous schist');
    await added(sitting);
    expect(sitting.state().draft.text).toBe('p3');
  });

  it('takes a code and a pair of one’s own, and another list', async () => {
    const sitting = await sit();
    const index = codeLists(sitting.state().project.schema).findIndex((list) =>
      list.codes.some((each) => each.code === 'PYR'),
    );
    sitting.enter(';code');
    sitting.press(...Array.from({ length: index }, () => 'down'));
    sitting.enter('pentlandite, PEN, zq');
    await added(sitting);
    const lists = Object.values(sitting.state().project.schema.lists);
    expect(lists.flatMap((list) => list.codes).find((each) => each.code === 'PEN')).toMatchObject({
      pair: 'zq',
      provisional: true,
    });
  });

  it('is refused, with what was typed kept, where the check finds a fault in it', async () => {
    const sitting = await sit();
    sitting.enter(';code');
    sitting.enter('tuffaceous schist, TUF, ba');
    await vi.waitFor(() => expect(sitting.state().message?.tone).toBe('alert'));
    expect(sitting.state().prompt).toMatchObject({
      kind: 'new code',
      draft: { text: 'tuffaceous schist, TUF, ba' },
    });
    sitting.press('escape');
    expect(sitting.desk.logging()?.text).not.toContain('TUF');
  });

  it('is held to the check as it is typed', async () => {
    const sitting = await sit();
    sitting.enter(';code');
    sitting.type('tuffaceous schist, TUF, ba');
    expect(sitting.screen().join(' ')).toContain('fault: ba types tuffaceous schist, and basalt too');
    sitting.press('backspace', 'backspace');
    expect(sitting.screen().join(' ')).not.toMatch(/fault|warning/);
  });

  it('is refused where the list has it under that name', async () => {
    const sitting = await sit();
    const { schema } = sitting.state().project;
    const [rocks] = codeLists(schema);
    if (rocks === undefined) throw new Error('no lists');
    expect(readNewCode(schema, rocks, 'Basalt')).toEqual({
      ok: false,
      problem: 'basalt is there already: ba.',
    });
    expect(readNewCode(schema, rocks, ' ').ok).toBe(false);
    expect(readNewCode(schema, rocks, 'a, B, cd, e').ok).toBe(false);
  });
});
