import { holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Change, Document, DocumentName } from '../record/document.ts';
import { currentActivity } from '../shift/current.ts';
import { rigAt } from '../shift/own-record.ts';
import { shiftHolding } from '../shift/shift-end.ts';
import { activityNamed } from '../shift/shift-rules.ts';

/** Changes of the shift record that belong to an edit of a hole, in the same edit, with the words for them. */
export interface BesideEdit {
  readonly document: DocumentName;
  readonly changes: readonly Change[];
  readonly what: string;
}

/**
 * A rig that begins a hole, or does a rod in it, drills no other hole any more: an activity paid by the metre that still runs on
 * another one ends when that was left, this hole was begun or the rod was done, whichever came first. What the rig does since then is not
 * known, and shows as a gap.
 */
export function endedElsewhere(
  project: Project,
  documents: Iterable<Document>,
  { kind, id }: DocumentName,
  changes: readonly Change[],
): BesideEdit | undefined {
  const all = [...documents];
  const hole = all.find((each) => each.kind === kind && each.id === id);
  if (kind !== 'hole' || hole === undefined) return undefined;
  const on = rigOnIt(hole, changes);
  if (on === undefined) return undefined;
  const shift = shiftHolding(on.at, on.rig, { documents: all, shifts: project.shift.shifts, now: on.at });
  const running = shift === undefined ? undefined : currentActivity(shift, on.at);
  if (shift === undefined || running?.hole === undefined || running.hole === id) return undefined;
  if (running.charge !== 'metres') return undefined;
  const other = all.find((each) => each.kind === 'hole' && each.id === running.hole);
  const left = other === undefined ? undefined : holeNouns(other, 'drilling').at(-1)?.endedAt;
  const [endedAt] = [left, on.begunAt, on.at]
    .filter((at) => at !== undefined)
    .filter((at) => instantMs(at) > instantMs(running.startedAt))
    .toSorted((a, b) => instantMs(a) - instantMs(b));
  if (endedAt === undefined) return undefined;
  const label = activityNamed(project.shift, running.activity)?.label ?? running.activity;
  return {
    document: { kind: shift.kind, id: shift.id },
    changes: [{ patch: ['activities', running.id], set: { endedAt } }],
    what: `${label} on ${running.hole} ended at ${localTime(endedAt)} in the shift record`,
  };
}

/** When a rig is known to be on a hole by an edit: it starts drilling there, or a rod is done. */
function rigOnIt(
  hole: Document,
  changes: readonly Change[],
): { readonly rig: string; readonly at: Stamp; readonly begunAt: Stamp } | undefined {
  for (const change of changes) {
    if (!('put' in change)) continue;
    if (change.put[0] === 'drilling') {
      const { rig, startedAt } = change.thing as { readonly rig: string; readonly startedAt: Stamp };
      return { rig, at: startedAt, begunAt: startedAt };
    }
    if (change.put[0] === 'rods') {
      const { at } = change.thing as { readonly at: Stamp };
      const rig = rigAt(hole, at);
      const begun = holeNouns(hole, 'drilling').findLast((each) => each.rig === rig);
      return rig === undefined || begun === undefined ? undefined : { rig, at, begunAt: begun.startedAt };
    }
  }
  return undefined;
}
