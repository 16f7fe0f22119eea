import { ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import { replaceRows } from '../hole/commands/rows.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, rowsDown } from '../hole/hole.ts';
import { type Depth, depthFromMm, formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval, overlaps, within } from '../quantity/interval.ts';
import type { Document, Id } from '../record/document.ts';
import { fieldApplies } from '../schema/applies.ts';
import { lostWords } from '../schema/cautions.ts';
import { meaningsOf } from '../schema/legend.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { carriedCell } from '../shorthand/carry.ts';
import { loggedDepth } from '../standing/heads.ts';
import { type Cell, NONE, type PointEvent } from '../value/cell.ts';
import { type Cells, type Row, sameObservation } from '../value/row.ts';
import type { RangeCommand, RangePlan, Rows } from './range-plan.ts';
import { rangeLines, rangeWords } from './range-words.ts';

/** Works a range command out on a hole. Refused where it names metres that are not logged or would lay rows over one another. */
export function planRange(
  schema: LoggingSchema,
  hole: Document,
  command: RangeCommand,
  maker: Maker,
): Result<RangePlan> {
  const rows = rowsDown(hole);
  const next = nextRows(schema, hole, rows, command, maker);
  if (!next.ok) return next;
  const what = rangeWords(command);
  const made = replaceRows(
    hole,
    what,
    next.value,
    meaningsOf(
      schema,
      next.value.map(([, row]) => row),
    ),
  );
  if (!made.ok) return made;
  const [intended = '', ...lines] = rangeLines(hole, command, rows, next.value);
  const kept = new Set(next.value.map(([id]) => id));
  const gone = rows.filter(([id]) => command.does !== 'merge' && !kept.has(id));
  const cautions = gone.flatMap(([, row]) => lostWords(schema, row, undefined));
  return ok({ lines: [intended, ...cautions, ...lines], made: made.value });
}

function nextRows(
  schema: LoggingSchema,
  hole: Document,
  rows: Rows,
  command: RangeCommand,
  maker: Maker,
): Result<Rows> {
  if (command.does === 'split') return split(hole, rows, command.atMm, maker);
  if (command.does === 'insert') return insert(hole, rows, command);
  const inside = rows.filter(([, row]) => overlaps(row, command));
  if (inside.length === 0) return nothing(hole, command);
  const cut = inside.find(([, row]) => !within(row, command));
  if (cut !== undefined) return cutThrough(hole, command, cut[1]);
  switch (command.does) {
    case 'clear':
      return ok(rows.filter((each) => !inside.includes(each)));
    case 'shift':
      return shift(hole, rows, inside, command.byMm);
    case 'merge':
      return merge(hole, rows, inside, command);
    case 'copy':
      return copy(schema, hole, rows, inside, command, maker);
  }
}

function shift(hole: Document, rows: Rows, inside: Rows, byMm: number): Result<Rows> {
  const top = inside[0]?.[1].fromMm ?? 0;
  if (top + byMm < headerOf(hole).logFromMm) {
    return refused(
      REFUSALS.badInterval.at(
        { hole: headerOf(hole).name, fromMm: top },
        { problem: 'rows would move above the start of logging', remedy: 'Move them less far up.' },
      ),
    );
  }
  return ok(
    rows.map(([id, row]) => (inside.some(([each]) => each === id) ? [id, moved(row, byMm)] : [id, row])),
  );
}

/** A forgotten interval: rows from its top down move down by its length, and the interval stands open. */
function insert(hole: Document, rows: Rows, at: Interval): Result<Rows> {
  const through = rows.find(([, row]) => row.fromMm < at.fromMm && row.toMm > at.fromMm);
  if (through !== undefined) return cutThrough(hole, at, through[1]);
  if (!rows.some(([, row]) => row.fromMm >= at.fromMm)) return nothing(hole, at);
  const byMm = at.toMm - at.fromMm;
  return ok(rows.map(([id, row]) => (row.fromMm >= at.fromMm ? [id, moved(row, byMm)] : [id, row])));
}

function split(hole: Document, rows: Rows, atMm: Depth, maker: Maker): Result<Rows> {
  const found = rows.find(([, row]) => row.fromMm < atMm && row.toMm > atMm);
  if (found === undefined) {
    const boundary = rows.some(([, row]) => row.fromMm === atMm || row.toMm === atMm);
    return boundary ? splitAlready(hole, atMm) : nothing(hole, { fromMm: atMm, toMm: depthFromMm(atMm + 1) });
  }
  const [id, row] = found;
  return ok([
    ...rows.filter((each) => each !== found),
    // An event goes with the half that it is in; one whose depth no one knows stays above.
    [id, { ...withEvents(row, (event) => ((event.atMm ?? 0) < atMm ? event : undefined)), toMm: atMm }],
    [
      maker.newId(),
      { ...withEvents(row, (event) => ((event.atMm ?? 0) >= atMm ? event : undefined)), fromMm: atMm },
    ],
  ]);
}

function merge(hole: Document, rows: Rows, inside: Rows, range: Interval): Result<Rows> {
  const [first, ...rest] = inside;
  if (first === undefined || rest.length === 0) return nothing(hole, range);
  const plain = withEvents(first[1], () => undefined);
  const differs = rest.find(
    ([, row]) =>
      !sameObservation(
        withEvents(row, () => undefined),
        plain,
      ),
  );
  const gap = inside.some(([, row], index) => index > 0 && row.fromMm !== inside[index - 1]?.[1].toMm);
  if (differs !== undefined || gap) {
    return refused(
      REFUSALS.overlap.at(
        { hole: headerOf(hole).name, ...range },
        {
          problem:
            differs === undefined
              ? 'the rows have a gap between them'
              : `the row ${formatInterval(differs[1])} says something else`,
          remedy: 'Rows are made one only where they touch and say the same: amend them first.',
        },
      ),
    );
  }
  const last = inside.at(-1) ?? first;
  return ok([
    ...rows.filter((each) => !inside.includes(each)),
    [first[0], { ...first[1], ...eventsOf(inside), toMm: last[1].toMm, ...remarksOf(inside) }],
  ]);
}

/** Cells of rows that become one, with the events of all of them; of two of a kind the upper one stays. */
function eventsOf(rows: Rows): { readonly cells?: Cells } {
  const [first, ...rest] = rows;
  if (first === undefined) return {};
  const cells: { [field: string]: Cell } = { ...first[1].cells };
  for (const [, row] of rest)
    for (const [name, cell] of Object.entries(row.cells)) {
      if (!('events' in cell)) continue;
      const above = cells[name];
      const upper = above !== undefined && 'events' in above ? above.events : {};
      cells[name] = { events: { ...cell.events, ...upper } };
    }
  return { cells };
}

/** Remarks of rows that become one, in their order: none is lost. */
function remarksOf(rows: Rows): { readonly remark?: string } {
  const remarks = rows.flatMap(([, { remark }]) => remark ?? []);
  return remarks.length === 0 ? {} : { remark: [...new Set(remarks)].join('; ') };
}

function copy(
  schema: LoggingSchema,
  hole: Document,
  rows: Rows,
  inside: Rows,
  command: Extract<RangeCommand, { readonly does: 'copy' }>,
  maker: Maker,
): Result<Rows> {
  const top = inside[0]?.[1].fromMm ?? 0;
  const byMm = (command.atMm ?? loggedDepth(hole)) - top;
  const copies = inside.map(([, row]): readonly [Id, Row] => [maker.newId(), copyOf(schema, row, byMm)]);
  return ok([...rows, ...copies]);
}

/** A row again further down: what is observed in chips, as a point would repeat it; never a remark, a contact or a reading. */
function copyOf(schema: LoggingSchema, row: Row, byMm: number): Row {
  const { fromMm, toMm, noReturn } = moved(row, byMm);
  if (noReturn) return { fromMm, toMm, cells: row.cells, noReturn };
  const cells: { [field: string]: Cell } = {};
  for (const field of schema.fields) {
    if (fieldApplies(schema, cells, field))
      cells[field.name] = carriedCell(schema, field, row, row.cells) ?? { absent: field.unsaid };
  }
  const carried = schema.fields.filter((field) => carriedCell(schema, field, row, row.cells) !== undefined);
  return { fromMm, toMm, cells, carried: carried.map(({ name }) => name), repeat: true };
}

/** A row with each of its events as `placed` gives it; one that it gives nothing for is not in the row. */
function withEvents(row: Row, placed: (event: PointEvent) => PointEvent | undefined): Row {
  const holds = Object.values(row.cells).some((cell) => 'events' in cell);
  if (!holds) return row;
  const cells = Object.entries(row.cells).map(([name, cell]) => {
    if (!('events' in cell)) return [name, cell];
    const events = Object.entries(cell.events).flatMap(([code, event]) => {
      const at = placed(event);
      return at === undefined ? [] : [[code, at] as const];
    });
    return [name, events.length === 0 ? NONE : { events: Object.fromEntries(events) }];
  });
  return { ...row, cells: Object.fromEntries(cells) };
}

function moved(row: Row, byMm: number): Row {
  const placed = withEvents(row, (event) => ({
    ...event,
    ...(event.atMm === undefined ? {} : { atMm: event.atMm + byMm }),
  }));
  return { ...placed, fromMm: depthFromMm(row.fromMm + byMm), toMm: depthFromMm(row.toMm + byMm) };
}

const nothing = (hole: Document, range: Interval): Result<Rows> =>
  refused(
    REFUSALS.notThere.at(
      { hole: headerOf(hole).name, ...range },
      { problem: 'no row is logged there', remedy: 'Give a range that holds logged rows.' },
    ),
  );

const splitAlready = (hole: Document, atMm: Depth): Result<Rows> =>
  refused(
    REFUSALS.badInterval.at(
      { hole: headerOf(hole).name, fromMm: atMm },
      {
        problem: `a row ends at ${formatDepth(atMm)} m already`,
        remedy: 'Give a depth inside the row that is to become two.',
      },
    ),
  );

const cutThrough = (hole: Document, range: Interval, row: Row): Result<Rows> =>
  refused(
    REFUSALS.overlap.at(
      { hole: headerOf(hole).name, ...range },
      {
        problem: `the range cuts through the row ${formatInterval(row)}`,
        remedy: 'Give depths where rows begin and end, or split that row first.',
      },
    ),
  );
