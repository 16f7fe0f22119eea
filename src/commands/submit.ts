import type { MadeOn } from '../acts/shift.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import type { AtProject } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { refuse } from './say.ts';

/** Saves an edit of one document; undefined once it is durable, else the exit code with the reason said. */
export async function submitOn(
  { desk, outside }: AtProject,
  { document, made }: MadeOn,
): Promise<number | undefined> {
  const { kind, id } = document;
  const submitted = desk.submit({
    what: made.what,
    parts: [{ document: { kind, id }, changes: made.changes }],
  });
  const saved = await untilSaved(desk, submitted);
  if (saved.ok) return undefined;
  return refuse(
    outside,
    wrongUse.at(
      { thing: `${document.kind} ${document.id}` },
      { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') },
    ),
  );
}
