import type { MadeOn } from '../acts/shift.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import type { AtProject } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { refuse } from './say.ts';

/** Saves an edit of one document; undefined once it is durable, else the exit code with the reason said. */
export function submitOn(at: AtProject, edit: MadeOn): Promise<number | undefined> {
  return submitAll(at, [edit]);
}

/** Saves what was made of several documents as one edit: all of it or nothing. */
export async function submitAll(
  { desk, outside }: AtProject,
  edits: readonly MadeOn[],
): Promise<number | undefined> {
  const submitted = desk.submit({
    what: edits.map(({ made }) => made.what).join('; '),
    parts: edits.map(({ document: { kind, id }, made }) => ({
      document: { kind, id },
      changes: made.changes,
    })),
  });
  const saved = await untilSaved(desk, submitted);
  if (saved.ok) return undefined;
  return refuse(
    outside,
    wrongUse.at(
      { thing: edits.map(({ document }) => `${document.kind} ${document.id}`).join(', ') },
      { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') },
    ),
  );
}
