import type { Received } from '../desk/arriving/receive-files.ts';
import type { Packed } from '../desk/packing/pack.ts';
import type { GpsText } from '../files/read-gps.ts';
import type { Finding } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Id } from '../record/document.ts';
import { answerOrAsk, isSureAsked, sureKey } from './deliberate.ts';
import { type Draft, EMPTY_DRAFT, edited } from './draft.ts';
import { bindingFor, bindingForWord, lineWords } from './keys.ts';
import { typeInLineUp } from './line-up/line-up.ts';
import { gpsRead } from './line-up/line-up-gps.ts';
import { movedElsewhere } from './lists/elsewhere.ts';
import { healthCame } from './lists/leaving.ts';
import { typeInList } from './lists/lists.ts';
import { typeOnShift } from './lists/shift.ts';
import { completeLine, completeWith } from './log/complete.ts';
import { enterLine, repeatHeld } from './log/entry.ts';
import { formKey } from './log/fields.ts';
import { typeReading } from './log/readings.ts';
import type { Prompt } from './prompt.ts';
import { leavePrompt, promptKey } from './prompts.ts';
import { scanIntoDispatch } from './samples/dispatch.ts';
import { scanBag } from './samples/scan.ts';
import { type Health, holeInHand, type Message, rowLeft, type State } from './state.ts';
import { keptIfRefused, type Step, saying, sayingFinding, still, type World } from './step.ts';
import { chordOf, type KeyEvent, keyPress } from './terminal/input/keys.ts';

/** What can happen to the console: a key, a bag scanned in one burst, the clock, the disk's answer, what is found of the files. */
export type Happening =
  | { readonly kind: 'key'; readonly event: KeyEvent }
  | { readonly kind: 'scan'; readonly number: string }
  | { readonly kind: 'read over' }
  | { readonly kind: 'minute'; readonly now: Stamp }
  | { readonly kind: 'health'; readonly health: Health }
  | { readonly kind: 'found'; readonly found: readonly Finding[] }
  | { readonly kind: 'packed'; readonly packed: Packed }
  | {
      readonly kind: 'received';
      readonly received: readonly Received[];
      readonly documents: State['documents'];
    }
  | { readonly kind: 'gps read'; readonly hole: Id; readonly read: GpsText }
  | { readonly kind: 'code added'; readonly project: Project; readonly text: string }
  | { readonly kind: 'code refused'; readonly finding: Finding | undefined }
  /** What came of writing everything to another folder. */
  | ({ readonly kind: 'moved'; readonly moved: boolean } & Pick<Message, 'text' | 'tone'>)
  | ({ readonly kind: 'said' } & Pick<Message, 'text' | 'tone'>);

/** The console's one rule: a state and a happening give the next state, and what is to be done. Touches nothing. */
export function reduce(state: State, happening: Happening, world: World): Step {
  switch (happening.kind) {
    case 'key':
      return key(state, happening.event, world);
    case 'scan':
      return scan(state, happening.number);
    case 'read over':
      return still(state.holding ? { ...state, holding: false } : state);
    case 'minute':
      return still({ ...state, now: happening.now });
    case 'health':
      return healthCame(state, happening.health);
    case 'found':
      return still(foundCame(state, happening.found));
    case 'packed':
      return still({ ...state, packed: happening.packed });
    case 'received':
      return still({ ...state, received: happening.received, documents: happening.documents });
    case 'gps read':
      return gpsRead(state, happening.hole, happening.read);
    case 'code added':
      return still(withCode(state, happening.project, happening.text));
    case 'code refused':
      return still(codeRefused(state, happening.finding));
    case 'moved':
      return still(movedElsewhere(state, happening.moved, happening.text, happening.tone));
    case 'said':
      return still(saying(state, happening.text, happening.tone));
  }
}

/**
 * Something more was found of the files while the console is open. What is about the hole in hand is said at once, where the person looks: the list
 * of what was found is read at opening and seldom later.
 */
function foundCame(state: State, found: readonly Finding[]): State {
  const hole = holeInHand(state)?.id;
  const known = new Set(state.found);
  const here = found.find(
    (each) =>
      !known.has(each) &&
      each.severity !== 'note' &&
      (each.place.hole === hole || each.place.file === `holes/${hole}.json`),
  );
  const next = { ...state, found };
  return hole === undefined || here === undefined
    ? next
    : saying(next, `${hole}: ${here.problem}. Ctrl-F shows what to do.`, 'alert');
}

/** A code that was added or changed stands from here on; the question that added it is over. */
function withCode(state: State, project: Project, text: string): State {
  const prompt = isAboutCode(state.prompt) ? undefined : state.prompt;
  return saying({ ...state, project, prompt }, text, 'good');
}

function isAboutCode(
  prompt: Prompt | undefined,
): prompt is Extract<Prompt, { readonly kind: 'new code' | 'change code' | 'change field' }> {
  return prompt?.kind === 'new code' || prompt?.kind === 'change code' || prompt?.kind === 'change field';
}

function codeRefused(state: State, finding: Finding | undefined): State {
  const { prompt } = state;
  const open: State = isAboutCode(prompt) ? { ...state, prompt: { ...prompt, adding: false } } : state;
  return finding === undefined ? open : sayingFinding(open, finding);
}

