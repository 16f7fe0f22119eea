import { VALUE_KINDS } from '../../value/cell.ts';
import { type Column, type Columns, optional } from './column.ts';
import { FIELD_COLUMNS } from './field-columns.ts';
import type { MadeTable, Table } from './table.ts';

/** What holds for every table, in words. */
const RULES = [
  'CSV as RFC 4180: UTF-8 without a byte order mark, commas, CRLF, the names of the columns in the first line, columns always in the order below.',
  'An empty cell is null, and means what the table below says of its column. No text is empty, so nothing else stands for null.',
  'Depths, lengths and coordinates are in metres and exact to the millimetre. Numbers have a decimal point and no separator of thousands.',
  'true and false are written so. A date is the local one. An instant is ISO 8601 with the offset of the clock that stamped it.',
  'A text cell that begins with = + - @ a tab or a line end has an apostrophe in front, so that no spreadsheet runs it; so has one that begins with apostrophes and then one of these. Take one apostrophe off to have the text. Numbers never have one.',
  'Intervals hold their top and not their bottom. Depths are along the hole from the collar.',
  'Looked and none seen, not observed, and not logged yet are three things: only none is barren. Geology says which of the first two it is; of a metre not logged yet there is no row.',
  'A folder written by offsider tables has the same rows as tables.json and as tables.gpkg (GeoPackage 1.3: a SQLite database, with collars and traces to draw in the grid of the project), and collars.geojson and traces.geojson (RFC 7946, WGS 84). Elevations are as recorded in all of them, not reduced to an ellipsoid. A bundle has the CSV alone.',
  'The folder parquet there has them for SQL engines, a file for each hole (or one), in folders named as Hive does: table/project=…/hole=…/. Each column has its type; an instant is a UTC timestamp, and the minutes that its clock was ahead are in a column after it, its name and _offset_min. A table without rows has no file.',
  'Text cells come as people typed them. Opening a file runs nothing.',
] as const;

/** The page that is the contract with whoever reads the tables: rules, then each table with its key, rank and columns. */
export function contractPage(
  tables: readonly Pick<MadeTable, 'table' | 'columns'>[],
  heading: string,
): string {
  return [
    `# ${heading}`,
    '',
    ...RULES.map((rule) => `- ${rule}`),
    ...tables.flatMap(({ table, columns }) => tablePart(table, columns)),
    '',
  ].join('\n');
}

/** The same page from the declarations alone: of what a project adds it says the rule. */
export function declaredPage(tables: readonly Table[]): string {
  const page = contractPage(
    tables.map((table) => ({ table, columns: table.columns })),
    'Tables',
  );
  return `<!-- Made from the declarations in this folder by npm run generate: not edited by hand. -->\n${page}${fieldPart()}`;
}

function tablePart(table: Table, columns: Columns): readonly string[] {
  const wider = table.wider === undefined ? [] : ['', `Then columns of the project: ${table.wider.about}.`];
  const isDeclaredOnly = Object.keys(columns).length === Object.keys(table.columns).length;
  return [
    '',
    `## ${table.name}`,
    '',
    table.about,
    '',
    `Key: ${table.key.join(' + ')}.${table.rank === undefined ? '' : ` ${table.rank}`}`,
    '',
    ...columnLines(columns),
    ...(isDeclaredOnly ? wider : []),
  ];
}

function columnLines(columns: Columns): readonly string[] {
  return [
    '| column | type | unit | what it holds | empty means |',
    '|---|---|---|---|---|',
    ...Object.entries(columns).map(
      ([name, column]) =>
        `| ${name.includes(' ') ? cell(name) : `\`${name.replaceAll(/[`|\r\n]/g, '')}\``} | ${column.type} | ${cell(column.unit ?? '')} | ${cell(aboutOf(column))} | ${cell(column.empty ?? 'never empty')} |`,
    ),
  ];
}

function aboutOf({ about, none, belowDetection }: Column): string {
  return [
    about,
    ...(none === undefined ? [] : [`none seen: ${none}`]),
    ...(belowDetection === undefined ? [] : [belowDetection]),
  ].join('; ');
}

/** A text in a cell of a Markdown table: labels of a schema are people's own words. */
function cell(words: string): string {
  return words.replaceAll(/[\r\n]+/g, ' ').replaceAll(/[\\|<>`*_[\]]/g, (mark) => `\\${mark}`);
}

function fieldPart(): string {
  const meaning = {
    label: '(its label)',
    kind: 'text' as const,
    list: '(its list)',
    scale: '(its scale)',
    unit: '(its unit)',
  };
  const columns: Columns = Object.fromEntries(
    VALUE_KINDS.flatMap((kind) =>
      FIELD_COLUMNS[kind].map(({ suffix, column }) => [
        `${kind} field: (its name)${suffix}`,
        optional(column(meaning), suffix === '' ? 'none, not observed, or not asked' : 'no such one'),
      ]),
    ),
  );
  return [
    '',
    '## Columns of a logged field in geology',
    '',
    'By the kind of its values. The page in a folder of tables has the fields of its project by name.',
    '',
    ...columnLines(columns),
    '',
  ].join('\n');
}
