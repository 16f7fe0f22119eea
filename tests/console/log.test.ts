import { describe, expect, it } from 'vitest';
import { headerOf, holeNouns, rowsDown } from '../../src/hole/hole.ts';
import { headsOf } from '../../src/standing/heads.ts';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** A hole made on the rig, drilling, with numbered bags. */
async function drilling(): Promise<Sitting> {
  const sitting = await sitDown(emptySample());
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  return sitting;
}

const hole = (sitting: Sitting) => sitting.hole('MBRC020');
const rows = (sitting: Sitting) => rowsDown(hole(sitting)).map(([, row]) => row);
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';

describe('a hole no one planned', () => {
  it('is made from its name alone, and starts drilling when it is opened', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('mbrc031');
    expect(headerOf(sitting.hole('MBRC031'))).toMatchObject({
      name: 'MBRC031',
      state: 'planned',
      unplanned: true,
    });
    sitting.press('enter');
    expect(headerOf(sitting.hole('MBRC031')).state).toBe('drilling');
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC031' });
  });

  it('is refused in words, with the name kept, where the name can be no file or is taken', async () => {
    const sitting = await drilling();
    sitting.press('f10');
    for (const [name, word] of [
      ['con', 'keep for devices'],
      ['../etc', 'capitals, digits'],
      ['mbrc020', 'is there already'],
      ['MBRC021 270 -60 100', 'letter of its north'],
      ['MBRC021 270g 60 100', 'Did you mean -60?'],
    ] as const) {
      sitting.type('n');
      sitting.enter(name);
      expect(said(sitting)).toContain(word);
      expect(sitting.state().prompt).toMatchObject({ kind: 'new hole', draft: { text: name } });
      sitting.press('escape');
    }
  });
});

describe('two heads', () => {
  it('rod done moves the drilled head and issues the bags; the log stays where it is', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter', 'f2', 'enter');
    expect(headsOf(hole(sitting))).toMatchObject({ drilledMm: 12_000, loggedMm: 0, behindMm: 12_000 });
    expect(holeNouns(hole(sitting), 'bags').filter((bag) => bag.kind === 'primary')).toHaveLength(12);
    expect(sitting.screen().some((line) => line.includes('(drilled, not logged)'))).toBe(true);
    expect(sitting.screen().some((line) => line.includes('12 m behind the rig'))).toBe(true);
  });

  it('logging past the drilled head is allowed and moves nothing', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    expect(headsOf(hole(sitting))).toMatchObject({ drilledMm: 0, loggedMm: 1000 });
    expect(sitting.screen().some((line) => line.includes('1 m past the last rod done'))).toBe(true);
  });

  it('digits that do not fit name the mismatch, and it can be mended as one edit that undo takes back', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter', 'f2');
    sitting.enter('611');
    expect(sitting.state().prompt).toMatchObject({ kind: 'mismatch' });
    expect(sitting.screen().join('\n')).toContain('a = ');
    sitting.enter('a');
    expect(headsOf(hole(sitting)).drilledMm).toBeGreaterThanOrEqual(12_000);
    expect(holeNouns(hole(sitting), 'rods').at(-1)?.mismatch).toBeDefined();
    sitting.enter(';u');
    expect(headsOf(hole(sitting)).drilledMm).toBe(6000);
    expect(holeNouns(hole(sitting), 'bags').filter((bag) => bag.kind === 'primary')).toHaveLength(6);
  });

  it('a control put off keeps its number, stays on the panel, and can be placed later', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    expect(sitting.screen().join('\n')).toMatch(/MB000613 .*duplicate/);
    sitting.enter(';later no second bag on the chute');
    const put = holeNouns(hole(sitting), 'putOff').at(-1);
    expect(put).toMatchObject({
      number: 'MB000613',
      kind: 'field duplicate',
      reason: 'no second bag on the chute',
    });
    sitting.press('f2', 'enter', 'f2', 'enter');
    expect(sitting.screen().some((line) => line.includes('MB000613  put off'))).toBe(true);
    expect(holeNouns(hole(sitting), 'bags').some((bag) => bag.number === 'MB000613')).toBe(false);
    sitting.enter(';place');
    expect(holeNouns(hole(sitting), 'bags').find((bag) => bag.number === 'MB000613')).toMatchObject({
      kind: 'field duplicate',
      method: 'spear',
    });
    expect(sitting.screen().some((line) => line.includes('put off'))).toBe(false);
  });
});

