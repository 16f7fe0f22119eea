import { makingOf } from '../acts/making.ts';
import { otherOf, undoneWords } from '../acts/undone.ts';
import type { Received } from '../desk/arriving/receive-files.ts';
import type { LetGoDone } from '../desk/contract.ts';
import type { Desk, Moved, Submitted } from '../desk/desk.ts';
import type { LoadedProject } from '../desk/load-project.ts';
import type { Packed } from '../desk/packing/pack.ts';
import type { PackAsked } from '../desk/packing/pack-named.ts';
import type { GpsText } from '../files/read-gps.ts';
import type { Result } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import type { CodeChange } from '../schema/change/edit-code.ts';
import type { FieldChange } from '../schema/change/edit-field.ts';
import type { CodeEntry } from '../schema/read/file-entries.ts';
import { undoAsked } from './lists/undo-asked.ts';
import type { Happening } from './reduce.ts';
import type { State } from './state.ts';
import { type Effect, saying } from './step.ts';

/** What performing effects needs from outside the desk. */
export interface Host {
  readonly desk: Desk;
  readonly leave: () => void;
  readonly suspend: () => void;
  readonly repaint: () => void;
  /** Writes a code met on the rig to logging.json, and gives the project that has it. */
  readonly addCode: (list: string, entry: CodeEntry) => Promise<Result<LoadedProject>>;
  /** The folder that a person means by what was typed. */
  readonly folderTyped: (text: string) => string;
  /** Reads the sentences of a GPS from a file or a device. */
  readonly readGps: (path: string) => Promise<GpsText>;
  /** Changes a code in logging.json, and gives the project that has it. */
  readonly changeField: (field: string, change: FieldChange) => Promise<Result<LoadedProject>>;
  readonly changeCode: (list: string, code: string, change: CodeChange) => Promise<Result<LoadedProject>>;
  /** Packs documents for camp by name, all if none is given. */
  readonly pack: (project: Project, asked: PackAsked) => Promise<Packed>;
  /** Takes in what arrived in a file. */
  readonly receive: (project: Project, file: string, mayClear: boolean) => Promise<readonly Received[]>;
  /** What comes of an effect that takes its time. */
  readonly happen: (happening: Happening) => void;
}

/** Does one effect. Edits stand in memory at once: the state that comes back holds the documents after it. */
export function perform(state: State, effect: Effect, host: Host): State {
  const { desk } = host;
  switch (effect.do) {
    case 'submit':
      return afterSubmit(state, desk, desk.submit({ what: effect.what, parts: effect.parts }));
    case 'undo':
    case 'redo': {
      const asked = effect.do === 'undo' ? undoAsked(state, effect, desk) : undefined;
      if (asked !== undefined) return asked;
      const done = effect.do === 'undo' ? desk.undo(effect.inHand) : desk.redo();
      if (!done.ok)
        return saying(state, `${effect.do === 'undo' ? 'Undo' : 'Redo'}: ${done.problem}`, 'warn');
      const words =
        effect.do === 'undo'
          ? `Undone: ${undoneWords(done.edit, effect.inHand)}. Ctrl-r does it again.`
          : `Done again: ${otherOf(done.edit, effect.inHand)}.`;
      return afterSubmit(saying(state, words, 'good'), desk, done);
    }
    case 'leave':
      host.leave();
      return state;
    case 'suspend':
      host.suspend();
      return state;
    case 'repaint':
      host.repaint();
      return state;
    case 'add code':
      void host
        .addCode(effect.list, effect.entry)
        .then((added) => host.happen(afterAdding(effect.entry, added)));
      return state;
    case 'change code':
      void host
        .changeCode(effect.list, effect.code, effect.change)
        .then((changed) => host.happen(afterChanging(effect.code, changed)));
      return state;
    case 'change field':
      void host
        .changeField(effect.field, effect.change)
        .then((changed) => host.happen(afterChanging(effect.field, changed)));
      return state;
    case 'pack':
      void host.pack(state.project, effect.asked).then((packed) => host.happen({ kind: 'packed', packed }));
      return state;
    case 'receive':
      void host
        .receive(state.project, host.folderTyped(effect.file), effect.mayClear)
        .then((received) => host.happen({ kind: 'received', received, documents: desk.documents() }));
      return state;
    case 'elsewhere':
      void desk
        .moveTo(host.folderTyped(effect.folder))
        .then((moved) => host.happen(afterMoving(effect.folder, moved)));
      return state;
    case 'restore': {
      const restored = desk.restore(effect.document, makingOf(state.project, effect.document, desk.now()));
      if (!restored.ok) return saying(state, `Not restored: ${restored.problem}`, 'alert');
      const words = `${effect.document.id} is back, ${restored.edit.what}. Look at it before you go on logging.`;
      return afterSubmit(saying(state, words, 'good'), desk, restored);
    }
    case 'let go':
      void desk
        .letGo(effect.document, effect.why)
        .then((done) => host.happen(afterLettingGo(effect.document.id, done)));
      return state;
    case 'read gps':
      void host
        .readGps(effect.path)
        .then((read) => host.happen({ kind: 'gps read', hole: effect.hole, read }));
      return state;
    case 'replay':
      return state;
  }
}

function afterAdding({ code, label, pair }: CodeEntry, added: Result<LoadedProject>): Happening {
  if (!added.ok) return { kind: 'code refused', finding: added.findings[0] };
  const typed = typeof pair === 'string' ? pair : code;
  const text = `${code} ${label ?? ''} is in the list, typed ${typed}. It is provisional: the letter to camp lists it.`;
  return { kind: 'code added', project: added.value.project, text };
}

function afterChanging(code: string, changed: Result<LoadedProject>): Happening {
  return changed.ok
    ? { kind: 'code added', project: changed.value.project, text: `${code} is changed in logging.json.` }
    : { kind: 'code refused', finding: changed.findings[0] };
}

function afterMoving(folder: string, moved: Moved): Happening {
  if (!moved.ok)
    return {
      kind: 'moved',
      moved: false,
      text: `Not moved: ${moved.problem}. Give another folder (;elsewhere).`,
      tone: 'alert',
    };
  const { length } = moved.left;
  if (length === 0)
    return { kind: 'moved', moved: true, text: `All is in ${folder}; work goes on there.`, tone: 'good' };
  const what = length === 1 ? 'One thing was' : `${length} things were`;
  return {
    kind: 'moved',
    moved: true,
    text: `Work goes on in ${folder}. ${what} not taken along: Ctrl-F names ${length === 1 ? 'it' : 'them'}.`,
    tone: 'warn',
  };
}

function afterLettingGo(id: string, done: LetGoDone): Happening {
  return done.ok
    ? {
        kind: 'said',
        text:
          done.kept === undefined
            ? `${id}: work goes on from this copy; what was later is given up.`
            : `${id} is given up. What the journal had of it is in ${done.kept}.`,
        tone: 'good',
      }
    : { kind: 'said', text: `Not given up: ${done.problem}.`, tone: 'alert' };
}

function afterSubmit(state: State, desk: Desk, submitted: Submitted): State {
  if (!submitted.ok) return saying(state, `Not done: ${submitted.problem}`, 'alert');
  return {
    ...state,
    documents: desk.documents(),
    health: { ...state.health, pending: desk.health().unsafeEdits },
  };
}
