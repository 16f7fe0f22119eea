import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { REFUSALS } from '../hole/findings.ts';
import type { Project } from '../project/project.ts';
import { instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import { applyChanges } from '../record/apply.ts';
import type { Document, DocumentName } from '../record/document.ts';
import { emptyDocument } from '../record/document.ts';
import { type ActivitySaid, startActivity, startShift } from '../shift/commands.ts';
import { shiftHeaderOf } from '../shift/shift.ts';
import { closed, plannedStart, shiftHolding, shiftsOf } from '../shift/shift-end.ts';
import { shiftAt, shiftDocument } from '../shift/shift-name.ts';

/** An edit on one document, which it may make. */
export interface MadeOn {
  readonly document: DocumentName;
  readonly made: Made;
}

/** A shift that has just been begun, not stored yet: the document, and the changes that make it. */
export interface Begun {
  readonly document: Document;
  readonly begun: Made;
}

/**
 * Starts an activity of a rig now, in the shift that the time belongs to, which is begun with it where nothing of it is recorded
 * yet. A shift that no one ended does not swallow the next one. At a time of day without a shift the one still open goes on.
 */
export function startActivityNow(
  project: Project,
  documents: Iterable<Document>,
  input: ActivitySaid & { readonly rig: string },
  maker: Maker,
): Result<MadeOn> {
  const { rig, ...activity } = input;
  const there = shiftFor(project, [...documents], rig, maker.at, maker);
  if (there === undefined) return refused(noShiftNow(rig));
  const shift = 'document' in there ? there.document : there;
  const started = startActivity(shift, project.shift, activity, maker);
  if (!started.ok) return started;
  const document = { kind: shift.kind, id: shift.id };
  if (!('document' in there)) return ok({ document, made: started.value });
  return ok({
    document,
    made: {
      what: `${there.begun.what}; ${started.value.what}`,
      changes: [...there.begun.changes, ...started.value.changes],
    },
  });
}

/**
 * The shift that an instant of a rig belongs to; where nothing of it is recorded yet it is begun: at `startsAt`, else at its hour in the
 * settings, so that time before the first entry shows as a gap. Undefined at a time of day without a shift, unless one is still open.
 */
export function shiftFor(
  project: Project,
  documents: readonly Document[],
  rig: string,
  at: Stamp,
  maker: Maker,
  startsAt?: Stamp,
): Document | Begun | undefined {
  const { shifts } = project.shift;
  const day = shiftAt(shifts, at);
  const name = day === undefined ? undefined : shiftDocument(rig, day);
  const found = documents.find((each) => each.kind === 'shift' && each.id === name?.id);
  if (found !== undefined) return found;
  const context = { documents, shifts, now: maker.at };
  const holding = shiftHolding(at, rig, context);
  if (holding !== undefined && shiftHeaderOf(holding).plannedEndAt !== undefined) return holding;
  if (day === undefined || name === undefined)
    return (
      holding ?? shiftsOf(documents, rig).findLast((each) => isOpen(each) && began(each) <= instantMs(at))
    );
  const times = shifts.find((each) => each.name === day.name);
  const hour = times === undefined ? at : plannedStart(day.date, times, at);
  const before = shiftsOf(documents, rig).findLast((each) => began(each) <= instantMs(at));
  const ended = before === undefined ? undefined : shiftHeaderOf(closed(before, context)).endedAt;
  const free = ended !== undefined && instantMs(ended) > instantMs(hour) && instantMs(ended) <= instantMs(at);
  return begun(name, { rig, date: day.date, name: day.name }, startsAt ?? (free ? ended : hour), maker.by);
}

const began = (shift: Document): number => instantMs(shiftHeaderOf(shift).startsAt);
const isOpen = (shift: Document): boolean => shiftHeaderOf(shift).endedAt === undefined;

function begun(
  name: DocumentName,
  of: Pick<ReturnType<typeof shiftHeaderOf>, 'rig' | 'date' | 'name'>,
  startsAt: Stamp,
  geologist: string,
): Begun {
  const { what, changes } = startShift({ ...of, startsAt, crew: [], geologist });
  const fresh = applyChanges({}, changes);
  if (!fresh.ok) throw new Error(`a shift must start from nothing: ${fresh.problem}`);
  return {
    document: { ...emptyDocument(name), tables: fresh.tables },
    begun: { what: `${what} from ${localTime(startsAt)}`, changes },
  };
}

const noShiftNow = (rig: string) =>
  REFUSALS.stateWrong.at(
    { thing: `rig ${rig}` },
    {
      problem: 'no shift is worked at this time of day',
      remedy: 'Look at the shifts in project.json, and at the clock of this computer.',
    },
  );
