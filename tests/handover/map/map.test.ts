import { describe, expect, it } from 'vitest';
import { collarsGeoJson, tracesGeoJson } from '../../../src/handover/map/geojson.ts';
import { geoPackage } from '../../../src/handover/map/geopackage.ts';
import { systemOf } from '../../../src/handover/map/reference-systems.ts';
import type { MadeTable } from '../../../src/handover/tables/table.ts';
import { tablesOf } from '../../../src/handover/tables/tables.ts';
import { siteOfProject } from '../../../src/standing/survey.ts';
import { fromWgs84, type Grid, gridByCode } from '../../../src/survey/norths/grids.ts';
import { holeWith } from '../../standing/support/hole.ts';
import { asking } from '../support/engine.ts';
import { certificate, NOW, projectWith, rowsIn, sampleDocument } from '../tables/support.ts';

const PROJECT = projectWith();
const GRID = siteOfProject(PROJECT).grid!;
const DOCUMENTS = [
  ...['MBRC001', 'MBRC002A', 'MBRC003', 'MBRC004'].map((id) => sampleDocument('holes', id)),
  sampleDocument('shifts', 'RC7_2026-03-12_DAY'),
  certificate('WA1', [
    ['MB000121', '0.42'],
    ['MB000122', '<0.01'],
  ]),
  holeWith({}, {}, 'NOPLACE'),
];
const TABLES = tablesOf({ project: PROJECT, documents: DOCUMENTS, of: DOCUMENTS, now: NOW });
const table = (name: string): MadeTable => TABLES.find((each) => each.name === name)!;

interface Feature {
  readonly geometry: { readonly type: string; readonly coordinates: never } | null;
  readonly properties: Readonly<Record<string, never>>;
}
const features = (text: string) =>
  (JSON.parse(text) as { type: string; features: readonly Feature[] }).features;

/** Metres on the grid between a position in WGS 84 and one on the grid. */
function apart(grid: Grid, [lonDeg, latDeg]: readonly [number, number], east: number, north: number): number {
  const at = fromWgs84(grid, { lonDeg, latDeg })!;
  return Math.hypot(at.eastM - east, at.northM - north);
}

describe('GeoJSON', () => {
  it('has each collar as a point in WGS 84, within two millimetres of the grid’s own coordinates beside it', () => {
    const collars = features(collarsGeoJson(TABLES));
    expect(collars.length).toBe(5);
    for (const { geometry, properties } of collars.filter((each) => each.geometry !== null)) {
      const { east_m, north_m, elevation_m } = properties;
      expect(geometry?.type).toBe('Point');
      expect(apart(GRID, geometry!.coordinates, east_m!, north_m!)).toBeLessThan(0.002);
      expect(geometry?.coordinates[2]).toBe(elevation_m);
    }
    expect(collars.find((each) => each.properties.hole === ('NOPLACE' as never))?.geometry).toBeNull();
  });

  it('has each path as a line with a point each metre, the same points on the grid beside it', () => {
    const traces = features(tracesGeoJson(TABLES));
    const stations = rowsIn(table('surveys_used'));
    expect(
      traces.map(({ properties }) => [properties.hole, properties.depth_m, properties.measured_m]),
    ).toEqual(
      [
        ['MBRC001', 150],
        ['MBRC002A', 90],
        ['MBRC003', 54],
      ].map(([hole, depth]) => [
        hole,
        depth,
        Math.max(...stations.filter((each) => each.hole === hole).map((each) => Number(each.depth_m))),
      ]),
    );
    for (const { geometry, properties } of traces) {
      const line = geometry!.coordinates as readonly (readonly [number, number, number])[];
      const onGrid = properties.grid_coordinates_m as unknown as readonly (readonly [
        number,
        number,
        number,
      ])[];
      expect(line.length).toBe(Number(properties.depth_m) + 1);
      line.forEach((point, index) => {
        expect(apart(GRID, [point[0], point[1]], onGrid[index]![0], onGrid[index]![1])).toBeLessThan(0.002);
        expect(point[2]).toBe(onGrid[index]![2]);
      });
    }
  });

  it('has no geometry where the project names no grid, and keeps the coordinates as they are', () => {
    const project = projectWith(undefined, { survey: {} });
    const tables = tablesOf({ project, documents: DOCUMENTS, of: DOCUMENTS, now: NOW });
    const [first] = features(collarsGeoJson(tables));
    expect(first?.geometry).toBeNull();
    expect(first?.properties.east_m).toBe(412481.6);
    expect(features(tracesGeoJson(tables)).every((each) => each.geometry === null)).toBe(true);
  });
});

/** The points of a geometry as GeoPackage and well-known binary have them, read by hand here. */
function pointsIn(blob: Uint8Array): { readonly srs: number; readonly points: readonly number[][] } {
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength);
  expect(String.fromCharCode(blob[0]!, blob[1]!)).toBe('GP');
  expect(blob[2]).toBe(0);
  const envelope = { 0: 0, 1: 32 }[(blob[3]! >> 1) & 7]!;
  const at = 8 + envelope;
  const kind = view.getUint32(at + 1, true);
  const count = kind === 1001 ? 1 : view.getUint32(at + 5, true);
  const start = at + (kind === 1001 ? 5 : 9);
  expect(blob.length).toBe(start + count * 24);
  const points = Array.from({ length: count }, (_, index) =>
    [0, 8, 16].map((axis) => view.getFloat64(start + index * 24 + axis, true)),
  );
  return { srs: view.getInt32(4, true), points };
}

