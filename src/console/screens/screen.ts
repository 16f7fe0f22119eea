import type { Document } from '../../record/document.ts';
import type { Size } from '../paint/painter.ts';
import { holeInHand, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, fitLine, type Line, line } from '../widgets/line.ts';
import { hintLine, messageLines } from './bottom.ts';
import { fieldsScreen } from './fields-screen.ts';
import { headerLine } from './header.ts';
import { holesScreen } from './holes-screen.ts';
import { lineUpScreen } from './line-up-screen.ts';
import { helpList, listOf } from './list-lines.ts';
import type { Listed } from './listed.ts';
import { logScreen } from './log-screen.ts';
import { promptPanel } from './prompt-panel.ts';
import { surveyScreen } from './survey-screen.ts';

/** The smallest terminal that the console works in. */
export const SMALLEST = { columns: 80, rows: 24 } as const;

/** The whole screen as lines: exactly `size.rows` of them, each at most `size.columns` wide. `size` is the frame's: a row less than the terminal's. */
export function screenLines(state: State, size: Size, theme: Theme): readonly Line[] {
  if (size.columns < SMALLEST.columns || size.rows < SMALLEST.rows - 1) return tooSmall(size);
  const base = fitHeight(baseLines(state, size, theme), size.rows);
  const prompt = promptPanel(state, size.columns, size.rows - 6, theme);
  if (prompt.length === 0) return base.map((each) => fitLine(each, size.columns));
  const foot = [
    ...fitHeight(
      messageLines(state, size.columns).map((each): Line => [{ text: '  ' }, ...each]),
      2,
    ),
  ];
  const top = base.slice(0, Math.max(1, size.rows - prompt.length - foot.length));
  return [...top, ...prompt, ...foot].slice(0, size.rows).map((each) => fitLine(each, size.columns));
}

function baseLines(state: State, size: Size, theme: Theme): readonly Line[] {
  const { screen } = state;
  const hole = holeInHand(state);
  if (screen.name === 'holes') return holesScreen(state, screen.cursor, size, theme);
  if (screen.name === 'help') return listScreen(state, hole, helpList(state), screen.cursor, size, theme);
  if (hole === undefined) return holesScreen(state, 0, size, theme);
  if (screen.name === 'log') return logScreen(state, hole, screen.cursor, size, theme);
  if (screen.name === 'fields') return fieldsScreen(state, hole, screen, size, theme);
  if (screen.name === 'survey') return surveyScreen(state, hole, screen, size, theme);
  if (screen.name === 'line-up') return lineUpScreen(state, hole, size, theme);
  return listScreen(
    state,
    hole,
    listOf(state, hole, screen, size.columns - 4, theme),
    screen.cursor,
    size,
    theme,
  );
}

/** A list: a window on its lines that the cursor scrolls, never past its end. */
function listScreen(
  state: State,
  hole: Document | undefined,
  list: Listed,
  cursor: number,
  size: Size,
  theme: Theme,
): readonly Line[] {
  const room = size.rows - 6;
  const start = Math.max(0, Math.min(cursor, list.lines.length - room));
  const end = Math.min(list.lines.length, start + room);
  const where = list.lines.length > room ? ` · ${start + 1} to ${end} of ${list.lines.length}` : '';
  const lines = list.lines.slice(start, start + room).map((each): Line => [{ text: ' ' }, ...each]);
  return [
    headerLine(state, hole, size.columns),
    ...box([{ title: `${list.title}${where}`, lines, height: room }], size.columns, theme.signs),
    ...fitHeight(
      messageLines(state, size.columns).map((each): Line => [{ text: '  ' }, ...each]),
      2,
    ),
    hintLine('bags', size.columns, theme),
  ];
}

function tooSmall(size: Size): readonly Line[] {
  const words = `Too small: ${size.columns}×${size.rows + 1}. Make the window at least ${SMALLEST.columns}×${SMALLEST.rows}. All is kept.`;
  return fitHeight([line(words, 'warn')], size.rows).map((each) => fitLine(each, size.columns));
}
