import { headerOf, holeNouns, planOf } from '../../hole/hole.ts';
import { NORTHS } from '../../quantity/azimuth.ts';
import { metres } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { headsOf } from '../../standing/heads.ts';
import { siteOfProject } from '../../standing/survey.ts';
import { bestCollar, collarsByRank, positionOf } from '../../survey/collar/collars.ts';
import { type Grid, toWgs84 } from '../../survey/norths/grids.ts';
import { mapToMine } from '../../survey/norths/mine-grid.ts';
import { depth, instant, metresOf, number, optional, order, rounded, text, yesNo } from './column.ts';
import { defineTable, holesOf, type Source } from './table.ts';

/** The column that every table of a hole begins with. */
export const HOLE = text('Permanent id of the hole: never changed, though its name may be');

const NO_POSITION = 'no position of the collar is recorded';
const NO_PLAN = 'the hole has no plan';
export const NORTH_WORDS = `The north that the azimuth is counted from: ${NORTHS.join(', ')}`;

/** One row a hole. */
export const COLLARS = defineTable({
  name: 'collars',
  about: 'Holes: where the collar is, what was planned, how far it is drilled and logged.',
  key: ['hole'],
  rank: 'A surveyed position counts before one by handheld GPS, that before the planned one; of one rank the latest. All of them are in collar_positions.',
  columns: {
    hole: HOLE,
    name: text('What the hole is called on the rig'),
    planned_name: optional(text('What the program called it'), 'made on the rig'),
    state: text('planned, drilling, suspended, abandoned or complete'),
    state_reason: optional(text('Why it was suspended or abandoned'), 'no reason is recorded'),
    parent: optional(
      text('Permanent id of the hole that it redrills, deepens or is the tail of'),
      'it stands by itself',
    ),
    parent_reason: optional(text('redrill, deepening or tail'), 'it stands by itself'),
    east_m: optional(number('Easting of the collar on the grid', 'm'), NO_POSITION),
    north_m: optional(number('Northing of the collar on the grid', 'm'), NO_POSITION),
    elevation_m: optional(number('Elevation of the collar', 'm'), NO_POSITION),
    grid: optional(text('Name of the grid of easting and northing'), NO_POSITION),
    rank: optional(text('planned, handheld or surveyed'), NO_POSITION),
    position_source: optional(text('Where the position is from'), NO_POSITION),
    longitude_deg: optional(
      number('Longitude, WGS 84, east positive', 'deg'),
      'no position, or no grid in project.json',
    ),
    latitude_deg: optional(
      number('Latitude, WGS 84, north positive', 'deg'),
      'no position, or no grid in project.json',
    ),
    mine_east_m: optional(number('Easting on the mine grid', 'm'), 'no position, or no mine grid'),
    mine_north_m: optional(number('Northing on the mine grid', 'm'), 'no position, or no mine grid'),
    planned_azimuth_deg: optional(number('Planned azimuth, clockwise from its north', 'deg'), NO_PLAN),
    planned_azimuth_north: optional(text(NORTH_WORDS), NO_PLAN),
    planned_dip_deg: optional(number('Planned dip from horizontal, downwards negative', 'deg'), NO_PLAN),
    planned_depth_m: optional(depth('Planned depth'), NO_PLAN),
    target: optional(text('What the hole is for'), 'not said in the plan'),
    log_from_m: depth('Where logging starts: 0, or the bottom of a pre-collar'),
    drilled_m: depth('Depth drilled, by the latest rod done; where logging starts while there is none'),
    logged_m: depth('Logged without a gap from where logging starts down to here'),
    ended_at: optional(
      instant('When it was decided to end the hole'),
      'the hole is not ended, or was reopened',
    ),
    final_m: optional(depth('Final depth by that decision'), 'the hole is not ended, or was reopened'),
    imported: yesNo('Taken from tables of others: what lies above imported_to_m was never logged here'),
    imported_to_m: optional(depth('Final depth by those tables'), 'not imported'),
    imported_at: optional(instant('When it was imported'), 'not imported'),
    imported_from: optional(text('Names of those tables, separated by semicolons'), 'not imported'),
  },
  rows: (source) => holesOf(source).map((hole) => collarRow(source, hole)),
});

