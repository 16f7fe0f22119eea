import { hintLine, messageFoot } from '../screens/bottom.ts';
import { headerLine } from '../screens/header.ts';
import { holeInHand, type State } from '../state.ts';
import type { Size } from '../terminal/paint/painter.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { type Line, line } from '../widgets/line.ts';
import { isListed, type ListedScreen, listOf } from './list-of.ts';
import { allLines, type Listed } from './listed.ts';

/** Lines of a frame around the list itself: header, two rules, two of messages, the keys. */
const AROUND = 6;

/** A list: a window on its lines, what is searched for in its title. */
export function listScreen(state: State, screen: ListedScreen, size: Size, theme: Theme): readonly Line[] {
  const { title, lines, picked } = shown(state, screen, size, theme);
  const room = size.rows - AROUND;
  const top = picked === undefined ? screen.cursor : Math.max(0, picked - Math.floor(room / 2));
  const start = Math.min(top, furthest(lines, size));
  const end = Math.min(lines.length, start + room);
  const where = lines.length > room ? ` · ${start + 1} to ${end} of ${lines.length}` : '';
  const hint = screen.name === 'shift' ? '' : ' · type to search';
  const search = screen.find === '' ? hint : ` · search: ${screen.find}${theme.signs.here}`;
  const window = lines.slice(start, end).map((each): Line => [{ text: ' ' }, ...each]);
  return [
    headerLine(state, holeInHand(state), size.columns),
    ...box([{ title: `${title}${where}${search}`, lines: window, height: room }], size.columns, theme.signs),
    ...messageFoot(state, size.columns),
    hintLine(screen.name, size.columns, theme),
  ];
}

/** The state with the cursor of a list no further down than the list goes: keys pressed past its end do not add up unseen. */
export function settledList(state: State, size: Size, theme: Theme): State {
  const { screen } = state;
  if (!isListed(screen)) return state;
  const { lines, items } = shown(state, screen, size, theme);
  const last = items === undefined ? furthest(lines, size) : Math.max(0, items - 1);
  return screen.cursor <= last ? state : { ...state, screen: { ...screen, cursor: last } };
}

/** What a list shows; of one whose items can be picked, the line of the one that is, and how many there are. */
interface ShownList {
  readonly title: string;
  readonly lines: readonly Line[];
  readonly picked?: number;
  readonly items?: number;
}

function shown(state: State, screen: ListedScreen, size: Size, theme: Theme): ShownList {
  const list = listOf(state, screen, size.columns - 4, theme);
  const lines = allLines(list);
  const nothing = [line('No match. Backspace takes back a letter, Esc all of them.', 'warn')];
  if (lines.length === 0 && screen.find !== '') return { title: list.title, lines: nothing };
  if (!list.sections.some(({ about }) => about !== undefined)) return { title: list.title, lines };
  return { title: list.title, ...withPicked(list, lines, screen.cursor, theme) };
}

/** The lines of a list whose items can be picked, with the mark before the one that is: there the cursor counts items, not lines. */
function withPicked(list: Listed, lines: readonly Line[], cursor: number, theme: Theme) {
  const starts = itemStarts(list);
  const picked = starts[Math.min(cursor, starts.length - 1)] ?? 0;
  const marked = lines.map((each, index): Line => {
    const [first, ...rest] = each;
    if (index !== picked || first === undefined) return each;
    return [{ text: theme.signs.cursor, tone: 'accent' }, { ...first, text: first.text.slice(1) }, ...rest];
  });
  return { lines: marked, picked, items: starts.length };
}

/** The line that each item of a list begins on. */
function itemStarts(list: Listed): readonly number[] {
  const starts: number[] = [];
  let at = 0;
  for (const { head, items } of list.sections) {
    at += head.length;
    for (const item of items) {
      starts.push(at);
      at += item.length;
    }
  }
  return starts;
}

function furthest(lines: readonly Line[], size: Size): number {
  return Math.max(0, lines.length - (size.rows - AROUND));
}
