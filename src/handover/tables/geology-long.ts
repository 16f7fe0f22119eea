import { isImported } from '../../hole/hole.ts';
import { metres } from '../../quantity/depth.ts';
import { codeOf, fieldNamed, type LoggingSchema } from '../../schema/logging-schema.ts';
import { percentOf } from '../../schema/read-cell.ts';
import type { Amount, Cell } from '../../value/cell.ts';
import { kindOf, qualifiedIn, sharesIn, VALUE_KINDS } from '../../value/cell.ts';
import { depth, integer, number, optional, text, yesNo } from './column.ts';
import { rowsOf } from './geology.ts';
import { HOLE } from './holes.ts';
import { defineTable } from './table.ts';

const NOT_OF_IT = 'the value is of another kind, or there is none';

/** One row for each thing that was said of an interval. */
export const GEOLOGY_LONG = defineTable({
  name: 'geology_long',
  about:
    'The log in long form: one row for each field of an interval, and one for each code of a field that holds several. What was looked for and not seen, and what was not observed, has a row too; a field that is not asked of an interval has none.',
  key: ['hole', 'from_m', 'to_m', 'field', 'part'],
  columns: {
    hole: HOLE,
    from_m: depth('Top of the row'),
    to_m: depth('Bottom of the row'),
    row: text('Permanent id of the row'),
    field: text('Name of the field: see the table fields'),
    part: integer('1, or higher for further codes of the field'),
    state: text(
      'value; none (looked, none seen: only this is barren); not observed (no one looked, or nothing came up)',
    ),
    kind: optional(text(VALUE_KINDS.join(', ')), 'there is no value'),
    code: optional(text('Code: see the table codes'), NOT_OF_IT),
    level: optional(integer('Level: see the table scales'), NOT_OF_IT),
    percent: optional(
      number('Percent as logged; of a second or third code its share in the whole', '%'),
      'a trace, or of another kind',
    ),
    trace: yesNo('It was logged as a trace'),
    counts_as_percent: optional(
      number(
        'Percent as sums and rules count it: a trace as the schema says; a first code what the others leave',
        '%',
      ),
      NOT_OF_IT,
    ),
    number: optional(
      number('Number, in the unit of the field; of an event what was measured of it'),
      NOT_OF_IT,
    ),
    unit: optional(text('Unit of the number'), NOT_OF_IT),
    at_m: optional(depth('Where an event is'), 'no event, or no one knows where in the row'),
    qualities: optional(
      text('What more was said of the code, each with the list that it is from, as styles PER; habits CUB'),
      'nothing more was said',
    ),
    text: optional(text('Text'), NOT_OF_IT),
    imported: yesNo('Taken from a table of others, never logged here'),
    carried: yesNo('It was left unsaid and carried from the row above'),
  },
  rows: (source) =>
    rowsOf(source).flatMap(({ hole, id, row }) =>
      Object.entries(row.cells).flatMap(([field, cell]) =>
        partsOf(source.project.schema, field, cell).map((part, index) => ({
          hole: hole.id,
          from_m: metres(row.fromMm),
          to_m: metres(row.toMm),
          row: id,
          field,
          part: index + 1,
          state: 'absent' in cell ? cell.absent : 'value',
          kind: kindOf(cell),
          code: undefined,
          level: undefined,
          percent: undefined,
          trace: false,
          counts_as_percent: undefined,
          number: undefined,
          unit: undefined,
          at_m: undefined,
          qualities: undefined,
          text: undefined,
          imported: isImported(hole, row.toMm),
          carried: row.carried?.includes(field) === true,
          ...part,
        })),
      ),
    ),
});

/** What one row of the long form says. */
interface Part {
  readonly code?: string;
  readonly level?: number;
  readonly percent?: number | undefined;
  readonly trace?: boolean;
  readonly counts_as_percent?: number | undefined;
  readonly number?: number;
  readonly unit?: string | undefined;
  readonly at_m?: number | undefined;
  readonly qualities?: string | undefined;
  readonly text?: string;
}

/** The parts of a cell, each with what more was said of its code. */
function partsOf(schema: LoggingSchema, name: string, cell: Cell): readonly Part[] {
  const qualified = qualifiedIn(cell);
  return plainPartsOf(schema, name, cell).map((part) => {
    const qualities = Object.entries(qualified[part.code ?? ''] ?? {});
    if (qualities.length === 0) return part;
    return { ...part, qualities: qualities.map(([list, code]) => `${list} ${code}`).join('; ') };
  });
}

function plainPartsOf(schema: LoggingSchema, name: string, cell: Cell): readonly Part[] {
  const field = fieldNamed(schema, name);
  const amount = (said: Amount): Part => {
    const counts = field === undefined ? undefined : percentOf(said, field);
    return said === 'trace'
      ? { trace: true, counts_as_percent: counts }
      : { percent: said, counts_as_percent: counts };
  };
  if ('code' in cell) {
    const shares = sharesIn(cell);
    if (shares.length === 0) return [{ code: cell.code }];
    const first = shares.reduce((left, { percent }) => left - percent, 100);
    return [
      { code: cell.code, counts_as_percent: first },
      ...shares.map(({ code, percent }) => ({ code, percent, counts_as_percent: percent })),
    ];
  }
  if ('level' in cell) return [{ level: cell.level }];
  if ('levels' in cell) return Object.entries(cell.levels).map(([code, level]) => ({ code, level }));
  if ('percents' in cell)
    return Object.entries(cell.percents).map(([code, said]) => ({ code, ...amount(said) }));
  if ('codes' in cell) return Object.keys(cell.codes).map((code) => ({ code }));
  if ('events' in cell)
    return Object.entries(cell.events).map(([code, { atMm, number: measured }]) => ({
      code,
      ...(measured === undefined ? {} : { number: measured }),
      unit:
        measured === undefined || field === undefined
          ? undefined
          : codeOf(schema, field, code)?.measure?.unit,
      at_m: atMm === undefined ? undefined : metres(atMm),
    }));
  if ('percent' in cell) return [amount(cell.percent)];
  if ('number' in cell)
    return [{ number: cell.number, unit: field?.kind === 'number' ? field.unit : undefined }];
  return 'text' in cell ? [{ text: cell.text }] : [{}];
}
