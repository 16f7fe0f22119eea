import type { Shot, SurveyRun } from '../../hole/direction.ts';
import { holeNouns, holeThings, isImported } from '../../hole/hole.ts';
import { metres } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { headsOf } from '../../standing/heads.ts';
import { surveyOf } from '../../standing/survey.ts';
import type { PathPoint } from '../../survey/path/path.ts';
import { positionRows } from '../../survey/path/position-table.ts';
import { pathByMetre } from '../../survey/path/projection.ts';
import { bendBetween } from '../../survey/path/severity.ts';
import { depth, instant, integer, metresOf, number, optional, rounded, text, yesNo } from './column.ts';
import { HOLE, NORTH_WORDS, wgs84Cells } from './holes.ts';
import { defineTable, holesOf, type Source } from './table.ts';

const AZIMUTH = number('Azimuth, clockwise from its north', 'deg');
const DIP = number('Dip from horizontal, downwards negative', 'deg');
const NO_COLLAR = 'no position of the collar is recorded';
const NO_WGS84 = 'no position of the collar, or no grid in project.json';
const NO_MINE_GRID = 'no position of the collar, or no mine grid';

/** Shots as the tool gave them. */
export const SURVEYS_READ = defineTable({
  name: 'surveys_read',
  about: 'Downhole survey shots as they were read, none corrected and none left out.',
  key: ['hole', 'run', 'depth_m', 'reading'],
  rank: 'A run of a higher rank counts before one of a lower rank, of one rank the later run; at one depth of one run the highest reading. What counts is in surveys_used.',
  columns: {
    hole: HOLE,
    run: text('Id of the run of the tool'),
    depth_m: depth('Depth of the station: bit depth less tool offset'),
    reading: integer('1, or higher where the same depth was read again in this run'),
    dip_deg: DIP,
    azimuth_deg: optional(AZIMUTH, 'the tool gave none'),
    azimuth_north: text(NORTH_WORDS),
    rejected: optional(text('Why neither dip nor azimuth is used'), 'not rejected'),
    azimuth_rejected: optional(text('Why the azimuth is not used; the dip is'), 'not rejected'),
    misread: optional(text('What was first typed, where the reading was corrected'), 'not corrected'),
    tool: text('Name or number of the tool'),
    tool_class: text('magnetic, gyro aligned at the collar, or north-seeking gyro'),
    pass: text('in, out or single'),
    inside: text('rods or open hole: what the tool was inside of'),
    tool_offset_m: number('Bit depth less station depth', 'm'),
    steel_m: optional(number('Distance of the sensor from steel', 'm'), 'not recorded'),
    field_nt: optional(number('Total magnetic field', 'nT'), 'the tool gave none'),
    magnetic_dip_deg: optional(number('Magnetic dip, downwards positive', 'deg'), 'the tool gave none'),
    operator: text('Who ran the tool'),
    run_rank: integer('Rank of the run: higher is better'),
    read_at: instant('When it was recorded'),
    read_by: text('Initials of who recorded it'),
    imported: yesNo('Taken from a table of others, not recorded here'),
  },
  rows: (source) => holesOf(source).flatMap(shotRows),
});

function shotRows(hole: Document) {
  const runs = new Map(holeThings(hole, 'runs'));
  const before = new Map<string, number>();
  const rows = holeNouns(hole, 'shots').flatMap((shot) => {
    const run = runs.get(shot.run);
    if (run === undefined) return [];
    const place = `${shot.run} ${shot.depthMm}`;
    const reading = (before.get(place) ?? 0) + 1;
    before.set(place, reading);
    return [shotRow(hole, run, shot, reading)];
  });
  return rows.toSorted((a, b) => a.depth_m - b.depth_m);
}

function shotRow(hole: Document, run: SurveyRun, shot: Shot, reading: number) {
  return {
    hole: hole.id,
    run: shot.run,
    depth_m: metres(shot.depthMm),
    reading,
    dip_deg: shot.dipDeg,
    azimuth_deg: shot.azimuthDeg,
    azimuth_north: run.north,
    rejected: shot.rejected,
    azimuth_rejected: shot.azimuthRejected,
    misread: shot.misread,
    tool: run.tool,
    tool_class: run.toolClass,
    pass: run.pass,
    inside: run.inside,
    tool_offset_m: metres(run.toolOffsetMm),
    steel_m: metresOf(run.steelMm),
    field_nt: shot.fieldNt,
    magnetic_dip_deg: shot.magneticDipDeg,
    operator: run.operator,
    run_rank: run.rank,
    read_at: shot.at,
    read_by: shot.by,
    imported: isImported(hole, shot.depthMm),
  };
}

