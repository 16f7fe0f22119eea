import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/shorthand/commands.ts';
import { emptySample, type Files, type Sitting, sitDown } from './support/sitting.ts';

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
