import { describe, expect, it } from 'vitest';
import { screenLines } from '../../src/console/screens/screen.ts';
import { themeFor } from '../../src/console/theme.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import type { Files, Sitting } from './support/sitting.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

const hole = (sitting: Sitting) => sitting.hole('MBRC003');
const shots = (sitting: Sitting) => holeNouns(hole(sitting), 'shots');
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const shown = (sitting: Sitting, columns = 100, rows = 30) => sitting.screen(columns, rows).join('\n');

/** The sample at the hole that is drilling, its survey open. */
async function atSurvey(files: Files = sampleFiles()): Promise<Sitting> {
  const sitting = await sitDown(files);
  expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC003' });
  sitting.press('f6');
  return sitting;
}

/** A magnetic run in open hole, its sensor 3 m behind the bit. */
function beginMagnetic(sitting: Sitting): void {
  sitting.type('r');
  for (const answer of ['1', '', '', '2', '', 'tool 5', '3', '']) sitting.enter(answer);
}

describe('the survey screen', () => {
  it('shows each shot as read and as used, and the miss at the target by both projections', async () => {
    const sitting = await atSurvey();
    for (const [columns, rows] of [
      [100, 30],
      [80, 24],
    ] as const) {
      const screen = shown(sitting, columns, rows);
      expect(screen).toMatch(/42 m +-59\.8° +270\.9° true +270\.3°/);
      expect(screen).toMatch(/0 m +-60\.1° +as set +269\.9°/);
      expect(screen).toContain('PROJECTED straight');
      expect(screen).toContain('PROJECTED on trend');
      expect(screen).toContain('Target within reach');
      expect(screen).toContain('nothing doubtful');
    }
  });

  it('draws the hole from above and from the side, and the same key leads back', async () => {
    const sitting = await atSurvey();
    for (const [key, title] of [
      ['p', 'plan · right is east'],
      ['s', 'section along 270°'],
    ] as const) {
      sitting.type(key);
      for (const rows of [24, 30]) {
        const screen = shown(sitting, rows === 24 ? 80 : 100, rows);
        expect(screen).toContain(title);
        expect(screen).toMatch(/[\u2801-\u28ff]/);
        expect(screen).toContain('one scale both ways');
        expect(screen).toContain('it was not measured there');
      }
      sitting.type(key);
      expect(shown(sitting)).toContain('PROJECTED');
    }
  });

  it('draws no picture in plain characters, and says so', async () => {
    const sitting = await atSurvey();
    sitting.type('s');
    const lines = screenLines(
      sitting.state(),
      { columns: 80, rows: 23 },
      themeFor({ colour: false, ascii: true }),
    );
    const screen = lines.map((each) => each.map((span) => span.text).join('')).join('\n');
    expect(screen).toContain('plain characters');
    expect(screen).not.toMatch(/[\u2800-\u28ff]/);
  });

  it('says of a hole without any direction what it takes, in the table and in the pictures', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'down');
    sitting.press('enter', 'f6');
    expect(sitting.state().screen).toMatchObject({ name: 'survey', hole: 'MBRC004' });
    expect(shown(sitting)).toContain('No shot is recorded yet');
    sitting.type('p');
    expect(shown(sitting)).toContain('No direction is known yet');
    sitting.type('pa');
    expect(said(sitting)).toContain('no shot under the cursor');
  });

  it('keeps its cursor on the shots', async () => {
    const sitting = await atSurvey();
    const cursor = () => (sitting.state().screen as { readonly cursor: number }).cursor;
    sitting.press('down', 'page-down');
    expect(cursor()).toBe(1);
    sitting.press('page-up', 'up');
    expect(cursor()).toBe(0);
  });
});

describe('a good shot below a misread one', () => {
  it('is recorded without a question; the misread one is named and picked, and its rejection settles it', async () => {
    const sitting = await atSurvey();
    sitting.type('n');
    sitting.enter('48 -59.7 207.9');
    expect(said(sitting)).toContain('Looks wrong. Add = to accept it.');
    sitting.enter('=');
    expect(shots(sitting)).toHaveLength(3);
    sitting.type('n');
    sitting.enter('54 -59.6 271.1');
    expect(shots(sitting)).toHaveLength(4);
    expect(said(sitting)).toMatch(/^Shot at 54 m recorded\. The shot at 48 m looks wrong: it points/);
    for (const [columns, rows] of [
      [100, 30],
      [80, 24],
    ] as const)
      expect(shown(sitting, columns, rows)).toMatch(/48 m +-59\.7° +207\.9° true +not +left out/);
    sitting.type('x');
    sitting.enter('misread');
    sitting.type('y');
    expect(shots(sitting)[2]).toMatchObject({ depthMm: 48_000, rejected: 'misread' });
    expect(shown(sitting)).not.toContain('points');
  });

  it('has its remedy whole at 80 by 24, the rest of the target one shot further', async () => {
    const sitting = await atSurvey();
    sitting.type('n');
    sitting.enter('48 -59.7 207.9');
    sitting.enter('=');
    sitting.press('down', 'down');
    const plain = () => sitting.screen(80, 24).join(' ').replaceAll('│', ' ').replace(/\s+/g, ' ');
    expect(plain()).toMatch(/\? The direction changes by .*Ask the driller to take the deeper shot again\./);
    expect(plain()).not.toContain('make the window higher');
  });

  it('is named so from the log too', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';shot 48 -59.7 207.9 =');
    sitting.enter(';shot 54 -59.6 271.1');
    expect(said(sitting)).toContain('The shot at 48 m looks wrong');
    expect(shots(sitting)).toHaveLength(4);
  });
});

