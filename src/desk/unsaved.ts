import { type Disk, whyRefused } from '../files/disk.ts';
import { unsavedFound } from '../files/findings.ts';
import { workWords } from '../files/journal-findings.ts';
import type { WorkLine } from '../files/journal-line.ts';
import { keepLeft, keepUnsaved, readUnsaved, type Unsaved } from '../files/unsaved.ts';
import type { Finding } from '../finding/finding.ts';
import { heldBy } from '../record/ancestry.ts';
import {
  type Change,
  type DocumentName,
  documentKey,
  type Edit,
  type Id,
  type Thing,
} from '../record/document.ts';
import type { Done } from './contract.ts';
import { newToken } from './opening.ts';
import { submitEdit } from './saving.ts';
import { goPast, newId, type State } from './state.ts';

const MOST_NAMED = 20;

/** Keeps what the project's disk has not taken where the next opening on this computer looks, and says so: it is not in the project. */
export async function keepWhatIsLeft(state: State, reason: string): Promise<Done> {
  const lines = state.base.writer.state().pending.map(({ line }) => line);
  const { unsavedFolder, disk, random } = state.needs;
  const count = lines.length === 1 ? 'one edit is' : `${lines.length} edits are`;
  const lost = `${count} not in the project: ${reason}. Not saved: ${named(lines)}`;
  if (unsavedFolder === undefined) return { ok: false, problem: lost };
  try {
    const file = await keepUnsaved(disk, unsavedFolder, state.base.folder, lines, newToken(random));
    return {
      ok: false,
      problem: `${count} not in the project: ${reason}. Kept in ${file}: the next start on this computer puts them in`,
    };
  } catch (error) {
    return { ok: false, problem: `${lost}; nor could they be kept elsewhere: ${whyRefused(error)}` };
  }
}

/**
 * Puts in what an earlier console could not save and kept; each file goes once all of it is on the medium. What can't be put in is kept on, by
 * itself. After a take-over another console may have given the same ids to other things: those put in get new ones.
 */
export async function putInUnsaved(state: State): Promise<void> {
  const { unsavedFolder, disk, random } = state.needs;
  if (unsavedFolder === undefined) return;
  for (const kept of await unsavedIn(state)) {
    const { file, lines, damaged } = kept;
    goPast(
      state,
      [],
      lines.flatMap((line) => ('edit' in line ? [line.edit] : [])),
    );
    const ids = new Map<Id, Id>();
    const missing = lines.filter((line) => !isHeld(state, line));
    const left: { readonly line: WorkLine; readonly problem: string }[] = [];
    const saving: Promise<{ readonly ok: boolean }>[] = [];
    for (const line of missing) {
      const done =
        'edit' in line
          ? submitEdit(state, withFreeIds(state, line.edit, ids))
          : { ok: false as const, problem: 'a copy: take it in again' };
      if (done.ok) saving.push(done.durable);
      else left.push({ line, problem: done.problem });
    }
    const saved = (await Promise.all(saving)).every(({ ok }) => ok);
    const bad = left.length + damaged.length;
    const isSame = bad === lines.length + damaged.length;
    let where = file;
    if (saved && bad === 0 && kept.problem === undefined) await disk.unlink(file).catch(() => {});
    else if (saved && !isSame)
      where = await keepLeft(
        disk,
        file,
        left.map(({ line }) => line),
        damaged,
        newToken(random),
      ).catch(() => file);
    if (missing.length > 0 || damaged.length > 0 || kept.problem !== undefined)
      state.findings = [...state.findings, finding({ ...kept, file: where }, missing, left)];
  }
}

/** The files of kept edits; a folder of them that can't be listed is said. */
async function unsavedIn({ needs, base }: State): Promise<readonly Unsaved[]> {
  const { unsavedFolder = '', disk } = needs;
  return readUnsaved(disk, unsavedFolder, base.folder).catch((error: unknown) => [
    { file: unsavedFolder, lines: [], damaged: [], problem: whyRefused(error) },
  ]);
}

/**
 * An edit whose new things have ids that nothing else has; `ids` remembers across the edits of a file which id became which, for later edits that
 * speak of the same thing.
 */
