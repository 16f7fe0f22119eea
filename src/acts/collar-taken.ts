import type { Finding } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import type { Collar } from '../hole/header.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { placeOf, siteOfProject } from '../standing/survey.ts';
import { checkFix, type FixQuality, fixKept } from '../survey/checks/collar-fix-poor.ts';
import { checkCollarOnPlan, type OtherPeg } from '../survey/checks/collar-off-plan.ts';
import { checkCollarOnProgram } from '../survey/checks/collar-off-program.ts';
import { plannedCollar, positionOf } from '../survey/collar/collars.ts';
import { readFixes } from '../survey/collar/fixes.ts';
import { fromWgs84, type MapPosition } from '../survey/norths/grids.ts';
import { mineToMap } from '../survey/norths/mine-grid.ts';

/** A position of the collar read at the rig: metres of the project's grid, the height above the sea where one was given. */
export interface CollarTaken extends MapPosition {
  readonly heightM: number | undefined;
  readonly source: string;
  /** How good the fix is, where it is one of a GPS. */
  readonly fix?: FixQuality;
}

/** A position that was read, or what is wrong, in words. */
export type CollarRead =
  | { readonly ok: true; readonly collar: CollarTaken }
  | { readonly ok: false; readonly problem: string };

const wrong = (problem: string): CollarRead => ({ ok: false, problem });

/** Reads a collar position: `412500.2 6002241.0 431` (east, north, height in metres of the grid; `l` behind it: of the mine grid), or the sentences of a GPS (NMEA 0183). */
export function readCollar(project: Project, hole: Document, text: string): CollarRead {
  if (text.includes('$')) return readGps(project, text);
  const local = /^(.*\S)\s+l$/.exec(text.trim())?.[1];
  return local === undefined ? readNumbers(hole, text) : readLocal(project, hole, local);
}

/** A position of the local mine grid, turned to the map grid. */
function readLocal(project: Project, hole: Document, text: string): CollarRead {
  const { mineGrid } = siteOfProject(project);
  if (mineGrid === undefined)
    return wrong('project.json has no mine grid: give the position on the map grid.');
  const read = readNumbers(hole, text);
  if (!read.ok) return read;
  const { heightM, source } = read.collar;
  return {
    ok: true,
    collar: { ...mineToMap(mineGrid, read.collar), heightM, source: `${source}, mine grid` },
  };
}

function readNumbers(hole: Document, text: string): CollarRead {
  const parts = text.trim().split(/[\s,]+/);
  const [eastM = Number.NaN, northM = Number.NaN, heightM] = parts.map(Number);
  if (parts.length < 2 || parts.length > 3 || parts.some((part) => !/^-?\d+(\.\d+)?$/.test(part)))
    return wrong(
      'Type east, north and height in metres, like 412500.2 6002241 431; paste the GPS, or give its file or device.',
    );
  if (heightM === undefined && plannedCollar(holeNouns(hole, 'collars')) === undefined)
    return wrong('Type the height too: no planned collar gives one.');
  return { ok: true, collar: { eastM, northM, heightM, source: 'typed at the rig' } };
}

function readGps(project: Project, text: string): CollarRead {
  const { grid } = siteOfProject(project);
  if (grid === undefined) return wrong('project.json names no grid: a GPS position can not be put on it.');
  const { average, leftOut } = readFixes(text.replace(/\s*\$/g, '\n$'));
  if (average === undefined)
    return wrong(`No fix in it: ${leftOut[0]?.reason ?? 'it is empty'}. Wait for a fix and paste again.`);
  const position = fromWgs84(grid, average);
  if (position === undefined) return wrong(`The position is outside ${grid.name}.`);
  const quality = [
    `${average.fixes} fix${average.fixes === 1 ? '' : 'es'}`,
    average.kinds.join(' and '),
    `scatter ${average.scatterM.toFixed(1)} m`,
    ...(average.fewestSatellites === undefined ? [] : [`${average.fewestSatellites} satellites`]),
    ...(leftOut.length === 0 ? [] : [`${leftOut.length} left out`]),
  ];
  const source = `GPS, ${quality.join(', ')}`;
  return { ok: true, collar: { ...position, heightM: average.heightM, source, fix: average } };
}

/**
 * What is to be said of a position: read by a fix too poor to judge by, far from every planned collar (the likely slip is named), or off
 * this hole's own peg.
 */
export function doubtsOfCollar(
  project: Project,
  hole: Document,
  documents: Iterable<Document>,
  taken: CollarTaken,
): readonly Finding[] {
  const { grid } = siteOfProject(project);
  const place = placeOf(hole);
  const own = plannedCollar(holeNouns(hole, 'collars'));
  const pegs = pegsOf(documents);
  const program = pegs.map((peg) => peg.at);
  const far = grid === undefined ? [] : checkCollarOnProgram(taken, program, grid, project.survey, place);
  const poor = taken.fix === undefined ? [] : checkFix(taken.fix, project.survey, place);
  const doubts = [...poor, ...far];
  if (doubts.length > 0 || own === undefined) return doubts;
  const others = pegs.filter((peg) => peg.hole !== headerOf(hole).name);
  return checkCollarOnPlan(taken, positionOf(own), project.survey, place, others);
}

/** The planned collars of a project with their holes. */
export function pegsOf(documents: Iterable<Document>): readonly OtherPeg[] {
  return [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((document) => {
      const peg = plannedCollar(holeNouns(document, 'collars'));
      return peg === undefined ? [] : [{ hole: headerOf(document).name, at: positionOf(peg) }];
    });
}

/** The position as the hole keeps it: handheld, beside the planned one. Without a height of its own it has the planned one's. */
export function collarThing(project: Project, hole: Document, taken: CollarTaken, maker: Maker): Collar {
  const planned = plannedCollar(holeNouns(hole, 'collars'));
  return {
    rank: 'handheld',
    eastingMm: Math.round(taken.eastM * 1000),
    northingMm: Math.round(taken.northM * 1000),
    elevationMm: taken.heightM === undefined ? (planned?.elevationMm ?? 0) : Math.round(taken.heightM * 1000),
    grid: siteOfProject(project).grid?.name ?? planned?.grid ?? 'not named',
    source: taken.source,
    ...(taken.fix === undefined ? {} : { fix: fixKept(taken.fix) }),
    at: maker.at,
    by: maker.by,
  };
}