function collarRow(source: Source, hole: Document) {
  const header = headerOf(hole);
  const plan = planOf(hole);
  const heads = headsOf(hole);
  const decision = holeNouns(hole, 'decisions').findLast(
    ({ kind }) => kind.startsWith('ended') || kind === 'reopened',
  );
  const ended = decision?.kind === 'reopened' ? undefined : decision;
  return {
    hole: hole.id,
    name: header.name,
    planned_name: header.plannedName,
    state: header.state,
    state_reason: header.stateReason,
    parent: header.parent?.hole,
    parent_reason: header.parent?.reason,
    ...positionCells(source, hole),
    planned_azimuth_deg: plan?.azimuthDeg,
    planned_azimuth_north: plan?.azimuthNorth,
    planned_dip_deg: plan?.dipDeg,
    planned_depth_m: metresOf(plan?.depthMm),
    target: plan?.target,
    log_from_m: metres(header.logFromMm),
    drilled_m: metres(heads.drilledMm),
    logged_m: metres(heads.loggedMm),
    ended_at: ended?.at,
    final_m: metresOf(ended?.depthMm),
    imported: header.imported !== undefined,
    imported_to_m: metresOf(header.imported?.depthMm),
    imported_at: header.imported?.at,
    imported_from: header.imported?.files.map(({ file }) => file).join('; '),
  };
}

function positionCells({ project }: Source, hole: Document) {
  const collar = bestCollar(holeNouns(hole, 'collars'));
  const { grid, mineGrid } = siteOfProject(project);
  const at = collar === undefined ? undefined : positionOf(collar);
  const mine = at === undefined || mineGrid === undefined ? undefined : mapToMine(mineGrid, at);
  return {
    east_m: at?.eastM,
    north_m: at?.northM,
    elevation_m: metresOf(collar?.elevationMm),
    grid: collar?.grid,
    rank: collar?.rank,
    position_source: collar?.source,
    ...wgs84Cells(grid, at?.eastM, at?.northM),
    mine_east_m: mine && rounded(mine.eastM, 3),
    mine_north_m: mine && rounded(mine.northM, 3),
  };
}

/** Degrees of a position of the grid, to the millimetre; empty where it has none. */
export function wgs84Cells(
  grid: Grid | undefined,
  eastM: number | undefined,
  northM: number | undefined,
): { readonly longitude_deg: number | undefined; readonly latitude_deg: number | undefined } {
  const at =
    grid === undefined || eastM === undefined || northM === undefined
      ? undefined
      : toWgs84(grid, { eastM, northM });
  return {
    longitude_deg: at && rounded(at.lonDeg, 8),
    latitude_deg: at && rounded(at.latDeg, 8),
  };
}

/** Every position that was recorded, the best first. */
export const COLLAR_POSITIONS = defineTable({
  name: 'collar_positions',
  about: 'Every position of every collar: planned, by handheld GPS, surveyed. None is ever overwritten.',
  key: ['hole', 'rank', 'recorded_at', 'position'],
  rank: 'A surveyed position counts before one by handheld GPS, that before the planned one; of one rank the latest. It is marked in the column counts.',
  columns: {
    hole: HOLE,
    rank: text('planned, handheld or surveyed'),
    recorded_at: instant('When it was recorded'),
    position: order('position'),
    counts: yesNo('It is the position that everything else is counted from'),
    east_m: number('Easting on the grid', 'm'),
    north_m: number('Northing on the grid', 'm'),
    elevation_m: number('Elevation', 'm'),
    grid: text('Name of the grid'),
    source: text('Where the position is from'),
    recorded_by: text('Initials of who recorded it'),
  },
  rows: (source) =>
    holesOf(source).flatMap((hole) =>
      collarsByRank(holeNouns(hole, 'collars')).map((collar, index) => ({
        hole: hole.id,
        rank: collar.rank,
        recorded_at: collar.at,
        position: index + 1,
        counts: index === 0,
        east_m: metres(collar.eastingMm),
        north_m: metres(collar.northingMm),
        elevation_m: metres(collar.elevationMm),
        grid: collar.grid,
        source: collar.source,
        recorded_by: collar.by,
      })),
    ),
});

/** Stretches of drilling: a pre-collar, a tail and a hole that changed rigs have several. */
export const DRILLING = defineTable({
  name: 'drilling',
  about: 'Stretches of drilling by one method, bit and rig.',
  key: ['hole', 'stretch'],
  columns: {
    hole: HOLE,
    stretch: order('stretch'),
    from_m: depth('Top of the stretch'),
    to_m: optional(depth('Bottom of the stretch'), 'it is being drilled, or no one closed it'),
    method: text('RC, or the method of a pre-collar or tail'),
    rig: text('Name of the rig'),
    bit_mm: optional(number('Diameter of the bit when it was put on', 'mm'), 'not measured'),
    started_at: instant('When it was begun'),
    ended_at: optional(instant('When it was ended'), 'it is being drilled, or no one closed it'),
  },
  rows: (source) =>
    holesOf(source).flatMap((hole) =>
      holeNouns(hole, 'drilling').map((each, index) => ({
        hole: hole.id,
        stretch: index + 1,
        from_m: metres(each.fromMm),
        to_m: metresOf(each.toMm),
        method: each.method,
        rig: each.rig,
        bit_mm: each.bitMm,
        started_at: each.startedAt,
        ended_at: each.endedAt,
      })),
    ),
});
