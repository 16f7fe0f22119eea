import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { recordCollar } from '../hole/commands/direction.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import type { Collar } from '../hole/header.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { placeOf, siteOfProject } from '../standing/survey.ts';
import { checkCollarOnPlan } from '../survey/checks/collar-off-plan.ts';
import { checkCollarOnProgram } from '../survey/checks/collar-off-program.ts';
import { type CollarColumns, readCollarTable, type TableCollar } from '../survey/collar/collar-table.ts';
import { bestCollar, plannedCollar, positionOf } from '../survey/collar/collars.ts';
import { metresApart } from '../survey/norths/grids.ts';
import { mineToMap } from '../survey/norths/mine-grid.ts';
import { type TextTable, unreadableRow } from '../survey/table.ts';
import { pegsOf } from './collar-taken.ts';

/** A table of surveyed collars and how it is meant. */
export interface CollarsGiven {
  readonly table: TextTable;
  readonly columns: CollarColumns;
  /** Who surveyed them, when: words that stay with each position. */
  readonly source: string;
  /** Positions are in the local mine grid, and are turned to the map grid. */
  readonly inMineGrid: boolean;
}

/** A surveyed collar of one hole: what records it, and how far it is from the position in use before. */
export interface CollarGiven {
  readonly hole: Document;
  readonly made: Made;
  readonly collar: Collar;
  readonly from: { readonly rank: Collar['rank']; readonly metres: number; readonly upM: number } | undefined;
}

/** What a table of surveyed collars comes to: positions to record, and rows that are not taken. */
export interface CollarsTaken {
  readonly collars: readonly CollarGiven[];
  readonly refused: readonly Finding[];
  /** Taken all the same: further from the plan than the project allows. */
  readonly doubts: readonly Finding[];
}

/**
 * Surveyed collars out of a table, each beside the positions its hole has: nothing is overwritten, the surveyed one ranks above them. A row
 * of a hole that is not there, or far from every planned collar (the likely slip and the distance are named), is not taken. A
 * position that the hole has already, to the millimetre, is passed over.
 */
export function takeCollars(
  project: Project,
  holes: readonly Document[],
  given: CollarsGiven,
  place: Place,
  maker: Maker,
): CollarsTaken {
  const { grid, mineGrid } = siteOfProject(project);
  const read = readCollarTable(given.table, given.columns, place);
  const refused: Finding[] = [...read.findings];
  const doubts: Finding[] = [];
  const collars: CollarGiven[] = [];
  const pegs = pegsOf(holes);
  const program = pegs.map((peg) => peg.at);
  for (const row of read.collars) {
    const hole = holes.find((each) => each.id === row.hole.toUpperCase() || headerOf(each).name === row.hole);
    if (hole === undefined) {
      refused.push(unreadableRow(row.place, row.hole, 'the project has no hole of this name'));
      continue;
    }
    const collar = collarOf(row, given, grid?.name, mineGrid, maker);
    const at = { ...row.place, ...placeOf(hole) };
    const far =
      grid === undefined ? [] : checkCollarOnProgram(positionOf(collar), program, grid, project.survey, at);
    if (far.length > 0) {
      refused.push(...far);
      continue;
    }
    const there = holeNouns(hole, 'collars');
    if (there.some((each) => samePlace(each, collar))) continue;
    const peg = plannedCollar(there);
    const others = pegs.filter((each) => each.hole !== headerOf(hole).name);
    if (peg !== undefined)
      doubts.push(...checkCollarOnPlan(positionOf(collar), positionOf(peg), project.survey, at, others));
    collars.push({
      hole,
      made: recordCollar(collar, maker),
      collar,
      from: distanceFrom(bestCollar(there), collar),
    });
  }
  return { collars, refused, doubts };
}

function collarOf(
  row: TableCollar,
  given: CollarsGiven,
  grid: string | undefined,
  mineGrid: ReturnType<typeof siteOfProject>['mineGrid'],
  maker: Maker,
): Collar {
  const said = { eastM: row.eastingMm / 1000, northM: row.northingMm / 1000 };
  const { eastM, northM } = given.inMineGrid && mineGrid !== undefined ? mineToMap(mineGrid, said) : said;
  return {
    rank: 'surveyed',
    eastingMm: Math.round(eastM * 1000),
    northingMm: Math.round(northM * 1000),
    elevationMm: row.elevationMm,
    grid: grid ?? 'not named',
    source: given.source,
    at: maker.at,
    by: maker.by,
  };
}

function samePlace(a: Collar, b: Collar): boolean {
  return (
    a.rank === b.rank &&
    a.eastingMm === b.eastingMm &&
    a.northingMm === b.northingMm &&
    a.elevationMm === b.elevationMm
  );
}

function distanceFrom(before: Collar | undefined, collar: Collar): CollarGiven['from'] {
  if (before === undefined || before.grid !== collar.grid) return undefined;
  return {
    rank: before.rank,
    metres: metresApart(positionOf(before), positionOf(collar)),
    upM: (collar.elevationMm - before.elevationMm) / 1000,
  };
}
