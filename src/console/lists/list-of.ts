import type { Document } from '../../record/document.ts';
import { adviceList } from '../log/advice-list.ts';
import { codesList } from '../log/codes-list.ts';
import { rowList } from '../log/row-list.ts';
import { bagsList } from '../samples/bags-list.ts';
import { dispatchList } from '../samples/dispatch-list.ts';
import { resultsList } from '../samples/results-list.ts';
import { holeInHand, type ListOver, type ListScreen, type Screen, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { checkList } from './check-list.ts';
import { cursorHelp, pickedItem } from './cursor-help.ts';
import { foundList } from './found-list.ts';
import { helpList } from './help-list.ts';
import { earlierList, historyList } from './history-list.ts';
import { found, type Listed, oneSection } from './listed.ts';
import { packedList } from './packed-list.ts';
import { questionsList } from './questions-list.ts';
import { receivedList } from './receive.ts';
import { shiftList } from './shift-list.ts';

/** A screen that is a list: its lines scroll, and what is typed searches them. */
export type ListedScreen = Extract<Screen, { readonly find: string }>;

/** True of a screen that is a list. */
export function isListed(screen: Screen): screen is ListedScreen {
  return 'find' in screen;
}

/** Lists of the hole in hand. */
const OF_HOLE: {
  readonly [Name in ListScreen]: (
    state: State,
    hole: Document,
    screen: ListedScreen,
    width: number,
    theme: Theme,
  ) => Listed;
} = {
  bags: (state, hole, _screen, width, theme) => bagsList(state, hole, width, theme),
  advice: (state, hole, _screen, width, theme) => adviceList(state, hole, width, theme),
  history: ({ project }, hole, { after }, width) =>
    after === undefined
      ? historyList(project.schema, hole, width)
      : earlierList(project.schema, hole, after, width),
  codes: (state, _hole, _screen, width) => codesList(state, width),
  row: (state, hole, { from }, width) => rowList(state, hole, from, width),
};

/** Lists that need no hole. */
const OVER: { readonly [Name in ListOver]: (state: State, width: number) => Listed } = {
  shift: shiftList,
  found: foundList,
  dispatch: dispatchList,
  results: resultsList,
  packed: packedList,
  received: receivedList,
  questions: questionsList,
  check: checkList,
};

/** True of a list of the hole in hand. */
export function isOfHole(
  screen: ListedScreen,
): screen is Extract<ListedScreen, { readonly name: ListScreen }> {
  return screen.name in OF_HOLE;
}

/** What a list screen shows of what is searched for, all of it; the screen cuts it to its window. `width` in cells. */
export function listOf(state: State, screen: ListedScreen, width: number, theme: Theme): Listed {
  if (screen.name === 'help') return found(helpOn(state, screen.asked, width, theme), screen.find);
  if (!isOfHole(screen)) return found(OVER[screen.name](state, width), screen.find);
  const hole = holeInHand(state);
  if (hole === undefined) return oneSection('', []);
  return found(OF_HOLE[screen.name](state, hole, screen, width, theme), screen.find);
}

/** The help: what the cursor stood on where it was asked, under what offsider is not and above all keys and commands. */
function helpOn(
  state: State,
  asked: Extract<Screen, { readonly name: 'help' }>['asked'],
  width: number,
  theme: Theme,
): Listed {
  const under = { ...state, screen: asked };
  const list = helpList(under, asked.name, width);
  const picked = isListed(asked) ? pickedItem(listOf(under, asked, width, theme), asked.cursor) : undefined;
  const here = picked ?? cursorHelp(under, width);
  return here === undefined
    ? list
    : { ...list, sections: [...list.sections.slice(0, 1), here, ...list.sections.slice(1)] };
}