/** Stations that the path is made of. */
export const SURVEYS_USED = defineTable({
  name: 'surveys_used',
  about:
    'Stations that the path of each hole is made of: the line-up at the collar, and the best shot at each depth, in one north.',
  key: ['hole', 'depth_m'],
  columns: {
    hole: HOLE,
    depth_m: depth('Depth of the station'),
    azimuth_deg: AZIMUTH,
    azimuth_north: text(NORTH_WORDS),
    dip_deg: DIP,
    basis: text(
      'set (line-up), measured, dip measured (the azimuth is taken from other stations), or assumed',
    ),
    run: optional(text('Id of the run of the tool'), 'not from a shot'),
    tool_class: text('What it was measured with'),
    bend_deg_per_30m: optional(number('Bend from the station above', 'deg/30 m'), 'the first station'),
    doubtful: yesNo('The check finds that shots of this path are likely wrong: offsider survey says which'),
  },
  rows: (source) => holesOf(source).flatMap((hole) => stationRows(source, hole)),
});

function stationRows({ project }: Source, hole: Document) {
  const { stations, blundered } = surveyOf(project, hole);
  return stations.map((station, index) => {
    const above = stations[index - 1];
    return {
      hole: hole.id,
      depth_m: metres(station.depthMm),
      azimuth_deg: rounded(station.azimuth.deg, 3) % 360,
      azimuth_north: station.azimuth.north,
      dip_deg: rounded(station.dip, 3),
      basis: station.basis,
      run: station.run,
      tool_class: station.toolClass,
      bend_deg_per_30m:
        above === undefined
          ? undefined
          : rounded(bendBetween(above, station, metres(station.depthMm - above.depthMm)).severity, 2),
      doubtful: blundered,
    };
  });
}

/** Positions by metre. */
export const PATH = defineTable({
  name: 'path',
  about:
    'Where each hole goes, metre by metre down to the depth drilled, by minimum curvature. Metres of the ground are laid on the grid as they are: its scale, under half a metre in a kilometre, is not applied.',
  key: ['hole', 'depth_m'],
  columns: {
    hole: HOLE,
    depth_m: depth('Depth along the hole'),
    east_m: optional(number('Easting on the grid of the collar', 'm'), NO_COLLAR),
    north_m: optional(number('Northing on the grid of the collar', 'm'), NO_COLLAR),
    elevation_m: optional(number('Elevation', 'm'), NO_COLLAR),
    from_collar_east_m: number('East of the collar', 'm'),
    from_collar_north_m: number('North of the collar', 'm'),
    below_collar_m: number('Below the collar', 'm'),
    azimuth_deg: AZIMUTH,
    azimuth_north: text(NORTH_WORDS),
    dip_deg: DIP,
    basis: text(
      'How the point is known: set, measured, dip measured, assumed, on the arc (between two stations), or projected straight (below the last)',
    ),
    mine_east_m: optional(number('Easting on the mine grid', 'm'), NO_MINE_GRID),
    mine_north_m: optional(number('Northing on the mine grid', 'm'), NO_MINE_GRID),
    longitude_deg: optional(number('Longitude, WGS 84, east positive', 'deg'), NO_WGS84),
    latitude_deg: optional(number('Latitude, WGS 84, north positive', 'deg'), NO_WGS84),
  },
  rows: (source) =>
    holesOf(source).flatMap((hole) => {
      const { path } = surveyOf(source.project, hole);
      return path === undefined ? [] : pointRows(source, hole, pathByMetre(path, headsOf(hole).drilledMm));
    }),
});

/** Points of a hole as rows of the path; their positions are those that `offsider survey --csv` prints. */
function pointRows({ project }: Pick<Source, 'project'>, hole: Document, points: readonly PathPoint[]) {
  const { collar, site } = surveyOf(project, hole);
  const mine = collar === undefined ? undefined : site.mineGrid;
  const placed = positionRows(points, collar, mine);
  const free = positionRows(points, undefined);
  return points.map((point, index) => {
    const [, east, north, elevation, azimuth, azimuthNorth, dip, basis, mineEast, mineNorth] = placed[index]!;
    const [, dEast, dNorth, dUp] = free[index]!;
    const onGrid = (value: string | number | undefined) =>
      collar === undefined || value === undefined ? undefined : Number(value);
    return {
      hole: hole.id,
      depth_m: metres(point.depthMm),
      east_m: onGrid(east),
      north_m: onGrid(north),
      elevation_m: onGrid(elevation),
      from_collar_east_m: Number(dEast),
      from_collar_north_m: Number(dNorth),
      below_collar_m: -Number(dUp) + 0,
      azimuth_deg: Number(azimuth),
      azimuth_north: String(azimuthNorth),
      dip_deg: Number(dip),
      basis: String(basis),
      mine_east_m: onGrid(mineEast),
      mine_north_m: onGrid(mineNorth),
      ...wgs84Cells(site.grid, onGrid(east), onGrid(north)),
    };
  });
}
