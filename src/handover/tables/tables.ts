import { CODES, FIELDS, SCALES } from './codes.ts';
import { PATH, SURVEYS_READ, SURVEYS_USED } from './directions.ts';
import { EVENTS, RODS } from './events.ts';
import { GEOLOGY } from './geology.ts';
import { GEOLOGY_LONG } from './geology-long.ts';
import { COLLAR_POSITIONS, COLLARS, DRILLING } from './holes.ts';
import { COLUMNS, PROJECT, UNITS_USED, withReference } from './reference.ts';
import { ASSAYS, RESULTS } from './results.ts';
import { RECOVERY, SAMPLES } from './samples.ts';
import { ACTIVITIES, PLOD_LINES, PLODS, SHIFTS } from './shifts.ts';
import { type MadeTable, makeTable, type Source, type Table } from './table.ts';
import { TRAYS } from './trays.ts';

/** Every table of a project, in the order in which they are listed. A new table is added here and nowhere else. */
export const TABLES: readonly Table[] = [
  COLLARS,
  COLLAR_POSITIONS,
  DRILLING,
  SURVEYS_READ,
  SURVEYS_USED,
  PATH,
  GEOLOGY,
  GEOLOGY_LONG,
  SAMPLES,
  RESULTS,
  ASSAYS,
  RECOVERY,
  RODS,
  TRAYS,
  EVENTS,
  SHIFTS,
  ACTIVITIES,
  PLODS,
  PLOD_LINES,
  PROJECT,
  FIELDS,
  CODES,
  SCALES,
];

/** The tables above and the two about them, as they are declared: for the page that is a contract with whoever reads them. */
export const DECLARED: readonly Table[] = [...TABLES, UNITS_USED([]), COLUMNS([])];

/** Every table with its rows. */
export function tablesOf(source: Source): readonly MadeTable[] {
  return withReference(
    TABLES.map((table) => makeTable(table, source)),
    source,
  );
}
