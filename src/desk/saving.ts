import { lineFault, type WorkLine } from '../files/journal-line.ts';
import { MISSING } from '../files/read-found.ts';
import { type Deed, type Document, type DocumentName, documentKey, type Edit } from '../record/document.ts';
import type { EditRequest, Received, Submitted } from './contract.ts';
import type { Saved } from './health.ts';
import { linesOfMissing, noLongerMissing } from './missing-lines.ts';
import { asWritten, prepare } from './prepare.ts';
import { goPast, healthOf, newId, type State, tell } from './state.ts';
import { takeIn, takeInMissing } from './take-in.ts';
import { afterEdit, type Reversal, repetitionOfLast, reversalOfLast } from './undo.ts';

/** Applies an edit in memory and sends it to the journal. */
export function submit(state: State, request: EditRequest): Submitted {
  const refusal = whyNot(state);
  if (refusal !== undefined) return { ok: false, problem: refusal };
  return submitEdit(
    state,
    asWritten({ edit: newId(state), at: state.needs.now(), by: state.needs.person, ...request }),
  );
}

/** The same with an edit that has its id, time and person already. */
export function submitEdit(state: State, edit: Edit): Submitted {
  const prepared = prepare(edit, (key) => state.shelf.get(key)?.document, state.closed);
  if (!prepared.ok) return prepared;
  state.sitting = afterEdit(state.sitting, edit);
  const line = { ...prepared.line, seq: state.base.writer.nextSequence() };
  return { ok: true, edit, durable: send(state, line, prepared.documents) };
}

/** Why nothing can be written by this console, in words; undefined where it can. */
export function whyNot(state: State): string | undefined {
  if (state.ended) return 'the project is closed';
  const health = healthOf(state);
  return health.state === 'read only' ? (health.reason ?? 'this console can only read') : undefined;
}

/** Puts documents on the shelf as they are after a line, and the line into the journal. */
function send(state: State, line: WorkLine, documents: readonly Document[]): Promise<Saved> {
  for (const document of documents) {
    const key = documentKey(document);
    const held = state.shelf.get(key) ?? { durable: undefined, snapshotSequence: -1 };
    state.shelf.update(key, { ...held, document, lastSequence: line.seq });
  }
  return new Promise((resolve) => {
    state.base.writer.add({
      line,
      told: (problem) =>
        resolve(
          problem === undefined
            ? { ok: true, at: state.savedAt ?? state.needs.now() }
            : { ok: false, problem },
        ),
      landed: () => {
        land(state, documents);
      },
    });
    tell(state);
  });
}

function land(state: State, documents: readonly Document[]): void {
  for (const document of documents) {
    const key = documentKey(document);
    const held = state.shelf.get(key);
    if (held === undefined) continue;
    if (held.durable !== undefined && held.durable.tables.rods !== document.tables.rods) state.rodDone = true;
    state.shelf.update(key, { ...held, durable: document });
    state.toLookAt.add(key);
  }
  state.savedAt = state.needs.now();
  state.sinceSnapshot += 1;
}

/** Takes back this sitting's latest edit, of whatever document. */
export function undo(state: State, inHand?: DocumentName): Submitted {
  return reverse(state, reversalOfLast(state.sitting, inHand, lookUp(state)), 'undoes');
}

/** The edit that {@link undo} would take back now. */
export function undoable(state: State, inHand?: DocumentName): Edit | undefined {
  const found = reversalOfLast(state.sitting, inHand, lookUp(state));
  return found.ok ? found.of : undefined;
}

/** Does the latest undone edit again. */
export function redo(state: State): Submitted {
  return reverse(state, repetitionOfLast(state.sitting, lookUp(state)), 'redoes');
}

function lookUp(state: State): (name: DocumentName) => Document | undefined {
  return (name) => state.shelf.get(documentKey(name))?.document;
}

function reverse(state: State, found: Reversal, how: 'undoes' | 'redoes'): Submitted {
  if (!found.ok) return found;
  const { of, parts } = found;
  if (how === 'undoes')
    return submit(state, { what: `undo: ${of.what.replace(/^redo: /, '')}`, undoes: of.edit, parts });
  return submit(state, { what: of.what.replace(/^undo: /, 'redo: '), redoes: of.undoes ?? of.edit, parts });
}

/** Takes another copy of a document in, durably. */
export function receive(state: State, copy: Document): Received {
  const shut = state.closed.get(documentKey(copy));
  const refusal = whyNot(state) ?? (shut === MISSING ? undefined : shut);
  if (refusal !== undefined) return { ok: false, problem: refusal };
  const ours = state.shelf.get(documentKey(copy))?.document;
  const deed = deedMaker(state);
  const taken =
    shut === MISSING
      ? takeInMissing(linesOfMissing(state, copy), asWritten(copy), deed)
      : takeIn(ours, asWritten(copy), deed);
  if (!taken.ok) return taken;
  const { outcome, document, entries, onto, questions } = taken;
  // A later copy of what this computer logged, after its folder was put back to an earlier state, has our own ids.
  goPast(state, [copy], []);
  const said = { ok: true, outcome, document, questions: questions.length } as const;
  if (entries.length === 0) return { ...said, durable: Promise.resolve({ ok: true, at: state.needs.now() }) };
  const line: WorkLine = {
    seq: 0,
    safe: 0,
    links: [{ onto, makes: entries.at(-1)?.hash ?? '' }],
    adopt: { document: { kind: copy.kind, id: copy.id }, entries },
  };
  const fault = lineFault(line);
  if (fault !== undefined) return { ok: false, problem: fault };
  if (shut === MISSING) noLongerMissing(state, copy);
  return { ...said, durable: send(state, { ...line, seq: state.base.writer.nextSequence() }, [document]) };
}

/** Deeds of this person, now. */
function deedMaker(state: State): (what: string) => Deed {
  return (what) => ({ edit: newId(state), at: state.needs.now(), by: state.needs.person, what });
}
