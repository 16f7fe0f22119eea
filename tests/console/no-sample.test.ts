import { describe, expect, it } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { laboratoryTable } from '../../src/sampling/dispatch/dispatch-sheet.ts';
import { bagsOfHoles, dispatchesOf, toSend } from '../../src/standing/dispatches.ts';
import { bagsOnGround } from '../../src/standing/stream.ts';
import { emptySample, type Sitting, sitDown } from './support/sitting.ts';

/** A hole made on the rig, one rod done and logged, its fourth metre without return. */
async function withoutReturn(): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  sitting.press('f2', 'enter');
  sitting.enter('bawx1ox1');
  sitting.enter('.');
  sitting.enter('.');
  sitting.enter('nr');
  return sitting;
}

const documents = (sitting: Sitting) => [...sitting.state().documents.values()];
const waiting = (sitting: Sitting) =>
  toSend(sitting.state().project.sampling, documents(sitting)).map((number) => number.slice(-3));
const kindOf = (sitting: Sitting, ends: string) =>
  bagsOnGround(sitting.hole('MBRC020')).find(({ number }) => number.endsWith(ends))?.kind;
const named = (sitting: Sitting) =>
  checkProject(sitting.state().project, documents(sitting)).filter(
    (each) => each.code === 'metres-without-sample',
  );

describe('a metre logged as a void or a loss of return', () => {
  it.each(['vr', 'ln'])('keeps its number as no sample too: %s', async (line) => {
    const sitting = await withoutReturn();
    sitting.enter(line);
    expect(kindOf(sitting, '605')).toBe('no sample');
    expect(waiting(sitting)).toEqual(['601', '602', '603', '606']);
    expect(named(sitting)).toHaveLength(2);
    sitting.enter(';bag 4-5 605 =');
    expect(kindOf(sitting, '605')).toBe('primary');
  });

  it('gives a sample where rock came up beside it', async () => {
    const sitting = await withoutReturn();
    sitting.enter('bavr30wx1ox1');
    expect(kindOf(sitting, '605')).toBe('primary');
  });
});

describe('a metre logged without return', () => {
  it('keeps its number as no sample: nothing of it waits for the laboratory, and the check names it', async () => {
    const sitting = await withoutReturn();
    expect(kindOf(sitting, '604')).toBe('no sample');
    expect(waiting(sitting)).toEqual(['601', '602', '603', '605', '606']);
    expect(named(sitting).map((each) => each.problem)).toEqual([
      '3–4 gave no return: MB000604 is kept as no sample and does not go to the laboratory.',
    ]);
    sitting.press('f3');
    sitting.type('issued');
    expect(sitting.screen().join('\n')).toMatch(/MB000604 {2}3–4 +no sample/);
  });

  it('has a bag all the same where someone says so, with the line that the check gives', async () => {
    const sitting = await withoutReturn();
    const line = /;bag \S+ \S+\d =/.exec(named(sitting)[0]?.remedy ?? '')?.[0] ?? '';
    expect(line).toBe(';bag 3-4 MB000604 =');
    sitting.enter(line);
    expect(kindOf(sitting, '604')).toBe('primary');
    expect(waiting(sitting)).toContain('604');
    expect(named(sitting)).toEqual([]);
  });

  it('is named on the blind sheet and on camp’s, between the numbers that go', async () => {
    const sitting = await withoutReturn();
    sitting.press('f10');
    sitting.press('d');
    sitting.press('enter', 'enter');
    const [dispatch] = dispatchesOf(documents(sitting));
    if (dispatch === undefined) throw new Error('no dispatch was made');
    const table = laboratoryTable(dispatch, bagsOfHoles(documents(sitting)));
    expect(table).toContainEqual(['no sample', 'MB000604']);
    expect(dispatch.sacks.flatMap((sack) => sack.bags)).not.toContain('MB000604');
  });

  it('is none once the row says otherwise', async () => {
    const sitting = await withoutReturn();
    sitting.press('up');
    sitting.press('backspace', 'backspace');
    sitting.enter('.');
    expect(kindOf(sitting, '604')).toBe('primary');
  });
});

describe('a metre seen at the splitter to give nothing', () => {
  it('has no sample before its rod is done, and the rod fits with the empty calico laid down or not', async () => {
    for (const count of [5, 6]) {
      const sitting = await sitDown(emptySample());
      sitting.type('n');
      sitting.enter('MBRC020 270g -60 120');
      sitting.press('enter');
      sitting.enter(';numbered MB000601 MB000720');
      sitting.enter(';recovery none 3-4');
      sitting.press('f2');
      sitting.enter(`606 x${count}`);
      expect(sitting.state().message?.text).toContain('Rod 1 done at 6 m');
      expect(kindOf(sitting, '604')).toBe('no sample');
      expect(waiting(sitting)).not.toContain('604');
    }
  });
});
