import * as z from 'zod';
import type { Depth } from '../quantity/depth.ts';
import type { Document, Id, Table, Thing } from '../record/document.ts';
import type { Row } from '../value/row.ts';
import { accepted, signOff } from './acceptance.ts';
import { type Bag, bag, bagOf, bagRun, controlChoice, putOff, tick, tray } from './bags.ts';
import { lineUp, shot, surveyRun } from './direction.ts';
import { bitMeasured, feltByDriller, hygiene, rodDone, streamFact } from './drilled.ts';
import { collarState, decision, stop } from './ending.ts';
import { collar, drillingInterval, header, plan } from './header.ts';
import { legendCode, legendField, legendScale } from './legend.ts';
import { row, waitingEvent } from './log.ts';
import { words } from './parts.ts';

/** What is in each table of a hole. */
export const HOLE_NOUNS = {
  hole: header,
  plan,
  collars: collar,
  drilling: drillingInterval,
  rods: rodDone,
  stream: streamFact,
  feltByDriller,
  hygiene,
  bits: bitMeasured,
  ticks: tick,
  rows: row,
  waitingEvents: waitingEvent,
  bagRuns: bagRun,
  bags: bag,
  putOff,
  controlChoices: controlChoice,
  trays: tray,
  lineUps: lineUp,
  runs: surveyRun,
  shots: shot,
  decisions: decision,
  collarStates: collarState,
  stops: stop,
  legendFields: legendField,
  legendScales: legendScale,
  legendCodes: legendCode,
  questions: z
    .strictObject({
      table: words,
      thing: words,
      field: words.optional(),
      ours: z.json(),
      theirs: z.json(),
      state: z.enum(['open', 'settled']),
      settled: z.enum(['ours', 'theirs']).optional().describe('Which of the two was chosen'),
    })
    .describe('Cells that two copies of the hole changed differently; ours is kept until someone settles it'),
  accepted,
  signOffs: signOff,
} as const;

export type HoleTable = keyof typeof HOLE_NOUNS;
export type HoleNoun<T extends HoleTable> = T extends 'rows'
  ? Row
  : T extends 'bags'
    ? Bag
    : Readonly<z.infer<(typeof HOLE_NOUNS)[T]>>;

/** The things of one table with their ids, in the order they were made. The file was checked when it was read. */
export function holeThings<T extends HoleTable>(
  hole: Document,
  table: T,
): readonly (readonly [Id, HoleNoun<T>])[] {
  return listed(tableOf(hole, table)).things as unknown as readonly (readonly [Id, HoleNoun<T>])[];
}

/** The things of one table without their ids. */
export function holeNouns<T extends HoleTable>(hole: Document, table: T): readonly HoleNoun<T>[] {
  return listed(tableOf(hole, table)).nouns as unknown as readonly HoleNoun<T>[];
}

/** A table as lists. */
interface Listed {
  readonly things: readonly (readonly [Id, Thing])[];
  readonly nouns: readonly Thing[];
}

/** Listed once for a table, however many views ask: tables are never changed in place, and listing thousands of rows takes 1 ms. */
const lists = new WeakMap<Table, Listed>();

function listed(table: Table): Listed {
  const known = lists.get(table);
  if (known !== undefined) return known;
  // Three times as fast as Object.entries over thousands of keys.
  const things = Object.keys(table).map((id) => [id, table[id] as Thing] as const);
  const made = { things, nouns: things.map(([, thing]) => thing) };
  lists.set(table, made);
  return made;
}

/** One thing of a table, or undefined. */
export function holeThing<T extends HoleTable>(hole: Document, table: T, thing: Id): HoleNoun<T> | undefined {
  return tableOf(hole, table)[thing] as unknown as HoleNoun<T> | undefined;
}

/** A table in today's words. Only bags of older files differ. */
function tableOf(hole: Document, table: HoleTable): Table {
  const stored = hole.tables[table] ?? NOTHING;
  return table === 'bags' ? bagsToday(stored) : stored;
}

const NOTHING: Table = {};

/** Tables of bags in today's words, by the table as it is stored: tables are never changed in place. */
const todaysBags = new WeakMap<Table, Table>();

function bagsToday(stored: Table): Table {
  const known = todaysBags.get(stored);
  if (known !== undefined) return known;
  const isOlder = Object.values(stored).some((thing) => thing.kind === 'void');
  const today = isOlder
    ? Object.fromEntries(
        Object.entries(stored).map(([id, thing]) => [id, bagOf(thing as unknown as Bag) as Table[string]]),
      )
    : stored;
  todaysBags.set(stored, today);
  return today;
}

/** The header of a hole. Throws where a document has none: reading a file refuses such a one. */
export function headerOf(hole: Document): HoleNoun<'hole'> {
  const found = holeThing(hole, 'hole', 'hole');
  if (found === undefined) throw new Error(`hole ${hole.id} has no header`);
  return found;
}

/** True of what ends at a depth of a hole that came from tables of others: it was never logged here. Below their final depth it was. */
export function isImported(hole: Document, toMm: number): boolean {
  const { imported } = headerOf(hole);
  return imported !== undefined && toMm <= imported.depthMm;
}

/** Where our own drilling of a hole begins, and with it bags, recovery and trays: below what was imported, else where logging starts. */
export function ownFromMm(hole: Document): Depth {
  const { imported, logFromMm } = headerOf(hole);
  return imported === undefined || imported.depthMm < logFromMm ? logFromMm : imported.depthMm;
}

/** The plan of a hole, or undefined for one without. */
export function planOf(hole: Document): HoleNoun<'plan'> | undefined {
  return holeThing(hole, 'plan', 'plan');
}

/**
 * What a reader of format 3 or older doesn't know: tables of a hole, fields of its older tables, members of a cell of a row, and kinds of
 * fields in the legend.
 */
export const HOLE_SINCE_4 = {
  tables: ['feltByDriller', 'waitingEvents', 'accepted', 'signOffs'],
  fields: {
    hole: ['imported', 'notLinedUp'],
    collars: ['fix'],
    decisions: ['settles'],
    shots: ['misread'],
    legendCodes: ['noChips', 'unit'],
  },
  cells: ['third', 'qualified', 'codes', 'events'],
  kinds: ['codes', 'events'],
} as const;

/** Rows sorted before, by the table they stand in: tables are never changed in place. */
const sortedRows = new WeakMap<Table, readonly (readonly [Id, Row])[]>();

/** Logged rows with their ids, from the top down. Sorted once for a table, however many views ask. */
export function rowsDown(hole: Document): readonly (readonly [Id, Row])[] {
  const table = hole.tables.rows;
  if (table === undefined) return [];
  const known = sortedRows.get(table);
  if (known !== undefined) return known;
  const sorted = [...holeThings(hole, 'rows')].sort(([, a], [, b]) => a.fromMm - b.fromMm);
  sortedRows.set(table, sorted);
  return sorted;
}
