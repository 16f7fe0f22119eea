import { undoneWords } from '../../acts/undone.ts';
import type { Desk } from '../../desk/desk.ts';
import { instantMs, localTime, type Stamp } from '../../quantity/stamp.ts';
import type { DocumentName, Edit } from '../../record/document.ts';
import type { Prompt } from '../prompt.ts';
import type { Shown } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { type Step, saying, still, type World } from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';
import type { Theme } from '../theme.ts';
import { line, wrap } from '../widgets/line.ts';

type UndoPrompt = Extract<Prompt, { readonly kind: 'undo' }>;

/** What takes minutes to type again: a whole sheet, a signature, a note that was handed over. */
const COSTLY = ['plods', 'signOffs', 'crewNotes'];
/** An undo is meant for what was just done. Older than this, the key was most likely pressed to clear a line that was empty already. */
const RECENT_MS = 20 * 60_000;

/** The question before an undo that would cost more than a line, or reaches further back than anyone remembers; undefined where it is done at once. */
export function undoAsked(
  state: State,
  { inHand, sure }: { readonly inHand: DocumentName | undefined; readonly sure?: true },
  desk: Desk,
): State | undefined {
  const edit = sure === true ? undefined : desk.undoable(inHand);
  if (edit === undefined || !isAskedFirst(edit, state.now)) return undefined;
  const what = `${undoneWords(edit, inHand)}, recorded at ${localTime(edit.at as Stamp)}`;
  return { ...state, prompt: { kind: 'undo', what, inHand }, message: undefined };
}

function isAskedFirst({ parts, at }: Edit, now: Stamp): boolean {
  const puts = parts
    .flatMap(({ changes }) => changes)
    .flatMap((each) => ('put' in each ? [each.put[0]] : []));
  return puts.some((table) => COSTLY.includes(table)) || instantMs(now) - Date.parse(at) > RECENT_MS;
}

export function undoShown(_state: State, { what }: UndoPrompt, width: number, _theme: Theme): Shown {
  return {
    title: 'undo',
    lines: wrap(`This would be taken back: ${what}.`, width),
    foot: [line('y takes it back. Any other key leaves it as it is.', 'faint')],
  };
}

/** y takes it back; any other key, the one that asked too, leaves it. */
export function undoKey(state: State, event: KeyEvent, _world: World, { inHand }: UndoPrompt): Step {
  if (event.kind !== 'text' || event.text !== 'y') return leaveUndo(state);
  return [{ ...state, prompt: undefined, message: undefined }, [{ do: 'undo', inHand, sure: true }]];
}

export function leaveUndo(state: State): Step {
  return still(saying({ ...state, prompt: undefined }, 'Nothing is undone.'));
}
