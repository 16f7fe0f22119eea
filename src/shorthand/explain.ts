import { codeOf, type Field, fieldNamed, type LoggingSchema } from '../schema/logging-schema.ts';
import { percentOf } from '../schema/read-cell.ts';
import { type Amount, type Cell, sameCell } from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';
import type { EntryContext } from './parse.ts';
import { isNewRock, rockField } from './rock.ts';
import { labelOf } from './typing-index.ts';
import { absenceWords, amountWords, cellWords, levelWords } from './words.ts';

/** A piece of the echo. `same` is what stands as in the row above, carried or said again. */
export type Segment = {
  readonly text: string;
  readonly kind: 'up' | 'down' | 'new' | 'gone' | 'same' | 'note';
};

/**
 * A row in words against the last observed one above: what changed, in the order of the log sheet, then notes (a new
 * rock is a contact, a caution, the remark), then what stands as it was.
 */
export function explain(
  row: RowSaid,
  context: Pick<EntryContext, 'schema' | 'above' | 'previous'>,
): readonly Segment[] {
  const remark: readonly Segment[] =
    row.remark === undefined ? [] : [{ text: `remark: ${row.remark}`, kind: 'note' }];
  if (row.noReturn) return [{ text: 'no return: nothing observed', kind: 'note' }, ...remark];
  const { schema, above } = context;
  const pieces = schema.fields.flatMap((field) =>
    fieldPieces(schema, field, above?.cells[field.name], row.cells[field.name]),
  );
  return [
    ...repeatNote(row, context),
    ...pieces.filter(({ kind }) => kind !== 'same'),
    ...contactNote(schema, above, row.cells),
    ...cautionNotes(schema, above?.cells ?? {}, row.cells),
    ...remark,
    ...pieces.filter(({ kind }) => kind === 'same'),
  ];
}

function repeatNote(row: RowSaid, { previous }: Pick<EntryContext, 'previous'>): readonly Segment[] {
  if (!row.repeat) return [];
  return [{ text: previous?.noReturn ? 'the last row with chips again' : 'the same again', kind: 'note' }];
}

function contactNote(schema: LoggingSchema, above: RowSaid | undefined, cells: Cells): readonly Segment[] {
  const rock = rockField(schema);
  const before = rock === undefined ? undefined : above?.cells[rock.name];
  if (rock === undefined || before === undefined || !('code' in before) || !isNewRock(schema, above, cells))
    return [];
  return [{ text: `contact below ${labelOf(schema, rock, before.code)}`, kind: 'note' }];
}

/** What can hurt somebody, said where its code first stands. */
function cautionNotes(schema: LoggingSchema, above: Cells, cells: Cells): readonly Segment[] {
  return Object.entries(cells).flatMap(([name, cell]) => {
    const field = fieldNamed(schema, name);
    if (field === undefined) return [];
    const known = codesIn(above[name]);
    return codesIn(cell)
      .filter((code) => !known.includes(code))
      .flatMap((code) => {
        const caution = codeOf(schema, field, code)?.caution;
        return caution === undefined
          ? []
          : [{ text: `${labelOf(schema, field, code)}: ${caution.words}`, kind: 'note' as const }];
      });
  });
}

function codesIn(cell: Cell | undefined): readonly string[] {
  if (cell === undefined) return [];
  if ('code' in cell) return cell.second === undefined ? [cell.code] : [cell.code, cell.second.code];
  if ('levels' in cell) return Object.keys(cell.levels);
  return 'percents' in cell ? Object.keys(cell.percents) : [];
}