function withFreeIds(state: State, edit: Edit, ids: Map<Id, Id>): Edit {
  const documentOf = (name: DocumentName) => state.shelf.get(documentKey(name))?.document;
  for (const { document, changes } of edit.parts)
    for (const change of changes) {
      if (!('put' in change)) continue;
      const [table, id] = change.put;
      if (!ids.has(id) && documentOf(document)?.tables[table]?.[id] !== undefined) ids.set(id, newId(state));
    }
  const isGiven = edit.parts.some(({ document }) =>
    documentOf(document)?.history.some((entry) => entry.edit === edit.edit),
  );
  if (ids.size === 0 && !isGiven) return edit;
  const idOf = (id: Id): Id => ids.get(id) ?? id;
  const thingOf = (thing: Thing): Thing =>
    Object.fromEntries(
      Object.entries(thing).map(([field, value]) => [field, typeof value === 'string' ? idOf(value) : value]),
    ) as Thing;
  const changeOf = (change: Change): Change => {
    if ('put' in change) return { put: [change.put[0], idOf(change.put[1])], thing: thingOf(change.thing) };
    if ('remove' in change) return { remove: [change.remove[0], idOf(change.remove[1])] };
    const { patch, set, ...rest } = change;
    return {
      ...rest,
      patch: [patch[0], idOf(patch[1])],
      ...(set === undefined ? {} : { set: thingOf(set) }),
    };
  };
  return {
    ...edit,
    ...(isGiven ? { edit: newId(state) } : {}),
    parts: edit.parts.map(({ document, changes }) => ({ document, changes: changes.map(changeOf) })),
  };
}

/** Edits that an earlier console could not save and that wait to be put in, as findings: said where a project is only read. */
export async function unsavedWaiting(
  disk: Disk,
  folder: string | undefined,
  project: string,
): Promise<readonly Finding[]> {
  if (folder === undefined) return [];
  const all = await readUnsaved(disk, folder, project).catch((error: unknown): readonly Unsaved[] => [
    { file: folder, lines: [], damaged: [], problem: whyRefused(error) },
  ]);
  return all
    .filter(({ lines, damaged, problem }) => lines.length + damaged.length > 0 || problem !== undefined)
    .map(({ file, lines, damaged, problem }) => {
      const count = lines.length === 1 ? 'one edit' : `${lines.length} edits`;
      return unsavedFound.at(
        { file },
        {
          ...(lines.length === 0 ? {} : { excerpt: named(lines) }),
          problem: [
            ...(lines.length === 0
              ? []
              : [
                  `${count} that could not be saved when the console was closed ${lines.length === 1 ? 'is' : 'are'} not in the log yet`,
                ]),
            ...unreadWords(damaged, problem),
          ].join('; '),
          remedy:
            lines.length === 0
              ? LOOK_AT_IT
              : 'The next console or command that writes to this project, for the same user of this computer, puts them in.',
        },
      );
    });
}

const LOOK_AT_IT =
  'Look at it with an editor: log by hand what is missing, then take this file away. Nothing of it is deleted.';

/** What can't be read of a file of kept edits. */
function unreadWords(damaged: readonly string[], problem: string | undefined): readonly string[] {
  if (problem !== undefined)
    return [`it can’t be read, and may hold edits that could not be saved: ${problem}`];
  if (damaged.length === 0) return [];
  return [`${damaged.length === 1 ? 'a line' : `${damaged.length} lines`} of it can’t be read`];
}

/** True where every document of a line holds what it made: it reached the disk after all. */
function isHeld(state: State, line: WorkLine): boolean {
  const held = new Set(
    state.shelf.keys().flatMap((key) => [...heldBy(state.shelf.get(key)?.document.history ?? [])]),
  );
  return line.links.every(({ makes }) => held.has(makes));
}

function finding(
  { file, damaged, problem }: Unsaved,
  lines: readonly WorkLine[],
  left: readonly { readonly line: WorkLine; readonly problem: string }[],
) {
  const one = lines.length === 1;
  const what = `${one ? 'one edit' : `${lines.length} edits`} that could not be saved when the console was closed`;
  const isAll = left.length === 0 && damaged.length === 0 && problem === undefined;
  const notIn = left.map((each) => `${workWords(each.line)}: ${each.problem}: ${valuesOf(each.line)}`);
  return unsavedFound.at(
    { file },
    {
      ...(lines.length === 0 ? {} : { excerpt: named(lines) }),
      problem: [
        ...(lines.length > 0 && left.length === 0 ? [`${what} ${one ? 'is' : 'are'} in the log now`] : []),
        ...(left.length === 0
          ? []
          : [`${what}: ${left.length} could not be put into the log (${notIn.join('; ')})`]),
        ...unreadWords(damaged, problem),
      ].join('; '),
      remedy: isAll ? 'Look at the last rows before you log on.' : LOOK_AT_IT,
    },
  );
}

/** What an edit would put in, in short: so that it can be typed again. */
function valuesOf(line: WorkLine): string {
  if (!('edit' in line)) return 'a copy of another laptop';
  return line.edit.parts
    .flatMap(({ changes }) => changes)
    .map((change) =>
      JSON.stringify('put' in change ? change.thing : 'patch' in change ? (change.set ?? {}) : {}),
    )
    .join(' ')
    .slice(0, MOST_SHOWN);
}

const MOST_SHOWN = 400;

const named = (lines: readonly WorkLine[]): string =>
  `${lines.length > MOST_NAMED ? `${lines.length - MOST_NAMED} before; ` : ''}${lines.slice(-MOST_NAMED).map(workWords).join('; ')}`;
