import { noProject } from '../files/findings.ts';
import type { ProjectFolder } from '../files/project-folder.ts';
import { type Finding, refused } from '../finding/finding.ts';
import type { Stamp } from '../quantity/stamp.ts';
import { type Document, documentKey } from '../record/document.ts';
import { clockFindings } from '../standing/clock.ts';
import type { Desk } from './contract.ts';
import { missingIn, olderIn } from './missing.ts';
import { takeIn } from './take-in.ts';

const REFUSAL = { ok: false, problem: 'the project was opened to read only' } as const;

/** A desk that shows a project and writes nothing. What was edited outside is shown as it would be taken in. */
export function readingSession(
  folder: string,
  read: ProjectFolder,
  needs: { readonly now: () => Stamp; readonly person: string },
  waiting: readonly Finding[] = [],
): Desk {
  const newId = unsavedIds();
  const documents = documentsShown(read, needs, newId);
  const readOnly = noProject.at(
    { file: folder },
    { problem: REFUSAL.problem, remedy: 'Open it without --read-only.' },
  );
  const findings = [...read.findings, ...waiting, ...clockFindings(documents.values(), needs.now())];
  return {
    folder: () => folder,
    readOnly: true,
    person: needs.person,
    replica: () => 'unsaved',
    documents: () => documents,
    get: (name) => documents.get(documentKey(name)),
    findings: () => findings,
    closed: read.closed,
    project: () => read.project,
    logging: () => read.logging,
    newId,
    now: needs.now,
    health: () => ({ state: 'read only', unsafeEdits: 0, waiting: [], reason: REFUSAL.problem }),
    submit: () => REFUSAL,
    undo: () => REFUSAL,
    undoable: () => undefined,
    redo: () => REFUSAL,
    receive: () => REFUSAL,
    letGo: async () => REFUSAL,
    restore: () => REFUSAL,
    missing: () => [...missingIn(read.closed, read.lines), ...olderIn(read.lacking)],
    writeByHand: async () => refused(readOnly),
    writeOut: async () => REFUSAL,
    knownCopies: async () => [],
    rememberCopy: async () => REFUSAL,
    writtenTexts: async () => [],
    snapshot: async () => REFUSAL,
    look: async () => {},
    watch: () => () => {},
    retry: async () => ({ state: 'read only', unsafeEdits: 0, waiting: [], reason: REFUSAL.problem }),
    moveTo: async () => REFUSAL,
    subscribe: () => () => {},
    close: async () => ({ ok: true }),
  };
}

/** Ids for what is only shown: none of them is ever written. */
function unsavedIds(): () => string {
  let counter = 0;
  return () => {
    counter += 1;
    return `unsaved-${counter}`;
  };
}

function documentsShown(
  read: ProjectFolder,
  needs: { readonly now: () => Stamp; readonly person: string },
  newId: () => string,
): ReadonlyMap<string, Document> {
  const deed = (what: string) => ({ edit: newId(), at: needs.now(), by: needs.person, what });
  const documents = new Map<string, Document>();
  for (const [key, { document, copy }] of read.documents) {
    const taken = copy === undefined ? undefined : takeIn(document, copy, deed);
    const shown = taken?.ok === true ? taken.document : document;
    if (Object.keys(shown.tables).length > 0) documents.set(key, shown);
  }
  return documents;
}
