import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../src/commands/program/read-program.ts';
import { gridByCode } from '../../../src/survey/norths/grids.ts';
import { SCHEMA } from '../../termination/build.ts';

const HEAD = 'hole,easting,northing,elevation,azimuth,north,dip,depth,target depth,target';
const GOOD = 'ZQRC001,412480,6002200,431.5,270,grid,-60,150,92,Old pits';
const SECOND = 'ZQRC002,412440,6002240,431.2,88.5,magnetic,-90,90,,';

const read = (...lines: readonly string[]) =>
  readProgram([HEAD, ...lines].join('\n'), {
    file: 'program.csv',
    grid: gridByCode(7851),
    settings: { programReachM: 20_000 },
    taken: new Set(['ZQRC009']),
  });

const problems = (...lines: readonly string[]) =>
  read(...lines).findings.map(({ place, problem }) => `${place.line} ${place.field ?? ''}: ${problem}`);

describe('a program of planned holes', () => {
  it('comes in whole: plan in millimetres, azimuth with its north, collar in metres', () => {
    const { holes, findings } = read(GOOD, SECOND);
    expect(findings).toEqual([]);
    expect(holes).toEqual([
      {
        name: 'ZQRC001',
        plan: {
          azimuthDeg: 270,
          azimuthNorth: 'grid',
          dipDeg: -60,
          depthMm: 150_000,
          targetMm: 92_000,
          target: 'Old pits',
        },
        collar: { eastM: 412_480, northM: 6_002_200, elevationM: 431.5 },
      },
      {
        name: 'ZQRC002',
        plan: { azimuthDeg: 88.5, azimuthNorth: 'magnetic', dipDeg: -90, depthMm: 90_000 },
        collar: { eastM: 412_440, northM: 6_002_240, elevationM: 431.2 },
      },
    ]);
  });

  it('says what the plan expects, each contact and zone read as behind ;expect', () => {
    const withExpects = (said: string) =>
      readProgram(`${HEAD},expects\n${GOOD},"${said}"\n`, {
        file: 'program.csv',
        grid: gridByCode(7851),
        settings: { programReachM: 20_000 },
        taken: new Set(),
        schema: SCHEMA,
      });
    expect(
      withExpects('lode 70-78 seen sulphides PYR>=2; old stope 80-84 void').holes[0]?.plan.expects,
    ).toEqual([
      {
        name: 'lode',
        fromMm: 70_000,
        toMm: 78_000,
        seen: { field: 'sulphides', of: 'PYR', atLeast: 2 },
      },
      { name: 'old stope', fromMm: 80_000, toMm: 84_000, hazard: 'void' },
    ]);
    const slip = withExpects('lode 70-78 seen rock XYZ; stope');
    expect(slip.holes).toEqual([]);
    expect(slip.findings.map((each) => each.problem)).toEqual([
      'lode 70-78 seen rock XYZ: Rock has no code XYZ',
      'stope: a name and a depth are wanted, like shale 55',
    ]);
  });

  it('does without the columns that it may leave out, in any order, whatever their case', () => {
    const text =
      'Depth,Dip,North,Azimuth,Elevation,Northing,Easting,Hole\n150,-60,Grid,360,431,6002200,412480,ZQRC001\n';
    const { holes, findings } = readProgram(text, {
      file: 'p',
      grid: undefined,
      settings: { programReachM: 1 },
      taken: new Set(),
    });
    expect(findings).toEqual([]);
    expect(holes[0]?.plan).toEqual({ azimuthDeg: 0, azimuthNorth: 'grid', dipDeg: -60, depthMm: 150_000 });
  });

  it.each([
    [
      'zqrc1,412480,6002200,431,270,grid,-60,150,,',
      '2 hole: this is not a name of a hole: small letters: write ZQRC1',
    ],
    ['ZQRC009,412480,6002200,431,270,grid,-60,150,,', '2 hole: the project has this hole already'],
    [
      'ZQRC001,"412480,5",6002200,431,270,grid,-60,150,,',
      '2 easting: this is not a number with a decimal point',
    ],
    ['ZQRC001,412480,6002200,,270,grid,-60,150,,', '2 elevation: this is not a number with a decimal point'],
    ['ZQRC001,412480,6002200,431,270,,-60,150,,', '2 north: an azimuth without its north says nothing'],
    ['ZQRC001,412480,6002200,431,270,north,-60,150,,', '2 north: this is no north'],
    ['ZQRC001,412480,6002200,431,361,grid,-60,150,,', '2 azimuth: this is not an azimuth from 0 to 360'],
    ['ZQRC001,412480,6002200,431,270,grid,60,150,,', '2 dip: a positive dip points up'],
    ['ZQRC001,412480,6002200,431,270,grid,-91,150,,', '2 dip: no dip is steeper than -90'],
    ['ZQRC001,412480,6002200,431,270,grid,-60,0,,', '2 depth: this is not a planned depth in metres'],
    [
      'ZQRC001,412480,6002200,431,270,grid,-60,150,151,',
      '2 target depth: this is not a depth within the hole',
    ],
  ])('names what is wrong with %s', (line, problem) => {
    expect(problems(line)).toEqual([problem]);
  });

  it('names a hole that is there twice by the line of the first', () => {
    expect(problems(GOOD, SECOND, GOOD)).toEqual(['4 hole: this hole is already in line 2']);
  });

  it('tells easting and northing swapped, of one line and of all', () => {
    const swapped = 'ZQRC003,6002240,412440,431,270,grid,-60,150,,';
    const one = read(GOOD, SECOND, swapped);
    expect(one.findings.map(({ place, remedy }) => [place.line, remedy])).toEqual([
      [4, 'Easting and northing look swapped: change them over.'],
    ]);
    expect(read(swapped).findings).toHaveLength(1);
  });

  it('questions a collar that lies far from all others', () => {
    const far = 'ZQRC003,412480,5702200,431,270,grid,-60,150,,';
    expect(read(GOOD, SECOND, far).findings.map(({ place, code }) => [place.line, code])).toEqual([
      [4, 'survey-collar-off-program'],
    ]);
  });

  it('names every bad cell of every bad line, and still gives the sound ones', () => {
    const { holes, findings } = read('bad,x,y,z,,,,,,', GOOD, 'ZQRC002,412440,6002240,431,270,grid,60,90,,');
    expect(holes.map((hole) => hole.name)).toEqual(['ZQRC001']);
    expect(findings.filter(({ place }) => place.line === 2)).toHaveLength(8);
    expect(findings.filter(({ place }) => place.line === 4)).toHaveLength(1);
  });

  it.each([
    [
      'a quotation mark that is not closed',
      `${HEAD}\nZQRC001,"412480`,
      'it is not a table of comma-separated values from here on',
    ],
    ['a column that is missing', 'hole,easting\nZQRC001,412480', 'there is no column "northing"'],
    ['no hole at all', `${HEAD}\n`, 'it has no hole in it'],
    ['nothing', '', 'there is no column "hole"'],
  ])('says where it can’t be read: %s', (_what, text, problem) => {
    const { holes, findings } = readProgram(text, {
      file: 'program.csv',
      grid: undefined,
      settings: { programReachM: 1 },
      taken: new Set(),
    });
    expect(holes).toEqual([]);
    expect(findings[0]?.problem).toBe(problem);
  });

  it('keeps the number of the line behind empty lines', () => {
    expect(problems('', GOOD, '', 'x,1,2,3,4,grid,-60,100,,')).toEqual(
      expect.arrayContaining(['5 hole: this is not a name of a hole: small letters: write X']),
    );
  });
});
