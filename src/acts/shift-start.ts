import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { ActivitySaid } from '../shift/commands.ts';
import { activityAt, spansOf } from '../shift/current.ts';
import { beginShiftAt, recordLate, timeWrong } from '../shift/entry-changes.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { holeOn } from '../shift/own-record.ts';
import type { EntryParts } from '../shift/record-line.ts';
import { shiftThings } from '../shift/shift.ts';
import { firstFrom } from '../shift/shift-clock.ts';
import { shiftsOf } from '../shift/shift-end.ts';
import { type MadeOn, shiftFor, startActivityNow } from './shift.ts';
import { inShift, isAhead, isGoingOn, notYetOf, recent, stampsAround } from './shift-times.ts';

/** A line of the shift record with what it is about: the rig, the hole in hand, and the shift, where it isn't the latest one. */
export interface RecordInput {
  readonly rig: string;
  readonly text: string;
  readonly hole?: string | undefined;
  readonly shift?: Document | undefined;
  /** The line is a whole entry, opened to be amended: what is not on it any more is taken out. */
  readonly whole?: boolean;
}

type StartParts = EntryParts & { readonly activity: string };

/** The edit with the document that it is of. */
export const on = ({ kind, id }: Document, made: Result<Made>): Result<MadeOn> =>
  made.ok ? ok({ document: { kind, id }, made: made.value }) : made;

/** An activity that starts now, or late: in the shift that its time is in, at the hole that the rig was on then. */
export function start(
  project: Project,
  all: readonly Document[],
  input: RecordInput,
  parts: StartParts,
  maker: Maker,
): Result<MadeOn> {
  const { rig, shift } = input;
  if (parts.from !== undefined) return startLate(project, all, input, { ...parts, from: parts.from }, maker);
  if (shift !== undefined && !isGoingOn(project, all, shift, maker.at))
    return refused(timeWrong(shift, 'it is over, so the time is needed', `Type ${parts.activity} 14:20.`));
  return startActivityNow(project, all, { rig, ...saidOf(parts, holeNow(all, input, maker.at)) }, maker);
}

/** What is said of an activity, with the hole where none was typed. */
function saidOf(
  { activity, authorisedBy, beside, remark, hole }: StartParts,
  otherwise: string | undefined,
): ActivitySaid {
  const at = hole ?? otherwise;
  return {
    activity,
    ...(at === undefined ? {} : { hole: at }),
    ...(authorisedBy === undefined ? {} : { authorisedBy }),
    ...(beside === undefined ? {} : { beside }),
    ...(remark === undefined ? {} : { remark }),
  };
}

/**
 * The hole of what starts now: the one in hand where it may be the rig's, as it is planned or the rig drills it; where one that is
 * finished or another rig's is only being looked at, the one that the rig is on.
 */
function holeNow(all: readonly Document[], { rig, hole }: RecordInput, now: Stamp): string | undefined {
  const holes = all.filter((each) => each.kind === 'hole');
  const inHand = holes.find(({ id }) => id === hole);
  const isPlanned = inHand !== undefined && headerOf(inHand).state === 'planned';
  if (isPlanned || (inHand !== undefined && holeOn([inHand], rig, now) !== undefined)) return hole;
  return holeOn(holes, rig, now) ?? hole;
}

/**
 * Hours typed late belong to the hole that the rig was on then, whichever one is open by now; between two holes to that of the entry
 * they fall into, or to none.
 */
function holeThen(all: readonly Document[], rig: string, shift: Document, from: Stamp): string | undefined {
  const holes = all.filter((each) => each.kind === 'hole');
  return holeOn(holes, rig, from) ?? activityAt(spansOf(shift, from), from)?.hole;
}

function startLate(
  project: Project,
  all: readonly Document[],
  { rig, shift }: RecordInput,
  parts: StartParts & { readonly from: number },
  maker: Maker,
): Result<MadeOn> {
  const stamps = stampsAround(all, shift ?? shiftsOf(all, rig).at(-1));
  const from =
    shift === undefined ? recent(parts.from, maker.at, stamps) : inShift(all, shift, parts.from, maker.at);
  const to = parts.to === undefined ? undefined : firstFrom(parts.to, from, [...stamps, maker.at]);
  const ahead = [from, to].find((each) => each !== undefined && isAhead(each, maker.at));
  if (ahead !== undefined) return refused(notYetOf(`rig ${rig}`, ahead, maker.at));
  const there = shift ?? shiftFor(project, all, rig, from, maker);
  if (there === undefined) return refused(noShift(rig));
  const document = 'document' in there ? there.document : there;
  const isEarlier = shift === undefined && !isGoingOn(project, all, document, maker.at);
  if (isEarlier && shiftThings(document, 'plods').length > 0)
    return refused(earlierHasPlod(document, from, maker.at));
  const said = saidOf(parts, holeThen(all, rig, document, from));
  const input = { ...said, from, ...(to === undefined ? {} : { to }) };
  const made = recordLate(document, project.shift, input, maker);
  if (!made.ok) return made;
  const { what, changes } = made.value;
  if ('begun' in there)
    return on(
      document,
      ok({ what: `${there.begun.what}; ${what}`, changes: [...there.begun.changes, ...changes] }),
    );
  return on(document, isEarlier ? ok({ changes, what: `${what}, in ${document.id}` }) : made);
}

/** A time of day that falls into an earlier shift, whose sheet the driller has handed in already: more likely it is one that has not come. */
const earlierHasPlod = (shift: Document, at: Stamp, now: Stamp) =>
  SHIFT_REFUSALS.timeWrong.at(
    { thing: `shift ${shift.id}` },
    {
      problem: `${localTime(at)} was in this shift, which has its plod; it is ${localTime(now)}`,
      remedy:
        'Give a time of the shift that goes on; for an earlier shift go to it first, by F8 and Left (--shift).',
    },
  );

/** The shift begins at a time, or now; one that has begun is amended. */
export function begin(
  project: Project,
  all: readonly Document[],
  { rig, shift }: RecordInput,
  minute: number | undefined,
  maker: Maker,
): Result<MadeOn> {
  if (shift !== undefined && minute !== undefined)
    return on(shift, beginShiftAt(shift, inShift(all, shift, minute, maker.at)));
  const stamps = stampsAround(all, shiftsOf(all, rig).at(-1));
  const at = minute === undefined ? maker.at : recent(minute, maker.at, stamps);
  if (isAhead(at, maker.at)) return refused(notYetOf(`rig ${rig}`, at, maker.at));
  const there = shiftFor(project, all, rig, at, { ...maker, at }, at);
  if (there === undefined) return refused(noShift(rig));
  if (!('begun' in there)) return on(there, beginShiftAt(there, at));
  return on(there.document, ok(there.begun));
}

export const noShift = (rig: string) =>
  SHIFT_REFUSALS.notThere.at(
    { thing: `rig ${rig}` },
    {
      problem: 'no shift has begun that this could be recorded in',
      remedy:
        'Type begin 06:00 with the time it began. The hours of shifts are in project.json, under shift.',
    },
  );
