import { describe, expect, it } from 'vitest';
import { type HoleNoun, type HoleTable, holeNouns, holeThings } from '../../src/hole/hole.ts';
import { brokenOff } from '../../src/standing/breaks.ts';
import { headsOf } from '../../src/standing/heads.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

/** A hole made on the rig, drilling, with numbered bags. */
async function drilling(files: Files = emptySample()): Promise<Sitting> {
  const sitting = await sitDown(files);
  sitting.type('n');
  sitting.enter('MBRC020 270g -60 120');
  sitting.press('enter');
  sitting.enter(';numbered MB000601 MB000720');
  return sitting;
}

const hole = (sitting: Sitting) => sitting.hole('MBRC020');
const table = <T extends HoleTable>(sitting: Sitting, name: T): readonly HoleNoun<T>[] =>
  holeNouns(hole(sitting), name);
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const shown = (sitting: Sitting) => sitting.screen().join('\n');
const rods = (sitting: Sitting, count: number) => {
  for (let each = 0; each < count; each++) sitting.press('f2', 'enter');
};

describe('a rod whose bags don’t match', () => {
  it('asks for one more look, takes its answer, and checks again', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('614 x8');
    expect(shown(sitting)).toContain('How many standards, blanks and duplicates are there in this rod?');
    expect(shown(sitting)).toContain('a = a bag too many');
    sitting.enter('c2');
    expect(sitting.state().prompt).toMatchObject({ kind: 'mismatch', looked: { controls: 2 } });
    expect(shown(sitting)).toContain('a = a control put in early');
    expect(shown(sitting)).not.toContain('a bag too many');
    expect(headsOf(hole(sitting)).drilledMm).toBe(6000);
  });

  it('is settled by the right number of the last calico, typed after it was misread', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    const before = table(sitting, 'bags').length;
    sitting.press('f2');
    const last = /the last calico is (\w+)/.exec(shown(sitting))?.[1] ?? '';
    const wrong = String(Number(last.slice(-3)) - 3);
    sitting.enter(wrong);
    expect(sitting.state().prompt?.kind).toBe('mismatch');
    sitting.enter(last.slice(-3));
    expect(sitting.state().prompt).toBeUndefined();
    expect(said(sitting)).toContain('The bags match');
    expect(table(sitting, 'rods').at(-1)).not.toHaveProperty('mismatch');
    expect(table(sitting, 'rods').at(-1)).toMatchObject({ read: true });
    expect(table(sitting, 'bags').length).toBeGreaterThan(before);
  });

  it('is mended as one edit, which leaves bags their rod and which undo takes back whole', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    const before = hole(sitting).tables;
    sitting.press('f2');
    sitting.enter('611');
    sitting.enter('a');
    const rod = holeThings(hole(sitting), 'rods').at(-1)?.[0];
    expect(table(sitting, 'rods').at(-1)?.mismatch).toBeDefined();
    expect(table(sitting, 'bags').filter((bag) => bag.rod === rod).length).toBeGreaterThan(0);
    expect(table(sitting, 'bags').every((bag) => bag.rod !== undefined)).toBe(true);
    sitting.enter(';u');
    expect(hole(sitting).tables).toEqual(before);
  });

  it('says of each way what becomes of which number, and on the smallest screen all of them can be read', async () => {
    const sitting = await drilling();
    sitting.enter(';spoiled 603 torn');
    rods(sitting, 2);
    sitting.press('f2');
    sitting.enter('x6');
    const small = sitting
      .screen(80, 24)
      .join('\n')
      .replace(/[│\s]+/g, ' ');
    expect(small).toContain('a = a control forgotten: MB000620 holds 17–18; the standard goes to MB000621');
    expect(small).toContain(
      'b = a control forgotten: no number changes; MB000620 is empty, put its standard in now',
    );
    expect(small).toContain('Esc back');
    sitting.enter('b');
    expect(said(sitting)).toContain(
      'rod 3 done at 18 m, nothing changed (a control forgotten): MB000620 is empty, put its standard in now',
    );
    sitting.enter(';u');
    sitting.press('f2');
    sitting.enter('x6');
    sitting.enter('a');
    expect(said(sitting)).toContain('rod 3 done at 18 m, fixed as a control forgotten: MB000620 holds 17–18');
  });

  it('asks of a number that is kept for a metre without return, and takes it with =', async () => {
    const sitting = await drilling();
    sitting.enter(';recovery none 5-6');
    sitting.press('f2');
    expect(shown(sitting)).toContain('the last calico is MB000605; 1 number is kept, no sample');
    sitting.enter('606');
    expect(said(sitting)).toContain('MB000606 is kept for 5–6, where nothing came up. Look into the calico.');
    expect(sitting.state().prompt).toMatchObject({ kind: 'rod', draft: { text: '606' } });
    sitting.type(' =');
    sitting.press('enter');
    expect(said(sitting)).toContain('Rod 1 done at 6 m, 5 bags and 1 kept without a sample');
  });

  it('is compared with its pile in a window that no key of it changes anything from', async () => {
    const sitting = await drilling();
    rods(sitting, 2);
    const before = hole(sitting).tables;
    sitting.enter(';scan 9.5 609');
    expect(shown(sitting)).toContain('Nothing is changed.');
    expect(shown(sitting)).not.toContain('no one read its bags');
    sitting.press('ctrl-u');
    expect(sitting.state().prompt).toBeUndefined();
    expect(hole(sitting).tables).toEqual(before);
    sitting.press('ctrl-u');
    expect(said(sitting)).toContain('Undone: rod 2 done');
  });

  it('is never called fixed where no number was changed: a number gone back to', async () => {
    const sitting = await drilling();
    rods(sitting, 2);
    sitting.press('f2');
    sitting.enter('610');
    expect(shown(sitting)).toContain('a = a wrong restart: no number changes; write the numbers of this rod');
    sitting.enter('a');
    expect(said(sitting)).toContain(
      'rod 3 done at 18 m, nothing changed (a wrong restart): write the numbers',
    );
    expect(said(sitting)).not.toContain('fixed');
  });

  it('names the depth mark first where the depth that is typed is not that of the rods', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('613 @13');
    expect(shown(sitting)).toContain('the depth mark is out');
    expect(shown(sitting)).toContain('a = the depth mark is out: the rod ends at 12 m; MB000614 stays');
  });

  it('says that a number with another prefix is wanted whole', async () => {
    const sitting = await drilling();
    sitting.press('f2');
    expect(shown(sitting).replace(/[│\s]+/g, ' ')).toContain('the whole number, unless it begins with MB');
    sitting.enter('QQ000606');
    expect(shown(sitting)).toContain('a foreign bag');
  });

  it('takes hands near the splitter only under the driller’s word', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.press('f2');
    sitting.enter('612 x6');
    const words = shown(sitting).replace(/[│\s]+/g, ' ');
    expect(words).toContain(' = an empty second chute');
    expect(words).toContain(
      'Go near the cyclone or splitter only when the driller confirms that rotation is stopped, air is off and bled, and site isolation is done.',
    );
  });
});

