import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { checkProject } from '../../src/check/check-hole.ts';
import { formOf } from '../../src/console/line-up/line-up-state.ts';
import { reduce } from '../../src/console/reduce.ts';
import { headerOf, holeNouns } from '../../src/hole/hole.ts';
import { nmeaChecksum } from '../../src/survey/collar/nmea.ts';
import { emptySample, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC004';
const lineUps = (sitting: Sitting) => holeNouns(sitting.hole(HOLE), 'lineUps');
const form = (sitting: Sitting) => formOf(sitting.state(), sitting.hole(HOLE));
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
/** The words of the step in hand as one text: the right-hand box, its line breaks taken out. */
const stepText = (sitting: Sitting, columns: number, rows: number) =>
  sitting
    .screen(columns, rows)
    .map((each) => each.slice(each.lastIndexOf('││') + 2).replace('│', ''))
    .join(' ')
    .replace(/\s+/g, ' ');
const shown = (sitting: Sitting, columns = 100, rows = 30) => sitting.screen(columns, rows).join('\n');

/** The line-up of a planned hole of the sample, opened from its log. */
async function atLineUp(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.press('f10', 'down', 'enter');
  sitting.enter(';line-up');
  expect(sitting.state().screen).toEqual({ name: 'line-up', hole: HOLE });
  return sitting;
}

/** The line-up with cautions and permission behind it, set by the given way. */
async function setBy(way: '1' | '2' | '3'): Promise<Sitting> {
  const sitting = await atLineUp();
  for (const answer of ['', 'Mick Tarrant', way]) sitting.enter(answer);
  return sitting;
}

const planned = (sitting: Sitting) => {
  const [plan] = holeNouns(sitting.hole(HOLE), 'plan');
  if (plan === undefined) throw new Error('the sample hole has a plan');
  return plan;
};

/** Behind the azimuth: no compass, both dips as planned, no collar. */
function finish(sitting: Sitting): void {
  const dip = String(planned(sitting).dipDeg);
  for (const answer of ['', dip, dip, '']) sitting.enter(answer);
}

describe('the order of work', () => {
  it('begins with the cautions of the site, who read them and when; read is not inducted', async () => {
    const sitting = await atLineUp();
    for (const [columns, rows] of [
      [100, 30],
      [80, 24],
    ] as const) {
      const screen = shown(sitting, columns, rows);
      for (const caution of [
        'Old pits west of the pads',
        'Reading this is not an induction',
        'Only the driller moves or stops the rig',
      ])
        expect(screen).toContain(caution);
      expect(screen).toContain('Last read at MBRC003: NOK, 2026-03-14.');
      expect(screen).not.toContain('more below');
    }
    sitting.enter('NOK and Joss');
    expect(form(sitting).taken.cautionsReadBy).toBe('NOK and Joss, 08:00');
  });

  it('takes the word that the cautions were read, or names; not a stray key', async () => {
    const sitting = await atLineUp();
    for (const stray of ['b', 'x', '7', 'yes']) {
      sitting.enter(stray);
      expect(said(sitting)).toBe(
        `“${stray}” names no one. Type read, or the names of those who have read them.`,
      );
      expect(form(sitting).step).toBe('cautions');
      sitting.press(...[...stray].map(() => 'backspace'));
    }
    sitting.enter('read');
    expect(form(sitting)).toMatchObject({ step: 'permission', taken: { cautionsReadBy: 'NOK, 08:00' } });
  });

  it.each([
    ['NOK', 'NOK is you: it takes someone else'],
    ['nadia okafor', 'nadia okafor is you: it takes someone else'],
    ['Okafor', 'Okafor is you: it takes someone else'],
    ['IFA', 'IFA is at camp, not the driller'],
    ['Joss', 'Joss is a field assistant, not the driller'],
    ['Dee Raun', 'Dee Raun is an offsider, not the driller'],
    ['x', '“x” names no one'],
    ['yes', '“yes” names no one'],
    ['nobody', '“nobody” names no one'],
  ])('takes no permission to go to the mast from %s', async (name, problem) => {
    const sitting = await atLineUp();
    sitting.enter('');
    sitting.enter(name);
    expect(said(sitting)).toBe(
      `${problem}. Ask the driller, then type the driller’s name, like Mick Tarrant.`,
    );
    expect(form(sitting)).toMatchObject({ step: 'permission', typed: { text: name } });
    expect(form(sitting).taken.permissionBy).toBeUndefined();
  });

  it.each(['MTA', 'mick', 'Mick Tarrant', 'GD', 'Ruy Sena', 'J. Abe', 'NOK and Mick'])(
    'takes permission from %s: the driller, or someone who is not in the project',
    async (name) => {
      const sitting = await atLineUp();
      sitting.enter('');
      sitting.enter(name);
      expect(form(sitting)).toMatchObject({ step: 'way', taken: { permissionBy: name } });
    },
  );

  it('is not gone on from while some of the cautions were never on the screen: Enter shows them first', async () => {
    const files = sampleFiles();
    const cautions = Array.from({ length: 40 }, (_, index) => `"Rule ${index + 1} of the site."`).join(', ');
    const project = (files['project.json'] ?? '').replace('"cautions": [', `"cautions": [${cautions}, `);
    const sitting = await sitDown({ ...files, 'project.json': project });
    sitting.press('f10', 'down', 'enter');
    sitting.enter(';line-up');
    expect(shown(sitting)).toContain('more below');
    sitting.press('enter');
    expect([form(sitting).step, said(sitting)]).toEqual([
      'cautions',
      'Read to the end first: Enter goes on.',
    ]);
    expect(form(sitting).taken.cautionsReadBy).toBeUndefined();
    for (let pages = 0; shown(sitting).includes('more below') && pages < 10; pages++)
      sitting.press('page-down');
    expect(shown(sitting)).toContain('Reading this is not an induction');
    sitting.press('page-up', 'enter');
    expect(form(sitting)).toMatchObject({ step: 'permission', taken: { cautionsReadBy: 'NOK, 08:00' } });
  });

  it('goes no further without a permission', async () => {
    const sitting = await atLineUp();
    sitting.press('enter', 'enter');
    expect(said(sitting)).toContain('who gave permission');
    expect(form(sitting).step).toBe('permission');
  });

  it('shows the plan in every north with the signs of declination and convergence in words', async () => {
    const sitting = await atLineUp();
    sitting.enter('');
    sitting.enter('Mick Tarrant');
    for (const [columns, rows] of [
      [100, 30],
      [80, 24],
    ] as const) {
      const text = stepText(sitting, columns, rows);
      for (const north of ['true', 'magnetic', 'grid'])
        expect(text).toMatch(new RegExp(`\\d° ${north} dip -60\\.0°`));
      expect(text).toContain('grid dip -60.0° as planned');
      expect(text).toMatch(/Declination 0\.\d\d° east/);
      expect(text).toContain('World Magnetic Model WMM-2025');
      expect(text).toContain('grid = true - convergence');
    }
  });

  it('asks no azimuth of the mast where it is set by compass', async () => {
    const sitting = await setBy('3');
    expect(form(sitting).step).toBe('distance');
  });

  it('leads back step by step with Escape, and nothing read is lost, on other screens either', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    sitting.press('escape', 'escape', 'f6', 'escape');
    expect(sitting.state().screen.name).toBe('log');
    sitting.enter(';line-up');
    expect(form(sitting)).toMatchObject({
      step: 'way',
      taken: { permissionBy: 'Mick Tarrant', way: 'sight pegs' },
    });
    sitting.press('enter');
    expect(shown(sitting)).toContain('Enter keeps it');
    sitting.press('enter');
    expect(form(sitting).step).toBe('distance');
    sitting.press(...Array.from({ length: 6 }, () => 'escape'));
    expect(sitting.state().screen.name).toBe('log');
  });

  it('can not be opened for a hole without a planned direction, and says so', async () => {
    const sitting = await sitDown(emptySample());
    sitting.type('n');
    sitting.enter('MBRC031');
    sitting.press('enter');
    sitting.enter(';line-up');
    expect(sitting.state().screen.name).toBe('log');
    expect(said(sitting)).toContain('no planned direction');
  });
});

