import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/commands/command-line/run.ts';
import { copyOfSample, freshFolder, hear } from './support/outside.ts';

async function run(...argv: string[]) {
  const heard = hear();
  const code = await runCommandLine(argv, { outside: heard.outside, openConsole: async () => 0 });
  return { code, out: heard.out(), err: heard.err() };
}

const MAPPING = {
  collars: {
    hole: 'Hole',
    easting: 'East',
    northing: 'North',
    elevation: 'RL',
    depth: 'Depth',
    rank: 'surveyed',
  },
  surveys: {
    hole: 'Hole',
    depth: 'Depth',
    dip: 'Dip',
    azimuth: 'Azi',
    north: 'grid',
    tool: 'single shot',
    toolClass: 'magnetic',
    date: '1998-06-02',
  },
  geology: {
    hole: 'Hole',
    from: 'From',
    to: 'To',
    remark: 'Note',
    fields: {
      rock: {
        column: 'Rock',
        second: 'Rock2',
        secondPercent: 'Pct2',
        codes: { sand: 'SAN', basalt: 'BAS', shale: 'SHA' },
      },
      weathering: { column: 'Weath', codes: { extreme: '6' } },
      sulphides: {
        each: [
          { column: 'Py', code: 'PYR' },
          { column: 'Cpy', code: 'CCP' },
        ],
        trace: ['tr'],
      },
    },
  },
};

const COLLARS = [
  'Hole,East,North,RL,Depth',
  'OLD001,412300,6778100,430.5,60',
  'OLD002,412350.5,6778140,431,45.5',
];
const SURVEYS = ['Hole,Depth,Dip,Azi', 'OLD001,0,-60,270', 'OLD001,30,-59.5,271', 'OLD002,30,-61,269.5'];
const GEOLOGY = [
  'Hole,From,To,Rock,Rock2,Pct2,Weath,Py,Cpy,Note',
  'OLD001,0,2,sand,,,extreme,,,',
  'OLD001,2,10,basalt,shale,20,3,2.5,tr,old pegs',
  'OLD001,10,60,basalt,,,fresh,0,0,',
  'OLD002,0,45.5,DOL,,,1,1,0,=2+3',
];

/** A copy of the sample with the mapping, and the tables beside it; what is given stands in the place of sound ones. */
function given(
  tables: {
    readonly collars?: readonly string[];
    readonly geology?: readonly string[];
    readonly surveys?: readonly string[];
  } = {},
) {
  const project = copyOfSample();
  const settings = join(project, 'project.json');
  writeFileSync(settings, JSON.stringify({ ...JSON.parse(readFileSync(settings, 'utf8')), import: MAPPING }));
  const folder = freshFolder();
  const put = (name: string, lines: readonly string[]) => {
    writeFileSync(join(folder, name), lines.join('\r\n'));
    return join(folder, name);
  };
  const argv = [
    'import',
    '--collars',
    put('collars.csv', tables.collars ?? COLLARS),
    '--surveys',
    put('surveys.csv', tables.surveys ?? SURVEYS),
    '--geology',
    put('geology.csv', tables.geology ?? GEOLOGY),
    '--project',
    project,
  ];
  return { project, argv };
}

const rowsOf = (json: string, table: string, hole: string) =>
  (JSON.parse(json)[table].rows as Record<string, unknown>[]).filter((each) => each.hole === hole);

