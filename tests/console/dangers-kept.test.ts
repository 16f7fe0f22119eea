import { describe, expect, it } from 'vitest';
import { rowsDown } from '../../src/hole/hole.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC003';
const text = (sitting: Sitting, columns = 80, rows = 24): string =>
  sitting
    .screen(columns, rows)
    .join('\n')
    .replaceAll(/[\s│]+/g, ' ');
const rockAt = (sitting: Sitting, fromM: number): unknown =>
  rowsDown(sitting.hole(HOLE)).find(([, row]) => row.fromMm === fromM * 1000)?.[1].cells.rock;

/** The sample hole with a void logged at 46–47. */
async function withVoid(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.enter('vr');
  sitting.press('escape');
  expect(rockAt(sitting, 46)).toEqual({ code: 'VOI' });
  return sitting;
}

describe('a logged void', () => {
  it('that a range would write over is shown first, before anybody can press Enter', async () => {
    const sitting = await withVoid();
    sitting.enter(';46-47 ba');
    expect(text(sitting)).toContain('CAUTION 46–47 would no longer say void or old workings (void)');
    expect(rockAt(sitting, 46)).toEqual({ code: 'VOI' });
    sitting.press('enter');
    expect(rockAt(sitting, 46)).toEqual({ code: 'BAS' });
  });

  it('that is given something else besides is said to be one', async () => {
    const sitting = await withVoid();
    sitting.enter(';46-47 py2');
    expect(text(sitting)).toContain('CAUTION 46–47 is logged as void or old workings, and stays so');
  });

  it('that would be cleared is named', async () => {
    const sitting = await withVoid();
    sitting.enter(';clear 46-47');
    expect(text(sitting)).toContain('CAUTION 46–47 would no longer say void or old workings (void)');
  });

  it('that is opened and written over is asked about once, and = is the answer', async () => {
    const sitting = await withVoid();
    sitting.press('up');
    sitting.press('backspace', 'backspace');
    sitting.enter('ba');
    expect(text(sitting)).toContain('46–47 would no longer say void or old workings (void)');
    expect(rockAt(sitting, 46)).toEqual({ code: 'VOI' });
    sitting.type('=');
    sitting.press('enter');
    expect(rockAt(sitting, 46)).toEqual({ code: 'BAS' });
  });

  it('that is merged, cut in two and cleared is still asked about, whatever the driller felt below it', async () => {
    const sitting = await sitDown(sampleFiles());
    for (const row of ['vr', 'vr', 'vr']) {
      sitting.enter(row);
      sitting.press('escape');
    }
    for (const change of [';merge 46-49', ';split 48', ';clear 48-49']) {
      sitting.enter(change);
      sitting.press('enter');
    }
    sitting.enter(';solid 48-54 Gus Dray');
    sitting.press('escape');
    expect(text(sitting)).toMatch(/ASK: void: void logged at/);
    sitting.enter(';clear 46-48');
    sitting.press('enter');
    sitting.press('f5');
    expect(text(sitting)).toContain(
      'a void was logged at 46–49 and cleared: no word but the log will do there',
    );
  });
});
