import { whyRefused } from '../files/disk.ts';
import { documentPath } from '../files/document-file.ts';
import { linesByDocument } from '../files/fold.ts';
import { workWords } from '../files/journal-findings.ts';
import { formatLine, type LetGo, lineFault, type WorkLine } from '../files/journal-line.ts';
import { keepCopy } from '../files/keep-copy.ts';
import { nameFromKey } from '../files/list-documents.ts';
import { MISSING } from '../files/read-found.ts';
import { salvage } from '../files/salvage.ts';
import { type Change, type DocumentName, documentKey } from '../record/document.ts';
import { target } from '../record/draft.ts';
import type { LetGoDone, MissingDocument, Submitted } from './contract.ts';
import { linesOfMissing, noLongerMissing } from './missing-lines.ts';
import { submit, whyNot } from './saving.ts';
import { type State, tell } from './state.ts';

/** Documents that the journal knows and whose files are gone. */
export function missingDocuments(state: State): readonly MissingDocument[] {
  return [...missingIn(state.closed, state.base.writer.unfiled()), ...olderIn(state.lacking)];
}

/** Documents whose files were rolled back to less than the journal saw in them, and what they lack is not there any more. */
export function olderIn(lacking: ReadonlyMap<string, string>): readonly MissingDocument[] {
  return [...lacking.keys()].flatMap((key) => {
    const name = nameFromKey(key);
    return name === undefined ? [] : [{ name, file: documentPath(name), held: [], isOlder: true as const }];
  });
}

/** Of the documents that can't be written those whose files are gone, with what lines of the journal hold of them. */
export function missingIn(
  closed: ReadonlyMap<string, string>,
  lines: readonly WorkLine[],
): readonly MissingDocument[] {
  const byDocument = linesByDocument(lines);
  return [...closed].flatMap(([key, why]) => {
    const name = nameFromKey(key);
    if (why !== MISSING || name === undefined) return [];
    return [{ name, file: documentPath(name), held: (byDocument.get(key) ?? []).map(workWords) }];
  });
}

function refusal(state: State, name: DocumentName): string | undefined {
  if (state.closed.get(documentKey(name)) !== MISSING) return `the file of ${name.id} is not missing`;
  return whyNot(state);
}

/** Why too short to tell anybody anything. */
const SHORTEST_REASON = 3;

/** Lets a document go whose file is gone: what the journal holds of it is kept aside, then who, when and why is written to the journal. */
export async function letDocumentGo(state: State, name: DocumentName, why: string): Promise<LetGoDone> {
  if (state.lacking.has(documentKey(name))) return goOnFromOlder(state, name, why);
  const refused = refusal(state, name);
  if (refused !== undefined) return { ok: false, problem: refused };
  if (why.trim().length < SHORTEST_REASON) return { ok: false, problem: 'give the reason to give it up' };
  const { now, person, disk } = state.needs;
  const letGo: LetGo = {
    document: { kind: name.kind, id: name.id },
    at: now(),
    by: person,
    why: why.trim(),
  };
  const fault = lineFault({ seq: 0, safe: 0, links: [], letGo });
  if (fault !== undefined) return { ok: false, problem: fault };
  const held = linesOfMissing(state, name);
  const text = [`${JSON.stringify(letGo)}\n`, ...held.map(formatLine)].join('');
  let kept: string;
  try {
    const copy = { file: documentPath(name), bytes: new TextEncoder().encode(text), because: 'let-go' };
    kept = await keepCopy(disk, state.base.folder, copy);
  } catch (error) {
    return { ok: false, problem: `what the journal holds of it can't be kept aside: ${whyRefused(error)}` };
  }
  return new Promise((resolve) => {
    const line = { seq: state.base.writer.nextSequence(), safe: 0, links: [], letGo };
    state.base.writer.add({
      line,
      told: (problem) => resolve(problem === undefined ? { ok: true, kept } : { ok: false, problem }),
      landed: () => {
        state.letGo.push(letGo);
        noLongerMissing(state, name);
      },
    });
    tell(state);
  });
}

/** Work goes on from an older copy knowingly: an entry of its history says so, and the journal awaits the later one no more. */
async function goOnFromOlder(state: State, { kind, id }: DocumentName, why: string): Promise<LetGoDone> {
  if (why.trim().length < SHORTEST_REASON) return { ok: false, problem: 'give the reason to give it up' };
  const what = `goes on from an older copy, later edits given up: ${why.trim()}`;
  const submitted = submit(state, { what, parts: [{ document: { kind, id }, changes: [] }] });
  if (!submitted.ok) return submitted;
  const saved = await submitted.durable;
  if (!saved.ok) return { ok: false, problem: saved.problem };
  state.lacking.delete(documentKey({ kind, id }));
  noLongerMissing(state, { kind, id });
  const { writer } = state.base;
  // Till a generation begins that says so, the next opening would ask once more: no harm where it can't be begun now.
  await writer.between(async () => void (await writer.turnOver())).catch(() => {});
  tell(state);
  return { ok: true };
}

/** Makes a document whose file is gone again from what the journal holds of it. */
export function restoreFromJournal(state: State, name: DocumentName, making: readonly Change[]): Submitted {
  const refused = refusal(state, name);
  if (refused !== undefined) return { ok: false, problem: refused };
  const { changes, fitting, lost } = salvage(name, linesOfMissing(state, name));
  if (changes.length === 0) return { ok: false, problem: `the journal holds nothing of ${name.id}` };
  const there = new Set(changes.map((change) => target(change).join('/')));
  const missing = making.filter((change) => !there.has(target(change).join('/')));
  const what = `restored from the journal: ${fitting} ${fitting === 1 ? 'change' : 'changes'}${lost === 0 ? '' : `; ${lost} more were to what is gone with the file`}`;
  state.closed.delete(documentKey(name));
  const submitted = submit(state, {
    what,
    parts: [{ document: { kind: name.kind, id: name.id }, changes: [...missing, ...changes] }],
  });
  if (submitted.ok) noLongerMissing(state, name);
  else state.closed.set(documentKey(name), MISSING);
  return submitted;
}
