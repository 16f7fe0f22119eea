import type { Finding } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import { localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { ChargeClass } from './charge-class.ts';
import { activityAt, type Span, spansOf, spansTouching } from './current.ts';
import { SHIFT_QUERIES } from './findings.ts';
import { ownRecord } from './own-record.ts';
import type { Activity } from './shift.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/** Charged so, a rig usually stands. A move or a survey is paid like drilling in some contracts, so those say nothing. */
const STANDING: readonly ChargeClass[] = ['standby hourly', 'no charge'];

/** True of an activity in which no rod can be drilled. A redrill at the driller's fault is not charged either: its name says that it drills. */
export function isStanding(
  rules: ShiftRules,
  { activity, charge }: Pick<Activity, 'activity' | 'charge'>,
): boolean {
  const named = `${activity} ${activityNamed(rules, activity)?.label ?? ''}`;
  return STANDING.includes(charge) && !/drill/i.test(named);
}

/** Metres that rods drilled in an activity that can't be theirs. */
export interface DrilledIn extends Interval {
  /** Permanent id and name of the hole. */
  readonly hole: string;
  readonly name: string;
  readonly rods: number;
  /** The activity: its code, its hole, and when it began. */
  readonly activity: string;
  readonly of?: string;
  readonly since: Stamp;
}

/** Rods of a shift in the activities that `under` gives for them, one after another taken together. `now` ends a shift that goes on. */
function stretchesUnder(
  shift: Document,
  holes: readonly Document[],
  now: Stamp,
  under: (at: Stamp, hole: string) => Span | undefined,
): readonly DrilledIn[] {
  const nameOf = (id: string): string => {
    const hole = holes.find((each) => each.id === id);
    return hole === undefined ? id : headerOf(hole).name;
  };
  const found: DrilledIn[] = [];
  for (const { hole, at, fromMm, toMm } of ownRecord(shift, holes, now).metres) {
    const span = at === undefined ? undefined : under(at, hole);
    if (span === undefined) continue;
    const last = found.at(-1);
    if (last?.hole === hole && last.since === span.startedAt && last.toMm === fromMm)
      found[found.length - 1] = { ...last, toMm, rods: last.rods + 1 };
    else {
      const of = span.hole === undefined ? {} : { of: nameOf(span.hole) };
      const { activity, startedAt: since } = span;
      found.push({ fromMm, toMm, hole, name: nameOf(hole), rods: 1, activity, ...of, since });
    }
  }
  return found;
}

/** Rods of a shift that were done in a standby or a breakdown. */
export function stretchesWhileStood(
  shift: Document,
  holes: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): readonly DrilledIn[] {
  const spans = spansOf(shift, now);
  return stretchesUnder(shift, holes, now, (at) => {
    const span = activityAt(spans, at);
    return span !== undefined && isStanding(rules, span) ? span : undefined;
  });
}

/** `ABRC007: 42–66 m, 4 rods, were drilled while the record says Breakdown, since 10:40`. */
export function stoodWords(rules: ShiftRules, stretch: DrilledIn): string {
  const { name, rods, since, activity } = stretch;
  const label = activityNamed(rules, activity)?.label ?? activity;
  return `${name}: ${formatInterval(stretch)} m, ${rods === 1 ? 'one rod, was' : `${rods} rods, were`} drilled while the record says ${label}, since ${localTime(since)}`;
}

/** The same as findings of the shift. */
export function drilledWhileStood(
  shift: Document,
  holes: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): readonly Finding[] {
  return stretchesWhileStood(shift, holes, rules, now).map((stretch) =>
    SHIFT_QUERIES.drilledOnStandby.at(
      { file: `shifts/${shift.id}.json`, hole: stretch.hole, fromMm: stretch.fromMm, toMm: stretch.toMm },
      {
        problem: stoodWords(rules, stretch),
        remedy: 'Ask when drilling went on, then record it: F8 and drilling 10:40, or whenever it was.',
      },
    ),
  );
}

/**
 * Rods that lie in the time of another hole, as findings of the shift; nothing where the rig stood, which is said by itself. Of the activities that
 * touch the minute of a rod any may be its own.
 */
export function drilledOnAnother(
  shift: Document,
  holes: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): readonly Finding[] {
  const spans = spansOf(shift, now);
  const stretches = stretchesUnder(shift, holes, now, (at, hole) => {
    const touching = spansTouching(spans, at);
    const isItsOwn = touching.some((span) => span.hole === undefined || span.hole === hole);
    const span = touching.at(-1);
    return isItsOwn || span === undefined || isStanding(rules, span) ? undefined : span;
  });
  return stretches.map((stretch) => {
    const { hole, fromMm, toMm, name, rods, activity, of, since } = stretch;
    const label = activityNamed(rules, activity)?.label ?? activity;
    return SHIFT_QUERIES.drilledOnAnother.at(
      { file: `shifts/${shift.id}.json`, hole, fromMm, toMm },
      {
        problem: `${name}: ${formatInterval(stretch)} m, ${rods === 1 ? 'one rod, was' : `${rods} rods, were`} drilled while the record says ${label} on ${of}, since ${localTime(since)}`,
        remedy: `Ask the driller which hole it was. If the line is of ${name}: F8 and ${localTime(since)} ${name}. If the rig went there later: F8 and ${activity}, the time, ${name}.`,
      },
    );
  });
}
