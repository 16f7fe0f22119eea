import proj4 from 'proj4';
import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { degrees } from '../direction.ts';
import { gridUnreadable } from '../findings.ts';
import { EPSG_DATUMS, EPSG_TABLE } from './epsg-table.ts';

/** A projected map grid: its EPSG code where it has one, its name, and its definition as a proj string. */
export interface Grid {
  readonly code?: number;
  readonly name: string;
  readonly proj: string;
}

/** Metres east and north in a grid. A grid counted west and south has both negative: east = −westing, north = −southing. */
export interface MapPosition {
  readonly eastM: number;
  readonly northM: number;
}

/** Degrees of latitude (north positive) and longitude (east positive). */
export interface Geographic {
  readonly latDeg: number;
  readonly lonDeg: number;
}

const WGS84 = '+proj=longlat +datum=WGS84';

/** The grid of an EPSG code, from the register's table, or undefined when the table has none (give a proj string then). */
export function gridByCode(code: number): Grid | undefined {
  const lines = EPSG_TABLE.split('\n');
  for (const line of lines) {
    const [codes = '', name = '', proj = ''] = line.split('|');
    const [first = 0, count = 1] = codes.split('x').map(Number);
    const index = code - first;
    if (Number.isInteger(index) && index >= 0 && index < count)
      return { code, name: stepped(name, index), proj: withDatum(stepped(proj, index)) };
  }
  return undefined;
}

/** Writes the numbers of the `index`-th system of a run: `{first:step}` → first + index × step. */
function stepped(text: string, index: number): string {
  return text.replace(/\{([^:}]+):([^}]+)\}/g, (_, first, step) =>
    String(Number((Number(first) + index * Number(step)).toFixed(9))),
  );
}

function withDatum(proj: string): string {
  return proj.replace(/@(\d+)$/, (_, index) => EPSG_DATUMS.split('\n')[Number(index)] ?? '');
}

/** A grid of the project's own, from a proj string in metres. Refused when it can't be read, isn't projected or isn't in metres. */
export function gridByProj(name: string, proj: string, place: Place): Result<Grid> {
  const remedy = 'Give an EPSG code, or a proj string of a projected system in metres.';
  const bad = (problem: string) => refused(gridUnreadable.at(place, { excerpt: proj, problem, remedy }));
  if (/\+proj=longlat/.test(proj)) return bad('degrees of latitude and longitude are no map grid');
  if (/\+to_meter|\+units=(?!m\b)/.test(proj)) return bad('the grid is not in metres');
  if (/\+nadgrids=(?!@null)/.test(proj))
    return bad('its datum shift needs a grid file, which is not carried');
  const unknown = unknownShape(proj);
  if (unknown !== undefined) return bad(`${unknown} is not known: WGS 84 would be taken for it in silence`);
  try {
    proj4(WGS84, proj);
  } catch {
    return bad('the proj string is not understood');
  }
  return ok({ name, proj });
}

/** Ellipsoids and datums that the library knows by name; for any other it takes WGS 84 and says nothing. */
const ELLIPSOIDS = new Set(
  'GRS80 GRS67 WGS84 WGS66 WGS60 IAU76 airy mod_airy aust_SA bessel bess_nam clrk58 clrk66 clrk80 clrk80ign evrst30 evrst48 evrst56 evrst69 evrstSS helmert hough intl krass new_intl plessis'.split(
    ' ',
  ),
);
const DATUMS = new Set(
  'WGS84 NAD83 GGRS87 potsdam carthage hermannskogel osni52 ire65 rassadiran nzgd49 OSGB36 ch1903 s_jtsk rnb72'.split(
    ' ',
  ),
);

/** The ellipsoid or datum of a proj string that would be taken for WGS 84, undefined where there is none. */
function unknownShape(proj: string): string | undefined {
  const ellps = /\+ellps=(\S+)/.exec(proj)?.[1];
  const datum = /\+datum=(\S+)/.exec(proj)?.[1];
  if (ellps !== undefined && !ELLIPSOIDS.has(ellps)) return `the ellipsoid ${ellps}`;
  return datum !== undefined && !DATUMS.has(datum) ? `the datum ${datum}` : undefined;
}

