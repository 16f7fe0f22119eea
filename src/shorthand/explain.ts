import { breaksCarry, cautionsShown } from '../schema/cautions.ts';
import type { Field, LoggingSchema } from '../schema/logging-schema.ts';
import { percentOf } from '../schema/read-cell.ts';
import { type Amount, type Cell, sameCell } from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';
import type { EntryContext } from './parse.ts';
import { isNewRock, rockField } from './rock.ts';
import { labelOf } from './typing-index.ts';
import { absenceWords, amountWords, cellWords, levelWords } from './words.ts';

/** A piece of the echo. `same` is what stands as in the row above, carried or said again; `caution` is what can hurt somebody. */
export type Segment = {
  readonly text: string;
  readonly kind: 'caution' | 'up' | 'down' | 'new' | 'gone' | 'same' | 'note';
};

/**
 * A row in words against the last observed one above: its cautions first, what changed, in the order of the log sheet, then notes (a
 * new rock is a contact, the remark), then what stands as it was. Of a void nothing stands as it was.
 */
export function explain(
  row: RowSaid,
  context: Pick<EntryContext, 'schema' | 'above' | 'previous'>,
): readonly Segment[] {
  const remark: readonly Segment[] =
    row.remark === undefined ? [] : [{ text: `remark: ${row.remark}`, kind: 'note' }];
  if (row.noReturn) return [{ text: 'no return: nothing observed', kind: 'note' }, ...remark];
  const { schema } = context;
  const isUnseen = breaksCarry(schema, row);
  const above = isUnseen ? undefined : context.above;
  const cautions = cautionsShown(schema, context.above?.cells ?? {}, row.cells);
  const seen = schema.fields.filter(({ name }) => {
    const cell = row.cells[name];
    return !(isUnseen && cell !== undefined && 'absent' in cell && cell.absent === 'not observed');
  });
  const pieces = seen.flatMap((field) =>
    fieldPieces(schema, field, above?.cells[field.name], row.cells[field.name]),
  );
  return [
    ...cautions.map((text): Segment => ({ text, kind: 'caution' })),
    ...repeatNote(row, context),
    ...pieces.filter(({ kind }) => kind !== 'same'),
    ...contactNote(schema, above, row.cells),
    ...(isUnseen ? [UNSEEN] : []),
    ...remark,
    ...pieces.filter(({ kind }) => kind === 'same'),
  ];
}

const UNSEEN: Segment = { text: 'nothing else observed: nothing carries in or out', kind: 'note' };

function repeatNote(
  row: RowSaid,
  { schema, previous }: Pick<EntryContext, 'schema' | 'previous'>,
): readonly Segment[] {
  if (!row.repeat) return [];
  const isPastBreak = previous !== undefined && breaksCarry(schema, previous);
  return [{ text: isPastBreak ? 'the last row with chips again' : 'the same again', kind: 'note' }];
}

function contactNote(schema: LoggingSchema, above: RowSaid | undefined, cells: Cells): readonly Segment[] {
  const rock = rockField(schema);
  const before = rock === undefined ? undefined : above?.cells[rock.name];
  if (rock === undefined || before === undefined || !('code' in before) || !isNewRock(schema, above, cells))
    return [];
  return [{ text: `contact below ${labelOf(schema, rock, before.code)}`, kind: 'note' }];
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
