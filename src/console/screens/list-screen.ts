import type { Size } from '../paint/painter.ts';
import { holeInHand, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { fitHeight, type Line, line } from '../widgets/line.ts';
import { hintLine, messageLines } from './bottom.ts';
import { headerLine } from './header.ts';
import { isListed, type ListedScreen, listOf } from './lists/list-of.ts';
import { allLines } from './lists/listed.ts';

/** Lines of a frame around the list itself: header, two rules, two of messages, the keys. */
const AROUND = 6;

/** A list: a window on its lines, what is searched for in its title. */
export function listScreen(state: State, screen: ListedScreen, size: Size, theme: Theme): readonly Line[] {
  const { title, lines } = shown(state, screen, size, theme);
  const room = size.rows - AROUND;
  const start = Math.min(screen.cursor, furthest(lines, size));
  const end = Math.min(lines.length, start + room);
  const where = lines.length > room ? ` · ${start + 1} to ${end} of ${lines.length}` : '';
  const search = screen.find === '' ? ' · type to search' : ` · search: ${screen.find}${theme.signs.here}`;
  const window = lines.slice(start, end).map((each): Line => [{ text: ' ' }, ...each]);
  return [
    headerLine(state, holeInHand(state), size.columns),
    ...box([{ title: `${title}${where}${search}`, lines: window, height: room }], size.columns, theme.signs),
    ...fitHeight(
      messageLines(state, size.columns).map((each): Line => [{ text: '  ' }, ...each]),
      2,
    ),
    hintLine(screen.name, size.columns, theme),
  ];
}

/** The state with the cursor of a list no further down than the list goes: keys pressed past its end do not add up unseen. */
export function settledList(state: State, size: Size, theme: Theme): State {
  const { screen } = state;
  if (!isListed(screen)) return state;
  const last = furthest(shown(state, screen, size, theme).lines, size);
  return screen.cursor <= last ? state : { ...state, screen: { ...screen, cursor: last } };
}

function shown(state: State, screen: ListedScreen, size: Size, theme: Theme) {
  const list = listOf(state, screen, size.columns - 4, theme);
  const lines = allLines(list);
  const nothing = [line('Nothing holds that. Backspace takes a letter back, Esc all of it.', 'warn')];
  return { title: list.title, lines: lines.length === 0 && screen.find !== '' ? nothing : lines };
}

function furthest(lines: readonly Line[], size: Size): number {
  return Math.max(0, lines.length - (size.rows - AROUND));
}
