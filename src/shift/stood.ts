import type { Finding } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import { localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import type { ChargeClass } from './charge-class.ts';
import { activityAt, spansOf } from './current.ts';
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

/** Metres that rods drilled while the record says that the rig stood. */
export interface WhileStood extends Interval {
  /** Permanent id and name of the hole. */
  readonly hole: string;
  readonly name: string;
  readonly rods: number;
  /** Code of the activity, and when it began. */
  readonly activity: string;
  readonly since: Stamp;
}

/** Rods of a shift that were done in a standby or a breakdown, one after another taken together. `now` ends a shift that goes on. */
export function stretchesWhileStood(
  shift: Document,
  holes: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): readonly WhileStood[] {
  const spans = spansOf(shift, now);
  const found: WhileStood[] = [];
  for (const metres of ownRecord(shift, holes, now).metres) {
    const span = metres.at === undefined ? undefined : activityAt(spans, metres.at);
    if (span === undefined || !isStanding(rules, span)) continue;
    const last = found.at(-1);
    if (last?.hole === metres.hole && last.since === span.startedAt && last.toMm === metres.fromMm)
      found[found.length - 1] = { ...last, toMm: metres.toMm, rods: last.rods + 1 };
    else {
      const hole = holes.find(({ id }) => id === metres.hole);
      const name = hole === undefined ? metres.hole : headerOf(hole).name;
      const { fromMm, toMm } = metres;
      const { activity, startedAt } = span;
      found.push({ fromMm, toMm, hole: metres.hole, name, rods: 1, activity, since: startedAt });
    }
  }
  return found;
}

/** `ABRC007: 42–66 m, 4 rods, were drilled while the record says Breakdown, since 10:40`. */
export function stoodWords(rules: ShiftRules, stretch: WhileStood): string {
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
