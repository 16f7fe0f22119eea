import { type Disk, whyRefused } from '../files/disk.ts';
import { unsavedFound } from '../files/findings.ts';
import { workWords } from '../files/journal-findings.ts';
import type { WorkLine } from '../files/journal-line.ts';
import { keepUnsaved, readUnsaved } from '../files/unsaved.ts';
import type { Finding } from '../finding/finding.ts';
import { heldBy } from '../record/ancestry.ts';
import type { Done } from './contract.ts';
import { newToken } from './opening.ts';
import { submitEdit } from './saving.ts';
import { goPast, type State } from './state.ts';

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

/** Puts in what an earlier console could not save and kept; each file goes once all of it is on the medium. */
export async function putInUnsaved(state: State): Promise<void> {
  const { unsavedFolder, disk } = state.needs;
  if (unsavedFolder === undefined) return;
  for (const { file, lines } of await readUnsaved(disk, unsavedFolder, state.base.folder).catch(() => [])) {
    goPast(
      state,
      [],
      lines.flatMap((line) => ('edit' in line ? [line.edit] : [])),
    );
    const missing = lines.filter((line) => !isHeld(state, line));
    const left: string[] = [];
    const saving: Promise<{ readonly ok: boolean }>[] = [];
    for (const line of missing) {
      const done =
        'edit' in line
          ? submitEdit(state, line.edit)
          : { ok: false as const, problem: 'a copy: take it in again' };
      if (done.ok) saving.push(done.durable);
      else left.push(`${workWords(line)}: ${done.problem}`);
    }
    const saved = (await Promise.all(saving)).every(({ ok }) => ok);
    if (saved && left.length === 0) await disk.unlink(file).catch(() => {});
    if (missing.length > 0) state.findings = [...state.findings, finding(file, missing, left)];
  }
}

/** Edits that an earlier console could not save and that wait to be put in, as findings: said where a project is only read. */
export async function unsavedWaiting(
  disk: Disk,
  folder: string | undefined,
  project: string,
): Promise<readonly Finding[]> {
  if (folder === undefined) return [];
  return (await readUnsaved(disk, folder, project).catch(() => []))
    .filter(({ lines }) => lines.length > 0)
    .map(({ file, lines }) =>
      unsavedFound.at(
        { file },
        {
          excerpt: named(lines),
          problem: `${lines.length === 1 ? 'one edit' : `${lines.length} edits`} that the disk had not taken when the console was closed ${lines.length === 1 ? 'is' : 'are'} not in the log yet`,
          remedy: 'The next console or command that writes to this project on this computer puts them in.',
        },
      ),
    );
}

/** True where every document of a line holds what it made: it reached the disk after all. */
function isHeld(state: State, line: WorkLine): boolean {
  const held = new Set(
    state.shelf.keys().flatMap((key) => [...heldBy(state.shelf.get(key)?.document.history ?? [])]),
  );
  return line.links.every(({ makes }) => held.has(makes));
}

function finding(file: string, lines: readonly WorkLine[], left: readonly string[]) {
  const one = lines.length === 1;
  const what = `${one ? 'one edit' : `${lines.length} edits`} that the disk had not taken when the console was closed`;
  const isAll = left.length === 0;
  return unsavedFound.at(
    { file },
    {
      excerpt: named(lines),
      problem: isAll
        ? `${what} ${one ? 'is' : 'are'} in the log now`
        : `${what}: ${left.length} could not be put into the log (${left.join('; ')})`,
      remedy: isAll
        ? 'Look at the last rows before you log on.'
        : 'Enter what is missing by hand, then take this file away.',
    },
  );
}

const named = (lines: readonly WorkLine[]): string =>
  `${lines.length > MOST_NAMED ? `${lines.length - MOST_NAMED} before; ` : ''}${lines.slice(-MOST_NAMED).map(workWords).join('; ')}`;