function key(state: State, event: KeyEvent, world: World): Step {
  if (state.holding) return still({ ...state, held: [...state.held, event] });
  if (state.prompt !== undefined) return inPrompt(state, event, world);
  const repeated = repeatHeld(state, event);
  if (repeated !== undefined) return still(repeated);
  if (state.screen.name === 'fields' && !isFunctionKey(event)) return formKey(state, event, world);
  const bound = bindingFor(state.screen.name, event.kind === 'text' ? event.text : (chordOf(event) ?? ''));
  if (bound !== undefined && !typesHere(state, event)) {
    const hindrance = bound.hindered?.(state);
    if (hindrance !== undefined) return still(saying(state, `${bound.name}: ${hindrance}.`, 'warn'));
    if (state.screen.name === 'log' && bound.act === enterLine) {
      const worded = byWord(state, world);
      if (worded !== undefined) return worded;
    }
    if (bound.act === completeLine && state.draft.text.startsWith(';'))
      return completeWith(state, lineWords());
    return leavingRow(state, bound.act(state, world));
  }
  if (state.screen.name === 'line-up') return typeInLineUp(state, event);
  if (state.screen.name === 'readings') return typeReading(state, event);
  return state.screen.name === 'log'
    ? typeInLine(state, event)
    : (typeOnShift(state, event) ?? typeInList(state, event));
}

/** A screen that doesn't come back to the row that was open leaves it: the line that waited is at the logged head again. */
function leavingRow(before: State, [after, effects]: Step): Step {
  const stays = after.screen.name === 'log' || rowLeft(after.screen) !== 'head';
  return stays || rowLeft(before.screen) === 'head'
    ? [after, effects]
    : [{ ...after, draft: before.parked, parked: EMPTY_DRAFT }, effects];
}

/** Keys of the form that are the whole console's: all function keys but the form's own, and the switcher of activities. */
function isFunctionKey(event: KeyEvent): boolean {
  const chord = chordOf(event);
  return chord === 'ctrl-a' || (chord !== undefined && /^f\d+$/.test(chord) && chord !== 'f4');
}

/** Where a line is typed a character is typed, never a command key; Ctrl-U empties a line that has something in it. */
function typesHere(state: State, event: KeyEvent): boolean {
  const typed = lineTyped(state);
  return typed !== undefined && (event.kind === 'text' || (chordOf(event) === 'ctrl-u' && typed.text !== ''));
}

/** What is typed on the line of the screen in hand; undefined where it has none. */
function lineTyped({ screen, draft, lineUps }: State): Draft | undefined {
  if (screen.name === 'log') return draft;
  if (screen.name === 'line-up') return lineUps.get(screen.hole)?.typed ?? EMPTY_DRAFT;
  return screen.name === 'readings' ? screen.typed : undefined;
}

/** What the line leads to where it is the word of a binding, said behind `;`; undefined where it is none. */
function byWord(state: State, world: World): Step | undefined {
  const [, word, text] = /^;([a-z-]+)(?: +(.*))?$/.exec(state.draft.text.trimEnd()) ?? [];
  if (word === undefined || ['u', 'r', 'rod'].includes(word)) return undefined;
  const bound = bindingForWord(word);
  const emptied: State = { ...state, draft: EMPTY_DRAFT };
  if (text === undefined) {
    const hindrance = bound?.hindered?.(state);
    if (bound === undefined) return undefined;
    if (hindrance !== undefined) return still(saying(state, `${bound.name}: ${hindrance}.`, 'warn'));
    return keptIfRefused(state, bound.act(emptied, world));
  }
  return bound?.told === undefined ? undefined : keptIfRefused(state, bound.told(emptied, text, world));
}

function typeInLine(state: State, event: KeyEvent): Step {
  const draft = edited(state.draft, event);
  return still(
    draft === undefined || draft === state.draft ? state : { ...state, draft, message: undefined },
  );
}

function inPrompt(state: State, event: KeyEvent, world: World): Step {
  const chord = chordOf(event);
  // A scanned bag asks nothing: what is typed on goes to the line, and no key is lost.
  if (state.prompt?.kind === 'scanned' && chord !== 'escape' && chord !== 'enter') {
    const closed: State = { ...state, prompt: undefined };
    // Keys that change something at once (undo, redo) only close it: its foot says that nothing is changed.
    return chord?.startsWith('ctrl-') === true ? still(closed) : key(closed, event, world);
  }
  if (isSureAsked(state.prompt)) return sureKey(state, event, world);
  if (chord === 'escape') return leavePrompt(state);
  if (chord === 'enter') return answerOrAsk(state, world);
  if (chord === 'ctrl-c')
    return still(saying(state, 'Escape leaves this question; everything shown as saved is safe.'));
  return promptKey(state, event, world);
}

/**
 * A bag number that came in one burst with its Enter. Behind words that wait for a value it is that value: a scanner fills it in, and a hand that
 * typed while the program was held up is not taken for a scanner.
 */
function scan(state: State, number: string): Step {
  if (state.prompt?.kind === 'dispatch') return scanIntoDispatch(state, number);
  if (waitsForValue(state))
    return [
      state,
      [
        {
          do: 'replay',
          events: [...[...number].map((text) => ({ kind: 'text', text }) as const), keyPress('enter')],
        },
      ],
    ];
  const hole = holeInHand(state);
  return hole === undefined
    ? still(saying(state, `Bag ${number}: open its hole first.`, 'warn'))
    : scanBag(state, hole, number);
}

/** True behind a `;` word begun on the line, and behind what is typed in a question. `;scan 46` compares, and a rod check reads, as they are. */
function waitsForValue({ prompt, draft }: State): boolean {
  if (prompt === undefined || prompt.kind === 'scanned') return /^;(?!scan +\S)/.test(draft.text);
  if (prompt.kind === 'rod' || prompt.kind === 'mismatch') return false;
  return 'draft' in prompt && prompt.draft !== undefined && prompt.draft.text !== '';
}
