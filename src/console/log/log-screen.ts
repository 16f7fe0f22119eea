import type { Project } from '../../project/project.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { type EntryContext, whyInFull } from '../../shorthand/parse.ts';
import { labelOf, standsIn, typingIndex } from '../../shorthand/typing-index.ts';
import { adviceFor } from '../../standing/advice.ts';
import { lineWords } from '../keys.ts';
import { bannerLines, hintLine, saidLines } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { draftSpans } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { beside, box } from '../widgets/box.ts';
import { fitHeight, fitLine, type Line, line, lineWidth, spans, wrap } from '../widgets/line.ts';
import { rememberLast } from '../widgets/remember.ts';
import { entryContext, intervalInHand } from './entry.ts';
import { adviceNeeds, advicePanel, adviceTitle } from './panels/advice-panel.ts';
import { bagsPanel, bagsTitle } from './panels/bags-panel.ts';
import { cautionLines, echoLines } from './panels/echo.ts';
import { loggingPanel, loggingTitle } from './panels/logging-panel.ts';
import { type RowCursor, rowsPanel } from './panels/rows-panel.ts';

/** The log screen: rows on the left; the interval in hand, the bags at the rig and the advice on the right; the entry line below. */
export function logScreen(
  state: State,
  hole: Document,
  cursor: RowCursor,
  size: Size,
  theme: Theme,
): readonly Line[] {
  const bottom = bottomLines(state, hole, cursor, size.columns, theme);
  const height = size.rows - 1 - bottom.length;
  const body = bodyLines(state.project, hole, state.documents, cursor, size.columns, height, theme);
  return [headerLine(state, hole, size.columns), ...body, ...bottom];
}

/** Both boxes. They hang on the documents and the cursor alone: typing leaves them as they are. */
const bodyLines = rememberLast(
  (
    project: Project,
    hole: Document,
    documents: ReadonlyMap<string, Document>,
    cursor: RowCursor,
    columns: number,
    height: number,
    theme: Theme,
  ): readonly Line[] => {
    const right = columns >= 100 ? 42 : 32;
    const left = columns - right;
    const rows = rowsPanel({ hole, schema: project.schema, cursor, theme }, left - 2, height - 2);
    return beside([
      { lines: box([{ title: 'rows', lines: rows, height: height - 2 }], left, theme.signs), width: left },
      { lines: rightColumn(project, hole, documents, cursor, right, height, theme), width: right },
    ]);
  },
);

/** The cursor moves without these two. */
const adviceNow = rememberLast((project: Project, hole: Document, documents: ReadonlyMap<string, Document>) =>
  adviceFor(project, hole, documents.values()),
);

const bagsNow = rememberLast(bagsPanel);

function rightColumn(
  project: Project,
  hole: Document,
  documents: ReadonlyMap<string, Document>,
  cursor: RowCursor,
  width: number,
  height: number,
  theme: Theme,
): readonly Line[] {
  const at = intervalInHand(hole, cursor);
  const inner = width - 4;
  const spare = height - 4;
  const standing = adviceNow(project, hole, documents);
  // A danger, or a question to someone, is read whole: bags give up their lines for it, all but one, then the interval in hand, all but its
  // cautions.
  const needs = adviceNeeds(standing, inner);
  const logging = loggingPanel(project, hole, documents.values(), at).slice(
    0,
    Math.max(2, Math.min(5, spare - 1 - needs)),
  );
  const usual = Math.max(3, Math.min(6, Math.floor((spare - logging.length) * 0.4)));
  const left = spare - logging.length - needs;
  const bagLines = bagsNow(project, hole, Math.max(1, Math.min(usual, left)), inner);
  const bags = left < usual ? bagLines.slice(0, Math.max(1, left)) : bagLines;
  const adviceRoom = Math.max(3, spare - logging.length - bags.length);
  const advice = advicePanel(standing, hole, theme, inner, adviceRoom);
  const padded = (lines: readonly Line[]): readonly Line[] => lines.map((each) => [{ text: ' ' }, ...each]);
  return box(
    [
      { title: loggingTitle(at, cursor === 'head'), lines: padded(logging), height: logging.length },
      { title: bagsTitle(hole), lines: padded(bags), height: bags.length },
      { title: adviceTitle(hole, inner), lines: padded(advice), height: adviceRoom },
    ],
    width,
    theme.signs,
  );
}