describe('an azimuth rejected alone', () => {
  it('asks for a reason, leaves the dip, and is used again with a reason', async () => {
    const sitting = await atSurvey();
    sitting.type('a');
    sitting.press('enter');
    expect(said(sitting)).toContain('Say why');
    sitting.enter('near the bit');
    sitting.type('y');
    expect(shots(sitting)[1]).toMatchObject({ azimuthRejected: 'near the bit', dipDeg: -59.8 });
    expect(shown(sitting)).toMatch(/\(269\.7\).*dip only/);
    expect(shown(sitting)).toContain('Azimuth not used: near the bit');
    sitting.type('a');
    expect(shown(sitting)).toContain('Why is it used again?');
    sitting.enter('it was the shot above');
    sitting.type('y');
    expect(shots(sitting)[1]).not.toHaveProperty('azimuthRejected');
    expect(hole(sitting).history.at(-1)?.what).toContain('it was the shot above');
  });

  it('is left as it is by Escape', async () => {
    const sitting = await atSurvey();
    sitting.type('x');
    sitting.type('moved');
    sitting.press('escape');
    expect(shots(sitting).some((shot) => shot.rejected !== undefined)).toBe(false);
  });

  it('is told from a shot rejected whole', async () => {
    const sitting = await atSurvey();
    sitting.type('x');
    sitting.enter('the tool moved');
    sitting.type('y');
    expect(shots(sitting)[1]).toMatchObject({ rejected: 'the tool moved' });
    expect(shown(sitting)).toMatch(/42 m .* not +rejected/);
  });
});

describe('a survey run', () => {
  it('is asked about once, the usual answers on Enter alone, and its first shot follows', async () => {
    const sitting = await atSurvey();
    beginMagnetic(sitting);
    expect(holeNouns(hole(sitting), 'runs').at(-1)).toMatchObject({
      tool: 'tool 5',
      toolClass: 'magnetic',
      north: 'magnetic',
      pass: 'single',
      inside: 'open hole',
      toolOffsetMm: 3000,
      operator: 'driller',
    });
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot' });
    sitting.enter('b54 -59.6 269.6');
    expect(shots(sitting).at(-1)).toMatchObject({ depthMm: 51_000, azimuthDeg: 269.6 });
    expect(sitting.state().prompt).toBeUndefined();
    expect((sitting.state().screen as { readonly cursor: number }).cursor).toBe(2);
  });

  it('like the one before is begun by 0 alone, on another hole too', async () => {
    const sitting = await atSurvey();
    sitting.type('r');
    expect(shown(sitting)).toContain(
      '0 the same again: north-seeking gyro (gyro 2), true north, single shots',
    );
    sitting.enter('0');
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot' });
    const runs = holeNouns(hole(sitting), 'runs');
    expect(runs).toHaveLength(2);
    const [{ at: _first, ...before }, { at: _second, ...after }] = runs as never as [
      { at: string },
      { at: string },
    ];
    expect(after).toEqual(before);
  });

  it('takes nothing that is not among its answers', async () => {
    const sitting = await atSurvey();
    sitting.type('r');
    sitting.enter('7');
    expect(said(sitting)).toBe('Type a number from 1 to 3.');
    expect(sitting.state().prompt).toMatchObject({ kind: 'survey run', step: 0 });
  });

  it('asks how far steel is only of a magnetic tool in open hole', async () => {
    const sitting = await atSurvey();
    sitting.type('r');
    for (const answer of ['', '', '', '2']) sitting.enter(answer);
    expect(shown(sitting)).toContain('Which tool');
    sitting.press('escape');
    sitting.type('r');
    for (const answer of ['1', '', '', '2']) sitting.enter(answer);
    expect(shown(sitting)).toContain('How far is the sensor from steel');
  });

  it('in or out of the hole takes shot after shot until an empty Enter', async () => {
    const sitting = await atSurvey();
    sitting.type('r');
    for (const answer of ['', '', '3', '', 'gyro 2', '', '']) sitting.enter(answer);
    sitting.enter('50 -59.7 271.1');
    sitting.enter('40 -59.8 270.9');
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot' });
    sitting.press('enter');
    expect(sitting.state().prompt).toBeUndefined();
    expect(
      shots(sitting)
        .slice(-2)
        .map((shot) => shot.depthMm),
    ).toEqual([50_000, 40_000]);
  });
});

