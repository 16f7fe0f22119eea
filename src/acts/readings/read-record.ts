import { type Depth, formatDepth, parseDepth } from '../../quantity/depth.ts';
import { formatInterval, within } from '../../quantity/interval.ts';
import type { Id } from '../../record/document.ts';
import type { LoggingSchema, NumberField } from '../../schema/logging-schema.ts';
import { checked, isBelowDetection, readReading } from '../../schema/read/reading-text.ts';
import { takesReading } from '../../standing/reading-rows.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../value/cell.ts';
import type { Row } from '../../value/row.ts';
import type { FoundColumns } from './columns.ts';

/** What is done with what a file leaves to the person: said once for the whole file. */
export interface ReadingChoices {
  /** A single depth on the edge of two rows is the top or the foot of its metre. */
  readonly depthIs?: 'top' | 'foot' | undefined;
  /** What a reading below detection (`<5`) is stored as: none seen, not read, or half of the limit. */
  readonly below?: 'none' | 'nr' | 'half' | undefined;
  /** Round readings to the decimals of the field. */
  readonly round?: boolean | undefined;
}

/** One record of the file: what row it is about and what it says, why it is passed over, or why it can't be taken. */
export type RecordRead =
  | { readonly kind: 'reading'; readonly row: Id; readonly cell: Cell }
  | { readonly kind: 'blank' }
  | { readonly kind: 'other hole' }
  | { readonly kind: 'refused'; readonly problem: string; readonly remedy: string };

/** What records are read against. */
export interface ReadingContext {
  readonly schema: LoggingSchema;
  readonly field: NumberField;
  /** What the hole is called: its name and its permanent id. */
  readonly hole: readonly string[];
  readonly rows: readonly (readonly [Id, Row])[];
  readonly columns: FoundColumns;
  readonly choices: ReadingChoices;
}

const ROUND_HINT = '--round rounds all of the file to the decimals of the column.';

type Refused = Extract<RecordRead, { readonly kind: 'refused' }>;

/** Reads one record of an instrument's file. */
export function readRecord(context: ReadingContext, record: readonly string[]): RecordRead {
  const { columns, field } = context;
  const cellAt = (place: number): string => (record[place] ?? '').trim();
  if (columns.hole !== undefined && !isThisHole(context, cellAt(columns.hole))) return { kind: 'other hole' };
  const text = cellAt(columns.reading);
  if (text === '') return { kind: 'blank' };
  const row =
    'at' in columns.depth ? rowAtDepth(context, cellAt(columns.depth.at)) : rowOver(context, record);
  if ('kind' in row) return row;
  const [id, logged] = row.found;
  if (!takesReading(context.schema, field, logged))
    return refused(
      logged.noReturn === true
        ? `${formatInterval(logged)} is logged as no return`
        : `${field.label} is not asked of ${formatInterval(logged)}`,
      'Take the line out of the file, or amend the row first.',
    );
  const read = readNumber(context, text);
  return read.ok
    ? { kind: 'reading', row: id, cell: read.cell }
    : refused(`${formatInterval(logged)}: ${read.problem}`, read.remedy);
}

function isThisHole({ hole }: ReadingContext, text: string): boolean {
  return hole.some((name) => name.toUpperCase() === text.toUpperCase());
}

function rowAtDepth(
  { rows, choices }: ReadingContext,
  text: string,
): { readonly found: readonly [Id, Row] } | Refused {
  const at = parseDepth(text);
  if (at === undefined) return noDepth(text);
  const above = rows.find(([, row]) => row.toMm === at);
  const below = rows.find(([, row]) => row.fromMm === at);
  const inside = rows.find(([, row]) => row.fromMm < at && at < row.toMm);
  const onEdge = above !== undefined || below !== undefined;
  if (inside === undefined && onEdge && choices.depthIs === undefined)
    return refused(
      `${formatDepth(at)} m is the edge of a row: it can be the metre above or the one below`,
      'Say which: --depth-is top (the metre below it) or --depth-is foot (the metre above it).',
    );
  const found = inside ?? (choices.depthIs === 'foot' ? above : below);
  return found === undefined ? notLogged(`${formatDepth(at)} m`) : { found };
}

function rowOver(
  { rows, columns }: ReadingContext,
  record: readonly string[],
): { readonly found: readonly [Id, Row] } | Refused {
  const { depth } = columns;
  if ('at' in depth) throw new Error('the file has one depth a line');
  const [from = '', to = ''] = [record[depth.from], record[depth.to]].map((text) => text?.trim());
  const fromMm = parseDepth(from);
  const toMm = parseDepth(to);
  if (fromMm === undefined || toMm === undefined) return noDepth(fromMm === undefined ? from : to);
  if (toMm <= fromMm)
    return refused(`${from} to ${to} is not an interval`, 'Its top comes first, in metres from the collar.');
  const interval: { readonly fromMm: Depth; readonly toMm: Depth } = { fromMm, toMm };
  const found = rows.find(([, row]) => within(interval, row));
  if (found !== undefined) return { found };
  const touched = rows.some(([, row]) => row.fromMm < toMm && fromMm < row.toMm);
  return touched
    ? refused(
        `${formatInterval(interval)} crosses the edge of a row`,
        'Give one line a row, or part of a row; or split the rows first.',
      )
    : notLogged(formatInterval(interval));
}

function readNumber(
  { schema, field, columns, choices }: ReadingContext,
  text: string,
): ReturnType<typeof readReading> {
  if (text === 'nr') return { ok: true, cell: NOT_OBSERVED };
  const limit = /^<\s*(\d+(?:\.\d+)?|\.\d+)$/.exec(text)?.[1];
  if (isBelowDetection(text)) {
    if (choices.below === 'nr') return { ok: true, cell: NOT_OBSERVED };
    if (choices.below === 'none') return checked(schema, field, NONE);
    if (choices.below !== 'half' || limit === undefined)
      return {
        ok: false,
        problem: `${text} is below what the instrument can tell`,
        remedy: `Say what it is stored as: ${field.canBeNone ? '--below none, ' : ''}--below nr (not read)${limit === undefined ? '' : ', or --below half of the limit'}.`,
      };
    return checked(schema, field, { number: rounded((Number(limit) / 2) * columns.factor, field.decimals) });
  }
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d{1,2})?$/i.test(text)) return readReading(schema, field, text);
  const number = Number((Number(text) * columns.factor).toPrecision(12));
  if (choices.round === true) return checked(schema, field, { number: rounded(number, field.decimals) });
  const read = checked(schema, field, { number });
  const hasMoreDecimals = Number(number.toFixed(field.decimals)) !== number;
  return read.ok || !hasMoreDecimals ? read : { ...read, remedy: `${read.remedy} ${ROUND_HINT}` };
}

function rounded(number: number, decimals: number): number {
  return Number(number.toFixed(decimals)) + 0;
}

function refused(problem: string, remedy: string): Refused {
  return { kind: 'refused', problem, remedy };
}

function noDepth(text: string): Refused {
  return refused(
    text === '' ? 'the depth is empty' : `${text} is not a depth`,
    'Give metres from the collar, with a point and at most three decimals.',
  );
}

function notLogged(what: string): Refused {
  return refused(`${what} is not logged yet`, 'Log it first: a reading goes with what was seen.');
}
