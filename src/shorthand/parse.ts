import { fieldConditions } from '../condition/condition.ts';
import type { Interval } from '../quantity/interval.ts';
import { fieldApplies } from '../schema/applies.ts';
import { breaksCarry } from '../schema/cautions.ts';
import { newlyUnlikely } from '../schema/check/unlikely.ts';
import type { Field, LoggingSchema } from '../schema/logging-schema.ts';
import { type Cell, NOT_OBSERVED } from '../value/cell.ts';
import { type Cells, type RowSaid, sameObservation } from '../value/row.ts';
import { itemAsks, restated } from './asks.ts';
import { buildCells } from './build-cells.ts';
import { barrierCrossed, carriedCell } from './carry.ts';
import { type CommandLine, parseCommand, type RangeLine } from './commands.ts';
import { exampleStrokes } from './example-strokes.ts';
import type { OwnNames } from './own-names.ts';
import { type Items, readEnd, readItems } from './read-items.ts';
import { type Ask, type Note, type Refusal, type RowAsk, refusal, type Said } from './said.ts';
import { labelOf, NO_RETURN } from './typing-index.ts';

/** What a line is read against. */
export type EntryContext = {
  readonly schema: LoggingSchema;
  /** The observed row directly above: what carries, and where single keys find their mineral. None, as below a void: the line must be a full one. */
  readonly above?: RowSaid | undefined;
  /** The last observed row above, where a void or a metre without return lies between: `.` alone repeats it, and is asked about. */
  readonly seen?: RowSaid | undefined;
  /** The row directly above, when that is another one (no return, a void). */
  readonly previous?: RowSaid | undefined;
  /** Rows directly above that are alike, the first of them included; 0 or left out: none. */
  readonly repeats?: number | undefined;
  /** Single keys are refused: cold hands hit two keys at once. */
  readonly gloves?: boolean | undefined;
  /** The project's bag numbers: a line that is wholly one goes to the bags. */
  readonly bagPattern?: RegExp | undefined;
  /** Who logged the rows above, after a handover: nothing of theirs carries. */
  readonly loggedBefore?: string | undefined;
  /** Where the row in hand is: what depths of events are read against. */
  readonly interval?: Interval | undefined;
  /** Names of the project, for examples of commands. */
  readonly own?: OwnNames | undefined;
};

/** A row as a line says it. `row.asked` holds the reasons of `asks`, so that it can be saved marked as it is. */
export type ParsedRow = {
  readonly kind: 'row';
  readonly row: RowSaid;
  readonly said: readonly Said[];
  /** What is asked and was not insisted on. */
  readonly asks: readonly Ask[];
  /** What the line restates: shown beside the row, never asked. */
  readonly notes: readonly Note[];
  /** A `=` at the end insisted on the whole row. */
  readonly insisted: boolean;
};

export type Parsed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'settle' }
  | { readonly kind: 'bag'; readonly number: string }
  | CommandLine
  | RangeLine
  | ParsedRow
  | Refusal;

/** Reads one entry line. Never throws for what was typed; a refusal says where, what and what to do, and nothing is taken. */
export function parseLine(text: string, context: EntryContext): Parsed {
  const line = text.trimEnd();
  if (line === '') return { kind: 'empty' };
  if (line === '=') return { kind: 'settle' };
  if (line.startsWith(';')) return parseCommand(line, context);
  if (isBagNumber(line, context.bagPattern)) return { kind: 'bag', number: line };
  const row = parseRow(line, context);
  return row.kind === 'refused' ? withWhyInFull(row, context) : row;
}

