import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { instantMs, localTime, offsetMin, type Stamp, stamp } from '../quantity/stamp.ts';
import { type Document, documentKey, type Thing } from '../record/document.ts';
import { currentActivity, spansOf } from '../shift/current.ts';
import {
  agreeEnd,
  amendEntry,
  beginShiftAt,
  endShiftAt,
  entryAt,
  recordLate,
  removeEntry,
  removeEvent,
  splitEntry,
  timeWrong,
} from '../shift/entry-changes.ts';
import { SHIFT_REFUSALS } from '../shift/findings.ts';
import { isPriced, itemAmong, pricedItems } from '../shift/item-name.ts';
import { type EntryParts, type LineWords, parseRecordLine, type RecordLine } from '../shift/record-line.ts';
import { shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { AHEAD_MS, firstFrom, latestAt } from '../shift/shift-clock.ts';
import { shiftHolding, shiftsOf } from '../shift/shift-end.ts';
import { rulesOn } from '../shift/shift-rules.ts';
import { bitAtLeastMm } from '../standing/heads.ts';
import { rodEndBelow } from '../standing/rods.ts';
import { type MadeOn, shiftFor, startActivityNow } from './shift.ts';

/** A line of the shift record with what it is about: the rig, the hole in hand, and the shift, where it isn't the latest one. */
export interface RecordInput {
  readonly rig: string;
  readonly text: string;
  readonly hole?: string | undefined;
  readonly shift?: Document | undefined;
  /** The line is a whole entry, opened to be amended: what is not on it any more is taken out. */
  readonly whole?: boolean;
}

/**
 * What one line of the shift record changes: an activity now or late, an amendment, the hours of the shift, crew, consumables, a
 * bit, water. The same from the console, the command line and a pipe. Refused, with nothing changed, where it can't be so.
 */
export function recordLine(
  project: Project,
  documents: Iterable<Document>,
  input: RecordInput,
  maker: Maker,
): Result<MadeOn> {
  const all = [...documents];
  const read = parseRecordLine(input.text, lineWords(project, all));
  if (!read.ok) return read;
  const line = read.value;
  if (line.does === 'start') return start(project, all, input, line.parts, maker);
  if (line.does === 'begin') return begin(project, all, input, line.at, maker);
  const shift = input.shift ?? shiftsOf(all, input.rig).findLast((each) => !isAfter(each, maker.at));
  if (shift === undefined) return refused(noShift(input.rig));
  return on(shift, change(project, all, shift, line, input, maker));
}

/** Words that a line is read with: activities by code and key, holes by id and by name. */
export function lineWords(project: Project, documents: readonly Document[]): LineWords {
  const holes = documents.filter((each) => each.kind === 'hole');
  return {
    activities: project.shift.activities,
    holes: new Map(
      holes.flatMap((hole) => [
        [hole.id.toUpperCase(), hole.id],
        [headerOf(hole).name.toUpperCase(), hole.id],
      ]),
    ),
  };
}

const isAfter = (shift: Document, at: Stamp): boolean =>
  instantMs(shiftHeaderOf(shift).startsAt) > instantMs(at) + AHEAD_MS;

const on = ({ kind, id }: Document, made: Result<Made>): Result<MadeOn> =>
  made.ok ? ok({ document: { kind, id }, made: made.value }) : made;

function start(
  project: Project,
  all: readonly Document[],
  { rig, hole, shift }: RecordInput,
  parts: EntryParts & { readonly activity: string },
  maker: Maker,
): Result<MadeOn> {
  const { activity, authorisedBy, beside, remark } = parts;
  const at = parts.hole ?? hole;
  const input = {
    activity,
    ...(at === undefined ? {} : { hole: at }),
    ...(authorisedBy === undefined ? {} : { authorisedBy }),
    ...(beside === undefined ? {} : { beside }),
    ...(remark === undefined ? {} : { remark }),
  };
  if (parts.from === undefined && shift === undefined)
    return startActivityNow(project, all, { rig, ...input }, maker);
  if (parts.from === undefined && shift !== undefined && isGoingOn(project, all, shift, maker.at))
    return startActivityNow(project, all, { rig, ...input }, maker);
  if (parts.from === undefined && shift !== undefined)
    return refused(timeWrong(shift, 'it is over, so the time is needed', `Type ${activity} 14:20.`));
  const minute = parts.from ?? 0;
  const stamps = stampsAround(all, shift ?? shiftsOf(all, rig).at(-1));
  const from = shift === undefined ? recent(minute, maker.at, stamps) : inShift(all, shift, minute, maker.at);
  const to = parts.to === undefined ? undefined : firstFrom(parts.to, from, [...stamps, maker.at]);
  const ahead = [from, to].find((each) => each !== undefined && isAhead(each, maker.at));
  if (ahead !== undefined) return refused(notYetOf(`rig ${rig}`, ahead, maker.at));
  const there = shift ?? shiftFor(project, all, rig, from, maker);
  if (there === undefined) return refused(noShift(rig));
  const document = 'document' in there ? there.document : there;
  const isEarlier = shift === undefined && !isGoingOn(project, all, document, maker.at);
  if (isEarlier && shiftThings(document, 'plods').length > 0)
    return refused(earlierHasPlod(document, from, maker.at));
  const made = recordLate(
    document,
    project.shift,
    { ...input, from, ...(to === undefined ? {} : { to }) },
    maker,
  );
  if (!made.ok) return made;
  if (!('begun' in there))
    return on(
      document,
      isEarlier ? ok({ ...made.value, what: `${made.value.what}, in ${document.id}` }) : made,
    );
  const { what, changes } = there.begun;
  return on(
    document,
    ok({ what: `${what}; ${made.value.what}`, changes: [...changes, ...made.value.changes] }),
  );
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

const isGoingOn = (project: Project, all: readonly Document[], shift: Document, now: Stamp): boolean => {
  const { rig } = shiftHeaderOf(shift);
  const holding = shiftHolding(now, rig, { documents: all, shifts: project.shift.shifts, now });
  return holding !== undefined && documentKey(holding) === documentKey(shift);
};

/** A time of day as an instant of a shift: from three hours before it began on, for it may have begun earlier than was recorded. */
function inShift(all: readonly Document[], shift: Document, minute: number, now: Stamp): Stamp {
  const { startsAt } = shiftHeaderOf(shift);
  const from = stamp(instantMs(startsAt) - 3 * 3_600_000, offsetMin(startsAt));
  const near = instantMs(now) - instantMs(startsAt) < 18 * 3_600_000;
  const stamps = stampsAround(all, shift);
  return firstFrom(minute, from, near ? [...stamps, now] : stamps);
}

/** Stamps of a shift, and of the rods and shots since it began: by them a time is read on the clock that it was on. */
export function stampsAround(all: readonly Document[], shift: Document | undefined): readonly Stamp[] {
  if (shift === undefined) return [];
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const ofHoles = all
    .filter((each) => each.kind === 'hole')
    .flatMap((hole) => [...holeNouns(hole, 'rods'), ...holeNouns(hole, 'shots')].map(({ at }) => at))
    .filter((at) => instantMs(at) >= instantMs(startsAt));
  const own = shiftThings(shift, 'activities').map(([, each]) => each.startedAt);
  return [startsAt, ...own, ...ofHoles, ...(endedAt === undefined ? [] : [endedAt])];
}

/** How long ago a time without a date may be: the longest shift and the hours after it. */
const RECENT_MS = 16 * 3_600_000;

/** The latest such time of day; where that is too long ago, the next one, which has not come: yesterday's shift is gone to first. */
function recent(minute: number, now: Stamp, stamps: readonly Stamp[]): Stamp {
  const at = latestAt(minute, now, stamps);
  const isOld = instantMs(now) - instantMs(at) > RECENT_MS;
  return isOld ? stamp(instantMs(at) + 86_400_000, offsetMin(at)) : at;
}

const isAhead = (at: Stamp, now: Stamp): boolean => instantMs(at) > instantMs(now) + AHEAD_MS;

const notYet = (shift: Document, at: Stamp, now: Stamp) => notYetOf(`shift ${shift.id}`, at, now);

const notYetOf = (thing: string, at: Stamp, now: Stamp) =>
  SHIFT_REFUSALS.timeWrong.at(
    { thing },
    {
      problem: `${localTime(at)} has not come: it is ${localTime(now)}`,
      remedy: 'Give a time that has passed; for an earlier shift go to it first, by F8 and Left.',
    },
  );

function begin(
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

/** Refused where the rig's next shift has begun by then: no minute belongs to two shifts. */
function endFault(shift: Document, documents: readonly Document[], at: Stamp): Result<Made> | undefined {
  const { rig, startsAt } = shiftHeaderOf(shift);
  const next = shiftsOf(documents, rig).find(
    (each) => instantMs(shiftHeaderOf(each).startsAt) > instantMs(startsAt),
  );
  if (next === undefined || instantMs(shiftHeaderOf(next).startsAt) >= instantMs(at)) return undefined;
  const clock = localTime(shiftHeaderOf(next).startsAt);
  return refused(
    timeWrong(
      shift,
      `the next shift, ${next.id}, began at ${clock}`,
      `End this one by ${clock}, or amend when the next one began.`,
    ),
  );
}

function change(
  project: Project,
  documents: readonly Document[],
  shift: Document,
  line: Exclude<RecordLine, { readonly does: 'start' | 'begin' }>,
  { hole, whole }: RecordInput,
  maker: Maker,
): Result<Made> {
  const time = (minute: number | undefined): Stamp =>
    minute === undefined ? maker.at : inShift(documents, shift, minute, maker.at);
  switch (line.does) {
    case 'end': {
      const at = time(line.at);
      if (isAhead(at, maker.at)) return refused(notYet(shift, at, maker.at));
      return endFault(shift, documents, at) ?? endShiftAt(shift, at);
    }
    case 'crew':
      return ok({
        what: `crew ${line.names.join(', ')}`,
        changes: [{ patch: ['shift', 'shift'], set: { crew: [...line.names] } }],
      });
    case 'amend':
      return amend(project, shift, line.at, whole === true ? withGone(shift, line) : line.parts, time);
    case 'overtime': {
      const at = time(line.at);
      return endFault(shift, documents, at) ?? agreeEnd(shift, at);
    }
    case 'split':
      return splitEntry(shift, time(line.at), maker);
    case 'remove':
      return line.of === undefined ? removeEntry(shift, line.at) : removeEvent(shift, line.of, line.at);
    case 'used':
      return use(project, shift, line, maker.at);
    case 'bit':
    case 'water':
      return happened(documents, shift, line, { at: time(line.at), hole }, maker);
  }
}

function amend(
  project: Project,
  shift: Document,
  minute: number,
  { from, to, without, ...parts }: EntryParts,
  time: (minute: number | undefined) => Stamp,
): Result<Made> {
  const set = {
    ...parts,
    ...(from === undefined ? {} : { startedAt: time(from) }),
    ...(to === undefined ? {} : { endedAt: time(to) }),
  };
  return amendEntry(shift, project.shift, minute, set, without);
}

/** The parts of a line that was opened with everything of an entry, and what is missing on it now, to be taken out. */
function withGone(
  shift: Document,
  { at, parts }: Extract<RecordLine, { readonly does: 'amend' }>,
): EntryParts {
  const entry = entryAt(shift, at);
  if (entry === undefined) return parts;
  const gone = (['hole', 'authorisedBy', 'beside', 'remark'] as const).filter(
    (part) => entry[part] !== undefined && parts[part] === undefined,
  );
  const ends = entry.endedAt !== undefined && parts.to === undefined ? (['endedAt'] as const) : [];
  return { ...parts, without: [...(parts.without ?? []), ...gone, ...ends] };
}

/** Consumables are counted with the activity that they were used in: the one at that time, else the one going on or the last. */
function use(
  project: Project,
  shift: Document,
  { count, item: written, at }: Extract<RecordLine, { readonly does: 'used' }>,
  now: Stamp,
): Result<Made> {
  const { rig, date } = shiftHeaderOf(shift);
  const { contract } = rulesOn(project.shift, rig, date);
  const spans = spansOf(shift, now);
  const entry = at === undefined ? (currentActivity(shift, now) ?? spans.at(-1)) : entryAt(shift, at);
  if (entry === undefined)
    return refused(
      timeWrong(shift, 'no activity is recorded that it could be used in', 'Record the activity first.'),
    );
  const before = entry.used ?? [];
  const names = [...(contract.consumables ?? []), ...before].map((each) => each.item);
  const item = itemAmong(names, written);
  const isSame = (each: { readonly item: string }): boolean => itemAmong(names, each.item) === item;
  const counted = before.filter(isSame).reduce((sum, each) => sum + each.count, count);
  const used = [...before.filter((each) => !isSame(each)), { item, count: counted }];
  return ok({
    what: `${count} ${item} used in ${entry.activity}${isPriced(contract, item) ? '' : `; not in the contract, which pays for ${pricedItems(contract)}`}`,
    changes: [{ patch: ['activities', entry.id], set: { used } as Thing }],
  });
}

/** True for a depth that the rod in hand does not reach either. */
function isBelowBit(documents: readonly Document[], id: string, depthMm: number): boolean {
  const hole = documents.find((each) => each.kind === 'hole' && each.id === id);
  return hole !== undefined && depthMm > rodEndBelow(hole, bitAtLeastMm(hole));
}

function happened(
  documents: readonly Document[],
  shift: Document,
  line: Extract<RecordLine, { readonly does: 'bit' | 'water' }>,
  { at, hole }: { readonly at: Stamp; readonly hole: string | undefined },
  maker: Maker,
): Result<Made> {
  const remark = line.remark === undefined ? {} : { remark: line.remark };
  if (line.does === 'bit')
    return ok({
      what: `bit changed at ${localTime(at)}, gauge ${(line.gaugeTenthsMm / 10).toFixed(1)} mm`,
      changes: [
        {
          put: ['bits', maker.newId()],
          thing: {
            at,
            gaugeTenthsMm: line.gaugeTenthsMm,
            ...(hole === undefined ? {} : { hole }),
            ...remark,
          },
        },
      ],
    });
  const within = hole ?? spansOf(shift, at).findLast((span) => span.hole !== undefined)?.hole;
  if (within === undefined)
    return refused(timeWrong(shift, 'no hole is known that the water is in', 'Open the hole first.'));
  if (isBelowBit(documents, within, line.depthMm))
    return refused(
      timeWrong(
        shift,
        `${line.depthMm / 1000} m is deeper than ${within}`,
        'Give the depth that the water was met at, in metres.',
      ),
    );
  return ok({
    what: `water met at ${line.depthMm / 1000} m in ${within}`,
    changes: [
      { put: ['waterStrikes', maker.newId()], thing: { at, hole: within, depthMm: line.depthMm, ...remark } },
    ],
  });
}

const noShift = (rig: string) =>
  SHIFT_REFUSALS.notThere.at(
    { thing: `rig ${rig}` },
    {
      problem: 'no shift has begun that this could be recorded in',
      remedy:
        'Type begin 06:00 with the time it began. The hours of shifts are in project.json, under shift.',
    },
  );
