import { beforeAll, describe, expect, it } from 'vitest';
import { collarThing, doubtsOfCollar, readCollar } from '../../src/acts/collar-taken.ts';
import { collar as collarShape } from '../../src/hole/header.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';
import { siteOfProject } from '../../src/standing/survey.ts';
import { plannedCollar, positionOf } from '../../src/survey/collar/collars.ts';
import { nmeaChecksum } from '../../src/survey/collar/nmea.ts';
import { type Geographic, type Grid, type MapPosition, toWgs84 } from '../../src/survey/norths/grids.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

let project: Project;
let hole: Document;
let holes: readonly Document[];
let peg: MapPosition;
let grid: Grid;
beforeAll(async () => {
  const sitting = await sitDown(sampleFiles());
  project = sitting.state().project;
  hole = sitting.hole('MBRC004');
  holes = [...sitting.state().documents.values()];
  const collar = plannedCollar(holeNouns(hole, 'collars'));
  const known = siteOfProject(project).grid;
  if (collar === undefined || known === undefined)
    throw new Error('the sample hole has a planned collar on a grid');
  peg = positionOf(collar);
  grid = known;
});

/** A GGA sentence of an invented receiver at a position, 431.5 m above the sea. */
function sentence({ latDeg, lonDeg }: Geographic): string {
  const minutes = (deg: number, digits: number) => {
    const whole = Math.floor(Math.abs(deg));
    return `${String(whole).padStart(digits, '0')}${((Math.abs(deg) - whole) * 60).toFixed(5).padStart(8, '0')}`;
  };
  const body = `GPGGA,010203,${minutes(latDeg, 2)},${latDeg < 0 ? 'S' : 'N'},${minutes(lonDeg, 3)},${lonDeg < 0 ? 'W' : 'E'},1,09,0.9,431.5,M,,M,,`;
  return `$${body}*${nmeaChecksum(body)}`;
}

const sentenceAt = (position: MapPosition): string => {
  const at = toWgs84(grid, position);
  if (at === undefined) throw new Error('the position lies off the grid');
  return sentence(at);
};

describe('a collar position', () => {
  it('is typed as east, north and height in metres', () => {
    expect(readCollar(project, hole, ' 412500.2, 6002240 431.4 ')).toEqual({
      ok: true,
      collar: { eastM: 412_500.2, northM: 6_002_240, heightM: 431.4, source: 'typed at the rig' },
    });
  });

  it.each(['412500', '412500 6002240 431 7', 'here and there', ''])('is not %j', (text) => {
    expect(readCollar(project, hole, text).ok).toBe(false);
  });

  it('needs its height only where no planned collar has one', () => {
    expect(readCollar(project, hole, '412500 6002240').ok).toBe(true);
    const bare: Document = { ...hole, tables: { ...hole.tables, collars: {} } };
    expect(readCollar(project, bare, '412500 6002240').ok).toBe(false);
  });

  it('is the mean of what a GPS sends, on the grid of the project, with how good it is', () => {
    const text = [sentenceAt(peg), sentenceAt({ eastM: peg.eastM + 2, northM: peg.northM })].join(' ');
    const read = readCollar(project, hole, text);
    if (!read.ok) throw new Error(read.problem);
    expect(read.collar.eastM).toBeCloseTo(peg.eastM + 1, 1);
    expect(read.collar.northM).toBeCloseTo(peg.northM, 1);
    expect(read.collar.heightM).toBeCloseTo(431.5, 6);
    expect(read.collar.source).toBe('GPS, 2 fixes, plain, scatter 1.0 m, 9 satellites');
  });

  it('is refused without a fix, and without a grid to put it on', () => {
    expect(readCollar(project, hole, '$GPGGA,1*00')).toMatchObject({
      ok: false,
      problem: expect.stringContaining('No fix in it'),
    });
    const { grid: _grid, ...survey } = project.settings.survey;
    const gridless: Project = { ...project, settings: { ...project.settings, survey } };
    expect(readCollar(gridless, hole, sentenceAt(peg))).toMatchObject({
      ok: false,
      problem: expect.stringContaining('names no grid'),
    });
  });
});

describe('a doubtful collar', () => {
  const doubts = (position: MapPosition) =>
    doubtsOfCollar(project, hole, holes, { ...position, heightM: 431, source: 'x' });

  it('is none on its peg', () => {
    expect(doubts(peg)).toEqual([]);
  });

  it('metres off its peg is a warning', () => {
    const [doubt, ...more] = doubts({ eastM: peg.eastM + 12, northM: peg.northM });
    expect(doubt).toMatchObject({ code: 'survey-collar-off-plan', severity: 'warning' });
    expect(more).toEqual([]);
  });

  it('with east and north swapped is a fault that names the slip', () => {
    expect(doubts({ eastM: peg.northM, northM: peg.eastM })).toMatchObject([
      { code: 'survey-collar-off-program', severity: 'fault', remedy: expect.stringContaining('swapped') },
    ]);
  });
});

describe('a collar kept', () => {
  it('ranks as handheld on the grid of the project; without a height it has that of the planned one', () => {
    const maker = { newId: () => 't-1', at: '2026-03-14T09:00:00+08:00' as Stamp, by: 'NOK' };
    const planned = plannedCollar(holeNouns(hole, 'collars'));
    const thing = collarThing(
      project,
      hole,
      { ...peg, heightM: undefined, source: 'typed at the rig' },
      maker,
    );
    expect(collarShape.parse(thing)).toMatchObject({
      rank: 'handheld',
      elevationMm: planned?.elevationMm,
      grid: grid.name,
      by: 'NOK',
    });
  });
});
