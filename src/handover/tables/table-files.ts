import type { Stamp } from '../../quantity/stamp.ts';
import type { Grid } from '../../survey/norths/grids.ts';
import { collarsGeoJson, tracesGeoJson } from '../map/geojson.ts';
import { geoPackage } from '../map/geopackage.ts';
import { contractPage } from './contract-page.ts';
import type { MadeTable } from './table.ts';
import { tableCsv } from './write-csv.ts';
import { tablesJson } from './write-json.ts';

/** A file of a folder of tables: its name there, with forward slashes, and its bytes. */
export interface TableFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** The page that a folder of tables is known by: whatever is written into it later replaces only what was written before. */
export const TABLES_PAGE = 'TABLES.md';

const utf8 = (words: string): Uint8Array => new TextEncoder().encode(words);

/** The first line of that page, without its mark. */
export function headingOf(project: string): string {
  return `Tables of ${project.replaceAll(/[\r\n]+/g, ' ')}`;
}

/** The tables as CSV, one file each, with the page that says what is in them. */
export function csvFiles(project: string, tables: readonly MadeTable[]): readonly TableFile[] {
  return [
    {
      file: TABLES_PAGE,
      bytes: utf8(contractPage(tables, headingOf(project))),
    },
    ...tables.map((made) => ({ file: `${made.name}.csv`, bytes: utf8(tableCsv(made)) })),
  ];
}

/** The collars and where the holes go, for a map: GeoJSON and GeoPackage. */
export function mapFiles(
  tables: readonly MadeTable[],
  grid: Grid | undefined,
  now: Stamp,
): readonly TableFile[] {
  return [
    { file: 'collars.geojson', bytes: utf8(collarsGeoJson(tables)) },
    { file: 'traces.geojson', bytes: utf8(tracesGeoJson(tables)) },
    { file: 'tables.gpkg', bytes: geoPackage(tables, grid, now) },
  ];
}

/** The tables for a program, all in one file. */
export function jsonFile(tables: readonly MadeTable[]): TableFile {
  return { file: 'tables.json', bytes: utf8(`${JSON.stringify(tablesJson(tables))}\n`) };
}