/**
 * What stands under the boxes: message or echo in two lines, the entry line, two lines of keys or what is not safe. Cautions stand
 * above the echo, each in full: they take a blank line first, then room from the boxes.
 */
function bottomLines(
  state: State,
  hole: Document,
  cursor: RowCursor,
  width: number,
  theme: Theme,
): readonly Line[] {
  const context = entryContext(state, hole, cursor);
  const { text } = state.draft;
  const said = saidLines(state, width);
  const cautions = said.length > 0 ? [] : cautionLines(text, context, width - 4);
  const echo = commandEcho(state, text, width - 4) ?? echoLines(text, context, theme, width - 4);
  const above =
    said.length > 0 ? said : [...cautions, ...(cautions.length === 0 ? echo : withoutBlank(echo))];
  const at = formatInterval(intervalInHand(hole, cursor));
  const held = spans([heldWords(state), 'warn']);
  const entry: Line = [
    ...spans([` ${at} `, 'strong'], [`${theme.signs.cursor} `, 'accent']),
    ...draftSpans(state.draft),
    ...held,
  ];
  const banner = indented(bannerLines(state, width));
  const hint = hintLine('log', width, theme);
  const keys = text === '' ? [keysAbove(context)] : cautions.length === 0 ? [line('')] : [];
  const foot = banner.length === 0 ? [...keys, hint] : fitHeight(banner, 2);
  return [...fitHeight(indented(above), Math.max(2, above.length)), fitLine(entry, width), ...foot];
}

/** What waits behind the line: repeats as rows, other keys as keys. */
function heldWords({ held, asked }: State): string {
  if (held.length === 0) return '';
  const dots = asked === '.' ? held.filter((each) => each.kind === 'text').length : 0;
  if (dots > 0) return `  (${dots} more ${dots === 1 ? 'row waits' : 'rows wait'})`;
  return `  (${held.length} ${held.length === 1 ? 'key waits' : 'keys wait'})`;
}

function withoutBlank(lines: readonly Line[]): readonly Line[] {
  return lines.filter((each) => lineWidth(each) > 0);
}

function indented(lines: readonly Line[]): readonly Line[] {
  return lines.map((each) => [{ text: '  ' }, ...each]);
}

/** The single keys that type something here, minerals of the row above; or why there are none and the line must be a full one. */
function keysAbove(context: EntryContext): Line {
  const { schema, above, gloves } = context;
  if (above === undefined) {
    const why = whyInFull(context);
    return why === undefined ? line('') : line(`  ${why}`, 'accent');
  }
  if (gloves === true) return line('');
  const keys = [...typingIndex(schema).keys]
    .filter(([, typed]) => standsIn(above.cells, typed.field, typed.code?.code))
    .map(([key, typed]) => `${key} ${labelOf(schema, typed.field, typed.code?.code)}`);
  return keys.length === 0 ? line('') : spans(['  keys above: ', 'faint'], [keys.join('  '), 'faint']);
}

/**
 * The two lines above the entry line while a command's word is typed: what it does, or the words that begin so. Undefined
 * where the line is not a command's word, or none begins so: then the line itself says why it is refused.
 */
export function commandEcho(state: State, text: string, width: number): readonly [Line, Line] | undefined {
  const typed = /^;([a-z-]*)$/.exec(text)?.[1];
  if (typed === undefined) return undefined;
  const begun = lineWords().filter(({ text: word }) => word.startsWith(typed));
  if (begun.length === 0) return undefined;
  const exact = begun.find(({ text: word }) => word === typed);
  const others = begun.filter((each) => each !== exact).map((each) => `;${each.text}`);
  const names = others.length === 0 ? [] : wrap(others.join('  '), width, 'faint');
  if (exact === undefined) return [names[0] ?? [], names[1] ?? []];
  const [first = [], second] = wrap(inOwn(state, exact.label), width, 'accent');
  return [first, second ?? names[0] ?? line('')];
}