/** What is done about the datum between the grid and a GPS fix, in words, to stand wherever a fix is set beside the grid. */
export function formatDatumShift(grid: Grid): string {
  const shift = /\+towgs84=(\S+)/.exec(grid.proj)?.[1];
  if (shift !== undefined)
    return `datum shifted to WGS 84 by ${shift.split(',').length} parameters of the EPSG register; good to a few metres`;
  return /\+datum=WGS84/.test(grid.proj)
    ? 'on WGS 84, no datum shift'
    : 'datum taken as WGS 84, no shift made; a datum fixed to its plate can be 2 m from a GPS fix';
}

/** Said where positions of a grid are typed: how its coordinates are to be given, when that isn't plain east and north. */
export function formatAxes(grid: Grid): string | undefined {
  return /\+axis=(wsu|swu)/.test(grid.proj)
    ? 'this grid counts west and south: give the easting as minus the westing, the northing as minus the southing'
    : undefined;
}

/** The projection of a grid by itself, and degrees on its own ellipsoid: no datum shift comes in, not even one that is undone again. */
function onOwnEllipsoid(grid: Grid): { readonly plane: string; readonly degrees: string } {
  const plane = grid.proj.replace(/ ?\+towgs84=\S+/, '');
  const shape = plane.match(/\+(?:ellps|datum|a|b|rf|R)=\S+/g) ?? [];
  return { plane, degrees: `+proj=longlat ${shape.join(' ')}` };
}

/** A pair taken from one system to another; undefined where the projection has no such place (the library throws there). */
function project(
  from: string,
  to: string,
  pair: readonly [number, number],
): readonly [number, number] | undefined {
  try {
    const [x = Number.NaN, y = Number.NaN] = proj4(from, to, [pair[0], pair[1]]);
    return Number.isFinite(x) && Number.isFinite(y) ? [x, y] : undefined;
  } catch {
    return undefined;
  }
}

/** A position of the grid from WGS 84 degrees, as a GPS gives them; undefined where the projection doesn't reach. */
export function fromWgs84(grid: Grid, at: Geographic): MapPosition | undefined {
  const pair = project(WGS84, grid.proj, [at.lonDeg, at.latDeg]);
  return pair === undefined ? undefined : { eastM: pair[0], northM: pair[1] };
}

/** WGS 84 degrees of a position of the grid; undefined where the projection doesn't reach. */
export function toWgs84(grid: Grid, at: MapPosition): Geographic | undefined {
  const pair = project(grid.proj, WGS84, [at.eastM, at.northM]);
  return pair === undefined ? undefined : { latDeg: pair[1], lonDeg: pair[0] };
}

/** A position of the grid from degrees on the grid's own ellipsoid, no datum shift between them; undefined where the projection doesn't reach. */
export function fromOwnDegrees(grid: Grid, at: Geographic): MapPosition | undefined {
  const own = onOwnEllipsoid(grid);
  const pair = project(own.degrees, own.plane, [at.lonDeg, at.latDeg]);
  return pair === undefined ? undefined : { eastM: pair[0], northM: pair[1] };
}

/** Half the length of meridian over which its bearing is taken, radians: about 640 m; the error left is 10⁻⁵ of a second. */
const STEP_RAD = 1e-4;

/**
 * Convergence in degrees: the bearing of grid north from true north, east positive, so that grid = true − convergence.
 * Taken from the direction of the meridian in the projection itself, so it holds for any of them; undefined where the
 * projection doesn't reach.
 */
export function convergenceDeg(grid: Grid, at: MapPosition): number | undefined {
  const own = onOwnEllipsoid(grid);
  const here = project(own.plane, own.degrees, [at.eastM, at.northM]);
  if (here === undefined) return undefined;
  const [lonDeg, lat] = here;
  const step = degrees(STEP_RAD);
  const above = fromOwnDegrees(grid, { lonDeg, latDeg: lat + step });
  const below = fromOwnDegrees(grid, { lonDeg, latDeg: lat - step });
  if (above === undefined || below === undefined) return undefined;
  return -degrees(Math.atan2(above.eastM - below.eastM, above.northM - below.northM));
}

/** Metres between two positions of one grid. */
export function metresApart(a: MapPosition, b: MapPosition): number {
  return Math.hypot(a.eastM - b.eastM, a.northM - b.northM);
}

/** Bearing in the grid from one position to another, degrees, and the distance in metres. */
export function bearingAndDistance(
  from: MapPosition,
  to: MapPosition,
): { readonly deg: number; readonly metres: number } {
  const east = to.eastM - from.eastM;
  const north = to.northM - from.northM;
  return { deg: (degrees(Math.atan2(east, north)) + 360) % 360, metres: Math.hypot(east, north) };
}
