import { describe, expect, it } from 'vitest';
import { holeNouns } from '../../src/hole/hole.ts';
import { queryList } from '../../src/shift/query-list.ts';
import type { Sitting } from './support/sitting.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

const ID = 'RC7_2026-03-14_DAY';
const shots = (sitting: Sitting) => holeNouns(sitting.hole('MBRC003'), 'shots');
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';

/** Shots that our own record of the shift counts, and so expects to pay. */
function counted(sitting: Sitting): number {
  const shift = sitting.state().documents.get(`shift/${ID}`);
  if (shift === undefined) throw new Error('no shift');
  const documents = [...sitting.state().documents.values()];
  return queryList(shift, documents, sitting.state().project.shift, sitting.state().now)
    .comparisons.filter(({ subject }) => subject === 'shots')
    .reduce((sum, { own }) => sum + own, 0);
}

/** A shot at 48 m with two digits turned round, taken as typed. */
async function misread(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');
  sitting.enter(';shot 48 -59.7 217.1 =');
  return sitting;
}

describe('a shot that was misread', () => {
  it('is corrected where it stands by corrects: one shot, paid once, what was first typed kept, and undone', async () => {
    const sitting = await misread();
    const before = counted(sitting);
    sitting.enter(';shot 48 -59.7 271.1');
    expect(said(sitting)).toContain('has a shot at 48 m. If it was only misread or mistyped, type corrects');
    sitting.type(' corrects');
    sitting.press('enter');
    expect(said(sitting)).toBe(
      'shot at 48 m corrected: dip -59.7°, azimuth 271.1°, first typed as dip -59.7°, azimuth 217.1°',
    );
    expect(shots(sitting).at(-1)).toMatchObject({
      azimuthDeg: 271.1,
      misread: 'dip -59.7°, azimuth 217.1°; corrected 10:00 by NOK',
    });
    expect(counted(sitting)).toBe(before);
    sitting.press('ctrl-u');
    expect(shots(sitting).at(-1)).not.toHaveProperty('misread');
  });

  it('is corrected by c on the survey screen, where its figures stand in the line', async () => {
    const sitting = await misread();
    sitting.press('f6', 'down', 'down', 'down');
    sitting.type('c');
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot', draft: { text: '48 -59.7 217.1' } });
    for (let key = 0; key < 5; key += 1) sitting.press('backspace');
    sitting.enter('271.1');
    expect(sitting.state().prompt).toBeUndefined();
    expect(shots(sitting)).toHaveLength(3);
    expect(sitting.screen(100, 30).join('\n')).toContain('First typed as dip -59.7°, azimuth 217.1°');
  });

  it('that was rejected and is typed again is asked: run again with the tool is a second shot, misread is the same', async () => {
    const sitting = await misread();
    const before = counted(sitting);
    sitting.press('f6', 'down', 'down', 'down');
    sitting.type('x');
    expect(sitting.screen(80, 24).join('\n')).toContain('Only misheard or mistyped? Esc, then c corrects it');
    sitting.enter('digits turned round');
    sitting.type('y');
    sitting.press('escape');
    sitting.enter(';shot 48 -59.7 271.1');
    expect(said(sitting)).toMatch(
      /^Was the tool run again\? Then add =\. .*misread: ;shot 48 -59\.7 271\.1 corrects/,
    );
    sitting.type(' corrects');
    sitting.press('enter');
    expect(shots(sitting).at(-1)).toMatchObject({ azimuthDeg: 271.1 });
    expect(shots(sitting).at(-1)).not.toHaveProperty('rejected');
    expect(counted(sitting)).toBe(before);
  });

  it('and taken again with the tool counts twice; said too late, corrects makes one of the two', async () => {
    const sitting = await misread();
    const before = counted(sitting);
    sitting.press('f6', 'down', 'down', 'down');
    sitting.type('x');
    sitting.enter('in the rods');
    sitting.type('y');
    sitting.press('escape');
    sitting.enter(';shot 48 -59.7 271.1 =');
    expect(counted(sitting)).toBe(before + 1);
    sitting.enter(';shot 48 -59.7 271.1 corrects');
    expect(counted(sitting)).toBe(before);
    expect(shots(sitting).at(-1)).toMatchObject({ misread: expect.stringContaining('azimuth 217.1°') });
  });

  it('is refused where there is none at that depth, and where the figures are the same', async () => {
    const sitting = await misread();
    sitting.enter(';shot 45 -59.7 271.1 corrects');
    expect(said(sitting)).toContain('The run has no shot at 45 m to correct');
    sitting.press('escape');
    sitting.enter(';shot 48 -59.7 217.1 corrects =');
    expect(said(sitting)).toContain('The shot has these figures already');
    expect(shots(sitting)).toHaveLength(3);
  });
});