describe('a bag scanned at any time', () => {
  it('is told by what it is: issued, coming, of no hole', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter('MB000603');
    expect(said(sitting)).toBe('MB000603 is the primary 2–3.');
    sitting.enter('MB000613');
    expect(said(sitting)).toBe('MB000613 is the field duplicate 11–12, coming.');
    sitting.enter('MB001999');
    expect(shown(sitting).replace(/[│\s]+/g, ' ')).toContain('labelled for no hole yet: a bundle');
  });
});

describe('controls chosen late', () => {
  it('the next number whose kind is chosen late becomes what is chosen, with the reason', async () => {
    const sitting = await drilling();
    sitting.enter(';choose standard');
    expect(said(sitting)).toContain('needs a reason');
    sitting.press('escape');
    sitting.enter(';choose standard after the vein');
    expect(table(sitting, 'controlChoices')).toMatchObject([
      { number: 'MB000627', kind: 'standard', reason: 'after the vein' },
    ]);
    rods(sitting, 5);
    expect(table(sitting, 'bags').find((bag) => bag.number === 'MB000627')).toMatchObject({
      kind: 'standard',
    });
  });

  it('one that the log asks for is announced, and takes the log’s own reason', async () => {
    const sitting = await drilling();
    rods(sitting, 2);
    sitting.enter('bawx1ox1ar2');
    expect(shown(sitting)).toContain('blank wanted: ;choose blank');
    sitting.enter(';choose blank');
    const [choice] = table(sitting, 'controlChoices');
    expect(choice).toMatchObject({ kind: 'blank', reason: expect.stringContaining('Arsenopyrite') });
    expect(shown(sitting)).not.toContain('blank wanted');
    rods(sitting, 1);
    expect(table(sitting, 'bags').find((bag) => bag.number === choice?.number)?.kind).toBe('blank');
  });

  it('a duplicate put off keeps the primary that it repeats', async () => {
    const sitting = await drilling();
    rods(sitting, 1);
    sitting.enter(';later chute blocked');
    expect(table(sitting, 'putOff')).toMatchObject([{ number: 'MB000613', of: 'MB000612' }]);
    rods(sitting, 1);
    sitting.enter(';place');
    expect(table(sitting, 'bags').find((bag) => bag.number === 'MB000613')).toMatchObject({
      of: 'MB000612',
      method: 'spear',
    });
  });
});

