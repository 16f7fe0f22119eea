import type { FieldMapping } from '../../project/import-settings.ts';
import { codeOf, type Field, type LoggingSchema, scaleOf } from '../../schema/logging-schema.ts';
import { type Amount, type Cell, cellOfAmounts, NONE, NOT_OBSERVED } from '../../value/cell.ts';

/** A cell of the log as it was read, or what is wrong, the column that it is in, and what to do. */
export type FieldRead =
  | { readonly ok: true; readonly cell: Cell }
  | { readonly ok: false; readonly column: string; readonly problem: string; readonly remedy: string };

type Text = (column: string) => string;

/** One field of a row from the columns that its mapping names. Codes are compared with the schema; nothing is guessed. */
export function readField(schema: LoggingSchema, field: Field, mapping: FieldMapping, text: Text): FieldRead {
  return 'each' in mapping
    ? readEach(schema, field, mapping, text)
    : readColumn(schema, field, mapping, text);
}

type OneColumn = Extract<FieldMapping, { readonly column: string }>;
type EachColumn = Extract<FieldMapping, { readonly each: unknown }>;

/** The absence that a cell's text stands for; undefined where it is a value. */
function absenceIn({ none = [], notObserved = [] }: FieldMapping, text: string): Cell | undefined {
  if (none.includes(text)) return NONE;
  return text === '' || notObserved.includes(text) ? NOT_OBSERVED : undefined;
}

function readColumn(schema: LoggingSchema, field: Field, mapping: OneColumn, text: Text): FieldRead {
  const said = text(mapping.column);
  const absent = absenceIn(mapping, said);
  if (absent !== undefined) return { ok: true, cell: absent };
  const bad = (problem: string, remedy: string, column = mapping.column): FieldRead => ({
    ok: false,
    column,
    problem,
    remedy,
  });
  const meant = mapping.codes?.[said] ?? said;
  switch (field.kind) {
    case 'code':
      return readCode(schema, field, mapping, text, meant);
    case 'level': {
      const level = levelOf(schema, field, meant);
      return level === undefined ? bad(...noLevel(field, said)) : { ok: true, cell: { level } };
    }
    case 'percent': {
      const percent = amountOf(mapping, said);
      return percent === undefined ? bad(...noNumber(said)) : { ok: true, cell: { percent } };
    }
    case 'number': {
      const number = numberOf(said);
      return number === undefined ? bad(...noNumber(said)) : { ok: true, cell: { number } };
    }
    case 'text':
      return { ok: true, cell: { text: said } };
    case 'flag':
      return { ok: true, cell: { flag: true } };
    default:
      return bad(
        `${field.label} holds several codes, and one column is named for it`,
        `Name a column for each code: import.geology.fields.${field.name}.each in project.json.`,
      );
  }
}

function readCode(
  schema: LoggingSchema,
  field: Field,
  mapping: OneColumn,
  text: Text,
  code: string,
): FieldRead {
  const unknown = (column: string, given: string): FieldRead => ({
    ok: false,
    column,
    problem: `${given} is not a code of ${field.label}`,
    remedy: `Say what it means: import.geology.fields.${field.name}.codes in project.json; or add it to the list with schema import.`,
  });
  if (codeOf(schema, field, code) === undefined) return unknown(mapping.column, code);
  const second = mapping.second === undefined ? '' : text(mapping.second);
  if (mapping.second === undefined || absenceIn(mapping, second) !== undefined)
    return { ok: true, cell: { code } };
  const other = mapping.codes?.[second] ?? second;
  if (codeOf(schema, field, other) === undefined) return unknown(mapping.second, other);
  const column = mapping.secondPercent ?? mapping.second;
  const percent = mapping.secondPercent === undefined ? undefined : numberOf(text(mapping.secondPercent));
  if (percent === undefined)
    return {
      ok: false,
      column,
      problem: `the share of the second code ${other} is not said`,
      remedy: 'Give its percent of the whole, and name its column (secondPercent).',
    };
  return { ok: true, cell: { code, second: { code: other, percent } } };
}

/** A column for each code: those that hold an amount make the cell; where all that were looked at are none, none was seen. */
function readEach(schema: LoggingSchema, field: Field, mapping: EachColumn, text: Text): FieldRead {
  if (field.kind !== 'levels' && field.kind !== 'percents' && field.kind !== 'codes')
    return {
      ok: false,
      column: mapping.each[0]?.column ?? '',
      problem: `${field.label} holds one value, and several columns are named for it`,
      remedy: `Name one column: import.geology.fields.${field.name}.column in project.json.`,
    };
  const amounts: Record<string, Amount> = {};
  let looked = false;
  for (const { column, code } of mapping.each) {
    const said = text(column);
    const absent = absenceIn(mapping, said);
    if (absent !== undefined || numberOf(said) === 0) {
      looked ||= absent !== NOT_OBSERVED;
      continue;
    }
    const amount =
      field.kind === 'levels'
        ? levelOf(schema, field, said)
        : field.kind === 'codes'
          ? 1
          : amountOf(mapping, said);
    if (amount === undefined) {
      const [problem, remedy] = field.kind === 'levels' ? noLevel(field, said) : noNumber(said);
      return { ok: false, column, problem, remedy };
    }
    amounts[code] = amount;
  }
  if (Object.keys(amounts).length === 0) return { ok: true, cell: looked ? NONE : NOT_OBSERVED };
  return { ok: true, cell: cellOfAmounts(field.kind, amounts) };
}

/** A level by its number, its code or its label. */
function levelOf(schema: LoggingSchema, field: Field, text: string): number | undefined {
  const levels = scaleOf(schema, field)?.levels ?? [];
  const plain = text.toLowerCase();
  return levels.find(
    (each) =>
      String(each.level) === text || each.code?.toLowerCase() === plain || each.label.toLowerCase() === plain,
  )?.level;
}

function amountOf({ trace = [] }: FieldMapping, text: string): Amount | undefined {
  return trace.includes(text) ? 'trace' : numberOf(text);
}

/** A number with a decimal point; a comma is not guessed at. */
function numberOf(text: string): number | undefined {
  return /^[+-]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})$/.test(text) ? Number(text) + 0 : undefined;
}

const noNumber = (text: string): [string, string] => [
  `${text} is not a number with a decimal point`,
  'Correct the cell, or name what it means in project.json: none, notObserved or trace.',
];

const noLevel = (field: Field, text: string): [string, string] => [
  `${text} is not a level of ${field.label}`,
  `Say what it means: import.geology.fields.${field.name}.codes in project.json, with the number of the level.`,
];