describe('the entry line on the screen', () => {
  it('logs a row, shows it, and empties the line', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1cl2');
    expect(rows(sitting)).toHaveLength(1);
    expect(sitting.state().draft.text).toBe('');
    expect(sitting.screen().some((line) => /0 +1 +bas/.test(line))).toBe(true);
  });

  it('an empty Enter, pressed or held, logs nothing', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    sitting.press(...Array.from({ length: 20 }, () => 'enter'));
    expect(rows(sitting)).toHaveLength(1);
  });

  it('keeps a refused line whole, says what could be meant, and logs nothing', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    sitting.enter('cl2qq9');
    expect(rows(sitting)).toHaveLength(1);
    expect(sitting.state().draft.text).toBe('cl2qq9');
    expect(said(sitting)).not.toBe('');
  });

  it('asks once and saves the row when = insists', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1py1');
    sitting.enter('py30');
    expect(rows(sitting)).toHaveLength(1);
    expect(said(sitting)).toContain('=');
    sitting.enter('=');
    expect(rows(sitting)).toHaveLength(2);
    expect(rows(sitting)[1]?.asked).toBeUndefined();
  });

  it('= behind a line with two questions insists on both', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1cl1py1');
    sitting.enter('cl3py30');
    expect(said(sitting)).toContain(';');
    sitting.enter('=');
    expect(rows(sitting)).toHaveLength(2);
    expect(rows(sitting)[1]?.cells.sulphides).toEqual({ percents: { PYR: 30 } });
  });

  it('in a burst saves an asked row marked, and = on the empty line settles the oldest', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1py1');
    sitting.burst('py30\rcl1\r');
    expect(rows(sitting).map((row) => row.asked !== undefined)).toEqual([false, true, false]);
    sitting.enter('=');
    expect(rows(sitting).map((row) => row.asked !== undefined)).toEqual([false, false, false]);
    sitting.enter('=');
    expect(said(sitting)).toBe('Nothing is waiting to be settled.');
  });

  it('in a burst holds what is behind a refused line, never glued to it and never dropped', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1cl1');
    sitting.burst('qq9\rcl3\rcl4\r');
    expect(rows(sitting)).toHaveLength(1);
    expect(sitting.state().draft.text).toBe('qq9');
    expect(sitting.screen().some((line) => line.includes('8 keys wait'))).toBe(true);
    sitting.press('escape');
    sitting.enter('cl2');
    expect(rows(sitting).map((row) => row.cells.alteration)).toEqual(
      [1, 2, 3, 4].map((level) => ({ levels: { CHL: level } })),
    );
    expect(sitting.state().held).toHaveLength(0);
  });

  it('takes a scanned bag out of the line, and keeps the draft', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.type('bawx1');
    sitting.burst('MB000603\r');
    expect(sitting.state().draft.text).toBe('bawx1');
    expect(said(sitting)).toContain('MB000603 is the primary 2–3');
  });
});

describe('going back', () => {
  it('opens an earlier row as its own line, amends it, and keeps the line that waited', async () => {
    const sitting = await drilling();
    for (const line of ['bawx1ox1cl1', 'cl2', 'cl1']) sitting.enter(line);
    sitting.type('cl');
    sitting.press('up', 'up');
    expect(sitting.state().screen).toMatchObject({ name: 'log' });
    expect(sitting.screen().some((line) => line.includes('amending 1–2'))).toBe(true);
    sitting.press('ctrl-u');
    sitting.press(...Array.from({ length: 40 }, () => 'backspace'));
    sitting.enter('cl3=');
    expect(rows(sitting)[1]?.cells.alteration).toEqual({ levels: { CHL: 3 } });
    expect(sitting.state().draft.text).toBe('cl');
    expect(hole(sitting).history.at(-1)?.what).toBe('amended 1–2');
  });

  it('undo takes back the latest edit of the hole, redo does it again, and history keeps both', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    const before = hole(sitting).history.length;
    sitting.enter(';u');
    expect(rows(sitting)).toHaveLength(0);
    sitting.enter(';r');
    expect(rows(sitting)).toHaveLength(1);
    expect(hole(sitting).history.length).toBe(before + 2);
  });

  it('shows a range amendment in words before it is made', async () => {
    const sitting = await drilling();
    for (const line of ['bawx1ox1cl1', '.', '.', '.']) sitting.enter(line);
    sitting.enter(';1-3 py2');
    expect(sitting.state().prompt).toMatchObject({ kind: 'preview' });
    expect(sitting.screen().join('\n')).toContain('pyrite');
    sitting.press('enter');
    expect(
      rows(sitting).map((row) => row.cells.sulphides !== undefined && 'percents' in row.cells.sulphides),
    ).toEqual([false, true, true, false]);
  });
});

