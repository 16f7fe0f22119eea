import { breaksCarry, cautionsOfNoReturn, cautionsShown } from '../schema/cautions.ts';
import type { Field, LoggingSchema } from '../schema/logging-schema.ts';
import { percentOf } from '../schema/read-cell.ts';
import { type Amount, type Amounts, amountsIn, type Cell, sameCell, sharesIn } from '../value/cell.ts';
import type { Cells, RowSaid } from '../value/row.ts';
import { barrierCrossed } from './carry.ts';
import type { EntryContext } from './parse.ts';
import { firstWords, qualityWords } from './qualities.ts';
import { isNewRock, rockField } from './rock.ts';
import { labelOf } from './typing-index.ts';
import { absenceWords, amountWords, cellWords, levelWords, withAmount } from './words.ts';

/** A piece of the echo. `same` is what stands as in the row above, carried or said again; `caution` is what can hurt someone. */
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
  const { schema } = context;
  const below = cautionsOfNoReturn(schema, context.previous ?? context.above, row);
  if (row.noReturn)
    return [
      ...below.map((text): Segment => ({ text, kind: 'caution' })),
      { text: 'no return: nothing observed', kind: 'note' },
      ...remark,
    ];
  const isUnseen = breaksCarry(schema, row);
  const above = isUnseen ? undefined : context.above;
  const cautions = cautionsShown(schema, context.above?.cells ?? {}, row.cells);
  const seen = schema.fields.filter(({ name }) => {
    const cell = row.cells[name];
    return !(isUnseen && cell !== undefined && 'absent' in cell && cell.absent === 'not observed');
  });
  const pieces = seen.flatMap((field) =>
    fieldPieces(schema, field, above?.cells[field.name], row.cells[field.name]).map(
      heldBack(schema, field, above, row),
    ),
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

/** Says of a field that is gone because its barrier was crossed which one it was: no one took it out. */
function heldBack(
  schema: LoggingSchema,
  field: Field,
  above: RowSaid | undefined,
  { cells }: RowSaid,
): (piece: Segment) => Segment {
  const crossed = barrierCrossed(field, above, cells);
  const barrier = schema.fields.find(({ name }) => name === crossed);
  return (piece) =>
    piece.kind === 'gone' && barrier !== undefined
      ? { ...piece, text: `${piece.text} (not across a change of ${barrier.label})` }
      : piece;
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
  if ('events' in after) return cellWords(schema, field, after).map((text) => ({ text, kind: 'new' }));
  if (sameCell(before, after)) return cellWords(schema, field, after).map((text) => ({ text, kind: 'same' }));
  if ('levels' in after || 'percents' in after || 'codes' in after)
    return amountPieces(schema, field, amountsIn(before), amountsIn(after)).map((piece) =>
      qualifiedPiece(schema, field, before, after, piece),
    );
  if ('absent' in after)
    return [{ text: absenceWords(field, after), kind: before === undefined ? 'new' : 'gone' }];
  if ('code' in after) return codePieces(schema, field, before, after);
  return ownPieces(schema, field, before, after);
}

/** A piece of the echo that is about one code. */
type PieceOfCode = Segment & { readonly code: string };

/** The piece with what more is said of its code; a code of which more, less or something else is said has changed. */
function qualifiedPiece(
  schema: LoggingSchema,
  field: Field,
  before: Cell | undefined,
  after: Cell,
  { code, text, kind }: PieceOfCode,
): Segment {
  const was = qualityWords(schema, field, before, code);
  const is = qualityWords(schema, field, after, code);
  if (kind === 'gone') return { text, kind };
  const lost = kind === 'new' ? [] : was.filter((word) => !is.includes(word));
  // The arrow of a move stays at the end, where the eye looks for it.
  const [, what = '', arrow = ''] = /^(.*?)( [▲▼])?$/.exec(text) ?? [];
  const words = `${[what, ...is, ...lost.map((word) => `(not ${word})`)].join(' ')}${arrow}`;
  return { text: words, kind: kind === 'same' && is.join() !== was.join() ? 'new' : kind };
}

/** Codes with amounts: each that rose, fell, came, went or stayed. */
function amountPieces(
  schema: LoggingSchema,
  field: Field,
  before: Amounts,
  after: Amounts,
): readonly PieceOfCode[] {
  const gone = Object.keys(before).filter((code) => !Object.hasOwn(after, code));
  return [
    ...Object.entries(after).map(([code, amount]) => {
      const label = labelOf(schema, field, code);
      const was = Object.hasOwn(before, code) ? before[code] : undefined;
      return was === undefined
        ? { text: withAmount(field, label, amount), kind: 'new' as const, code }
        : { ...moved(field, label, was, amount), code };
    }),
    ...gone.map((code) => ({ text: `${labelOf(schema, field, code)} gone`, kind: 'gone' as const, code })),
  ];
}

/** `pyrite 2→10 % ▲`: the unit once where both have it. */
function moved(field: Field, label: string, before: Amount, after: Amount): Segment {
  if (before === after) return { text: withAmount(field, label, after), kind: 'same' };
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
  const label = firstWords(schema, field, after);
  const wasLabel = was === undefined ? undefined : firstWords(schema, field, was);
  const first: Segment =
    wasLabel === undefined
      ? { text: label, kind: 'new' }
      : wasLabel === label
        ? { text: label, kind: 'same' }
        : { text: `${wasLabel}→${label}`, kind: 'new' };
  const shares = (cell: typeof was): Amounts =>
    Object.fromEntries(
      (cell === undefined ? [] : sharesIn(cell)).map(({ code, percent }) => [code, percent]),
    );
  const { [after.code]: _, ...others } = shares(was);
  return [
    first,
    ...amountPieces(schema, field, others, shares(after)).map(({ text, kind }) => ({ text, kind })),
  ];
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
