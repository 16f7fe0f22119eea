import { headerOf, rowsDown } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document, Id } from '../../record/document.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { headsOf, nextInterval } from '../../standing/heads.ts';
import { rodEndsAt } from '../../standing/rods.ts';
import type { Row } from '../../value/row.ts';
import { fit } from '../paint/cells.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans } from '../widgets/line.ts';
import { cellText } from './cell-text.ts';
import { type Column, columnsFor } from './columns.ts';

/** Where the eyes are: at the logged head, or on an earlier row. */
export type RowCursor = 'head' | Id;

/** One thing of the table before it is cut to the window: a logged row, the row in hand, a drilled metre without a row, a rule. */
type Entry =
  | { readonly kind: 'row'; readonly id: Id; readonly row: Row }
  | { readonly kind: 'hand'; readonly fromMm: number; readonly toMm: number }
  | { readonly kind: 'unlogged'; readonly fromMm: number; readonly toMm: number }
  | { readonly kind: 'rule' };

const DEPTH_WIDTH = 6;

/** The table of rows, ruled off by rods: a heading and exactly `height - 1` lines, with the cursor always in view. */
export function rowsPanel(
  given: {
    readonly hole: Document;
    readonly schema: LoggingSchema;
    readonly cursor: RowCursor;
    readonly theme: Theme;
  },
  width: number,
  height: number,
): readonly Line[] {
  const columns = columnsFor(given.schema, width - 2 * DEPTH_WIDTH - 3);
  const entries = entriesOf(given.hole);
  const at = Math.max(
    0,
    entries.findIndex((entry) =>
      given.cursor === 'head' ? entry.kind === 'hand' : entry.kind === 'row' && entry.id === given.cursor,
    ),
  );
  const room = height - 1;
  const below = Math.min(5, Math.floor(room / 4));
  const start = Math.max(0, Math.min(at - (room - 1 - below), entries.length - room));
  const shown = entries.slice(start, start + room);
  return [heading(columns), ...shown.map((entry) => entryLine(entry, columns, given, width))];
}

function entriesOf(hole: Document): readonly Entry[] {
  const heads = headsOf(hole);
  const hand = nextInterval(hole);
  const rows = rowsDown(hole).map(([id, row]): Entry => ({ kind: 'row', id, row }));
  const entries: Entry[] = [
    ...rows,
    { kind: 'hand', ...hand },
    ...unlogged(hole, hand.toMm, heads.drilledMm),
  ];
  entries.sort((a, b) => topOf(a) - topOf(b));
  return entries.flatMap((entry) =>
    rodEndsAt(hole, footOf(entry)) ? [entry, { kind: 'rule' } as const] : [entry],
  );
}

const topOf = (entry: Entry): number =>
  entry.kind === 'row' ? entry.row.fromMm : entry.kind === 'rule' ? 0 : entry.fromMm;
const footOf = (entry: Entry): number =>
  entry.kind === 'row' ? entry.row.toMm : entry.kind === 'rule' ? 0 : entry.toMm;

/** Drilled metres below the row in hand that have no row, by the usual interval. */
function unlogged(hole: Document, fromMm: number, drilledMm: number): readonly Entry[] {
  const interval = headerOf(hole).intervalMm;
  const taken = rowsDown(hole).filter(([, row]) => row.toMm > fromMm);
  const entries: Entry[] = [];
  for (let top = fromMm; top < drilledMm; top += interval) {
    const foot = Math.min(top + interval, drilledMm);
    if (!taken.some(([, row]) => row.fromMm < foot && row.toMm > top))
      entries.push({ kind: 'unlogged', fromMm: top, toMm: foot });
  }
  return entries;
}

function heading(columns: readonly Column[]): Line {
  const titles = columns.map((column) => fit(column.title, column.width)).join(' ');
  return line(`${'from'.padStart(DEPTH_WIDTH)} ${'to'.padStart(DEPTH_WIDTH - 1)}  ${titles}`, 'faint');
}

function entryLine(
  entry: Entry,
  columns: readonly Column[],
  given: { readonly schema: LoggingSchema; readonly cursor: RowCursor; readonly theme: Theme },
  width: number,
): Line {
  const { signs } = given.theme;
  if (entry.kind === 'rule') return line(` ${signs.across.repeat(Math.max(0, width - 2))}`, 'faint');
  if (entry.kind === 'row') return rowLine(entry, columns, given);
  const depths = depthsText(entry.fromMm, entry.toMm);
  if (entry.kind === 'hand') {
    const marker = given.cursor === 'head' ? signs.here : ' ';
    return spans([depths, 'strong'], [` ${marker}`, 'accent']);
  }
  return line(`${depths}  (drilled, not logged)`, 'faint');
}

function rowLine(
  entry: { readonly id: Id; readonly row: Row },
  columns: readonly Column[],
  given: { readonly schema: LoggingSchema; readonly cursor: RowCursor; readonly theme: Theme },
): Line {
  const { row } = entry;
  const here = entry.id === given.cursor;
  const mark = here
    ? given.theme.signs.here
    : row.asked === undefined
      ? row.remark === undefined
        ? ' '
        : '/'
      : '?';
  const depths = depthsText(row.fromMm, row.toMm);
  if (row.noReturn) return spans([depths, here ? 'strong' : 'plain'], ` ${mark}`, ['no return', 'warn']);
  const cells = columns.map((column) =>
    fit(
      cellText(given.schema, column.field, row.cells[column.field.name], given.theme.signs.dash),
      column.width,
      given.theme.signs.ellipsis,
    ),
  );
  const tone = row.asked === undefined ? 'plain' : 'warn';
  return spans(
    [depths, here ? 'strong' : 'plain'],
    [` ${mark}`, here ? 'accent' : tone],
    [cells.join(' '), here ? 'picked' : tone],
  );
}

function depthsText(fromMm: number, toMm: number): string {
  return `${formatDepth(fromMm).padStart(DEPTH_WIDTH)} ${formatDepth(toMm).padStart(DEPTH_WIDTH - 1)}`;
}