describe('what is read at the rig', () => {
  it('is refused as a back-bearing, off the circle or as no number, and is kept to be mended', async () => {
    const sitting = await setBy('1');
    const back = String((planned(sitting).azimuthDeg + 180) % 360);
    for (const [typed, why] of [
      [back, 'back-bearing'],
      ['365', 'from 0 to 360'],
      ['north', 'Type degrees'],
    ] as const) {
      sitting.enter(typed);
      expect(said(sitting)).toContain(why);
      expect(form(sitting)).toMatchObject({ step: 'azimuth', typed: { text: typed } });
      sitting.press('ctrl-u');
    }
    expect(form(sitting).taken.azimuth).toBeUndefined();
  });

  it('by compass is told from its other end, and asked about where it is neither', async () => {
    const sitting = await setBy('3');
    const expected = /Expect (\d+\.\d)° magnetic/.exec(shown(sitting))?.[1] ?? '';
    const back = ((Number(expected) + 180) % 360).toFixed(1);
    sitting.enter('20');
    sitting.enter(expected);
    sitting.enter(back);
    expect(said(sitting)).toContain('the other one: sighted back');
    expect(shown(sitting)).toContain(`20 m: ${back}°, the other end: ${expected}° along the hole`);
    sitting.enter(`${back}b`);
    expect(said(sitting)).toBe('');
    sitting.enter(((Number(expected) + 90) % 360).toFixed(1));
    expect(said(sitting)).toContain('neither');
    expect(form(sitting).taken.compass).toHaveLength(3);
    sitting.press('ctrl-u');
    sitting.enter('x');
    expect(form(sitting).taken.compass).toHaveLength(2);
  });

  it('by compass near the rig is taken and not counted', async () => {
    const sitting = await setBy('3');
    sitting.enter('2');
    sitting.enter(/Expect (\d+\.\d)° magnetic/.exec(shown(sitting))?.[1] ?? '');
    expect(said(sitting)).toContain('not counted');
  });

  it('by clinometer is refused where it is +60 for -60 or an inclination, and = insists', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    sitting.enter('');
    sitting.enter(String(-planned(sitting).dipDeg));
    expect(said(sitting)).toContain('points upwards');
    sitting.press('ctrl-u');
    sitting.enter(String(90 + planned(sitting).dipDeg + 0.4));
    expect(said(sitting)).toContain('inclination from vertical');
    sitting.enter('=');
    expect(form(sitting).step).toBe('clinometer');
  });

  it('of the GPS is pasted whole, however many lines it sends', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    for (const answer of ['', '-60', '-60']) sitting.enter(answer);
    const body = 'GPGGA,010203,3606.95629,S,12201.62247,E,1,09,0.9,431.5,M,,M,,';
    const sentence = `$${body}*${nmeaChecksum(body)}`;
    const text = Array.from({ length: 40 }, () => sentence).join('\n');
    const [next] = reduce(
      sitting.state(),
      { kind: 'key', event: { kind: 'paste', text } },
      { newId: () => 'x-1', now: sitting.state().now, ahead: false },
    );
    expect(formOf(next, sitting.hole(HOLE)).taken.collar?.source).toContain('40 fixes');
  });
});