describe('import', () => {
  it('shows what would come in, and writes nothing', async () => {
    const { project, argv } = given();
    const { code, out } = await run(...argv, '--preview');
    expect(code).toBe(0);
    expect(out).toMatch(/^OLD001 +60 +3 +60 +2$/m);
    expect(out).toContain('Nothing was written.');
    expect(readdirSync(join(project, 'holes'))).not.toContain('OLD001.json');
    expect(readdirSync(project)).not.toContain('journal');
  });

  it('takes holes in as complete, in one edit, marked as imported in the file, the lists and every table', async () => {
    const { project, argv } = given();
    expect((await run(...argv)).code).toBe(0);
    const files = ['OLD001', 'OLD002'].map((hole) =>
      JSON.parse(readFileSync(join(project, `holes/${hole}.json`), 'utf8')),
    );
    expect(new Set(files.map(({ history }) => history.length))).toEqual(new Set([1]));
    expect(new Set(files.map(({ history }) => history[0].edit)).size).toBe(1);
    expect(files[0].tables.hole.hole.imported).toMatchObject({
      depthMm: 60_000,
      files: [{ file: 'collars.csv' }, { file: 'surveys.csv' }, { file: 'geology.csv' }],
    });
    expect((await run('holes', '--project', project)).out).toMatch(
      /^OLD001 +complete +60 +60 .*imported, not logged here$/m,
    );
    const { out } = await run('tables', '--json', '--project', project);
    expect(rowsOf(out, 'collars', 'OLD002')[0]).toMatchObject({
      imported: true,
      imported_to_m: 45.5,
      rank: 'surveyed',
    });
    expect(rowsOf(out, 'collars', 'MBRC001')[0]).toMatchObject({ imported: false, imported_to_m: null });
    expect(rowsOf(out, 'surveys_read', 'OLD001')).toHaveLength(2);
    expect(rowsOf(out, 'surveys_read', 'OLD001')[0]).toMatchObject({
      imported: true,
      read_at: '1998-06-02T12:00:00+08:00',
    });
    expect(rowsOf(out, 'path', 'OLD001')).toHaveLength(61);
    expect(rowsOf(out, 'geology', 'OLD001')).toMatchObject([
      { imported: true, rock: 'SAN', weathering: 6, sulphides: null },
      {
        imported: true,
        rock: 'BAS',
        rock_second: 'SHA',
        rock_second_percent: 20,
        sulphides: 'PYR 2.5; CCP trace',
      },
      { imported: true, weathering: 1, sulphides: 'none', fields_none: 'sulphides' },
    ]);
    expect(rowsOf(out, 'geology', 'MBRC001').every((each) => each.imported === false)).toBe(true);
  });

  it('asks for no bag, no recovery and no tray of what others drilled', async () => {
    const { project, argv } = given();
    const before = (await run('check', '--project', project)).out;
    await run(...argv);
    expect((await run('check', '--project', project)).out).toBe(before);
    const { out } = await run('tables', '--json', '--project', project);
    for (const table of ['samples', 'recovery', 'trays', 'rods'])
      expect(rowsOf(out, table, 'OLD001'), table).toEqual([]);
  });

  it('names every line that does not fit, with its column and what to do, and takes nothing', async () => {
    const { project, argv } = given({
      collars: [...COLLARS, 'OLD003,1,2,x,9', 'MBRC001,412300,6778100,430,20', 'old4,412300,6778100,430,20'],
      surveys: [...SURVEYS, 'OLD002,50,-61,269', 'OLD001,45,steep,270'],
      geology: [
        ...GEOLOGY.slice(0, 2),
        'OLD001,2,10,basalt,shale,,3,2.5,tr,',
        'OLD001,10,61,basalt,,,1,0,0,',
        'OLD001,1,3,basalt,,,1,0,0,',
        'OLD001,20,21,XYZ,,,1,0,0,',
        'OLD001,21,22,basalt,,,9,0,0,',
        'OLD001,22,23,basalt,,,1,much,0,',
        'OLD001,23,24,basalt,,,1,60,60,',
        'OLD009,0,1,basalt,,,1,0,0,',
        'OLD009,1,2,basalt,,,1,0,0,',
      ],
    });
    const { code, err } = await run(...argv);
    expect(code).toBe(1);
    const named = err.split('\n').filter((line) => /^\w+\.csv:/.test(line));
    expect(named).toHaveLength(13);
    for (const words of [
      'collars.csv:4, field RL: this is not a number with a decimal point',
      'collars.csv:5, field Hole: the project has this hole already',
      'collars.csv:6, field Hole: this is not a name of a hole: small letters: write OLD4',
      'geology.csv:3, field Pct2: the share of the second code SHA is not said',
      'geology.csv:4, field To: it is below the final depth of the hole, 60 m',
      'geology.csv:6, field Rock: XYZ is not a code of rock',
      'geology.csv:7, field Weath: 9 is not a level of weathering',
      'geology.csv:8, field Py: much is not a number with a decimal point',
      'geology.csv:10, field Hole: 2 lines, this one first, are of a hole that has no sound line in the table of collars',
      'surveys.csv:5: it is below the final depth of OLD002, 45.5 m',
      'surveys.csv:6, field Dip: this is not a number with a decimal point',
      'Say what it means: import.geology.fields.rock.codes in project.json',
      'Nothing came in',
    ])
      expect(err).toContain(words);
    expect(err).toMatch(/geology\.csv:5.*it lies over 0–2 m of an earlier line/);
    expect(err).toMatch(/geology\.csv:9.*sulphides.*/);
    expect(readdirSync(join(project, 'holes')).filter((file) => file.startsWith('OLD'))).toEqual([]);
  });

  it('names a column that is not there, and a mapping that no one wrote', async () => {
    const { argv } = given({ geology: ['Hole,From,To,Rock', 'OLD001,0,2,sand'] });
    expect((await run(...argv)).err).toContain('geology.csv:1: there is no column "Rock2"');
    const plain = copyOfSample();
    const { code, err } = await run(...argv.slice(0, -1), plain);
    expect(code).toBe(2);
    expect(err).toContain('it does not say which columns of the tables hold what');
  });
});