describe('a GeoPackage', () => {
  const bytes = geoPackage(TABLES, GRID, NOW);

  it('is what SQLite finds sound and the standard asks for: its mark, its version, its catalogue', () => {
    asking(bytes, (all) => {
      expect(all('pragma integrity_check')).toEqual([{ integrity_check: 'ok' }]);
      expect(all('pragma foreign_key_check')).toEqual([]);
      expect(all('pragma application_id')).toEqual([{ application_id: 0x47504b47 }]);
      expect(all('pragma user_version')).toEqual([{ user_version: 10_300 }]);
      expect(all('select srs_id from gpkg_spatial_ref_sys').map((each) => each.srs_id)).toEqual([
        -1, 0, 4326, 7851,
      ]);
      const catalogue = all('select * from gpkg_contents');
      expect(catalogue.map((each) => each.table_name)).toEqual([
        ...TABLES.map((each) => each.name),
        'traces',
      ]);
      expect(new Set(catalogue.map((each) => each.last_change))).toEqual(
        new Set(['2026-03-14T08:05:10.000Z']),
      );
      expect(all('select table_name, geometry_type_name, srs_id, z, m from gpkg_geometry_columns')).toEqual([
        { table_name: 'collars', geometry_type_name: 'POINT', srs_id: 7851, z: 1, m: 0 },
        { table_name: 'traces', geometry_type_name: 'LINESTRING', srs_id: 7851, z: 1, m: 0 },
      ]);
    });
  });

  it('has column types of the standard alone, and a row number that is never given twice', () => {
    const allowed = /^(TEXT|DOUBLE|INTEGER|BOOLEAN|DATE|POINT|LINESTRING)$/;
    asking(bytes, (all) => {
      for (const { table_name } of all('select table_name from gpkg_contents')) {
        const columns = all(`pragma table_info("${table_name}")`);
        expect(columns.filter((each) => !allowed.test(String(each.type)))).toEqual([]);
        expect(columns[0]).toMatchObject({ name: 'fid', pk: 1 });
      }
      expect(all("select count(*) as n from sqlite_schema where sql like '%AUTOINCREMENT%'")).toEqual([
        { n: TABLES.length + 1 },
      ]);
      expect(all("select seq from sqlite_sequence where name = 'geology'")).toEqual([
        { seq: table('geology').rows.length },
      ]);
    });
  });

  it('holds the rows of every table, value by value', () => {
    asking(bytes, (all) => {
      for (const { name, columns, rows } of TABLES) {
        const names = Object.keys(columns);
        const read = all(`select * from "${name}"`).map((each) => names.map((column) => each[column]));
        const written = rows.map((row) =>
          row.map((value) =>
            value === undefined ? null : typeof value === 'boolean' ? Number(value) : value,
          ),
        );
        expect(read, name).toEqual(written);
      }
      expect(all("select sum(value) as gold from results where status = 'counts'")).toEqual([
        { gold: 0.425 },
      ]);
    });
  });

  it('has collars and paths where the tables have them, in the project’s own grid', () => {
    asking(bytes, (all) => {
      const path = rowsIn(table('path'));
      for (const { hole, geometry } of all('select hole, geometry from traces')) {
        const { srs, points } = pointsIn(geometry as Uint8Array);
        expect(srs).toBe(7851);
        expect(points).toEqual(
          path
            .filter((each) => each.hole === hole)
            .map((each) => [each.east_m, each.north_m, each.elevation_m]),
        );
      }
      const collars = all('select geometry, east_m, north_m, elevation_m from collars');
      expect(collars.filter((each) => each.geometry === null).length).toBe(1);
      for (const { geometry, east_m, north_m, elevation_m } of collars.filter(
        (each) => each.geometry !== null,
      ))
        expect(pointsIn(geometry as Uint8Array).points).toEqual([[east_m, north_m, elevation_m]]);
      const [reach] = all("select min_x, max_x from gpkg_contents where table_name = 'collars'");
      const easts = collars.flatMap((each) => (each.east_m === null ? [] : [Number(each.east_m)]));
      expect(reach).toEqual({ min_x: Math.min(...easts), max_x: Math.max(...easts) });
    });
  });

  it('is the same bytes for the same tables', () => {
    expect(Buffer.from(bytes).equals(geoPackage(TABLES, GRID, NOW))).toBe(true);
  });
});

describe('the reference system of a project', () => {
  it('is the register’s where positions are as the register counts them, else one of its own, else undefined', () => {
    expect(systemOf(gridByCode(7851))).toMatchObject({ id: 7851, organization: 'EPSG', code: 7851 });
    // South African grids count west and south; positions are kept as minus the westing.
    expect(systemOf(gridByCode(2052))).toMatchObject({ id: 100_000, organization: 'NONE' });
    expect(systemOf({ name: 'ours', proj: '+proj=tmerc +lon_0=121 +ellps=GRS80' })).toMatchObject({
      id: 100_000,
    });
    expect(systemOf(undefined)).toMatchObject({ id: -1, definition: 'undefined' });
  });
});
