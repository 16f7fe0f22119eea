import proj4 from 'proj4';
import { degrees } from '../direction.ts';
import type { Grid } from './grids.ts';

/** What the library makes of a proj string, as far as it is used here: angles in radians, lengths in metres. */
interface Read {
  readonly projName: string;
  readonly a: number;
  readonly rf?: number;
  readonly b?: number;
  readonly lat0?: number;
  readonly lat1?: number;
  readonly lat2?: number;
  readonly long0?: number;
  readonly k0?: number;
  readonly x0?: number;
  readonly y0?: number;
  readonly zone?: number;
  readonly utmSouth?: boolean;
  readonly datum_params?: readonly number[];
}

/**
 * A grid as well-known text (OGC 01-009), for programs that know no proj string; undefined for projections that are not transverse Mercator or
 * Lambert conformal conic from the meridian of Greenwich. Easting and northing both count up: so does every position that offsider keeps, on a grid that counts west too.
 */
export function gridWkt(grid: Grid): string | undefined {
  const read = readProj(grid);
  const projection = /\+pm=/.test(grid.proj) ? undefined : projectionOf(grid, read);
  if (projection === undefined) return undefined;
  const [base = grid.name] = grid.name.split(' / ');
  const parameters = Object.entries(projection.parameters).map(
    ([name, value]) => `PARAMETER["${name}",${plain(value)}]`,
  );
  return `PROJCS[${[
    quoted(grid.name),
    geographic(grid, base, read),
    `PROJECTION["${projection.name}"]`,
    ...parameters,
    'UNIT["metre",1,AUTHORITY["EPSG","9001"]]',
    'AXIS["Easting",EAST]',
    'AXIS["Northing",NORTH]',
    ...(grid.code === undefined || countsWest(grid) ? [] : [`AUTHORITY["EPSG","${grid.code}"]`]),
  ].join(',')}]`;
}

/** True of a grid whose register counts west and south: positions are kept east and north, which that code does not mean. */
export function countsWest(grid: Grid): boolean {
  return /\+axis=(wsu|swu)/.test(grid.proj);
}

/** Asked of the library by its one call: the bundle loads it no other way, at the first need. */
function readProj(grid: Grid): Read {
  return (proj4(grid.proj) as unknown as { readonly oProj: Read }).oProj;
}

function geographic(grid: Grid, base: string, { a, b, rf }: Read): string {
  const flattening = rf ?? (b === undefined || b === a ? 0 : a / (a - b));
  const shift = /\+towgs84=(\S+)/.exec(grid.proj)?.[1];
  const seven = shift === undefined ? [] : [...shift.split(',').map(Number), 0, 0, 0, 0].slice(0, 7);
  const datum = [quoted(base), `SPHEROID[${quoted(spheroidName(grid))},${plain(a)},${plain(flattening)}]`];
  if (seven.length > 0) datum.push(`TOWGS84[${seven.map(plain).join(',')}]`);
  return `GEOGCS[${quoted(base)},DATUM[${datum.join(',')}],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]]`;
}

function spheroidName({ proj }: Grid): string {
  return /\+ellps=(\S+)/.exec(proj)?.[1] ?? /\+datum=(\S+)/.exec(proj)?.[1] ?? 'of the grid';
}

type Projection = { readonly name: string; readonly parameters: Readonly<Record<string, number>> };

function projectionOf({ proj }: Grid, read: Read): Projection | undefined {
  const name = /\+proj=(\S+)/.exec(proj)?.[1];
  const deg = (radians = 0): number => Number(degrees(radians).toFixed(12));
  const shared = {
    central_meridian: deg(read.long0),
    false_easting: read.x0 ?? 0,
    false_northing: read.y0 ?? 0,
  };
  if (name === 'utm' || name === 'tmerc')
    return {
      name: 'Transverse_Mercator',
      parameters: { latitude_of_origin: deg(read.lat0), scale_factor: read.k0 ?? 1, ...shared },
    };
  if (name !== 'lcc' || read.lat1 === undefined) return undefined;
  if (read.lat2 !== undefined && read.lat2 !== read.lat1)
    return {
      name: 'Lambert_Conformal_Conic_2SP',
      parameters: {
        standard_parallel_1: deg(read.lat1),
        standard_parallel_2: deg(read.lat2),
        latitude_of_origin: deg(read.lat0),
        ...shared,
      },
    };
  return {
    name: 'Lambert_Conformal_Conic_1SP',
    parameters: { latitude_of_origin: deg(read.lat1), scale_factor: read.k0 ?? 1, ...shared },
  };
}

/** A number without an exponent, which not every reader of the form knows. */
function plain(value: number): string {
  return String(value).includes('e') ? value.toFixed(15).replace(/\.?0+$/, '') : String(value);
}

/** A name in quotation marks; those in it are left out, for the form has no way to write them. */
function quoted(name: string): string {
  return `"${name.replaceAll(/["\r\n]/g, '')}"`;
}
