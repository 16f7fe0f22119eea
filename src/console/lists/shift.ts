import { noteDeed } from '../../acts/crew-note.ts';
import { recordLine } from '../../acts/shift-line.ts';
import { ok } from '../../finding/finding.ts';
import { headerOf } from '../../hole/hole.ts';
import { localTime } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { entryLine } from '../../shift/record-line.ts';
import { shiftHeaderOf, shiftThings } from '../../shift/shift.ts';
import { plannedEnd, plannedStart, shiftsOf } from '../../shift/shift-end.ts';
import { shiftAt } from '../../shift/shift-name.ts';
import { recordItems } from '../../standing/unfinished.ts';
import { draftOf } from '../draft.ts';
import { holeInHand, type State } from '../state.ts';
import {
  keptIfRefused,
  type Step,
  saying,
  sayingFinding,
  still,
  submitting,
  submittingResult,
  type World,
} from '../step.ts';
import type { KeyEvent } from '../terminal/input/keys.ts';
import { openOver } from './lists.ts';
import { plodTyped } from './plod.ts';
import { latestStored, openingLine, shiftList, shiftShown } from './shift-list.ts';

/** The switcher: asks what the rig does now. Its own key picks an activity. */
export function askActivity(state: State): Step {
  return still({ ...state, prompt: { kind: 'activity', cursor: 0 }, message: undefined });
}

/** A key in the switcher: the activity that it picks starts now. */
export function pickActivity(state: State, event: KeyEvent, world: World): Step | undefined {
  if (event.kind !== 'text') return undefined;
  const picked = state.project.settings.shift.activities.find((each) => each.key === event.text);
  if (picked === undefined) return still(saying(state, `No activity has the key ${event.text}.`, 'warn'));
  return keptIfRefused(state, record({ ...state, prompt: undefined }, picked.code, world));
}

/** Enter in the switcher: the activity under the cursor starts now, and the one before it ends. */
export function startActivity(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'activity') return still(state);
  const activity = state.project.settings.shift.activities[prompt.cursor];
  return activity === undefined
    ? still(state)
    : record({ ...state, prompt: undefined }, activity.code, world);
}

/** What `;activity` says: `;activity breakdown 14:20 hydraulic hose`. `begin` and `end` alone offer the hour of the settings. */
export function activityTyped(state: State, text: string, world: World): Step {
  const typed = text.trim();
  if (typed === 'begin' || typed === 'end') return askHour(state, typed);
  if (typed === '?') return askLine(state, '');
  return record(state, typed, world);
}

/** Asks for one line of the shift record, some of it typed. */
function askLine(state: State, text: string, whole?: true, open: readonly string[] = []): Step {
  const shift = state.screen.name === 'shift' ? state.screen.shift : undefined;
  const prompt = {
    kind: 'shift line',
    draft: draftOf(text),
    ...(shift === undefined ? {} : { shift }),
    ...(whole === undefined ? {} : { whole }),
    ...(open.length === 0 ? {} : { open }),
  } as const;
  return still({ ...state, prompt, message: undefined });
}

/** Asks for the number of a sheet, and who handed it over. */
export function askPlod(state: State): Step {
  return askLine(state, 'plod ');
}

/** Asks when the shift begins or ends, the hour of its settings offered. */
export function askHour(state: State, which: 'begin' | 'end'): Step {
  const { shifts } = state.project.shift;
  if (which === 'begin') {
    const day = shiftAt(shifts, state.now);
    const times = shifts.find((each) => each.name === day?.name);
    const hour =
      day === undefined || times === undefined ? state.now : plannedStart(day.date, times, state.now);
    return askLine(state, `begin ${localTime(hour)}`);
  }
  const shift = shiftShown(state) ?? latestStored(state);
  if (shift === undefined) return still(saying(state, 'No shift has begun that could end.', 'warn'));
  const planned = plannedEnd(shift, shifts, state.now);
  const isPast = Date.parse(planned) <= Date.parse(state.now) + 300_000;
  return askLine(state, `end ${localTime(isPast ? planned : state.now)}`, undefined, openOf(state, shift));
}

/** What the record of a shift leaves open that is about to be ended. */
function openOf(state: State, shift: Document): readonly string[] {
  const { project, now } = state;
  return recordItems({ project, documents: [...state.documents.values()], now }, shift);
}

/** A line that ends a shift whose record leaves something open: what that is is shown once, with the line. */
function askedFirst(state: State, shift: Document | undefined, text: string): Step | undefined {
  const isShown = state.prompt?.kind === 'shift line' && state.prompt.open !== undefined;
  if (isShown || shift === undefined || !/^end\b/i.test(text)) return undefined;
  const open = openOf(state, shift);
  return open.length === 0 ? undefined : askLine(state, text, undefined, open);
}

