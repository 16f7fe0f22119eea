import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { styleHash } from '../../src/schema/read/chain.ts';
import { COMMANDS } from '../../src/shorthand/commands.ts';
import { starterRules } from '../../src/termination/rules/starter-rules.ts';
import { emptySample, type Files, type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

/** The sample's settings as another project has them: other bag numbers, other people. */
function otherProject(): Files {
  const files = emptySample();
  const settings = JSON.parse(files['project.json'] ?? '');
  settings.sampling.numbers.prefixes = ['KX'];
  settings.sampling.numbers.digits = 5;
  for (const block of settings.sampling.numbers.blocks)
    for (const end of ['first', 'last']) block[end] = `KX${block[end].slice(-5)}`;
  settings.people = [
    { initials: 'ANR', name: 'Ana Ruiz', role: 'geologist' },
    { initials: 'TOW', name: 'Tom Wells', role: 'driller' },
    { initials: 'BEK', name: 'Bea Kerr', role: 'camp' },
  ];
  return { ...files, 'project.json': JSON.stringify(settings) };
}

async function drilling(): Promise<Sitting> {
  const sitting = await sitDown(otherProject(), '2026-03-14T08:00:00+08:00', 'RC7', 'ANR');
  sitting.type('n');
  sitting.enter('KDH007 270g -60 120');
  sitting.press('enter');
  return sitting;
}

/** Names that no text of this project may show: those that examples are written with, and those of the sample project. */
const OTHERS = /ZQ|\bMB\d|MBRC|Ines Falk|Mick Tarrant|Joss Penhale|Nadia Okafor|\bNOK\b|\bJPE\b/;
const shown = (sitting: Sitting) => sitting.screen(200, 60).join('\n');

describe('what is shown as an example is of the project in hand', () => {
  it('in the question for a new hole: the next name of its holes', async () => {
    const sitting = await drilling();
    sitting.press('f10');
    sitting.type('n');
    expect(shown(sitting)).toContain('Its name, like KDH008.');
    sitting.enter('con');
    expect(shown(sitting)).toContain('Type one like KDH008.');
    expect(shown(sitting)).not.toMatch(OTHERS);
  });

  it('in the question for numbered bags', async () => {
    const sitting = await drilling();
    sitting.press('f10');
    sitting.type('b');
    expect(shown(sitting)).toMatch(/labelled, like KX00601 KX00720/);
    sitting.enter('12 13 14');
    expect(shown(sitting)).not.toMatch(OTHERS);
  });

  it.each(COMMANDS.map(({ word }) => word))(
    'in what is said of ;%s, when it is typed and when it is refused',
    async (word) => {
      const sitting = await drilling();
      sitting.type(`;${word}`);
      expect(shown(sitting)).not.toMatch(OTHERS);
      sitting.enter(' ?? ??');
      expect(shown(sitting)).not.toMatch(OTHERS);
    },
  );

  it('in the reasons of a decision: someone of this project is called', async () => {
    const sitting = await drilling();
    sitting.enter(';hold');
    expect(shown(sitting)).toContain('called Bea Kerr');
  });

  it('all through the help, on each screen', async () => {
    const sitting = await drilling();
    for (const key of ['f1', 'f3', 'f6', 'f8', 'f5']) {
      sitting.press(key, 'f1');
      for (let page = 0; page < 12; page += 1) {
        expect(shown(sitting)).not.toMatch(OTHERS);
        sitting.press('pagedown');
      }
      sitting.press('escape');
    }
  });
});

describe('a project on another deposit, logged by its own lists, at 10 m of its first hole', () => {
  async function pegmatite(): Promise<Sitting> {
    const files = otherProject();
    const settings = JSON.parse(files['project.json'] ?? '');
    settings.termination = { rules: starterRules('lithium-pegmatite') };
    delete settings.sampling.onDemand;
    const logging = {
      format: 1,
      name: 'logging',
      extends: 'lithium-pegmatite',
      extendsHash: styleHash('lithium-pegmatite'),
    };
    const sitting = await sitDown(
      { 'project.json': JSON.stringify(settings), 'logging.json': JSON.stringify(logging) },
      '2026-03-14T08:00:00+08:00',
      'RC7',
      'BEK',
    );
    sitting.type('n');
    sitting.enter('KDH007 270g -60 120');
    sitting.press('enter');
    sitting.enter(';numbered KX00601 KX00720');
    return sitting;
  }

  /** Strokes and codes of the sample, its bags around 163, its metres around 46, and whoever is at the keyboard as the one to call. */
  const NOT_HERE = /\bba py2|\bpy[29]\b|PYR\b|rock'BAS|\b16[2-7]\b|\b4[4-9]-\d|@54\.5|called Bea Kerr/;

  it('is shown its own strokes, its next bags and metres near the hole, all through the help', async () => {
    const sitting = await pegmatite();
    for (const key of ['f1', 'f3', 'f6', 'f8', 'f5']) {
      sitting.press(key, 'f1');
      for (let page = 0; page < 14; page += 1) {
        // The title counts lines of the list.
        expect(shown(sitting).replace(/\d+ to \d+ of \d+/, '')).not.toMatch(NOT_HERE);
        sitting.press('page-down');
      }
      sitting.press('escape', 'escape');
    }
  });

  it.each(COMMANDS.map(({ word }) => word))('so too in what is said of ;%s', async (word) => {
    const sitting = await pegmatite();
    sitting.type(`;${word}`);
    expect(shown(sitting)).not.toMatch(NOT_HERE);
    sitting.enter(' ?? ??');
    expect(shown(sitting)).not.toMatch(NOT_HERE);
  });

  it.each([';44x py2', ';at x', "p'", '2', 'Zq'])('so too in the refusal of %s', async (typed) => {
    const sitting = await pegmatite();
    sitting.enter(typed);
    expect(sitting.state().message?.text ?? '').not.toMatch(NOT_HERE);
    expect(sitting.screen(200, 60).slice(-4).join(' ').replace(typed, '')).not.toMatch(NOT_HERE);
  });
});

describe('F1', () => {
  it('opens on the keys of its own screen, with what is typed there, and nothing that is not possible', async () => {
    const sitting = await drilling();
    const heads = () => {
      const found = shown(sitting);
      return found.slice(found.indexOf('keys and commands'));
    };
    sitting.press('f8', 'f1');
    expect(heads()).toContain('on the shift record');
    expect(heads()).not.toContain('on the other screens');
    expect(heads()).toContain('typed on the shift record');
    expect(heads()).toContain('breakdown 14:20 hydraulic hose');
  });

  it('offers no line-up of a hole that is over', async () => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T10:00:00+08:00');
    sitting.press('f10');
    for (let each = 0; each < 9; each += 1) sitting.press('up');
    sitting.press('f1');
    expect(shown(sitting)).toContain('MBRC001, complete');
    expect(shown(sitting)).not.toContain('Line the rig up on the hole');
  });
});

it('examples in texts of ours are written with made-up names only, so that they can be told from names of a project', () => {
  const source = join(import.meta.dirname, '../../src');
  const files = readdirSync(source, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile() && /\.tsx?$/.test(each.name))
    .map((each) => join(each.parentPath, each.name))
    // The help of the command line is asked for where no project is in hand, and the demo has its own name.
    .filter((file) => !file.includes('/commands/'));
  const found = files.flatMap((file) =>
    readFileSync(file, 'utf8')
      .split('\n')
      .filter((each) => !/^\s*(\*|\/\/|\/\*\*)/.test(each) && /\bMB\d{3}|MBRC\d|\bJPE\b|'NOK'/.test(each)),
  );
  expect(found).toEqual([]);
});
