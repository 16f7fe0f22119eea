import { ok, type Result, refused } from '../../finding/finding.ts';
import { formatInterval, type Interval, overlaps } from '../../quantity/interval.ts';
import type { Change, Document, Id, Thing } from '../../record/document.ts';
import { sameJson } from '../../record/json.ts';
import type { Meanings } from '../../schema/legend.ts';
import type { Row, RowSaid } from '../../value/row.ts';
import { REFUSALS } from '../findings.ts';
import { headerOf, holeThing, rowsDown } from '../hole.ts';
import type { Made, Maker } from './made.ts';
import { closedRefusal } from './open-hole.ts';
import { withWaiting } from './waiting-events.ts';

/** Logs a new row. Refuses a closed hole, an interval upside down or above the start of logging, and metres logged already. */
export function logRow(hole: Document, row: Row, legend: Meanings, maker: Maker): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const misplaced = intervalRefusal(hole, row, undefined);
  if (misplaced) return misplaced;
  const waited = withWaiting(hole, row);
  return ok({
    what: `logged ${formatInterval(row)}${waited.words}`,
    changes: [
      ...legendChanges(hole, legend),
      { put: ['rows', maker.newId()], thing: waited.row as Thing },
      ...waited.changes,
    ],
  });
}

/** Amends what a saved row says; where it is stays. The row keeps its id, and history keeps what it said before. */
export function amendRow(hole: Document, id: Id, said: RowSaid, legend: Meanings): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const row = holeThing(hole, 'rows', id);
  if (row === undefined) return refused(rowMissing(hole, id));
  const patch = patchTo(id, row as Thing, { ...said, fromMm: row.fromMm, toMm: row.toMm } as Thing);
  return ok({
    what: `amended ${formatInterval(row)}`,
    changes: patch === undefined ? [] : [...legendChanges(hole, legend), patch],
  });
}

/** Settles what was asked about a row: the geologist insists on it as it is. */
export function settleAsked(hole: Document, id: Id): Result<Made> {
  const row = holeThing(hole, 'rows', id);
  if (row === undefined) return refused(rowMissing(hole, id));
  return ok({
    what: `kept ${formatInterval(row)} as it is`,
    changes: [{ patch: ['rows', id], unset: row.askedOf === undefined ? ['asked'] : ['asked', 'askedOf'] }],
  });
}

/**
 * Makes the rows of a hole into the given ones, by id: rows under an id that is there are amended, others are new, ids that
 * are no longer given are taken out. Shift, insert, split, merge and copy are all this, with the rows they lead to. Refuses
 * rows that overlap.
 */
export function replaceRows(
  hole: Document,
  what: string,
  next: readonly (readonly [Id, Row])[],
  legend: Meanings,
): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const down = [...next].sort(([, a], [, b]) => a.fromMm - b.fromMm);
  for (const [index, [, row]] of down.entries()) {
    const below = down[index + 1]?.[1];
    if (row.toMm <= row.fromMm || row.fromMm < headerOf(hole).logFromMm)
      return refused(upsideDown(hole, row));
    if (below !== undefined && overlaps(row, below)) return refused(overlapping(hole, below, row));
  }
  // A metre that is logged by a copy, an insertion or a move takes what waited for it, as one that is typed does.
  const waited = next.map(([id, row]) => ({ id, ...withWaiting(hole, row) }));
  return ok({
    what: `${what}${waited.map(({ words }) => words).join('')}`,
    changes: [
      ...legendChanges(hole, legend),
      ...rowChanges(
        hole,
        waited.map(({ id, row }) => [id, row] as const),
      ),
      ...waited.flatMap(({ changes }) => changes),
    ],
  });
}

function rowChanges(hole: Document, next: readonly (readonly [Id, Row])[]): readonly Change[] {
  const kept = new Set(next.map(([id]) => id));
  const removed = rowsDown(hole)
    .filter(([id]) => !kept.has(id))
    .map(([id]): Change => ({ remove: ['rows', id] }));
  const changed = next.flatMap(([id, row]): readonly Change[] => {
    const was = holeThing(hole, 'rows', id);
    if (was === undefined) return [{ put: ['rows', id], thing: row as Thing }];
    const patch = patchTo(id, was as Thing, row as Thing);
    return patch === undefined ? [] : [patch];
  });
  return [...removed, ...changed];
}

function patchTo(id: Id, was: Thing, is: Thing): Change | undefined {
  const set = Object.fromEntries(
    Object.entries(is).filter(([field, value]) => value !== undefined && !sameJson(was[field], value)),
  );
  const unset = Object.keys(was).filter((field) => is[field] === undefined);
  if (Object.keys(set).length === 0 && unset.length === 0) return undefined;
  return {
    patch: ['rows', id],
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(unset.length === 0 ? {} : { unset }),
  };
}

function intervalRefusal(hole: Document, interval: Interval, self: Id | undefined): Result<Made> | undefined {
  if (interval.toMm <= interval.fromMm || interval.fromMm < headerOf(hole).logFromMm)
    return refused(upsideDown(hole, interval));
  const over = rowsDown(hole).find(([id, row]) => id !== self && overlaps(row, interval));
  return over === undefined ? undefined : refused(overlapping(hole, interval, over[1]));
}

const upsideDown = (hole: Document, interval: Interval) =>
  REFUSALS.badInterval.at(
    { hole: headerOf(hole).name, fromMm: interval.fromMm, toMm: interval.toMm },
    {
      problem: `the interval ${formatInterval(interval)} is not below the start of logging`,
      remedy: `Give an interval that ends below its start, from ${formatInterval({ fromMm: headerOf(hole).logFromMm, toMm: headerOf(hole).logFromMm }).split('–')[0]} m down.`,
    },
  );

const overlapping = (hole: Document, interval: Interval, other: Interval) =>
  REFUSALS.overlap.at(
    { hole: headerOf(hole).name, fromMm: interval.fromMm, toMm: interval.toMm },
    {
      problem: `the row ${formatInterval(other)} covers it already`,
      remedy: 'Amend that row (go up to it), or clear or split it first.',
    },
  );

const rowMissing = (hole: Document, id: Id) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name, thing: `row ${id}` },
    {
      problem: 'the row is no longer there',
      remedy: 'Look at the history: it may have been cleared or merged.',
    },
  );

/** The puts that bring a hole's legend up to what is used. The legend only grows: what is in it stays as it was written. */
export function legendChanges(hole: Document, used: Meanings): readonly Change[] {
  const missing = (table: string, things: { readonly [name: string]: Thing }): readonly Change[] =>
    Object.entries(things)
      .filter(([name]) => hole.tables[table]?.[name] === undefined)
      .map(([name, thing]): Change => ({ put: [table, name], thing }));
  return [
    ...missing('legendFields', used.fields as { readonly [name: string]: Thing }),
    ...missing('legendScales', used.scales as { readonly [name: string]: Thing }),
    ...missing('legendCodes', used.codes as { readonly [name: string]: Thing }),
  ];
}
