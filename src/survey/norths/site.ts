import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Stamp } from '../../quantity/stamp.ts';
import { gridUnreadable } from '../findings.ts';
import type { SurveySettingsFile } from '../settings.ts';
import { type MagneticField, magneticField } from './declination.ts';
import { convergenceDeg, type Grid, gridByCode, gridByProj, type MapPosition, toWgs84 } from './grids.ts';
import { type MineGrid, mineGridFromPoints } from './mine-grid.ts';
import type { NorthAngles } from './norths.ts';

/** The grids of a project and the declination it insists on, read from its settings. */
export interface Site {
  readonly grid: Grid | undefined;
  readonly mineGrid: MineGrid | undefined;
  readonly declinationDeg: number | undefined;
}

/** The site of a project's settings; refused when a grid can't be read. */
export function siteOf(file: SurveySettingsFile, place: Place): Result<Site> {
  const grid = gridOf(file.grid, { ...place, field: 'grid' });
  if (!grid.ok) return grid;
  const mineGrid = mineGridOf(file.mineGrid, { ...place, field: 'mineGrid' });
  if (!mineGrid.ok) return mineGrid;
  return ok({ grid: grid.value, mineGrid: mineGrid.value, declinationDeg: file.declination?.deg });
}

function gridOf(said: SurveySettingsFile['grid'], place: Place): Result<Grid | undefined> {
  if (said === undefined) return ok(undefined);
  if ('proj' in said) return gridByProj(said.name, said.proj, place);
  const grid = gridByCode(said.epsg);
  if (grid !== undefined) return ok(grid);
  return refused(
    gridUnreadable.at(place, {
      excerpt: `EPSG ${said.epsg}`,
      problem: 'the table has no projected grid in metres of this code',
      remedy: 'Check the code, or give a name and a proj string instead.',
    }),
  );
}

function mineGridOf(said: SurveySettingsFile['mineGrid'], place: Place): Result<MineGrid | undefined> {
  if (said === undefined) return ok(undefined);
  if ('pegs' in said) return mineGridFromPoints(said.pegs[0], said.pegs[1], place);
  const { mapOrigin, mineOrigin, rotationDeg, scale = 1 } = said;
  return ok({ mapOrigin, mineOrigin, rotationDeg, scale });
}

/** The angles between norths at a place and time, the field they come from, and what is to be said of it. */
export interface AnglesHere {
  readonly angles: NorthAngles;
  readonly field: MagneticField | undefined;
  readonly findings: readonly Finding[];
}

/**
 * The angles at a position of the site's grid and an elevation in metres, on the date of `at`. Without a grid or a position
 * only the mine grid's rotation and the project's own declination are known. A declination that the project insists on stands in
 * for the model's; the model's field is given all the same.
 */
export function anglesAt(
  site: Site,
  position: MapPosition | undefined,
  elevationM: number,
  at: Stamp,
  place: Place,
): AnglesHere {
  const { grid, mineGrid, declinationDeg } = site;
  const where = grid === undefined || position === undefined ? undefined : toWgs84(grid, position);
  const answer =
    where === undefined ? { field: undefined, findings: [] } : magneticField(where, elevationM, at, place);
  const convergence =
    grid === undefined || position === undefined ? undefined : convergenceDeg(grid, position);
  const declination = declinationDeg ?? answer.field?.declinationDeg;
  return {
    angles: {
      ...(declination === undefined ? {} : { declinationDeg: declination }),
      ...(convergence === undefined ? {} : { convergenceDeg: convergence }),
      ...(mineGrid === undefined ? {} : { mineGridRotationDeg: mineGrid.rotationDeg }),
    },
    field: answer.field,
    findings: answer.findings,
  };
}
