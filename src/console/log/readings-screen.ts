import { readingWords } from '../../acts/readings/typed-reading.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { NumberField } from '../../schema/logging-schema.ts';
import { readReading } from '../../schema/read/reading-text.ts';
import { columnFields, hasReading } from '../../standing/reading-rows.ts';
import type { Row } from '../../value/row.ts';
import { hintLine, messageFoot } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { draftSpans } from '../screens/shown.ts';
import { type State, schemaInHand } from '../state.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { cellText } from './panels/cell-text.ts';
import { type ReadingsInHand, readingsInHand } from './readings.ts';

/** Cells of the depths, of the rock, and of each column of readings. */
const DEPTHS = 12;
const ROCK = 12;
const READING = 16;

/** Lines around the two boxes: header, messages, keys, three rules. */
const AROUND = 7;

/** Readings down the logged metres: the metres with what each holds, the one in hand below with what is typed, and what it means. */
export function readingsScreen(state: State, size: Size, theme: Theme): readonly Line[] {
  const hand = readingsInHand(state);
  const inner = size.columns - 4;
  const foot = hand === undefined ? [] : inHandLines(state, hand, inner, theme);
  const room = size.rows - AROUND - foot.length;
  const rows =
    hand === undefined
      ? [line('No logged metre can be read here.', 'warn')]
      : rowLines(state, hand, room, theme);
  return [
    headerLine(state, hand?.hole, size.columns),
    ...box(
      [
        { title: hand === undefined ? 'readings' : titleOf(hand), lines: padded(rows), height: room },
        { title: hand === undefined ? '' : metreOf(hand), lines: padded(foot), height: foot.length },
      ],
      size.columns,
      theme.signs,
    ),
    ...messageFoot(state, size.columns),
    hintLine('readings', size.columns, theme),
  ];
}

const padded = (lines: readonly Line[]): readonly Line[] => lines.map((each) => [{ text: ' ' }, ...each]);

function titleOf({ field, rows }: ReadingsInHand): string {
  const read = rows.filter(([, row]) => hasReading(row, field)).length;
  return `${field.label} · ${field.unit}, ${field.min} to ${field.max} · ${read} of ${rows.length} read`;
}

function metreOf({ rows, at }: ReadingsInHand): string {
  const row = rows[at]?.[1];
  return row === undefined ? '' : `${formatInterval(row)} m`;
}

/** What is typed, what it says or why it can't be, and the caution of the instrument. */
function inHandLines(
  state: State,
  { screen, field }: ReadingsInHand,
  width: number,
  theme: Theme,
): readonly Line[] {
  const { typed } = screen;
  const read = readReading(schemaInHand(state), field, typed.text);
  const none = field.canBeNone ? ', none for looked and none there' : '';
  const says =
    typed.text.trim() === ''
      ? [line(`A number, nr for not read${none}. Enter alone skips.`, 'faint')]
      : typed.text.startsWith(';')
        ? [line(';u undoes, ;r does it again', 'faint')]
        : read.ok
          ? [line(readingWords(field, read.cell), 'good')]
          : wrap(`${read.problem}. ${read.remedy}`, width, 'warn');
  const caution = field.caution === undefined ? [] : wrap(`CAUTION ${field.caution.words}`, width, 'alert');
  return [[...spans([`${theme.signs.cursor} `, 'accent']), ...draftSpans(typed)], ...says, ...caution];
}

/** The metres round the one in hand, under the names of their columns; a metre below another with no return between them says so. */
function rowLines(state: State, hand: ReadingsInHand, room: number, theme: Theme): readonly Line[] {
  const schema = schemaInHand(state);
  const rock = schema.fields.find((field) => field.kind === 'code');
  const columns = [hand.field, ...columnFields(schema).filter((field) => field !== hand.field)].slice(0, 3);
  const head = spans(
    [`  ${fit('metre', DEPTHS)}${fit(rock?.label ?? '', ROCK)}`, 'faint'],
    ...columns.map((field, index) => [fit(field.name, READING), index === 0 ? 'strong' : 'faint'] as const),
  );
  const shown = room - 1;
  const start = Math.max(0, Math.min(hand.at - Math.floor(shown / 2), hand.rows.length - shown));
  const lines = hand.rows.slice(start, start + shown).map(([, row], index): Line => {
    const here = start + index === hand.at;
    const mark = here ? theme.signs.cursor : ' ';
    const seen = rock === undefined ? '' : cellText(schema, rock, row.cells[rock.name], theme.signs.dash);
    const words = `${mark} ${fit(formatInterval(row), DEPTHS)}${fit(seen, ROCK)}`;
    const readings = columns.map((field) => fit(reading(field, row), READING)).join('');
    return spans([words + readings, here ? 'picked' : 'plain']);
  });
  return [head, ...lines];
}

/** What a row holds in a column, in few characters; nothing where it is not read. */
function reading(field: NumberField, row: Row): string {
  const cell = row.cells[field.name];
  return cell === undefined || !hasReading(row, field)
    ? ''
    : readingWords(field, cell).replace(` ${field.unit}`, '');
}