describe('a collar typed', () => {
  it.each([
    ['6002160 412460 431', 'east and north swapped'],
    ['1353215.2 19692126.0 431', 'feet'],
    ['-127949.8 5980008.6 431', 'zone 52, not zone 51'],
    ['512460 6002160 431', 'km from the nearest planned one'],
  ])('as %s is refused with the distance and the likely cause: %s', async (typed, why) => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    for (const answer of ['', '-60', '-60']) sitting.enter(answer);
    sitting.enter(typed);
    expect(said(sitting)).toContain(why);
    expect(said(sitting)).toMatch(/\d k?m from the nearest planned one/);
    expect(form(sitting)).toMatchObject({ step: 'collar', typed: { text: typed } });
    sitting.enter('=');
    expect(form(sitting).step).toBe('result');
  });
});

describe('a GPS given by its path', () => {
  const body = 'GPGGA,010203,3606.95629,S,12201.62247,E,1,09,0.9,431.5,M,,M,,';
  const sentence = `$${body}*${nmeaChecksum(body)}`;

  async function atCollar(): Promise<Sitting> {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    for (const answer of ['', '-60', '-60']) sitting.enter(answer);
    return sitting;
  }

  function file(text: string): string {
    const path = join(mkdtempSync(join(tmpdir(), 'offsider-line-up-')), 'gps.txt');
    writeFileSync(path, text);
    return path;
  }

  it('is read, averaged and shown beside the planned position with its quality', async () => {
    const sitting = await atCollar();
    sitting.enter(file(`${sentence}\n${sentence}\n`));
    expect(said(sitting)).toContain('Reading the GPS');
    await vi.waitFor(() => expect(form(sitting).taken.collar?.source).toContain('2 fixes'));
    const text = stepText(sitting, 100, 30);
    expect(text).toMatch(/Collar read: .* m from the planned one towards \d{3}° grid/);
    expect(text).toMatch(/Planned: .* in use/);
    expect(text).toContain('no shift made');
  });

  it.each([
    ['03,8.4', '3 satellites (at least 5), HDOP 8.4 (at most 5)'],
    ['09,8.4', 'HDOP 8.4 (at most 5)'],
  ])(
    'that is too poor to judge by says that, and not that the rig is on another peg: %s',
    async (quality, why) => {
      const poor = body.replace('09,0.9', quality);
      const sitting = await atCollar();
      sitting.enter(file(`$${poor}*${nmeaChecksum(poor)}\n`));
      await vi.waitFor(() => expect(said(sitting)).toContain(`too poor to judge the peg by: ${why}`));
      expect(said(sitting)).not.toContain('right peg');
      expect(said(sitting)).toContain('Add = to accept it');
      expect(form(sitting).taken.collar).toBeUndefined();
      sitting.type(' =');
      sitting.press('enter');
      await vi.waitFor(() => expect(form(sitting).taken.collar).toBeDefined());
      // It is kept with the collar: what is said of it later is the same.
      sitting.enter('');
      sitting.enter('');
      expect(lineUps(sitting)).toHaveLength(1);
      sitting.press('f6');
      expect(shown(sitting)).toContain('too poor to judge the peg by');
      expect(shown(sitting)).not.toContain('right peg');
      const found = checkProject(sitting.state().project, sitting.state().documents.values());
      const ofCollar = found.filter(
        ({ code, place }) => place.hole === HOLE && code.startsWith('survey-collar'),
      );
      expect(ofCollar.map(({ code }) => code)).toEqual(['survey-collar-fix-poor']);
    },
  );

  it('that gives nothing, or a checksum that does not fit, says why and loses nothing', async () => {
    const sitting = await atCollar();
    sitting.enter('/nowhere/gps');
    await vi.waitFor(() => expect(said(sitting)).toContain('the file or its folder is not there'));
    expect(form(sitting)).toMatchObject({ step: 'collar', typed: { text: '/nowhere/gps' } });
    sitting.press('ctrl-u');
    sitting.enter(file(sentence.replace('431.5', '431.6')));
    await vi.waitFor(() => expect(said(sitting)).toContain('checksum'));
    sitting.press('ctrl-u');
    sitting.enter(file('no sentence at all'));
    await vi.waitFor(() => expect(said(sitting)).toContain('No fix in it'));
    expect(form(sitting).taken.collar).toBeUndefined();
  });
});