describe('hygiene, water and masses', () => {
  it('are taken with the rod, in letters that are shown in words, as one edit', async () => {
    const sitting = await drilling();
    sitting.press('f2');
    sitting.type('cs0g');
    expect(shown(sitting)).toContain('cyclone cleaned, splitter NOT clean, groundwater');
    sitting.press('enter');
    const rod = holeThings(hole(sitting), 'rods')[0]?.[0];
    expect(table(sitting, 'hygiene')).toEqual([{ rod, cycloneClean: true, splitterClean: false }]);
    expect(table(sitting, 'stream')).toEqual([{ fromMm: 0, toMm: 6000, water: 'groundwater' }]);
    sitting.enter(';u');
    expect(table(sitting, 'hygiene')).toEqual([]);
    expect(table(sitting, 'rods')).toEqual([]);
  });

  it('said afterwards amend what was said of the rod', async () => {
    const sitting = await drilling();
    sitting.enter(';hygiene c');
    expect(said(sitting)).toContain('No rod is done yet');
    sitting.press('escape');
    rods(sitting, 1);
    sitting.enter(';hygiene c0l');
    sitting.enter(';hygiene c');
    expect(table(sitting, 'hygiene')).toMatchObject([{ cycloneClean: true, splitterLevel: true }]);
  });

  it('are flagged and drawn by metre, never hidden', async () => {
    const sitting = await drilling();
    sitting.press('f2');
    sitting.enter('s0');
    sitting.enter(';mass 0-1 bulk 18.2 split 3.1');
    sitting.enter(';mass 1-2 bulk 38.2 split 3.1');
    sitting.enter(';wet 2-3');
    sitting.press('f3');
    // The mark of the line in hand comes before the words, over none of their letters.
    expect(sitting.screen().join('\n')).toContain('▸type to see: issued');
    sitting.type('recovery by metre');
    const screen = shown(sitting);
    expect(screen).toMatch(/0–1 +█████░░░░░ +51 % LOW .*first of the rod, not cleaned/);
    expect(screen).toMatch(/1–2 +██████████ +100 %/);
    expect(screen).toMatch(/2–3 .*wet/);
    sitting.press('escape');
    sitting.type('look at these');
    expect(shown(sitting)).toContain('splitter not clean');
    expect(shown(sitting)).toContain('51 % came up');
  });

  it('a mass in grams is named and refused with what to type', async () => {
    const sitting = await drilling();
    sitting.enter(';mass 0-1 split 3100');
    expect(said(sitting)).toContain('it looks like grams');
    expect(said(sitting)).toContain('Type kilograms: 3.1');
    expect(table(sitting, 'stream')).toEqual([]);
  });
});

