import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatLine } from '../../src/files/journal-line.ts';
import { freshFolder, SAMPLE } from '../commands/support/outside.ts';
import { sampleFiles } from '../console/support/sitting.ts';
import { cellsOf, RUN_BY_A_SPREADSHEET } from './cells.ts';
import { everyCommand, run } from './every-command.ts';
import { hostileProject } from './hostile-files.ts';
import { HOSTILE, HOSTILE_TEXTS, obeyedInLines } from './vectors.ts';

/** Lays files out on the disk. */
function laidOut(files: Readonly<Record<string, string>>): string {
  const folder = join(freshFolder(), 'west');
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** The hole that is being drilled stands for all: the others hold the same kinds of things, and each command reads every file. */
const HOLE = 'MBRC003';

/** A CSV of which every cell that may hold words holds hostile ones. */
function hostileCsv(headings: string): string {
  const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  const rows = HOSTILE.map((text, row) =>
    headings
      .split(',')
      .map((_, column) => (column === row % 3 ? cell(text) : column === 0 ? HOLE : String(column)))
      .join(','),
  );
  return [`${headings},${cell(HOSTILE[5] ?? '')}`, ...rows].join('\n');
}

/** What each command is given, by its words. A command that is not here fails the test: say what it is to be tried with. */
const GIVEN: Readonly<Record<string, (folder: string) => readonly (readonly string[])[]>> = {
  holes: () => [[], ['--history', HOLE], ['--history', HOLE, '--after', '40']],
  check: () => [
    [],
    [HOLE],
    [HOLE, '--sign-off', HOSTILE[2] ?? ''],
    ['--accept', HOSTILE[3] ?? '', '--because', HOSTILE[4] ?? ''],
  ],
  shift: () => [[]],
  activity: () => [
    ['standby', 'by', HOSTILE[2] ?? ''],
    ['crew', HOSTILE[5] ?? ''],
  ],
  note: () => [[]],
  'note complete': () => [[HOSTILE[2] ?? '']],
  'note acknowledge': () => [[]],
  plod: () => [['--reconcile', '2026-03-12..2026-03-18'], []],
  'plod new': (folder) => [
    [HOSTILE[1] ?? '', '--from', HOSTILE[4] ?? '', '--from-csv', join(folder, 'plod.csv')],
  ],
  'plod agree': () => [['1', HOSTILE[3] ?? '']],
  'plod correct': () => [['1', HOSTILE[6] ?? '']],
  'plod open': () => [['1', HOSTILE[7] ?? '']],
  'plod line': () => [['1', HOSTILE[7] ?? '']],
  'plod sign': () => [[HOSTILE[8] ?? '']],
  'plod withdraw': () => [[HOSTILE[9] ?? '']],
  bags: () => [[], [HOLE], [HOLE, '--issued']],
  termination: () => [[HOLE], ['--check'], ['--replay', HOLE], [HOLE, '--why', HOSTILE[3] ?? '']],
  survey: (folder) => [[HOLE], [HOLE, '--shots', join(folder, 'shots.csv'), '--run', 'magnetic', '--insist']],
  'line-up': () => [[HOLE], [HOLE, '--collar', HOSTILE[2] ?? '', '--cautions', HOSTILE[7] ?? '']],
  collars: (folder) => [[join(folder, 'collars.csv')], [join(folder, 'collars.csv'), '--keep-going']],
  program: (folder) => [
    [join(folder, 'collars.csv'), '--preview'],
    [join(folder, 'program.csv'), '--keep-going'],
  ],
  dispatch: () => [[]],
  'dispatch new': () => [
    ['--dry-run'],
    ['--name', 'D1', '--laboratory', HOSTILE[9] ?? '', '--seal', HOSTILE[4] ?? ''],
  ],
  'dispatch pass': () => [['', HOSTILE[8] ?? '', '--sacks', '1', '--from', HOSTILE[1] ?? '']],
  'dispatch receipt': (folder) => [['', join(folder, 'receipt.csv')]],
  'dispatch sheet': () => [[], ['--camp']],
  results: (folder) => [[], [join(folder, 'results.csv'), '--keep-going'], ['--hole', HOLE]],
  resplit: () => [[HOLE]],
  controls: () => [[]],
  trays: (folder) => [[HOLE], [HOLE, '--photos', folder]],
  readings: (folder) => [
    [HOLE, join(folder, 'readings.csv'), '--field', 'arsenic', '--reading', 'reading', '--preview'],
  ],
  recover: () => [[], ['MBRC099', '--let-go', HOSTILE[6] ?? ''], [HOSTILE[3] ?? '', '--restore']],
  receive: (folder) => [[join(folder, 'copy.json'), join(folder, 'shots.csv')]],
  import: (folder) => [
    [
      '--collars',
      join(folder, 'old.csv'),
      '--surveys',
      join(folder, 'shots.csv'),
      '--geology',
      join(folder, 'log.csv'),
    ],
  ],
  pack: () => [[], [HOSTILE[3] ?? '']],
  tables: (folder) => [['geology'], [], ['geology_long'], [HOSTILE[3] ?? ''], ['--to', join(folder, 'flat')]],
  schema: () => [[]],
  'schema check': (folder) => [[join(folder, 'logging.json')]],
  'schema keys': () => [[]],
  'schema import': (folder) => [
    ['rocks', join(folder, 'codes.csv'), '--code', 'code', '--label', 'label', '--preview'],
  ],
  'schema export': () => [[]],
  'schema editor': () => [[]],
  'schema diff': (folder) => [
    [folder, 'orogenic-gold'],
    [HOSTILE[3] ?? '', 'orogenic-gold'],
  ],
  'schema dictionary': (folder) => [
    [join(folder, 'dictionary.csv'), '--preview'],
    [join(folder, 'codes.csv')],
  ],
  'schema field': () => [
    ['colour', '--after', 'rock', '--preview'],
    ['colour', '--label', HOSTILE[3] ?? '', '--preview'],
    [HOSTILE[3] ?? '', '--first'],
  ],
  'schema propose': () => [[], [HOSTILE[3] ?? '']],
  questions: () => [['--json'], ['1', '--with', 'theirs'], [HOSTILE[3] ?? '', '--with', 'ours']],
};

/** Commands tried elsewhere: the console by its screens, a project's making and lines from a pipe below. */
const ELSEWHERE = ['demo', 'new', 'enter'];

/** Commands that show what is there: with nothing more said they open the project, whatever stands in it. */
const SHOWING = [
  'holes',
  'check',
  'shift',
  'plod',
  'bags',
  'termination',
  'survey',
  'line-up',
  'dispatch',
  'dispatch sheet',
  'results',
  'controls',
  'trays',
  'questions',
  'tables',
];

/** Commands that open no project, or whose subcommands do. */
const WITHOUT_PROJECT = ['schema', 'schema check'];

/** The files of the hostile project: made once, laid out for each command. */
const HOSTILE_FILES = hostileFiles();

function hostileFiles(): Readonly<Record<string, string>> {
  const few = Object.entries(sampleFiles()).filter(
    ([path]) => !/MBRC00[124567]|RC7_2026-03-1[23]/.test(path),
  );
  const { files } = hostileProject(Object.fromEntries(few), 11);
  const missing = formatLine({ begins: { generation: 1, next: 1, documents: ['hole/MBRC099'] } });
  return {
    ...files,
    'copy.json': files[`holes/${HOLE}.json`] ?? '',
    'journal/000001.jsonl': missing,
    'shots.csv': hostileCsv('hole,depth,dip,azimuth'),
    'collars.csv': hostileCsv('hole,easting,northing,elevation'),
    'program.csv': hostileCsv('hole,easting,northing,elevation,azimuth,north,dip,depth,target'),
    'old.csv': hostileCsv('hole,easting,northing,elevation,depth'),
    'log.csv': hostileCsv('hole,from,to,rock'),
    'receipt.csv': hostileCsv('No,Sample'),
    'results.csv': hostileCsv('Sample,Wt_kg,Au_ppm'),
    'readings.csv': hostileCsv('from,to,reading'),
    'codes.csv': hostileCsv('code,label,look'),
    'dictionary.csv': hostileCsv('part,name,label,look,in,kind,list,caution'),
    'plod.csv': hostileCsv('activity,from,to,hole'),
  };
}

describe('a project in which every text is hostile', async () => {
  const commands = await everyCommand();

  it('is compared with every command that the program has', () => {
    const words = commands.map((each) => each.words.join(' ')).filter((each) => !ELSEWHERE.includes(each));
    expect(words.sort()).toEqual(Object.keys(GIVEN).sort());
    expect(commands.flatMap((each) => each.forms).length).toBeGreaterThan(10);
  });

  it.each(commands.filter(({ words }) => !ELSEWHERE.includes(words.join(' '))))(
    'comes out of $words in every form with nothing in it that a terminal obeys, nor a spreadsheet runs',
    async ({ words, forms }) => {
      const folder = laidOut(HOSTILE_FILES);
      const name = words.join(' ');
      const ways = GIVEN[name]?.(folder) ?? [];
      const project = WITHOUT_PROJECT.includes(name) ? [] : ['--project', folder];
      for (const way of ways) {
        for (const form of [[], ...forms.map((each) => (each === '--svg' ? [each, 'plan'] : [each]))]) {
          const argv = [...words, ...way, ...form, ...project];
          const { said, out, code } = await run(argv);
          expect(obeyedInLines(said.replaceAll('\r\n', '\n')), argv.join(' ')).toBeUndefined();
          expect(said.length, argv.join(' ')).toBeGreaterThan(0);
          if (way === ways[0] && SHOWING.includes(name))
            expect([0, 1], `${argv.join(' ')}: ${said.slice(0, 400)}`).toContain(code);
          expect([0, 1, 2], `${argv.join(' ')}: ${said.slice(0, 400)}`).toContain(code);
          if (form[0] === '--csv' && code === 0)
            for (const cell of cellsOf(out).flat())
              expect(cell, argv.join(' ')).not.toMatch(RUN_BY_A_SPREADSHEET);
        }
      }
    },
  );
});

describe('hostile lines from a pipe', () => {
  it('are refused or logged, and nothing of them reaches the terminal as it came', async () => {
    const folder = laidOut(sampleFiles());
    const lines = HOSTILE.map((text) => text.replaceAll(/[\r\n]/g, ' '));
    const remarks = lines.map((text) => `./${text}`);
    const { said, code } = await run(
      ['enter', 'MBRC003', '--keep-going', '--project', folder],
      [...lines, ...remarks].join('\n'),
    );
    expect(code).toBe(1);
    expect(obeyedInLines(said)).toBeUndefined();
    expect(
      obeyedInLines((await run(['holes', '--history', 'MBRC003', '--project', folder])).said),
    ).toBeUndefined();
  });
});

describe('what is on the command line and in a program', () => {
  it.each(Object.entries(HOSTILE_TEXTS))('is said again only as it can be seen: %s', async (name, text) => {
    const asked = text.replaceAll('\0', '').slice(0, 200);
    const ways = [
      ['holes', '--project', SAMPLE, '--history', asked],
      ['holes', `--${asked}`],
      ['new', join(SAMPLE, 'project.json'), '--style', asked],
      ['schema', 'check', asked],
      ['schema', 'keys', '--width', asked],
    ];
    const { said, code } = await run(ways[Object.keys(HOSTILE_TEXTS).indexOf(name) % ways.length] ?? []);
    expect(obeyedInLines(said)).toBeUndefined();
    expect(code).toBe(2);
  });

  it('is refused line by line where it is in a program, and makes no project', async () => {
    const program = join(freshFolder(), 'program.csv');
    const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    const lines = HOSTILE.map((text) => `${cell(text)},500000,6500000,400,270,${cell(text)},-60,120`);
    writeFileSync(program, ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...lines].join('\n'));
    const folder = join(freshFolder(), 'west');
    const { said, code } = await run(['new', folder, '--program', program, '--epsg', '7850']);
    expect(code).toBe(2);
    expect(obeyedInLines(said)).toBeUndefined();
  });

  it('is refused as the name of a hole where no platform, or not every one, keeps it apart', async () => {
    const names = [
      'CON',
      'NUL',
      'PRN',
      'AUX',
      'COM1',
      'LPT9',
      'con',
      '..',
      '../X',
      'A/B',
      'A\\B',
      'A.JSON',
      'A.',
      'zqrc1',
      'COM¹',
      '',
    ];
    const program = join(freshFolder(), 'program.csv');
    const lines = names.map((name) => `"${name}",500000,6500000,400,270,true,-60,120`);
    writeFileSync(program, ['hole,easting,northing,elevation,azimuth,north,dip,depth', ...lines].join('\n'));
    const folder = join(freshFolder(), 'west');
    const { said, code } = await run(['new', folder, '--program', program, '--epsg', '7850']);
    expect(code).toBe(2);
    for (const [index] of names.entries())
      expect(said).toContain(`program.csv:${index + 2}, field hole: this is not a name of a hole`);
    expect(existsSync(folder)).toBe(false);
  });
});
