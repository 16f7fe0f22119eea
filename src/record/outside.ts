import { applyChanges, deedOf } from './apply.ts';
import { replay } from './chain.ts';
import type { Change, Deed, Document, Tables, Thing } from './document.ts';
import { sealed } from './hash.ts';
import { own, sameJson, setOwn } from './json.ts';

/** The changes that lead from one state of tables to another, thing by thing, field by field. */
export function difference(from: Tables, to: Tables): readonly Change[] {
  const changes: Change[] = [];
  for (const name of new Set([...Object.keys(from), ...Object.keys(to)])) {
    const before = own(from, name) ?? {};
    const after = own(to, name) ?? {};
    for (const id of new Set([...Object.keys(before), ...Object.keys(after)])) {
      const was = own(before, id);
      const is = own(after, id);
      if (was === undefined && is !== undefined) changes.push({ put: [name, id], thing: is });
      else if (is === undefined) changes.push({ remove: [name, id] });
      else if (was !== undefined && !sameJson(was, is)) changes.push(patchBetween(name, id, was, is));
    }
  }
  return changes;
}

function patchBetween(table: string, id: string, was: Thing, is: Thing): Change {
  const set: Record<string, Thing[string]> = {};
  for (const [field, value] of Object.entries(is))
    if (!sameJson(own(was, field), value)) setOwn(set, field, value);
  const unset = Object.keys(was).filter((field) => own(is, field) === undefined);
  return {
    patch: [table, id],
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(unset.length === 0 ? {} : { unset }),
  };
}

/**
 * Tables that are not what the history makes were edited outside. Returns the changes made there (none where tables
 * and history agree). The history must hold (see chainFault).
 */
export function outsideChanges(document: Document): readonly Change[] {
  return difference(replay(document.history), document.tables);
}

/** The document with what was edited outside made a link of its history, marked as such; unchanged where nothing was. */
export function recordOutside(document: Document, deed: Deed): Document {
  const stood = replay(document.history);
  const applied = applyChanges(stood, difference(stood, document.tables));
  if (!applied.ok) throw new Error(`a difference must fit what it was made from: ${applied.problem}`);
  if (applied.done.length === 0) return document;
  const last = document.history.at(-1);
  const entry = sealed({
    ...deedOf(deed),
    changes: applied.done,
    follows: last === undefined ? [] : [last.hash],
    outside: true,
  });
  return { ...document, history: [...document.history, entry] };
}