describe('a shot of a magnetic tool', () => {
  it('takes its total field and magnetic dip behind the azimuth, and holds them against the model', async () => {
    const sitting = await atSurvey();
    beginMagnetic(sitting);
    expect(shown(sitting).replace(/[│\s]+/g, ' ')).toContain('total field and magnetic dip');
    sitting.enter('50 -59.7 269.4 59900 -66.1');
    expect(said(sitting)).toContain('he field at this shot is not the Earth');
    sitting.enter('=');
    expect(shots(sitting).at(-1)).toMatchObject({ fieldNt: 59_900, magneticDipDeg: -66.1 });
  });
});

describe('a shot typed', () => {
  it.each([
    ['48 59.7 271', 'points upwards'],
    ['48 30.3 271', 'inclination from vertical'],
    ['48 -59.7 365', 'from 0 to 360'],
    ['48 -99 271', 'vertically'],
    ['160 -59.7 271', 'feet'],
    ['48 -59.7 91', 'back-bearing'],
    ['40 -59.7 271', 'not below the one before it'],
    ['42 -59.7 271', 'has a shot at 42 m'],
    ['48', 'depth, dip and azimuth'],
  ])('%s is not recorded: %s', async (typed, why) => {
    const sitting = await atSurvey();
    sitting.type('n');
    sitting.enter(typed);
    expect(said(sitting)).toContain(why);
    expect(shots(sitting)).toHaveLength(2);
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot', draft: { text: typed } });
  });

  it('that is doubtful is recorded as it was typed once = insists, and stays marked', async () => {
    const sitting = await atSurvey();
    sitting.type('n');
    sitting.enter('48 -59.7 91');
    sitting.enter('=');
    expect(shots(sitting).at(-1)).toMatchObject({ azimuthDeg: 91 });
    expect(shown(sitting)).toMatch(/▸\? 48 m/);
    expect(shown(sitting)).toContain('This azimuth is the back-bearing');
  });

  it('that can not be is not helped by =', async () => {
    const sitting = await atSurvey();
    sitting.type('n');
    sitting.enter('160 -59.7 271 =');
    expect(shots(sitting)).toHaveLength(2);
  });

  it('behind ;shot is recorded at once, or waits in the prompt with what is doubtful', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';shot 48 -59.7 271');
    expect(shots(sitting)).toHaveLength(3);
    expect(said(sitting)).toMatch(/Shot at 48 m recorded: dip .*, azimuth \d+\.\d° true\./);
    sitting.enter(';shot 51 -59.7 91');
    expect(shots(sitting)).toHaveLength(3);
    expect(sitting.state().prompt).toMatchObject({ kind: 'shot', draft: { text: '51 -59.7 91' } });
  });

  it('alone behind ; opens the prompt', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';shot');
    expect(shown(sitting)).toContain('north-seeking gyro (gyro 2), true north, single shots');
  });
});

describe('a blunder of a whole run', () => {
  it('is asked about as it is typed, and marked on each of its shots and on no other', async () => {
    const sitting = await atSurvey();
    sitting.press('escape');
    sitting.enter(';run aligned single from grid tool gyro 3');
    sitting.press('f6');
    for (const shot of ['20 -60 276.1 =', '30 -59.9 276.2 =', '48 -59.8 276.4 =']) {
      sitting.type('n');
      sitting.enter(shot);
    }
    const screen = shown(sitting);
    for (const depth of [20, 30, 48]) expect(screen).toMatch(new RegExp(`\\? ${depth} m`));
    for (const depth of [12, 42]) expect(screen).not.toMatch(new RegExp(`\\? ${depth} m`));
    expect(screen).toContain('The gyro reads as if it was misaligned at the collar');
    expect(shown(sitting, 80, 24)).toContain('misaligned at the collar');
  });
});

describe('what the plan expects', () => {
  it('is shown beside the log, with how far off it came, at 80 columns too; the same key leads back', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';expect lode 70-78 seen sulphides PYR>=2');
    sitting.enter(';expect old stope 63-66 void');
    sitting.press('f6');
    expect(shown(sitting)).toContain('1 of the plan not as expected: e');
    sitting.type('e');
    for (const [columns, rows] of [
      [80, 24],
      [100, 30],
    ] as const) {
      const screen = shown(sitting, columns, rows);
      expect(screen).toContain('lode  planned at 70 to 78 m');
      expect(screen).toContain('logged: 45 m, 25.0 m higher than expected');
      expect(screen).toContain('old stope (VOID)');
      expect(screen.replace(/[│\s]+/g, ' ')).toContain('No warning is no clearance');
    }
    sitting.type('e');
    expect(shown(sitting)).toContain('PROJECTED');
  });

  it('is nothing where nothing was said, and how to say it', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';expect Cuckoo lode none');
    sitting.enter(';expect old stope none');
    sitting.press('f6');
    sitting.type('e');
    expect(shown(sitting)).toContain('The plan expects nothing yet');
  });
});

describe('a hazard zone of the plan', () => {
  it('is warned of beside the log, at 80 columns too, and no warning is called no clearance', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';expect seam 60 fibre');
    for (const columns of [80, 100]) {
      const screen = shown(sitting, columns, columns === 80 ? 24 : 30);
      expect(screen).toContain('FIBRE from 60 m: within 6 m');
      expect(screen).toContain('No warning is no clearance.');
    }
  });
});
