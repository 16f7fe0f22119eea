import { formatDepth } from '../../quantity/depth.ts';
import type { FieldMeaning } from '../../schema/legend.ts';
import type { Amount, Cell, PointEvent, ValueKind } from '../../value/cell.ts';
import { kindOf, qualifiedIn, sharesIn } from '../../value/cell.ts';
import { type Column, type Columns, integer, number, optional, text, type Value, yesNo } from './column.ts';

/** A logged field as it is in a table: its name there, what it is, and whether the schema of today has it. */
export interface FieldToWrite {
  readonly field: string;
  /** The name of its column. */
  readonly name: string;
  readonly meaning: FieldMeaning;
  /** How many further codes with their shares may be logged beside the first. */
  readonly shares: 0 | 1 | 2;
  /** More may be said of its codes. */
  readonly qualified: boolean;
}

/** What an empty cell of a logged field means: the three lists of names beside it say which. */
const EMPTY = 'see fields_none and fields_not_observed; in neither: the field is not asked of this row';

/** A column of a field: what comes after the field's name in the column's, what it is, and the value of a cell in it. */
interface FieldColumn {
  readonly suffix: string;
  /** 0, or which of the further codes it is about. */
  readonly share: 0 | 1 | 2;
  /** It is about what more is said of codes. */
  readonly qualities?: true;
  readonly column: (field: FieldMeaning) => Column;
  readonly value: (cell: Cell) => Value;
}

const amounts = (named: Readonly<Record<string, Amount>>): string =>
  Object.entries(named)
    .map(([code, amount]) => `${code} ${amount}`)
    .join('; ');

/** What more was said of codes of a cell: `CHL styles PER; PYR habits CUB`. */
function qualitiesText(cell: Cell): string | undefined {
  const all = Object.entries(qualifiedIn(cell)).flatMap(([code, qualities]) =>
    Object.entries(qualities).map(([list, quality]) => `${code} ${list} ${quality}`),
  );
  return all.length === 0 ? undefined : all.join('; ');
}

/** The column of what more was said of a field's codes. */
const QUALITIES: FieldColumn = {
  suffix: '_qualities',
  share: 0,
  qualities: true,
  column: ({ label }) =>
    text(
      `${label}: what more was said of a code, with the list that it is from, as CHL styles PER; PYR habits CUB`,
    ),
  value: qualitiesText,
};

/** An event with what was measured of it and where it is: `WST 2 @44.6`. */
function eventText([code, { atMm, number: measured }]: readonly [string, PointEvent]): string {
  const figure = measured === undefined ? '' : ` ${measured}`;
  return `${code}${figure}${atMm === undefined ? '' : ` @${formatDepth(atMm)}`}`;
}

const whole = (
  column: (field: FieldMeaning) => Column,
  value: FieldColumn['value'],
): readonly FieldColumn[] => [{ suffix: '', share: 0, column, value }];

/** The columns of a further code and of its share. */
function shareColumns(share: 1 | 2, which: string): readonly FieldColumn[] {
  const of = (cell: Cell) => ('code' in cell ? sharesIn(cell)[share - 1] : undefined);
  return [
    {
      suffix: `_${which}`,
      share,
      column: ({ label, list }) => text(`${label}, the ${which} one: a code of the list ${list ?? ''}`),
      value: (cell) => of(cell)?.code,
    },
    {
      suffix: `_${which}_percent`,
      share,
      column: ({ label }) => number(`${label}: share of the ${which} one in the whole`, '%'),
      value: (cell) => of(cell)?.percent,
    },
  ];
}

