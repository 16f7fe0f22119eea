import type { Value } from '../tables/column.ts';
import type { MadeTable } from '../tables/table.ts';
import { type NamedRow, namedRows, position, type Trace, tracesOf } from './traces.ts';

/** Elevations are as surveyed: RFC 7946 wants heights above the ellipsoid, which no one measures on a rig. Said beside each geometry. */
const HEIGHTS = 'as recorded, not reduced to the WGS 84 ellipsoid';

type Properties = Readonly<Record<string, unknown>>;

/** The collars as GeoJSON (RFC 7946): points in WGS 84, everything in the table of collars as their properties, the grid's coordinates too. */
export function collarsGeoJson(tables: readonly MadeTable[]): string {
  return collection(
    namedRows(tables, 'collars').map((row) =>
      feature(pointGeometry(position(row.longitude_deg, row.latitude_deg, row.elevation_m)), {
        ...nulls(row),
        heights: HEIGHTS,
      }),
    ),
  );
}

/** Where the holes go, as lines in WGS 84 with a point each metre; the same points on the project's grid are among the properties. */
export function tracesGeoJson(tables: readonly MadeTable[]): string {
  const collars = new Map(namedRows(tables, 'collars').map((row) => [row.hole, row]));
  return collection(
    tracesOf(tables).map((trace) =>
      feature(lineGeometry(trace), traceProperties(trace, collars.get(trace.hole))),
    ),
  );
}

function traceProperties({ hole, points, measuredM }: Trace, collar: NamedRow | undefined): Properties {
  const onGrid = points.map((point) => point.onGrid);
  return {
    hole,
    name: collar?.name ?? hole,
    state: collar?.state ?? null,
    depth_m: points.at(-1)?.depthM,
    measured_m: measuredM,
    grid: collar?.grid ?? null,
    depths_m: points.map((point) => point.depthM),
    grid_coordinates_m: onGrid.includes(undefined) ? null : onGrid,
    heights: HEIGHTS,
  };
}

function pointGeometry(at: readonly number[] | undefined): unknown {
  return at === undefined ? null : { type: 'Point', coordinates: at };
}

/** A line; null, which RFC 7946 has for what is not located, where the grid or the collar is not known. */
function lineGeometry({ points }: Trace): unknown {
  const coordinates = points.map((point) => point.wgs84);
  return coordinates.includes(undefined) ? null : { type: 'LineString', coordinates };
}

function feature(geometry: unknown, properties: Properties): unknown {
  return { type: 'Feature', geometry, properties };
}

/** One feature a line, so that two versions can be compared. */
function collection(features: readonly unknown[]): string {
  return `{"type":"FeatureCollection","features":[\n${features.map((each) => JSON.stringify(each)).join(',\n')}\n]}\n`;
}

function nulls(row: NamedRow): Readonly<Record<string, Exclude<Value, undefined> | null>> {
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [name, value ?? null]));
}
