import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import type { Project } from '../project/project.ts';
import { applyChanges } from '../record/apply.ts';
import type { Document, DocumentName } from '../record/document.ts';
import { emptyDocument } from '../record/document.ts';
import { startActivity, startShift } from '../shift/commands.ts';
import { shiftAt, shiftDocument } from '../shift/shift-name.ts';
import { openShift } from '../standing/activity.ts';

/** An edit on one document, which it may make. */
export interface MadeOn {
  readonly document: DocumentName;
  readonly made: Made;
}

/**
 * Starts an activity of a rig now, in the shift that the time belongs to, which is started with it where nothing of it is recorded
 * yet. A shift that nobody ended does not swallow the next one. At a time of day without a shift the one still open goes on.
 */
export function startActivityNow(
  project: Project,
  documents: Iterable<Document>,
  said: { readonly rig: string; readonly activity: string; readonly hole?: string },
  maker: Maker,
): Result<MadeOn> {
  const { rig, ...activity } = said;
  const all = [...documents];
  const day = shiftAt(project.shift.shifts, maker.at);
  const name = day === undefined ? undefined : shiftDocument(rig, day);
  const there =
    name === undefined
      ? openShift(all, rig)
      : all.find((each) => each.kind === name.kind && each.id === name.id);
  if (there !== undefined) {
    const started = startActivity(there, project.shift, activity, maker);
    return started.ok ? ok({ document: { kind: there.kind, id: there.id }, made: started.value }) : started;
  }
  if (day === undefined || name === undefined) return refused(noShiftNow(rig));
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
    { ...emptyDocument(name), tables: fresh.tables },
    project.shift,
    activity,
    maker,
  );
  if (!started.ok) return started;
  return ok({
    document: name,
    made: {
      what: `${header.what}; ${started.value.what}`,
      changes: [...header.changes, ...started.value.changes],
    },
  });
}

const noShiftNow = (rig: string) =>
  REFUSALS.stateWrong.at(
    { thing: `rig ${rig}` },
    {
      problem: 'no shift is worked at this time of day',
      remedy: 'Look at the shifts in project.json, and at the clock of this computer.',
    },
  );
