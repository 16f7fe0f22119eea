import { lineUpScreen, settledLineUp } from '../line-up/line-up-screen.ts';
import { holesScreen } from '../lists/holes-screen.ts';
import { isListed, isOfHole } from '../lists/list-of.ts';
import { listScreen, settledList } from '../lists/list-screen.ts';
import { fieldsScreen } from '../log/fields-screen.ts';
import { logScreen } from '../log/log-screen.ts';
import { readingsScreen } from '../log/readings-screen.ts';
import { promptShown } from '../prompts.ts';
import { holeInHand, type State } from '../state.ts';
import { surveyScreen } from '../survey/survey-screen.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, fitLine, type Line, wrap } from '../widgets/line.ts';
import { messageFoot, sizeAbove } from './bottom.ts';

/** The smallest terminal that the console works in. */
const SMALLEST = { columns: 80, rows: 24 } as const;

/** True of a frame (the terminal less a row) in which the console can't be shown. */
export function isTooSmall(size: Size): boolean {
  return size.columns < SMALLEST.columns || size.rows < SMALLEST.rows - 1;
}

/** The whole screen as lines: exactly `size.rows` of them, each at most `size.columns` wide. `size` is the frame's: a row less than the terminal's. */
export function screenLines(state: State, size: Size, theme: Theme): readonly Line[] {
  if (isTooSmall(size)) return tooSmall(size);
  const base = fitHeight(baseLines(state, size, theme), size.rows);
  const foot = messageFoot(state, size.columns);
  const prompt = promptPanel(state, size.columns, size.rows - 4 - foot.length, theme);
  if (prompt.length === 0) return base.map((each) => fitLine(each, size.columns));
  const top = base.slice(0, Math.max(1, size.rows - prompt.length - foot.length));
  return [...top, ...prompt, ...foot].slice(0, size.rows).map((each) => fitLine(each, size.columns));
}

/** The question that stands, as a box that lies over the screen above the entry line; none where there is no question. */
function promptPanel(state: State, width: number, room: number, theme: Theme): readonly Line[] {
  if (state.prompt === undefined) return [];
  const shown = promptShown(state, state.prompt, width - 4, theme);
  const foot = shown.foot ?? [];
  const lines = [...shown.lines.slice(0, Math.max(0, room - 2 - foot.length)), ...foot]
    .slice(0, room - 2)
    .map((each): Line => [{ text: ' ' }, ...each]);
  return box([{ title: shown.title, lines, height: lines.length }], width, theme.signs);
}

function baseLines(state: State, whole: Size, theme: Theme): readonly Line[] {
  const { screen } = state;
  const hole = holeInHand(state);
  const size = sizeAbove(state, whole);
  if (screen.name === 'holes') return holesScreen(state, screen.cursor, size, theme);
  if (isListed(screen) && !isOfHole(screen)) return listScreen(state, screen, size, theme);
  if (hole === undefined) return holesScreen(state, 0, size, theme);
  if (screen.name === 'log') return logScreen(state, hole, screen.cursor, whole, theme);
  if (screen.name === 'fields') return fieldsScreen(state, hole, screen, size, theme);
  if (screen.name === 'survey') return surveyScreen(state, hole, screen, size, theme);
  if (screen.name === 'readings') return readingsScreen(state, size, theme);
  if (screen.name === 'line-up') return lineUpScreen(state, hole, size, theme);
  return listScreen(state, screen, size, theme);
}

function tooSmall(size: Size): readonly Line[] {
  const words = `Too small: ${size.columns}×${size.rows + 1}. It takes ${SMALLEST.columns}×${SMALLEST.rows}. Keys do nothing until then; all is kept.`;
  return fitHeight(wrap(words, size.columns, 'warn'), size.rows).map((each) => fitLine(each, size.columns));
}

/** The state as the screen can show it: nothing scrolled past its end, and known what has been on the screen. */
export function settled(state: State, size: Size, theme: Theme): State {
  // Nothing of it is on the screen: what was scrolled to, and what has been seen, stays as it is until there is room again.
  if (isTooSmall(size)) return state;
  const hole = holeInHand(state);
  const left = sizeAbove(state, size);
  if (state.screen.name === 'line-up') return hole === undefined ? state : settledLineUp(state, hole, left);
  return settledList(state, left, theme);
}
