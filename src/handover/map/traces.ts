import type { Value } from '../tables/column.ts';
import type { MadeTable } from '../tables/table.ts';

/** A point of a trace: depth along the hole, on the grid of the collar where it has a position, in WGS 84 where the grid is known. */
interface TracePoint {
  readonly depthM: number;
  readonly onGrid: readonly [eastM: number, northM: number, elevationM: number] | undefined;
  readonly wgs84: readonly [lonDeg: number, latDeg: number, elevationM: number] | undefined;
}

/** Where a hole goes, from its collar down; two points at least. */
export interface Trace {
  readonly hole: string;
  readonly points: readonly TracePoint[];
  /** The deepest point that a shot or the arc between two vouches for: what lies below is projected. */
  readonly measuredM: number;
}

/** A row by the names of its columns. */
export type NamedRow = Readonly<Record<string, Value>>;

/** Rows of a table by the names of its columns; none where there is no such table. */
export function namedRows(tables: readonly MadeTable[], name: string): readonly NamedRow[] {
  const table = tables.find((each) => each.name === name);
  const columns = Object.keys(table?.columns ?? {});
  return (table?.rows ?? []).map((row) =>
    Object.fromEntries(columns.map((column, index) => [column, row[index]])),
  );
}

/** The traces of holes, out of their path by metre: the map shows what the table says. */
export function tracesOf(tables: readonly MadeTable[]): readonly Trace[] {
  const byHole = new Map<string, NamedRow[]>();
  for (const row of namedRows(tables, 'path')) {
    const hole = String(row.hole);
    const before = byHole.get(hole);
    if (before === undefined) byHole.set(hole, [row]);
    else before.push(row);
  }
  return [...byHole].flatMap(([hole, rows]) => {
    const points = rows.map(pointOf);
    const measured = rows
      .filter(({ basis }) => !String(basis).startsWith('projected'))
      .map((row) => Number(row.depth_m));
    return points.length < 2 ? [] : [{ hole, points, measuredM: Math.max(0, ...measured) }];
  });
}

function pointOf(row: NamedRow): TracePoint {
  const { east_m, north_m, elevation_m, longitude_deg, latitude_deg } = row;
  return {
    depthM: Number(row.depth_m),
    onGrid: position(east_m, north_m, elevation_m),
    wgs84: position(longitude_deg, latitude_deg, elevation_m),
  };
}

/** Three numbers of a position; undefined where one is missing. */
export function position(x: Value, y: Value, z: Value): readonly [number, number, number] | undefined {
  return typeof x === 'number' && typeof y === 'number' && typeof z === 'number' ? [x, y, z] : undefined;
}