/** The columns of a field by the kind of its values, once: the table, the contract and the folder's own page read them here. */
export const FIELD_COLUMNS: { readonly [Kind in ValueKind]: readonly FieldColumn[] } = {
  code: [
    {
      suffix: '',
      share: 0,
      column: ({ label, list }) => ({ ...text(`${label}: a code of the list ${list ?? ''}`), none: 'none' }),
      value: (cell) => ('code' in cell ? cell.code : undefined),
    },
    ...shareColumns(1, 'second'),
    ...shareColumns(2, 'third'),
    QUALITIES,
  ],
  level: whole(
    ({ label, scale }) => ({ ...integer(`${label}: level of the scale ${scale ?? ''}`), none: '0' }),
    (cell) => ('level' in cell ? cell.level : undefined),
  ),
  levels: [
    ...whole(
      ({ label, list, scale }) => ({
        ...text(
          `${label}: codes of the list ${list ?? ''}, each with its level of the scale ${scale ?? ''}, as CHL 2; SIL 1`,
        ),
        none: 'none',
      }),
      (cell) => ('levels' in cell ? amounts(cell.levels) : undefined),
    ),
    QUALITIES,
  ],
  percents: [
    ...whole(
      ({ label, list }) => ({
        ...text(
          `${label}: codes of the list ${list ?? ''}, each with its percent or trace, as PYR 3; CPY trace`,
        ),
        none: 'none',
      }),
      (cell) => ('percents' in cell ? amounts(cell.percents) : undefined),
    ),
    QUALITIES,
  ],
  codes: [
    ...whole(
      ({ label, list }) => ({
        ...text(`${label}: codes of the list ${list ?? ''}, as QTZ; CAL`),
        none: 'none',
      }),
      (cell) => ('codes' in cell ? Object.keys(cell.codes).join('; ') : undefined),
    ),
    QUALITIES,
  ],
  events: whole(
    ({ label, list }) => ({
      ...text(
        `${label}: codes of the list ${list ?? ''}, each with what was measured of it and its depth in metres, as WST 2 @44.6; TFR @44`,
      ),
      none: 'none',
    }),
    (cell) => ('events' in cell ? Object.entries(cell.events).map(eventText).join('; ') : undefined),
  ),
  percent: whole(
    ({ label }) => ({
      ...number(`${label}; a trace is empty here and named in fields_trace`, '%'),
      none: '0',
    }),
    (cell) => ('percent' in cell && cell.percent !== 'trace' ? cell.percent : undefined),
  ),
  number: whole(
    ({ label, unit }) => number(label, unit),
    (cell) => ('number' in cell ? cell.number : undefined),
  ),
  flag: whole(
    ({ label }) => ({ ...yesNo(label), none: 'false' }),
    (cell) => ('flag' in cell ? true : undefined),
  ),
  text: whole(
    ({ label }) => text(label),
    (cell) => ('text' in cell ? cell.text : undefined),
  ),
};

/** How "looked, none seen" is written in the field's own column. Of a number and a text it is empty there: only fields_none says it. */
const NONE: { readonly [Kind in ValueKind]?: Value } = {
  code: 'none',
  level: 0,
  levels: 'none',
  percents: 'none',
  codes: 'none',
  events: 'none',
  percent: 0,
  flag: false,
};

function columnsOf({ meaning, shares, qualified }: FieldToWrite): readonly FieldColumn[] {
  return FIELD_COLUMNS[meaning.kind].filter(
    ({ share, qualities }) => share <= shares && (qualified || qualities !== true),
  );
}

/** The columns of a field, each of which may be empty. */
export function fieldColumns(field: FieldToWrite): Columns {
  return Object.fromEntries(
    columnsOf(field).map(({ suffix, column }) => [
      `${field.name}${suffix}`,
      optional(column(field.meaning), suffix === '' ? EMPTY : 'no such one'),
    ]),
  );
}

/** The values of a cell in its columns. A value of another kind than the field's has no place there. */
export function fieldValues(field: FieldToWrite, cell: Cell | undefined): Readonly<Record<string, Value>> {
  const none = cell !== undefined && 'absent' in cell && cell.absent === 'none';
  const fits = cell !== undefined && kindOf(cell) === field.meaning.kind;
  return Object.fromEntries(
    columnsOf(field).map(({ suffix, value }) => [
      `${field.name}${suffix}`,
      none && suffix === '' ? NONE[field.meaning.kind] : fits ? value(cell) : undefined,
    ]),
  );
}
