import type { Disk } from '../files/disk.ts';
import { type Finding, type Result, refused } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import type { ChangedSchema } from '../schema/change/changed-file.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { LoadParent } from '../schema/read/chain.ts';
import type { TextFile } from '../schema/read/places.ts';
import { schemaChangesOf } from '../standing/hole-schema.ts';
import { checkRules } from '../termination/rules/check-rules.ts';
import type { Desk } from './contract.ts';
import { noProjectHere } from './findings.ts';
import { type LoadedProject, loadProject, parentsOf } from './load-project.ts';

/** What changing logging.json needs of a desk. */
export type LoggingDesk = Pick<Desk, 'folder' | 'project' | 'logging' | 'documents' | 'writeByHand'>;

/** Makes the changed text of a logging.json, or refuses. */
export type MakeChange = (file: TextFile, parents: LoadParent) => Result<ChangedSchema>;

/**
 * Changes logging.json and gives the project that comes of it, durable. Refused, with nothing changed, where the change is, where
 * it would give another meaning to what rows of an open hole say, where the file was edited since it was read, and where it
 * can't be written.
 */
export async function changeLogging(
  desk: LoggingDesk,
  make: MakeChange,
  disk: Disk,
): Promise<Result<LoadedProject>> {
  const logging = desk.logging();
  if (logging === undefined) {
    return refused(
      noProjectHere.at(
        { file: desk.folder() },
        { problem: 'its logging.json cannot be read', remedy: 'Fix it, then open the project again.' },
      ),
    );
  }
  const parents = await parentsOf(disk, desk.folder(), logging);
  const changed = make({ file: logging.file, text: logging.text }, parents);
  if (!changed.ok) return changed;
  const given = { folder: desk.folder(), project: desk.project() };
  const before = await loadProject({ ...given, logging }, disk);
  if (!before.ok) return before;
  const shifted = faultsUnderRows(
    before.value.project.schema,
    changed.value.schema,
    desk.documents().values(),
  );
  if (shifted.length > 0) return refused(...shifted);
  const blind = rulesGoneBlind(before.value.project, changed.value.schema);
  if (blind.length > 0) return refused(...blind);
  const written = await desk.writeByHand('logging', changed.value.text);
  return written.ok ? loadProject({ ...given, logging: written.value }, disk) : written;
}

/** What termination rules of the project would come to ask and not find: a rule that can't tell what it was written to see. */
export function rulesGoneBlind({ settings, schema }: Project, after: LoggingSchema): readonly Finding[] {
  const found = (of: LoggingSchema) =>
    checkRules(settings.termination.rules, of, { file: 'project.json' }).filter(
      ({ severity }) => severity === 'fault',
    );
  const known = new Set(found(schema).map((finding) => JSON.stringify(finding)));
  return found(after).filter((finding) => !known.has(JSON.stringify(finding)));
}

/** What one schema would make another thing of in the rows of holes that are not over, and the one before it did not. */
export function faultsUnderRows(
  before: LoggingSchema,
  after: LoggingSchema,
  documents: Iterable<Document>,
): readonly Finding[] {
  return [...documents]
    .filter((document) => document.kind === 'hole' && !isOver(headerOf(document).state))
    .flatMap((hole) => {
      const known = new Set(schemaChangesOf(before, hole).map((finding) => JSON.stringify(finding)));
      return schemaChangesOf(after, hole).filter(
        (finding) => finding.severity === 'fault' && !known.has(JSON.stringify(finding)),
      );
    });
}