/** Enter on a line of the shift record. A line that can't be recorded stays, with what is wrong. */
export function answerLine(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'shift line') return still(state);
  const text = prompt.draft.text.trim();
  if (text === '' || text === '?') return still({ ...state, prompt: undefined, message: undefined });
  return record(state, text, world, prompt.shift, prompt.whole);
}

function record(state: State, text: string, world: World, shiftId?: string, whole?: true): Step {
  const hole = holeInHand(state);
  const shift = shiftId === undefined ? undefined : state.documents.get(`shift/${shiftId}`);
  const about = shift ?? shiftShown(state) ?? latestStored(state);
  const plod = about === undefined ? undefined : plodTyped(state, about, text, world);
  if (plod !== undefined) return plod;
  const note =
    about === undefined
      ? undefined
      : noteDeed(state.project, [...state.documents.values()], about, text, {
          newId: world.newId,
          at: world.now,
          by: state.person,
        });
  if (note !== undefined) {
    const document = note.ok ? note.value.document : { kind: 'shift', id: '' };
    const changed = note.ok ? ok(note.value.made) : note;
    return submittingResult(state, document, changed, { ...state, prompt: undefined });
  }
  const first = askedFirst(state, about, text);
  if (first !== undefined) return first;
  const made = recordLine(
    state.project,
    state.documents.values(),
    { rig: state.rig, text, hole: hole?.id, shift, whole: whole === true },
    { newId: world.newId, at: world.now, by: state.person },
  );
  if (made.ok) return submitting({ ...state, prompt: undefined }, made.value.document, made.value.made);
  const [finding] = made.findings;
  return still(finding === undefined ? state : sayingFinding(state, finding));
}

/** Enter on the shift record: the entry in hand as a line, to be amended. */
export function amendInHand(state: State): Step {
  const shift = shiftShown(state);
  const entry = shift === undefined ? undefined : entryInHand(state, shift);
  if (entry === undefined)
    return still(saying(state, 'Pick an activity with the arrows, or type what happened.', 'warn'));
  const name = (id: string): string => {
    const hole = state.documents.get(`hole/${id}`);
    return hole === undefined ? id : headerOf(hole).name;
  };
  return askLine(state, entryLine(entry, name), true);
}

function entryInHand(state: State, shift: Document) {
  const { screen } = state;
  if (screen.name !== 'shift') return undefined;
  const about = shiftList(state, 100).sections.flatMap((section) => section.about ?? [])[screen.cursor];
  return shiftThings(shift, 'activities').find(([id]) => id === about)?.[1];
}

/** The shift record over whatever is in hand, at the line that matters. */
export function openShiftRecord(state: State): Step {
  const [opened, effects] = openOver('shift')(state);
  return [atOpeningLine(opened), effects];
}

/** The shift record at the note for the next crew. */
export function openNote(state: State): Step {
  const [opened, effects] = openShiftRecord(state);
  const { screen } = opened;
  if (screen.name !== 'shift') return [opened, effects];
  return [{ ...opened, screen: { ...screen, view: 'note', cursor: 0 } }, effects];
}

const atOpeningLine = (state: State): State =>
  state.screen.name === 'shift'
    ? { ...state, screen: { ...state.screen, cursor: openingLine(state) } }
    : state;

/** A character on the shift record begins a line of it. */
export function typeOnShift(state: State, event: KeyEvent): Step | undefined {
  return state.screen.name === 'shift' && event.kind === 'text' ? askLine(state, event.text) : undefined;
}

/** From the record of a shift to its plod and the query list, to the note for the next crew, to that of the swing, and back. */
export function turnOver(state: State): Step {
  const { screen } = state;
  if (screen.name !== 'shift') return still(state);
  const { view, ...record } = screen;
  const next = ({ record: 'plod', plod: 'note', note: 'swing', swing: undefined } as const)[view ?? 'record'];
  const turned = next === undefined ? record : ({ ...record, view: next } as const);
  const shown = { ...state, screen: { ...turned, cursor: 0 }, message: undefined };
  return still(next === undefined ? atOpeningLine(shown) : shown);
}

/** The shift of this rig before the one shown, or after it. */
export function stepShift(state: State, by: -1 | 1): Step {
  const { screen } = state;
  const shown = shiftShown(state);
  if (screen.name !== 'shift' || shown === undefined) return still(state);
  const all = shiftsOf(state.documents.values(), shiftHeaderOf(shown).rig);
  const next = all[all.findIndex((each) => each.id === shown.id) + by];
  if (next === undefined)
    return still(saying(state, by < 0 ? 'That is the first shift.' : 'That is the latest shift.'));
  const gone = { ...state, screen: { ...screen, shift: next.id, cursor: 0 }, message: undefined };
  return still(screen.view === undefined ? atOpeningLine(gone) : gone);
}