describe('the way to the mast', () => {
  it('is open only to who is taken in by the driller, with the rig stopped and isolated', async () => {
    const sitting = await atLineUp();
    sitting.press('enter');
    expect(stepText(sitting, 80, 24)).toContain('Ask the driller to stop and isolate the rig for the checks');
    expect(stepText(sitting, 80, 24)).toContain('no one goes to the mast unless the driller takes them in');
    for (const answer of ['Mick Tarrant', '1', String(planned(sitting).azimuthDeg), ''])
      sitting.enter(answer);
    expect(stepText(sitting, 80, 24)).toContain('Ask the driller to read out the dip that the crew set');
    sitting.enter(String(planned(sitting).dipDeg));
    expect(stepText(sitting, 80, 24)).toContain(
      'only once the driller has stopped and isolated the rig and takes you in to the mast',
    );
  });

  it('is not needed for the device on it: the driller reads it out', async () => {
    const sitting = await setBy('2');
    expect(stepText(sitting, 80, 24)).toContain(
      'Ask the driller to read out the azimuth of the alignment device',
    );
  });

  it('is 20 m off for a compass, unless the project says otherwise', async () => {
    const sitting = await setBy('3');
    expect(stepText(sitting, 80, 24)).toContain('20 m or more, outside traffic.');
    const files = sampleFiles();
    const project = JSON.parse(files['project.json'] ?? '{}');
    project.survey.compassNearestM = 35;
    const further = await sitDown({ ...files, 'project.json': JSON.stringify(project) });
    further.press('escape', 'f10', 'down', 'enter');
    further.enter(';line-up');
    for (const answer of ['', 'Mick Tarrant', '3']) further.enter(answer);
    expect(stepText(further, 80, 24)).toContain('35 m or more, outside traffic.');
  });
});

