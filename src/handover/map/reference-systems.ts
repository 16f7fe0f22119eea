import { countsWest, gridWkt } from '../../survey/norths/grid-wkt.ts';
import type { Grid } from '../../survey/norths/grids.ts';
import type { SqlValue } from '../sqlite/record.ts';

/** A row of gpkg_spatial_ref_sys. */
export interface ReferenceSystem {
  readonly id: number;
  readonly name: string;
  readonly organization: string;
  readonly code: number;
  readonly definition: string;
  readonly description: string;
}

const WGS84 =
  'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]';

/** The three that every GeoPackage has. Source: OGC 12-128r17, requirement 11. */
const ALWAYS: readonly ReferenceSystem[] = [
  {
    id: -1,
    name: 'Undefined Cartesian',
    organization: 'NONE',
    code: -1,
    definition: 'undefined',
    description: 'undefined Cartesian coordinate reference system',
  },
  {
    id: 0,
    name: 'Undefined geographic',
    organization: 'NONE',
    code: 0,
    definition: 'undefined',
    description: 'undefined geographic coordinate reference system',
  },
  {
    id: 4326,
    name: 'WGS 84 geodetic',
    organization: 'EPSG',
    code: 4326,
    definition: WGS84,
    description: 'longitude and latitude in decimal degrees on the WGS 84 spheroid',
  },
];

/** Ids from here on are no one's: for a grid that the EPSG register has not. */
const OWN_ID = 100_000;

/** The system that positions of a project are in; undefined Cartesian where no grid is known. */
export function systemOf(grid: Grid | undefined): ReferenceSystem {
  if (grid === undefined) return ALWAYS[0]!;
  const definition = gridWkt(grid) ?? 'undefined';
  const west = countsWest(grid);
  if (grid.code === undefined || west)
    return {
      id: OWN_ID,
      name: grid.name,
      organization: 'NONE',
      code: OWN_ID,
      definition,
      description: west ? `${grid.proj}, but counted east and north` : grid.proj,
    };
  return {
    id: grid.code,
    name: grid.name,
    organization: 'EPSG',
    code: grid.code,
    definition,
    description: grid.proj,
  };
}

/** Every system of a file, that of the project last, once each. */
export function systemsWith(own: ReferenceSystem): readonly ReferenceSystem[] {
  return [...ALWAYS.filter(({ id }) => id !== own.id), own].toSorted((a, b) => a.id - b.id);
}

/** The rows of gpkg_spatial_ref_sys, whose srs_id is the number of the row. */
export function systemRows(systems: readonly ReferenceSystem[]): {
  readonly rows: readonly (readonly SqlValue[])[];
  readonly rowids: readonly number[];
} {
  return {
    rowids: systems.map(({ id }) => id),
    rows: systems.map(({ name, organization, code, definition, description }) => [
      name,
      null,
      organization,
      { integer: code },
      definition,
      description,
    ]),
  };
}