function parseRow(line: string, context: EntryContext): ParsedRow | Refusal {
  if (line.startsWith('.')) return dotLine(line, context);
  if (/^nr(?![a-z0-9'])/.test(line)) return noReturnLine(line, context);
  const items = readItems(context, line, 0);
  if (items.kind === 'refused') return items;
  if (items.said.length === 0) return nothingSaid(items);
  return rowOf(context, items, line.length, false);
}

/** After a handover, and below a void or a metre without return, a refusal says why nothing carries. */
function withWhyInFull(row: Refusal, context: EntryContext): Refusal {
  const why = whyInFull(context);
  if (why === undefined) return row;
  const { remedy } = row;
  return { ...row, remedy: `${remedy}${/[.?!]$/.test(remedy) ? '' : '.'} ${why}` };
}

/** Why the next row is to be logged in full though there are rows above; undefined where the row above carries, or there is none. */
export function whyInFull(context: EntryContext): string | undefined {
  if (context.loggedBefore !== undefined)
    return `The first row after ${context.loggedBefore} is logged in full: nothing carries`;
  const broken = context.above === undefined ? brokenAbove(context) : undefined;
  return broken === undefined ? undefined : `Log the row below ${broken} in full: nothing carries across it`;
}

/** The line, insisting on everything in it: what `=` does to a line that was asked about. */
export function insistOn(text: string): string {
  const remark = remarkStart(text);
  const said = text.slice(0, remark).trimEnd();
  return `${said}${said === '.' || said === NO_RETURN ? '=' : ' ='}${text.slice(remark)}`;
}

/** Where the remark of a line begins: the first `/` outside of a quoted value; the line's length without one. */
function remarkStart(text: string): number {
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === "'" && (quoted || text[at - 1] === "'")) quoted = !quoted;
    if (text[at] === '/' && !quoted) return at;
  }
  return text.length;
}

function isBagNumber(line: string, pattern: RegExp | undefined): boolean {
  if (pattern === undefined || !/^[A-Z0-9]/.test(line)) return false;
  return new RegExp(`^(?:${pattern.source})$`, pattern.flags.replace(/[gy]/g, '')).test(line);
}

function dotLine(line: string, context: EntryContext): ParsedRow | Refusal {
  const end = readEnd(line, 1);
  if (end === undefined) {
    return /^\.\d/.test(line)
      ? refusal(
          { position: 0, length: line.length },
          'An amount has nothing before it',
          `Type the letters first: ${exampleStrokes(context.schema).mineral.pair}.5`,
        )
      : refusal(
          { position: 1, length: line.length - 1 },
          '. repeats the row and is typed alone',
          'Type . by itself, or only what changed',
        );
  }
  const above = context.above ?? context.seen;
  if (above === undefined) {
    const { loggedBefore } = context;
    const problem =
      loggedBefore === undefined
        ? 'There is no row above to repeat'
        : `The row above is by ${loggedBefore}: . repeats only your own`;
    return refusal({ position: 0, length: 1 }, problem, 'Type a full row');
  }
  return rowOf({ ...context, above }, { kind: 'items', said: [], ...end }, line.length, true);
}

function noReturnLine(line: string, context: EntryContext): ParsedRow | Refusal {
  const end = readEnd(line, 2);
  if (end === undefined) {
    return refusal(
      { position: 2, length: line.length - 2 },
      'nr means no return: nothing else fits the row',
      'Type nr by itself; a remark may follow: nr/lost sample',
    );
  }
  const { schema } = context;
  const cells: { [field: string]: Cell } = {};
  for (const field of schema.fields) {
    if (fieldApplies(schema, cells, field)) cells[field.name] = NOT_OBSERVED;
  }
  // Never asked, though a slip can make it: a question would keep it from the rules that look for a void.
  const row: RowSaid = {
    cells,
    noReturn: true,
    ...(end.remark === undefined ? {} : { remark: end.remark }),
  };
  return { kind: 'row', row, said: [], asks: [], notes: [], insisted: end.insisted };
}

function nothingSaid({ insisted }: Items): Refusal {
  return insisted
    ? refusal({ position: 0, length: 1 }, '= accepts what comes before it', 'Type the row first')
    : refusal(
        { position: 0, length: 1 },
        'A remark needs a row',
        'Type the row first, or . for one as above: ./remark',
      );
}

function rowOf(context: EntryContext, items: Items, lineEnd: number, repeat: boolean): ParsedRow | Refusal {
  const { schema, above } = context;
  const base = {
    schema,
    cellOf: (field: Field, cells: Cells) => carriedCell(schema, field, above, cells),
    barrierOf: (field: Field, cells: Cells) => barrierCrossed(field, above, cells),
    keysIn: above?.cells,
    keysWhere: 'in the row above',
    interval: context.interval,
  };
  const built = buildCells(base, items.said, lineEnd);
  if (built.kind === 'refused') return built;
  const plain: RowSaid = {
    cells: built.cells,
    ...(built.carried.length === 0 ? {} : { carried: built.carried }),
    ...(repeat ? { repeat } : {}),
    ...(items.remark === undefined ? {} : { remark: items.remark }),
  };
  // A void or a loss of return is not asked about: a question would keep it from the rules that call for help.
  const settled = items.insisted || breaksCarry(schema, plain);
  const { asks, fields } = settled ? NOTHING_ASKED : openAsks(context, plain, items.said, lineEnd);
  const row =
    asks.length === 0
      ? plain
      : {
          ...plain,
          asked: asks.map((ask) => ask.reason),
          ...(fields === undefined ? {} : { askedOf: fields }),
        };
  const notes = settled ? [] : restated({ schema, above, cells: row.cells, said: items.said });
  return { kind: 'row', row, said: items.said, asks, notes, insisted: items.insisted };
}

/** What is asked of a line, and the fields that it is about; undefined where something is asked of the row as a whole. */
type Asked = { readonly asks: readonly Ask[]; readonly fields: readonly string[] | undefined };

const NOTHING_ASKED: Asked = { asks: [], fields: [] };

function openAsks(context: EntryContext, row: RowSaid, said: readonly Said[], lineEnd: number): Asked {
  const { schema, above, gloves } = context;
  const ofItems = itemAsks({ schema, above, cells: row.cells, said, gloves: gloves === true }).filter(
    ({ item }) => !item.insisted,
  );
  const ofRow = rowAsks(context, row);
  return {
    asks: [
      ...ofItems.map(({ item: _, ...ask }): Ask => ask),
      ...ofRow.map(({ fields: _, ...ask }): Ask => ({ ...ask, position: 0, length: lineEnd })),
    ],
    fields: ofRow.some((ask) => ask.fields === undefined)
      ? undefined
      : [
          ...new Set([
            ...ofItems.map(({ item }) => item.field.name),
            ...ofRow.flatMap((ask) => ask.fields ?? []),
          ]),
        ],
  };
}

/** A question about more than one item of a row; about some fields alone where it names them. */
type AskOfRow = { readonly about: RowAsk; readonly reason: string; readonly fields?: readonly string[] };

/** What is asked of the row as a whole: things that newly stand together and seldom do; a repeat past the limit. */
function rowAsks(context: EntryContext, row: RowSaid): readonly AskOfRow[] {
  const { schema, above, gloves } = context;
  const unlikely = newlyUnlikely(schema, above?.cells, row.cells);
  // Oxidation that goes ill with pyrite leaves the rock alone: rules that ask only the rock must not wait for it.
  const questions: AskOfRow[] = unlikely.map(({ words, when }) => ({
    about: 'unlikely',
    reason: words,
    fields: fieldConditions(when).map(({ field }) => field),
  }));
  if (gloves === true && above === undefined)
    questions.push({ about: 'first row', reason: 'all below carries from this row: look it over' });
  const passed = row.repeat === true ? brokenAbove(context) : undefined;
  if (passed !== undefined)
    questions.push({
      about: 'repeat',
      reason: `${passed} directly above: . repeats the last metre that was seen`,
    });
  if (!isOneRepeatTooMany(context, row)) return questions;
  const reason = `${context.repeats} rows alike: look again, then = if it is right`;
  return [...questions, { about: 'repeat', reason }];
}

/** What the row directly above is, where nothing carries out of it: then `.` could mean that it goes on. Undefined where it was seen. */
function brokenAbove({ schema, previous }: EntryContext): string | undefined {
  if (previous === undefined || !breaksCarry(schema, previous)) return undefined;
  if (previous.noReturn === true) return 'no return';
  const [named] = schema.fields.flatMap((field) => {
    const cell = previous.cells[field.name];
    return cell !== undefined && 'code' in cell ? [labelOf(schema, field, cell.code)] : [];
  });
  return named ?? 'a metre without chips';
}

/** Asked once in a run: of the row that makes it longer than the project lets pass. */
function isOneRepeatTooMany({ schema, above, previous, repeats }: EntryContext, row: RowSaid): boolean {
  const directlyAbove = previous ?? above;
  return (
    directlyAbove !== undefined && repeats === schema.repeatsBeforeLook && sameObservation(directlyAbove, row)
  );
}
