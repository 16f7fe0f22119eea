import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Made, Maker } from '../../hole/commands/made.ts';
import { REFUSALS } from '../../hole/refusals.ts';
import type { Project } from '../../project/project.ts';
import { applyChanges } from '../../record/apply.ts';
import type { Document, DocumentName } from '../../record/document.ts';
import { emptyDocument } from '../../record/document.ts';
import { startActivity, startShift } from '../../shift/commands.ts';
import { shiftAt, shiftDocument } from '../../shift/shift-name.ts';
import { openShift } from '../../standing/activity.ts';

/** An edit on one document, which it may make. */
export interface MadeOn {
  readonly document: DocumentName;
  readonly made: Made;
}

/** Starts an activity of a rig in the shift that goes on; where none does, the shift that the time belongs to is started with it. */
export function startActivityNow(
  project: Project,
  documents: Iterable<Document>,
  said: { readonly rig: string; readonly activity: string; readonly hole?: string },
  maker: Maker,
): Result<MadeOn> {
  const { rig, ...activity } = said;
  const open = openShift(documents, rig);
  if (open !== undefined) {
    const started = startActivity(open, project.shift, activity, maker);
    return started.ok ? ok({ document: { kind: open.kind, id: open.id }, made: started.value }) : started;
  }
  const day = shiftAt(project.shift.shifts, maker.at);
  if (day === undefined) {
    return refused(
      REFUSALS.stateWrong.at(
        { thing: `rig ${rig}` },
        {
          problem: 'no shift is worked at this time of day',
          remedy: 'Look at the shifts in project.json, and at the clock of this computer.',
        },
      ),
    );
  }
  const document = shiftDocument(rig, day);
  const header = startShift({
    rig,
    date: day.date,
    name: day.name,
    startsAt: maker.at,
    crew: [],
    geologist: maker.by,
  });
  const fresh = applyChanges({}, header.changes);
  if (!fresh.ok) throw new Error(`a shift must start from nothing: ${fresh.problem}`);
  const started = startActivity(
    { ...emptyDocument(document), tables: fresh.tables },
    project.shift,
    activity,
    maker,
  );
  if (!started.ok) return started;
  return ok({
    document,
    made: {
      what: `${header.what}; ${started.value.what}`,
      changes: [...header.changes, ...started.value.changes],
    },
  });
}
