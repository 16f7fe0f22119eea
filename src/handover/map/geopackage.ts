import { instantMs, type Stamp } from '../../quantity/stamp.ts';
import type { Grid } from '../../survey/norths/grids.ts';
import { databaseFile, type SqlTable } from '../sqlite/database.ts';
import type { SqlValue } from '../sqlite/record.ts';
import type { Column, Value } from '../tables/column.ts';
import type { MadeTable } from '../tables/table.ts';
import { lineBlob, pointBlob } from './geometry.ts';
import { type ReferenceSystem, systemOf, systemRows, systemsWith } from './reference-systems.ts';
import { namedRows, position, tracesOf } from './traces.ts';

/** `GPKG`, and version 1.3. Source: OGC 12-128r17, requirement 2. */
const HEAD = { applicationId: 0x47504b47, userVersion: 10_300 };

/** A table of a GeoPackage with what its catalogue says of it. */
interface Layer {
  readonly table: SqlTable;
  readonly about: string;
  /** Of features: their kind, and how far they reach. */
  readonly features?: { readonly kind: 'POINT' | 'LINESTRING'; readonly reach: Reach | undefined };
}

type Reach = readonly [minX: number, minY: number, maxX: number, maxY: number];

/**
 * The tables as a GeoPackage 1.3 (OGC 12-128r17): collars as points and traces as lines with heights in the project's own reference system,
 * every other table as attributes. It is a SQLite database, too, for whoever has no map. The same tables give the same bytes.
 */
export function geoPackage(tables: readonly MadeTable[], grid: Grid | undefined, now: Stamp): Uint8Array {
  const system = systemOf(grid);
  const layers = [
    ...tables.map((made) => (made.name === 'collars' ? collarLayer(made, system) : attributeLayer(made))),
    traceLayer(tables, system),
  ];
  const systems = systemsWith(system);
  const written = layers.map(({ table }) => table);
  return databaseFile(HEAD, [
    { name: 'gpkg_spatial_ref_sys', sql: SPATIAL_REF_SYS, ...systemRows(systems) },
    contents(layers, system, now),
    geometryColumns(layers, system),
    ...written,
    sequence(written),
  ]);
}

const SPATIAL_REF_SYS =
  'CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY, organization TEXT NOT NULL, organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)';
const CONTENTS =
  "CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '', last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')), min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER, CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))";
const GEOMETRY_COLUMNS =
  'CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name), CONSTRAINT uk_gc_table_name UNIQUE (table_name), CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name), CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))';

function contents(layers: readonly Layer[], system: ReferenceSystem, now: Stamp): SqlTable {
  const changed = new Date(instantMs(now)).toISOString();
  return {
    name: 'gpkg_contents',
    sql: CONTENTS,
    keys: [[0], [2]],
    rows: layers.map(({ table: { name }, about, features }) => [
      name,
      features === undefined ? 'attributes' : 'features',
      name,
      about,
      changed,
      ...[0, 1, 2, 3].map((side): SqlValue => {
        const value = features?.reach?.[side];
        return value === undefined ? null : { real: value };
      }),
      features === undefined ? null : { integer: system.id },
    ]),
  };
}

function geometryColumns(layers: readonly Layer[], system: ReferenceSystem): SqlTable {
  return {
    name: 'gpkg_geometry_columns',
    sql: GEOMETRY_COLUMNS,
    keys: [[0, 1], [0]],
    rows: layers.flatMap(({ table: { name }, features }) =>
      features === undefined
        ? []
        : [[name, 'geometry', features.kind, { integer: system.id }, { integer: 1 }, { integer: 0 }]],
    ),
  };
}

/** What SQLite counts row numbers by that are never given twice. */
function sequence(tables: readonly SqlTable[]): SqlTable {
  return {
    name: 'sqlite_sequence',
    sql: 'CREATE TABLE sqlite_sequence(name,seq)',
    rows: tables
      .filter(({ rows }) => rows.length > 0)
      .map(({ name, rows }) => [name, { integer: rows.length }]),
  };
}

const SQL_TYPES = {
  text: 'TEXT',
  number: 'DOUBLE',
  integer: 'INTEGER',
  boolean: 'BOOLEAN',
  date: 'DATE',
  instant: 'TEXT',
} as const;

/** Definition of a table: its row number, a geometry where it has one, then its columns. */
function definition(
  name: string,
  columns: Readonly<Record<string, Pick<Column, 'type' | 'empty'>>>,
  geometry?: string,
): string {
  const own = Object.entries(columns).map(
    ([column, { type, empty }]) =>
      `${quoted(column)} ${SQL_TYPES[type]}${empty === undefined ? ' NOT NULL' : ''}`,
  );
  const first = [
    'fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL',
    ...(geometry === undefined ? [] : [`geometry ${geometry}`]),
  ];
  return `CREATE TABLE ${quoted(name)} (${[...first, ...own].join(', ')})`;
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

function sqlValue(value: Value, { type }: Pick<Column, 'type'>): SqlValue {
  if (value === undefined) return null;
  if (typeof value === 'boolean') return { integer: value ? 1 : 0 };
  if (typeof value === 'number') return type === 'integer' ? { integer: value } : { real: value };
  return value;
}

function attributeLayer({ name, table, columns, rows }: MadeTable): Layer {
  const declared = Object.values(columns);
  return {
    about: table.about,
    table: {
      name,
      sql: definition(name, columns),
      rows: rows.map((row) => [null, ...row.map((value, index) => sqlValue(value, declared[index]!))]),
    },
  };
}

function collarLayer(made: MadeTable, { id }: ReferenceSystem): Layer {
  const places = namedRows([made], 'collars').map((row) =>
    position(row.east_m, row.north_m, row.elevation_m),
  );
  const { about, table } = attributeLayer(made);
  return {
    about,
    features: {
      kind: 'POINT',
      reach: reachOf(places.flatMap((place) => (place === undefined ? [] : [place]))),
    },
    table: {
      ...table,
      sql: definition(made.name, made.columns, 'POINT'),
      rows: table.rows.map(([fid = null, ...cells], index) => {
        const place = places[index];
        return [fid, place === undefined ? null : pointBlob(id, place), ...cells];
      }),
    },
  };
}

const TRACE_COLUMNS = {
  hole: { type: 'text' },
  depth_m: { type: 'number' },
  measured_m: { type: 'number' },
} as const;

function traceLayer(tables: readonly MadeTable[], { id }: ReferenceSystem): Layer {
  const traces = tracesOf(tables).map(({ hole, points, measuredM }) => {
    const line = points.flatMap(({ onGrid }) => (onGrid === undefined ? [] : [onGrid]));
    const row = [hole, { real: points.at(-1)?.depthM ?? 0 }, { real: measuredM }] as const;
    return { line, row: [null, line.length < points.length ? null : lineBlob(id, line), ...row] };
  });
  return {
    about:
      'Where each hole goes, a point each metre down to the depth drilled; below measured_m it is projected straight.',
    features: { kind: 'LINESTRING', reach: reachOf(traces.flatMap(({ line }) => line)) },
    table: {
      name: 'traces',
      sql: definition('traces', TRACE_COLUMNS, 'LINESTRING'),
      rows: traces.map(({ row }) => row),
    },
  };
}

function reachOf(places: readonly (readonly [number, number, number])[]): Reach | undefined {
  if (places.length === 0) return undefined;
  const side = (axis: 0 | 1, pick: (a: number, b: number) => number): number =>
    places.map((place) => place[axis]).reduce((a, b) => pick(a, b));
  return [side(0, Math.min), side(1, Math.min), side(0, Math.max), side(1, Math.max)];
}
