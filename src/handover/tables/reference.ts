import { siteOfProject } from '../../standing/survey.ts';
import { formatDatumShift } from '../../survey/norths/grids.ts';
import { instant, integer, number, optional, text } from './column.ts';
import { defineTable, type MadeTable, makeTable, type Source, type Table } from './table.ts';

const NO_GRID = 'project.json names no grid';

/** What holds for all tables of a project. */
export const PROJECT = defineTable({
  name: 'project',
  about: 'What holds for every table: the project, its grid, how results under the detection limit count.',
  key: ['project'],
  columns: {
    project: text('Name of the project'),
    company: optional(text('Company that the holes are drilled for'), 'not said'),
    district: optional(text('Where it lies, in words'), 'not said'),
    made_at: instant('When these tables were made'),
    epsg: optional(
      integer('EPSG code of the grid of eastings and northings'),
      'the grid has none, or none is named',
    ),
    grid: optional(text('Name of that grid'), NO_GRID),
    grid_definition: optional(text('Its definition as a proj string'), NO_GRID),
    datum_shift: optional(text('What is done about the datum on the way to WGS 84'), NO_GRID),
    mine_grid_rotation_deg: optional(number('Bearing of mine north from map north', 'deg'), 'no mine grid'),
    below_detection_counts_as: optional(
      text('What a result under the detection limit counts as'),
      'no results are set up',
    ),
    sample_rank: text('Rank of a sample that says none: metre or composite'),
  },
  rows: ({ project, now }) => {
    const { settings, sampling } = project;
    const { grid, mineGrid } = siteOfProject(project);
    return [
      {
        project: settings.name,
        company: settings.company,
        district: settings.district,
        made_at: now,
        epsg: grid?.code,
        grid: grid?.name,
        grid_definition: grid?.proj,
        datum_shift: grid === undefined ? undefined : formatDatumShift(grid),
        mine_grid_rotation_deg: mineGrid?.rotationDeg,
        below_detection_counts_as: sampling.results?.belowDetection,
        sample_rank: sampling.rank,
      },
    ];
  },
});

/** What the units in the declarations mean, once. Those of readings and results are the project's own words. */
const UNITS: Readonly<Record<string, string>> = {
  m: 'metre',
  mm: 'millimetre',
  deg: 'degree of arc; azimuths clockwise from the north stated beside them, dips from horizontal, downwards negative',
  'deg/30 m': 'degrees of arc for each 30 m of hole',
  kg: 'kilogram',
  '%': 'percent',
  min: 'minute of time',
  nT: 'nanotesla',
  'g/cm3': 'grams per cubic centimetre, the same number as tonnes per cubic metre',
};

/** The dictionary of the tables themselves: made last, from their declarations. */
export const COLUMNS = (tables: readonly MadeTable[]): Table =>
  defineTable({
    name: 'columns',
    about:
      'Every column of every table: type, unit, key, what an empty cell means. Made from the declaration that wrote the tables.',
    key: ['table', 'column'],
    columns: {
      table: text('Name of the table'),
      position: integer('Number of the column in it, from 1'),
      column: text('Name of the column'),
      type: text(
        'text, number, integer, boolean (true, false), date (local), or instant (ISO 8601 with offset)',
      ),
      unit: optional(text('Unit: see the table units'), 'it has none'),
      key: optional(integer('Number in the key of its table, from 1'), 'not in the key'),
      about: text('What it holds'),
      empty: optional(text('What an empty cell means'), 'it is never empty'),
      none: optional(text('How looked, none seen is written'), 'it can’t be said there'),
      below_detection: optional(text('How a result under the detection limit is written'), 'no result'),
    },
    rows: () =>
      tables.flatMap(({ name, table, columns }) =>
        Object.entries(columns).map(([column, declared], index) => {
          const key = table.key.indexOf(column);
          return {
            table: name,
            position: index + 1,
            column,
            type: declared.type,
            unit: declared.unit,
            key: key < 0 ? undefined : key + 1,
            about: declared.about,
            empty: declared.empty,
            none: declared.none,
            below_detection: declared.belowDetection,
          };
        }),
      ),
  });

/** Every unit that a column has. */
export const UNITS_USED = (tables: readonly MadeTable[]): Table =>
  defineTable({
    name: 'units',
    about: 'Every unit that a column has.',
    key: ['unit'],
    columns: {
      unit: text('The unit as it is written'),
      about: text('What it is'),
    },
    rows: () => {
      const used = tables.flatMap(({ columns }) => Object.values(columns).flatMap(({ unit }) => unit ?? []));
      return [...new Set(used)].map((unit) => ({
        unit,
        about: UNITS[unit] ?? 'as project.json or logging.json says',
      }));
    },
  });

/** Tables with the two that are about them behind. */
export function withReference(tables: readonly MadeTable[], source: Source): readonly MadeTable[] {
  const units = [...tables, makeTable(UNITS_USED(tables), source)];
  return [...units, makeTable(COLUMNS(units), source)];
}
