import { isImported, rowsDown } from '../../hole/hole.ts';
import { metres } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { allMeanings } from '../../schema/legend.ts';
import { fieldNamed, type LoggingSchema, qualifiersOf } from '../../schema/logging-schema.ts';
import { legendOf } from '../../standing/hole-schema.ts';
import { type Cell, kindOf } from '../../value/cell.ts';
import type { Row } from '../../value/row.ts';
import { type Columns, depth, optional, text, yesNo } from './column.ts';
import { type FieldToWrite, fieldColumns, fieldValues } from './field-columns.ts';
import { HOLE } from './holes.ts';
import { holesOf, type Source, type Table, type WiderRow } from './table.ts';

/** What a list of field names means where it is empty. */
const NO_FIELD = 'no field';

const GEOLOGY_COLUMNS = {
  hole: HOLE,
  from_m: depth('Top of the row'),
  to_m: depth('Bottom of the row'),
  row: text('Permanent id of the row'),
  no_return: yesNo('No chips came up: nothing was observed, and it is never barren'),
  imported: yesNo('Taken from a table of others, never logged here'),
  fields_none: optional(
    text('Fields of which none was seen, though someone looked, separated by spaces'),
    NO_FIELD,
  ),
  fields_not_observed: optional(text('Fields that were not observed, separated by spaces'), NO_FIELD),
  fields_trace: optional(text('Percent fields logged as a trace, separated by spaces'), NO_FIELD),
  fields_other_kind: optional(
    text('Fields whose value is of another kind than the schema has now: it is in geology_long only'),
    NO_FIELD,
  ),
  fields_carried: optional(text('Fields that were left unsaid and carried from the row above'), NO_FIELD),
  open_question: optional(text('What was asked about the row and is not settled'), 'nothing is open'),
  remark: optional(text('Remark'), 'no remark'),
} satisfies Columns;

/** One row a logged interval, one column a field. */
export const GEOLOGY: Table = {
  name: 'geology',
  about:
    'The log: one row an interval, one column a field of the logging schema, in the order of the log sheet.',
  key: ['hole', 'from_m', 'to_m'],
  rank: 'Two rows over the same metres, as two copies of a project can bring, both stand until someone settles them: offsider check names them, and the column row tells them apart.',
  columns: GEOLOGY_COLUMNS,
  wider: {
    about: 'one for each field of logging.json, and for fields that only rows logged earlier have',
    columns: (source) => Object.assign({}, ...fieldsToWrite(source).map(fieldColumns)),
  },
  rows: (source) => {
    const fields = fieldsToWrite(source);
    return rowsOf(source).map(({ hole, id, row }) => geologyRow(hole, id, row, fields));
  },
};

/** Logged rows of the holes, from the top down. */
export function rowsOf(source: Source) {
  return holesOf(source).flatMap((hole) => rowsDown(hole).map(([id, row]) => ({ hole, id, row })));
}

/** Fields of the schema in its order, then those that only legends of holes know; a name that a column has already gets `_logged`. */
function fieldsToWrite({ project, documents }: Source): readonly FieldToWrite[] {
  const today = allMeanings(project.schema).fields;
  const earlier = Object.fromEntries(
    holesOf({ of: documents })
      .flatMap((hole) => Object.entries(legendOf(hole).fields))
      .filter(([name]) => !Object.hasOwn(today, name))
      .toSorted(([a], [b]) => (a < b ? -1 : 1)),
  );
  return Object.entries({ ...today, ...earlier }).map(([field, meaning]) => ({
    field,
    name: Object.hasOwn(GEOLOGY_COLUMNS, field) ? `${field}_logged` : field,
    meaning,
    shares: sharesOf(project.schema, field),
    qualified: isQualified(project.schema, field),
  }));
}

/** How many shares a code field has columns for; of a field that the schema no longer has, all that a cell can hold. */
function sharesOf(schema: LoggingSchema, name: string): FieldToWrite['shares'] {
  const field = fieldNamed(schema, name);
  if (field?.kind !== 'code') return 2;
  return field.third === true ? 2 : field.second ? 1 : 0;
}

/** True where more may be said of a field's codes; of a field that the schema no longer has, more may have been. */
function isQualified(schema: LoggingSchema, name: string): boolean {
  const field = fieldNamed(schema, name);
  return field === undefined || qualifiersOf(field).length > 0;
}

/** Fields by what holds of their cells in a row, as names separated by spaces; undefined where there are none. */
function named(row: Row, holds: (cell: Cell, field: string) => boolean): string | undefined {
  const names = Object.entries(row.cells).flatMap(([field, cell]) => (holds(cell, field) ? [field] : []));
  return names.length === 0 ? undefined : names.join(' ');
}

function geologyRow(hole: Document, id: string, row: Row, fields: readonly FieldToWrite[]): WiderRow {
  const kinds = new Map(fields.map(({ field, meaning }) => [field, meaning.kind]));
  return {
    hole: hole.id,
    from_m: metres(row.fromMm),
    to_m: metres(row.toMm),
    row: id,
    no_return: row.noReturn === true,
    imported: isImported(hole, row.toMm),
    fields_none: named(row, (cell) => 'absent' in cell && cell.absent === 'none'),
    fields_not_observed: named(row, (cell) => 'absent' in cell && cell.absent === 'not observed'),
    fields_trace: named(row, (cell) => 'percent' in cell && cell.percent === 'trace'),
    fields_other_kind: named(row, (cell, field) => !('absent' in cell) && kindOf(cell) !== kinds.get(field)),
    fields_carried: row.carried === undefined || row.carried.length === 0 ? undefined : row.carried.join(' '),
    open_question: row.asked === undefined || row.asked.length === 0 ? undefined : row.asked.join('; '),
    remark: row.remark,
    ...Object.assign({}, ...fields.map((field) => fieldValues(field, row.cells[field.field]))),
  };
}
