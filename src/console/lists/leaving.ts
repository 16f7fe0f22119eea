import { formatMinutes, localTime } from '../../quantity/stamp.ts';
import { currentActivity } from '../../shift/current.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { openShift } from '../../standing/activity.ts';
import { recordItems } from '../../standing/unfinished.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { Health, State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import { askElsewhere } from './elsewhere.ts';
import { askHour } from './shift.ts';

/** The word that leaves with rows not saved: typed in full, so that no habit and no key held down does it. */
export const LEAVE_WORD = 'leave';

/**
 * Leaves, at once where everything is saved and no activity goes on; else asks. Where rows are not saved it leaves by itself once the disk has
 * taken them.
 */
export function leave(state: State): Step {
  const open = state.health.pending > 0 ? [] : openOnLeaving(state);
  const asks = {
    ...state,
    prompt: { kind: 'leaving', draft: EMPTY_DRAFT, open },
    message: undefined,
  } as const;
  return open.length > 0 ? still(asks) : leaveOnceSaved(state);
}

function leaveOnceSaved(state: State): Step {
  if (state.health.pending === 0) return [{ ...state, prompt: undefined }, [{ do: 'leave' }]];
  return still({ ...state, prompt: { kind: 'leaving', draft: EMPTY_DRAFT, open: [] }, message: undefined });
}

/** What the rig's shift leaves open where an activity still goes on: nothing is asked where the rig does nothing. */
function openOnLeaving(state: State): readonly string[] {
  const { project, rig, now } = state;
  const documents = [...state.documents.values()];
  const shift = openShift(project, documents, rig, now);
  const going = shift === undefined ? undefined : currentActivity(shift, now);
  if (shift === undefined || going === undefined) return [];
  const label = activityNamed(project.shift, going.activity)?.label ?? going.activity;
  return [
    `${label} goes on since ${localTime(going.startedAt)}, ${formatMinutes(going.minutes)} h: the shift of ${rig} is not ended.`,
    ...recordItems({ project, documents, now }, shift),
  ];
}

/** What was typed where someone wants to leave with rows not saved. */
export function answerLeaving(state: State, text: string): Step {
  const word = text.trim().toLowerCase();
  const isOpen = state.prompt?.kind === 'leaving' && state.prompt.open.length > 0;
  if (isOpen && word === '') return leaveOnceSaved(state);
  if (isOpen && word === 'end') return askHour({ ...state, prompt: undefined }, 'end');
  if (word === LEAVE_WORD) return [state, [{ do: 'leave' }]];
  if (word === ';elsewhere' || word === 'elsewhere') return askElsewhere(state);
  return still(
    saying(
      state,
      isOpen
        ? 'Enter leaves; the word end ends the shift first; Esc goes back.'
        : `Esc goes back to the log. The word ${LEAVE_WORD}, typed in full, leaves without saving.`,
      'warn',
    ),
  );
}

/** The state once the disk has answered; someone who waits to leave does so when nothing is left to save. */
export function healthCame(state: State, health: Health): Step {
  const after = { ...state, health };
  if (state.prompt?.kind !== 'leaving' || state.prompt.open.length > 0 || health.pending > 0)
    return still(after);
  return [{ ...after, prompt: undefined }, [{ do: 'leave' }]];
}

const MOST_NAMED = 6;

/** The words of the question: how many are not saved, which, why, and the three ways on. */
export function leavingWords(
  { health }: State,
  open: readonly string[],
): readonly [title: string, ...words: readonly string[]] {
  if (open.length > 0)
    return [
      'the shift goes on',
      ...open,
      'Enter leaves it so, for whoever goes on. The word end ends the shift first. Esc goes back.',
    ];
  const { pending, unsafe } = health;
  const count = pending === 1 ? 'One edit is' : `${pending} edits are`;
  const named = unsafe?.what ?? [];
  const more = named.length > MOST_NAMED ? `; and ${named.length - MOST_NAMED} more` : '';
  const which = named.length === 0 ? [] : [`${named.slice(0, MOST_NAMED).join('; ')}${more}.`];
  const wait =
    unsafe?.isForGood === true
      ? []
      : [
          `Wait here: it closes once ${pending === 1 ? 'it is' : 'they are'} saved. Esc goes back to the log.`,
        ];
  return [
    'not saved yet',
    `${count} not saved${unsafe === undefined ? ', being saved' : `: ${unsafe.reason}`}.`,
    ...which,
    ...wait,
    `Or type ;elsewhere to go on in another folder, or the word ${LEAVE_WORD} to leave without saving:`,
  ];
}
