import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document, Id, Thing } from '../record/document.ts';
import { own } from '../record/json.ts';
import { SHIFT_REFUSALS } from './findings.ts';
import { type Activity, type ShiftHeader, shiftHeaderOf, shiftThings } from './shift.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/** What is said of an activity when it starts; its charge class comes from the list. */
export type ActivitySaid = Pick<
  Activity,
  'activity' | 'hole' | 'authorisedBy' | 'used' | 'beside' | 'remark'
>;

/** Which hole an activity is put down to, so that an hour on a wrong hole is seen where it is typed. */
export const holeWords = ({ hole }: Pick<ActivitySaid, 'hole'>): string =>
  hole === undefined ? ', no hole' : ` on ${hole}`;

/** Starts a shift: its header, in a document that holds nothing yet. */
export function startShift(header: ShiftHeader): Made {
  return {
    what: `${header.name} shift of ${header.date} started on ${header.rig}`,
    changes: [{ put: ['shift', 'shift'], thing: header as Thing }],
  };
}

/**
 * Starts an activity now; the one before it ends. A clock that has jumped back is not believed: the activity starts when the one
 * before it did, and the words say so. Refuses an ended shift and an activity that is not in the list.
 */
export function startActivity(
  shift: Document,
  rules: ShiftRules,
  said: ActivitySaid,
  maker: Maker,
): Result<Made> {
  const ended = endedRefusal(shift);
  if (ended !== undefined) return refused(ended);
  const kind = activityNamed(rules, said.activity);
  if (kind === undefined) return refused(unknownActivity(rules, said.activity));
  const startedAt = notBefore(latestInstant(shift), maker.at);
  const thing: Activity = { startedAt, charge: kind.charge, ...said };
  return ok({
    what: `${kind.label} from ${localTime(startedAt)}${holeWords(said)}${clockNote(startedAt, maker.at)}`,
    changes: [{ put: ['activities', maker.newId()], thing: thing as Thing }],
  });
}

/** Amends an activity that was recorded: its start, hole, remark and so on; its charge class follows its code. `unset` names what is taken out. */
export function amendActivity(
  shift: Document,
  rules: ShiftRules,
  id: Id,
  set: Partial<ActivitySaid> & { readonly startedAt?: Stamp; readonly endedAt?: Stamp },
  unset: readonly string[] = [],
): Result<Made> {
  const there = own(own(shift.tables, 'activities'), id);
  if (there === undefined) {
    return refused(
      SHIFT_REFUSALS.notThere.at(
        { thing: `activity ${id}` },
        { problem: 'it is no longer there', remedy: 'Look at the history of the shift.' },
      ),
    );
  }
  const kind = set.activity === undefined ? undefined : activityNamed(rules, set.activity);
  if (set.activity !== undefined && kind === undefined) return refused(unknownActivity(rules, set.activity));
  const gone = unset.filter((field) => Object.hasOwn(there, field));
  if (Object.keys(set).length === 0 && gone.length === 0) return ok({ what: 'nothing changed', changes: [] });
  return ok({
    what: `amended ${kind?.label ?? String(there.activity)}`,
    changes: [
      {
        patch: ['activities', id],
        set: { ...set, ...(kind === undefined ? {} : { charge: kind.charge }) } as Thing,
        ...(gone.length === 0 ? {} : { unset: gone }),
      },
    ],
  });
}

/** The latest instant that the shift knows of: nothing new may start before it. */
function latestInstant(shift: Document): Stamp {
  return shiftThings(shift, 'activities')
    .map(([, activity]) => activity.startedAt)
    .reduce(notBefore, shiftHeaderOf(shift).startsAt);
}

function notBefore(earliest: Stamp, at: Stamp): Stamp {
  return instantMs(at) < instantMs(earliest) ? earliest : at;
}

function clockNote(taken: Stamp, said: Stamp): string {
  return taken === said ? '' : ` (the clock said ${localTime(said)}, before what is recorded already)`;
}

function endedRefusal(shift: Document): Finding | undefined {
  const { endedAt } = shiftHeaderOf(shift);
  if (endedAt === undefined) return undefined;
  return SHIFT_REFUSALS.ended.at(
    { thing: `shift ${shift.id}` },
    {
      problem: `the shift ended at ${localTime(endedAt)}`,
      remedy: 'Start the next shift, or undo the end if it was a slip.',
    },
  );
}

function unknownActivity(rules: ShiftRules, code: string): Finding {
  return SHIFT_REFUSALS.activityUnknown.at(
    { thing: `activity ${code}` },
    {
      problem: 'it is not in the list of activities',
      remedy: `Use one of: ${rules.activities.map((each) => each.code).join(', ')}. Others go into project.json, under shift.`,
    },
  );
}