describe('the bags screen', () => {
  it('lists the bag run to tick off with tray places, what is issued, and the stock', async () => {
    const sitting = await drilling();
    rods(sitting, 2);
    sitting.press('f3');
    expect(shown(sitting)).toMatch(/\[ \] MB000614 {2}12–13 +tray 1, 13/);
    sitting.type('issued');
    expect(shown(sitting)).toMatch(/\[.\] MB000613 {2}11–12 +field duplicate {2}of MB000612, second chute/);
    sitting.press('escape');
    sitting.type('stock');
    expect(shown(sitting)).toContain('blank crushed quartz: 60 left of 60');
  });

  it('announces the change of tray, and holds the photograph of a full one', async () => {
    const sitting = await drilling();
    rods(sitting, 3);
    expect(shown(sitting)).toContain('tray 2 in 2 m');
    sitting.enter(';photo 1 IMG_0412.JPG');
    expect(said(sitting)).toContain('It is filled to 18 m only');
    sitting.press('escape');
    rods(sitting, 1);
    sitting.press('f3');
    sitting.type('chip trays');
    expect(shown(sitting)).toContain('NO photograph');
    sitting.press('escape', 'escape');
    sitting.enter(';photo 1 IMG_0412.JPG');
    expect(table(sitting, 'trays')).toEqual([{ tray: 1, fromMm: 0, toMm: 20_000, photo: 'IMG_0412.JPG' }]);
    sitting.press('f3');
    sitting.type('chip trays');
    expect(shown(sitting)).toMatch(/MBRC020 tray 1 0–20 m {2}. IMG_0412.JPG/);
  });
});

describe('composites first', () => {
  it('a rod gives the 4 m composites that it completes, and a rod that completes none leaves the calico as it was', async () => {
    const files = emptySample();
    const project = JSON.parse(files['project.json'] ?? '');
    project.sampling.sampled = { rank: 'composite', lengthM: 4 };
    const sitting = await drilling({ ...files, 'project.json': JSON.stringify(project) });
    rods(sitting, 1);
    expect(table(sitting, 'bags')).toMatchObject([
      { number: 'MB000601', fromMm: 0, toMm: 4000, rank: 'composite' },
    ]);
    expect(shown(sitting)).toMatch(/MB000602 {2}4–8/);
    sitting.press('f2');
    expect(shown(sitting)).toContain('2 bags expected, the last calico is MB000603');
    sitting.enter('603');
    sitting.press('f2');
    sitting.enter('604');
    expect(table(sitting, 'bags').map((bag) => bag.toMm)).toEqual([4000, 8000, 12_000, 16_000]);
    sitting.enter(';rod @19');
    expect(headsOf(hole(sitting)).drilledMm).toBe(19_000);
    expect(table(sitting, 'bags')).toHaveLength(4);
  });
});

describe('a break between two rods', () => {
  it('is read off the shift record: drilling on is none, standing by is one, and without a record no one knows', async () => {
    const sitting = await drilling();
    const broken = () =>
      brokenOff([...sitting.state().documents.values()], hole(sitting), sitting.state().now);
    rods(sitting, 1);
    expect(broken()).toBeUndefined();
    sitting.press('ctrl-a', 'enter');
    sitting.wait(10);
    rods(sitting, 1);
    sitting.wait(10);
    expect(broken()).toBe(false);
    sitting.press('ctrl-a', 'down', 'down', 'down', 'down', 'enter');
    sitting.wait(20);
    expect(broken()).toBe(true);
  });
});