function fieldPieces(
  schema: LoggingSchema,
  field: Field,
  before: Cell | undefined,
  after: Cell | undefined,
): readonly Segment[] {
  if (after === undefined) {
    return before === undefined || 'absent' in before
      ? []
      : [{ text: `${field.label} not asked here`, kind: 'gone' }];
  }
  if (!field.carry && 'absent' in after && after.absent === field.unsaid) return [];
  if (sameCell(before, after)) return cellWords(schema, field, after).map((text) => ({ text, kind: 'same' }));
  if ('levels' in after) {
    return amountPieces(
      schema,
      field,
      before !== undefined && 'levels' in before ? before.levels : {},
      after.levels,
    );
  }
  if ('percents' in after) {
    return amountPieces(
      schema,
      field,
      before !== undefined && 'percents' in before ? before.percents : {},
      after.percents,
    );
  }
  if ('absent' in after)
    return [{ text: absenceWords(field, after), kind: before === undefined ? 'new' : 'gone' }];
  if ('code' in after) return codePieces(schema, field, before, after);
  return ownPieces(schema, field, before, after);
}

/** Codes with amounts: each that rose, fell, came, went or stayed. */
function amountPieces(
  schema: LoggingSchema,
  field: Field,
  before: { readonly [code: string]: Amount },
  after: { readonly [code: string]: Amount },
): readonly Segment[] {
  const gone = Object.keys(before).filter((code) => !Object.hasOwn(after, code));
  return [
    ...Object.entries(after).map(([code, amount]) => {
      const label = labelOf(schema, field, code);
      const was = Object.hasOwn(before, code) ? before[code] : undefined;
      return was === undefined
        ? { text: `${label} ${amountWords(field, amount)}`, kind: 'new' as const }
        : moved(field, label, was, amount);
    }),
    ...gone.map((code) => ({ text: `${labelOf(schema, field, code)} gone`, kind: 'gone' as const })),
  ];
}

/** `pyrite 2→10 % ▲`: the unit once where both have it. */
function moved(field: Field, label: string, before: Amount, after: Amount): Segment {
  if (before === after) return { text: `${label} ${amountWords(field, after)}`, kind: 'same' };
  const from = before === 'trace' || after === 'trace' ? amountWords(field, before) : `${before}`;
  return withArrow(
    `${label} ${from}→${amountWords(field, after)}`,
    percentOf(after, field) - percentOf(before, field) || (before === 'trace' ? 1 : -1),
  );
}

function withArrow(text: string, difference: number): Segment {
  return difference > 0 ? { text: `${text} ▲`, kind: 'up' } : { text: `${text} ▼`, kind: 'down' };
}

function codePieces(
  schema: LoggingSchema,
  field: Field,
  before: Cell | undefined,
  after: Extract<Cell, { code: string }>,
): readonly Segment[] {
  const was = before !== undefined && 'code' in before ? before : undefined;
  const label = labelOf(schema, field, after.code);
  const first: Segment =
    was === undefined
      ? { text: label, kind: 'new' }
      : was.code === after.code
        ? { text: label, kind: 'same' }
        : { text: `${labelOf(schema, field, was.code)}→${label}`, kind: 'new' };
  const seconds = (second: typeof after.second): { readonly [code: string]: number } =>
    second === undefined ? {} : { [second.code]: second.percent };
  const moves = amountPieces(schema, field, seconds(was?.second), seconds(after.second));
  return [first, ...moves.filter(({ kind }) => kind !== 'gone' || was?.second?.code !== after.code)];
}

/** Fields with one value of their own: a level, a percent, a number, a flag, a text. */
function ownPieces(
  schema: LoggingSchema,
  field: Field,
  before: Cell | undefined,
  after: Cell,
): readonly Segment[] {
  if ('level' in after && before !== undefined && 'level' in before) {
    const from = levelWords(schema, field, before.level);
    const to = levelWords(schema, field, after.level);
    return [withArrow(`${field.label} ${from}→${to}`, after.level - before.level)];
  }
  if ('percent' in after && before !== undefined && 'percent' in before) {
    return [moved(field, field.label, before.percent, after.percent)];
  }
  return cellWords(schema, field, after).map((text) => ({ text, kind: 'new' }));
}