describe('end of hole', () => {
  it('asks for the depth, shows what is open, asks how the collar is left, records the decision and closes', async () => {
    const sitting = await drilling();
    sitting.press('f2', 'enter');
    sitting.enter('bawx1ox1');
    sitting.enter(';end');
    expect(sitting.screen().join('\n')).toContain('Final depth by rod count');
    sitting.press('enter');
    const open = sitting.screen().join('\n');
    expect(open).toContain('1–6 is not logged');
    expect(open).toContain('No survey shot');
    expect(open).toContain('not capped or plugged');
    sitting.press('enter');
    sitting.enter('c');
    sitting.press('enter');
    expect(headerOf(hole(sitting)).state).toBe('drilling');
    sitting.enter('bit lost');
    expect(said(sitting)).toContain('no one is named as called');
    expect(headerOf(hole(sitting)).state).toBe('drilling');
    sitting.press('enter');
    expect(headerOf(hole(sitting)).state).toBe('complete');
    expect(holeNouns(hole(sitting), 'decisions').at(-1)).toMatchObject({
      depthMm: 6000,
      reason: 'no one was reached: bit lost',
      by: 'NOK',
    });
    expect(holeNouns(hole(sitting), 'collarStates').at(-1)).toMatchObject({ state: 'capped' });
    sitting.enter('cl1');
    expect(rows(sitting)).toHaveLength(1);
    expect(said(sitting)).toContain('closed');
  });

  it('a closed hole is reopened only with a reason, as a recorded act', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10');
    sitting.press('up', 'up', 'up', 'up', 'up', 'up', 'up', 'up');
    sitting.type('o');
    sitting.press('enter');
    expect(headerOf(sitting.hole('MBRC001')).state).toBe('complete');
    sitting.enter('deepen to the second lode');
    expect(headerOf(sitting.hole('MBRC001')).state).toBe('suspended');
    expect(holeNouns(sitting.hole('MBRC001'), 'decisions').at(-1)).toMatchObject({
      kind: 'reopened',
      reason: 'deepen to the second lode',
    });
  });
});

describe('the screen', () => {
  it.each([
    [100, 30],
    [80, 24],
    [132, 43],
  ])('is exactly %i by one row less than %i, on every screen of the sample', async (columns, rowCount) => {
    const sitting = await sitDown(sampleFiles());
    for (const key of ['', 'f1', 'f3', 'f5', 'f6', 'f7', 'f8', 'f9', 'f10']) {
      if (key !== '') sitting.press(key);
      const screen = sitting.screen(columns, rowCount);
      expect(screen).toHaveLength(rowCount - 1);
      for (const line of screen) expect([...line].length).toBe(columns);
      if (key !== 'f10') sitting.press('escape');
    }
  });

  it('says that it is too small below 80 by 24, and keeps all', async () => {
    const sitting = await sitDown(sampleFiles());
    expect(sitting.screen(79, 24)[0]).toContain('Too small');
    expect(sitting.screen(80, 23)[0]).toContain('Too small');
    expect(sitting.screen(80, 24)[0]).not.toContain('Too small');
  });

  it('shows the hole as it was left after the console is closed and opened again', async () => {
    const sitting = await drilling();
    sitting.enter('bawx1ox1');
    const again = await sitting.reopen();
    expect(again.screen()[2]).toContain('from');
    expect(rowsDown(again.hole('MBRC020'))).toEqual(rowsDown(hole(sitting)));
  });
});

describe('the advice screen', () => {
  it('shows each rule with its words and a strip of the metres that decided it', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f5');
    const screen = sitting.screen(100, 60).join('\n');
    expect(screen).toContain('advice on ending the hole on the log to 46 m; 8 m drilled and not logged');
    expect(screen).toContain('Advice only: the driller and the rules of the site prevail.');
    expect(screen).toMatch(/decided by 0–54/);
    expect(screen).toMatch(/█{30,}/);
  });

  it('is hidden while the driller has stopped for safety or the hole, on the panel too', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';stop hose burst');
    expect(sitting.screen().join('\n')).toContain('No advice is shown');
    expect(sitting.screen().join('\n')).not.toContain('barren tail');
    sitting.press('f5');
    expect(sitting.screen().join('\n')).not.toContain('barren tail');
    sitting.press('escape');
    sitting.enter(';go');
    expect(sitting.screen().join('\n')).toContain('barren tail');
  });
});

describe('a decision that ends nothing', () => {
  it('holds the hole open until someone goes on, with who was called and the rules as they stood', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';hold camp wants the deep lode');
    expect(sitting.screen().join('\n')).toContain('ASK');
    sitting.enter(';extend called Ines Falk: to 132 m, hold and void');
    const decision = holeNouns(sitting.hole('MBRC003'), 'decisions').at(-1);
    expect(decision).toMatchObject({
      kind: 'extended',
      called: 'Ines Falk',
      reason: 'to 132 m, hold and void',
      settles: ['hold', 'void'],
      toMm: 132_000,
      depthMm: 54_000,
      loggedMm: 46_000,
    });
    expect(decision).not.toHaveProperty('does');
    expect(decision?.rules.map((rule) => rule.rule)).toContain('barren tail');
    expect(sitting.screen().join('\n')).not.toContain('ASK');
    sitting.enter(';extend');
    expect(said(sitting)).toContain('a reason');
  });

  it.each(['6', '12 m', '24 m zone open'])(
    ';extend %s is neither a depth nor a length, and is refused',
    async (figure) => {
      const sitting = await sitDown(sampleFiles());
      sitting.enter(`;extend ${figure}`);
      expect(said(sitting)).toContain(';extend 6 m more, or ;extend to 132');
      expect(holeNouns(sitting.hole('MBRC003'), 'decisions')).toEqual([]);
    },
  );
});
