import { deepestWaitingMm, waitingDown } from '../../../hole/commands/waiting-events.ts';
import { headerOf, rowsDown } from '../../../hole/hole.ts';
import { formatDepth } from '../../../quantity/depth.ts';
import { byReference } from '../../../record/by-reference.ts';
import type { Document, Id } from '../../../record/document.ts';
import type { LoggingSchema } from '../../../schema/logging-schema.ts';
import { isNewRock } from '../../../shorthand/rock.ts';
import { headsOf, nextInterval } from '../../../standing/heads.ts';
import { rodEndsAt } from '../../../standing/rods.ts';
import { waitingWords } from '../../../standing/waiting-words.ts';
import type { Row } from '../../../value/row.ts';
import { fit } from '../../terminal/paint/cells.ts';
import type { Theme, Tone } from '../../theme.ts';
import { type Line, line, spans } from '../../widgets/line.ts';
import { cellText, fitCell } from './cell-text.ts';
import { type Column, columnsFor } from './columns.ts';
import { sampleText } from './sample-text.ts';

/** Where the eyes are: at the logged head, or on an earlier row. */
export type RowCursor = 'head' | Id;

/** One thing of the table before it is cut to the window: a logged row, the row in hand, a drilled metre without a row, a rule. */
type Entry =
  | { readonly kind: 'row'; readonly id: Id; readonly row: Row; readonly contact: boolean }
  | { readonly kind: 'hand'; readonly fromMm: number; readonly toMm: number }
  | { readonly kind: 'unlogged'; readonly fromMm: number; readonly toMm: number }
  | { readonly kind: 'rule' };

/** What the table is drawn from. */
interface Given {
  readonly hole: Document;
  readonly schema: LoggingSchema;
  readonly cursor: RowCursor;
  readonly theme: Theme;
}

/** How the table is laid out: cells of a depth, and the columns behind both depths and their two marks. */
interface Layout {
  readonly depth: number;
  readonly columns: readonly Column[];
  readonly width: number;
}

/** The table of rows, ruled off by rods: a heading and exactly `height - 1` lines, with the cursor always in view. */
export function rowsPanel(given: Given, width: number, height: number): readonly Line[] {
  const { entries, depth } = entriesOf(given.schema, given.hole);
  const layout: Layout = { depth, columns: columnsFor(given.schema, width - 2 * depth - 4), width };
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
  return [heading(layout), ...shown.map((entry) => entryLine(entry, layout, given))];
}

/** Everything from the top down, and how wide its depths are. The cursor moves without it. */
const entriesOf = byReference((schema: LoggingSchema, hole: Document) => {
  const entries = allEntries(hole, schema);
  return { entries, depth: Math.max(4, ...entries.map((entry) => formatDepth(footOf(entry)).length)) };
});

function allEntries(hole: Document, schema: LoggingSchema): readonly Entry[] {
  const heads = headsOf(hole);
  const hand = nextInterval(hole);
  const rows = loggedEntries(hole, schema);
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

/** Logged rows, each with whether its rock differs from the last one observed above: there is a contact between them. */
function loggedEntries(hole: Document, schema: LoggingSchema): readonly Entry[] {
  let above: Row | undefined;
  return rowsDown(hole).map(([id, row]): Entry => {
    const contact = row.noReturn !== true && isNewRock(schema, above, row.cells);
    if (row.noReturn !== true) above = row;
    return { kind: 'row', id, row, contact };
  });
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
  // Below the last rod done the bit has been where something was met: that metre is shown whole.
  const downMm = Math.max(drilledMm, deepestWaitingMm(hole) + 1);
  for (let top = fromMm, foot = fromMm; top < downMm; top = foot) {
    foot = top < drilledMm ? Math.min(top + interval, drilledMm) : top + interval;
    if (!taken.some(([, row]) => row.fromMm < foot && row.toMm > top))
      entries.push({ kind: 'unlogged', fromMm: top, toMm: foot });
  }
  return entries;
}

function heading({ columns, depth }: Layout): Line {
  const titles = columns.map((column) => fit(column.title, column.width)).join(' ');
  return line(`${'from'.padStart(depth)} ${'to'.padStart(depth)}   ${titles}`, 'faint');
}

function entryLine(entry: Entry, layout: Layout, given: Given): Line {
  const { signs } = given.theme;
  if (entry.kind === 'rule') return line(` ${signs.across.repeat(Math.max(0, layout.width - 2))}`, 'faint');
  if (entry.kind === 'row') return rowLine(entry, layout, given);
  const depths = depthsText(entry.fromMm, entry.toMm, layout);
  if (entry.kind === 'hand') {
    const marker = given.cursor === 'head' ? signs.here : ' ';
    return spans([depths, 'strong'], [`  ${marker}`, 'accent'], ...waitingSpans(entry, given));
  }
  return spans([`${depths}   (drilled, not logged)`, 'faint'], ...waitingSpans(entry, given));
}

/** What waits for the row of a metre: `@ water strike 2 L/s at 54.2 m`. */
function waitingSpans(
  { fromMm, toMm }: { readonly fromMm: number; readonly toMm: number },
  { hole, schema }: Given,
): readonly (readonly [string, Tone])[] {
  const here = waitingDown(hole).filter(([, { atMm }]) => atMm >= fromMm && atMm < toMm);
  return here.length === 0
    ? []
    : [[` @ ${here.map(([, event]) => waitingWords(schema, event)).join(', ')}`, 'strong']];
}

function rowLine(entry: Extract<Entry, { readonly kind: 'row' }>, layout: Layout, given: Given): Line {
  const { row } = entry;
  const { signs } = given.theme;
  const here = entry.id === given.cursor;
  const depths = depthsText(row.fromMm, row.toMm, layout);
  const contact = entry.contact ? signs.contact : ' ';
  const mark = here ? signs.here : markOf(row);
  if (row.noReturn)
    return spans([depths, here ? 'strong' : 'plain'], ` ${contact}${mark}`, ['no return', 'warn']);
  const cells = layout.columns.map((column) =>
    fitCell(columnText(given, row, column), column.width, signs.ellipsis),
  );
  const tone = row.asked === undefined ? 'plain' : 'warn';
  return spans(
    [depths, here ? 'strong' : 'plain'],
    [` ${contact}`, 'accent'],
    [mark, here ? 'accent' : tone],
    [cells.join(' '), here ? 'picked' : tone],
  );
}

function columnText({ hole, schema, theme }: Given, row: Row, { of, width }: Column): string {
  const { dash } = theme.signs;
  return typeof of === 'string'
    ? sampleText(hole, row, of, width, dash)
    : cellText(schema, of, row.cells[of.name], dash);
}

/** `?` for a row that was asked about and is not settled, `@` for one with an event, whether its column has room or not, `/` for a remark. */
function markOf(row: Row): string {
  if (row.asked !== undefined) return '?';
  if (Object.values(row.cells).some((cell) => 'events' in cell)) return '@';
  return row.remark === undefined ? ' ' : '/';
}

function depthsText(fromMm: number, toMm: number, { depth }: Layout): string {
  return `${formatDepth(fromMm).padStart(depth)} ${formatDepth(toMm).padStart(depth)}`;
}
