import type { Document } from '../../record/document.ts';
import { adviceList } from '../log/advice-list.ts';
import { codesList } from '../log/codes-list.ts';
import { rowList } from '../log/row-list.ts';
import { bagsList } from '../samples/bags-list.ts';
import { dispatchList } from '../samples/dispatch-list.ts';
import { resultsList } from '../samples/results-list.ts';
import { holeInHand, type ListOver, type Screen, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { cursorHelp, pickedItem } from './cursor-help.ts';
import { foundList } from './found-list.ts';
import { helpList } from './help-list.ts';
import { earlierList, historyList } from './history-list.ts';
import { found, type Listed, oneSection } from './listed.ts';
import { packedList } from './packed-list.ts';
import { questionsList } from './questions-list.ts';
import { shiftList } from './shift-list.ts';

/** A screen that is a list: its lines scroll, and what is typed searches them. */
export type ListedScreen = Extract<Screen, { readonly find: string }>;

/** True of a screen that is a list. */
export function isListed(screen: Screen): screen is ListedScreen {
  return 'find' in screen;
}

/** What a list screen shows of what is searched for, all of it; the screen cuts it to its window. `width` in cells. */
export function listOf(state: State, screen: ListedScreen, width: number, theme: Theme): Listed {
  const hole = holeInHand(state);
  if (screen.name === 'help') return found(helpOn(state, screen.asked, width, theme), screen.find);
  if (screen.name === 'dispatch') return found(dispatchList(state, width), screen.find);
  if (screen.name === 'results') return found(resultsList(state, width), screen.find);
  if (screen.name === 'packed') return found(packedList(state, width), screen.find);
  if (screen.name === 'questions') return found(questionsList(state, width), screen.find);
  if (screen.name === 'shift') return shiftList(state, width);
  if (screen.name === 'found') return found(foundList(state, width), screen.find);
  if (hole === undefined) return oneSection('', []);
  return found(holeList(state, hole, screen, width, theme), screen.find);
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

function holeList(
  state: State,
  hole: Document,
  screen: Exclude<ListedScreen, { readonly name: 'help' | ListOver }>,
  width: number,
  theme: Theme,
): Listed {
  switch (screen.name) {
    case 'bags':
      return bagsList(state, hole, width, theme);
    case 'advice':
      return adviceList(state, hole, width, theme);
    case 'history':
      return screen.after === undefined
        ? historyList(state.project.schema, hole, width)
        : earlierList(state.project.schema, hole, screen.after, width);
    case 'codes':
      return codesList(state, width);
    case 'row':
      return rowList(state, hole, screen.from, width);
  }
}