describe('the decision', () => {
  it('inside tolerance is accepted by Enter, recorded, and is station 0', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg + 0.4));
    finish(sitting);
    expect(shown(sitting, 80, 24)).toContain('Inside tolerance');
    expect(lineUps(sitting)).toHaveLength(0);
    sitting.press('enter');
    expect(lineUps(sitting)).toMatchObject([
      { accepted: true, permissionBy: 'Mick Tarrant', cautionsReadBy: 'NOK, 08:00' },
    ]);
    expect(sitting.state().screen.name).toBe('log');
    sitting.press('f6');
    expect(shown(sitting)).toMatch(/0 m .*as set/);
    sitting.press('escape');
    sitting.enter(';line-up');
    expect(form(sitting)).toMatchObject({ step: 'cautions', taken: { compass: [] } });
  });

  it('outside is refused with the correction to request, and the mast is read again', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg + 1.6));
    finish(sitting);
    const screen = shown(sitting);
    expect(screen).toContain('OUTSIDE 1.0°');
    expect(screen).toMatch(/m off at the target/);
    for (const rows of [30, 24]) {
      const text = stepText(sitting, rows === 24 ? 80 : 100, rows);
      expect(text).toMatch(/OUTSIDE tolerance\. Ask the driller to bring the rig round 1\.6°/);
      expect(text).toContain('Enter alone: refused and recorded with this request');
    }
    sitting.press('enter');
    expect(lineUps(sitting)).toMatchObject([
      { accepted: false, correction: expect.stringContaining('Ask the driller') },
    ]);
    expect(form(sitting)).toMatchObject({
      step: 'azimuth',
      taken: { permissionBy: 'Mick Tarrant', way: 'sight pegs' },
    });
    expect(form(sitting).taken.azimuth).toBeUndefined();
    expect(form(sitting).taken.clinometerDip).toBeUndefined();
    sitting.press('escape', 'escape', 'escape', 'escape', 'f6');
    expect(shown(sitting)).toContain('no line-up is accepted');
  });

  it('outside is accepted all the same with a reason, which is recorded', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg + 1.6));
    finish(sitting);
    sitting.enter('the pad is too narrow to turn');
    expect(lineUps(sitting)).toMatchObject([{ accepted: true, because: 'the pad is too narrow to turn' }]);
  });

  it('is not made while something is missing', async () => {
    const sitting = await setBy('3');
    finish(sitting);
    expect(shown(sitting)).toContain('The compass gives no azimuth that can be used');
    sitting.press('enter');
    expect(lineUps(sitting)).toHaveLength(0);
    expect(said(sitting)).toContain('Nothing is recorded');
  });

  it('made is undone like any other edit', async () => {
    const sitting = await setBy('1');
    sitting.enter(String(planned(sitting).azimuthDeg));
    finish(sitting);
    sitting.press('enter');
    expect(lineUps(sitting)).toHaveLength(1);
    sitting.enter(';u');
    expect(lineUps(sitting)).toHaveLength(0);
  });
});

describe('the line-up of a hole not begun', () => {
  it('opens from the list of holes, leads back to it, and starts no drilling', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10', 'down');
    const list = sitting.state().screen;
    sitting.type('l');
    expect(sitting.state().screen).toEqual({ name: 'line-up', hole: HOLE });
    sitting.press('escape');
    expect(sitting.state().screen).toEqual(list);
    sitting.type('l');
    for (const answer of ['', 'Mick Tarrant', '1', String(planned(sitting).azimuthDeg)])
      sitting.enter(answer);
    finish(sitting);
    sitting.press('enter');
    expect(lineUps(sitting)).toMatchObject([{ accepted: true }]);
    expect(sitting.state().screen).toEqual(list);
    expect(headerOf(sitting.hole(HOLE)).state).toBe('planned');
  });
});
