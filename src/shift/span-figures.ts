import { lengthMm } from '../quantity/interval.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { CHARGE_CLASSES, type ChargeClass } from './charge-class.ts';
import { gapsOf, spansOf } from './current.ts';
import { ownRecord } from './own-record.ts';
import { shiftHeaderOf } from './shift.ts';
import { sumBy } from './shift-record.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/** Metres of a hole in a shift, and the hours of drilling that they took. */
export interface Pace {
  readonly shift: string;
  readonly hole: string;
  readonly mm: number;
  /** Minutes charged by the metre on that hole; 0 where the record has none, and there is no pace then. */
  readonly minutes: number;
}

/** What a span of shifts came to, by our own record. */
export interface SpanFigures {
  /** Minutes by charge class, and those that no one recorded; they make the length of the shifts. */
  readonly byClass: readonly { readonly charge: ChargeClass | 'not recorded'; readonly minutes: number }[];
  /** Standby and breakdowns by cause: the activity with its remark, the longest first. */
  readonly lost: readonly { readonly cause: string; readonly minutes: number }[];
  readonly pace: readonly Pace[];
}

/** Figures over shifts whose presumed ends are filled in. Time lost is what is charged as standby, or not at all. */
export function spanFigures(
  shifts: readonly Document[],
  holes: readonly Document[],
  rules: ShiftRules,
  now: Stamp,
): SpanFigures {
  const spans = shifts.flatMap((shift) => spansOf(shift, now));
  const gaps = shifts.flatMap((shift) => gapsOf(shift, now));
  const minutes = (of: readonly { readonly minutes: number }[]): number =>
    of.reduce((sum, each) => sum + each.minutes, 0);
  const lost = sumBy(
    spans.filter((span) => span.charge === 'standby hourly' || span.charge === 'no charge'),
    ({ activity, remark }) => {
      const label = activityNamed(rules, activity)?.label ?? activity;
      return remark === undefined ? label : `${label}: ${remark}`;
    },
    (span) => span.minutes,
  );
  return {
    byClass: [
      ...CHARGE_CLASSES.map((charge) => ({
        charge,
        minutes: minutes(spans.filter((span) => span.charge === charge)),
      })),
      { charge: 'not recorded' as const, minutes: minutes(gaps) },
    ],
    lost: [...lost]
      .map(([cause, min]) => ({ cause, minutes: min }))
      .filter((each) => each.minutes > 0)
      .toSorted((a, b) => b.minutes - a.minutes),
    pace: shifts.flatMap((shift) => paceOf(shift, holes, now)),
  };
}

function paceOf(shift: Document, holes: readonly Document[], now: Stamp): readonly Pace[] {
  const { work, metres } = ownRecord(shift, holes, now);
  return [...sumBy(metres, (each) => each.hole, lengthMm)].map(([hole, mm]) => ({
    shift: `${shiftHeaderOf(shift).rig} ${shiftHeaderOf(shift).date} ${shiftHeaderOf(shift).name}`,
    hole,
    mm,
    minutes: work
      .filter((each) => each.charge === 'metres' && each.hole === hole)
      .reduce((sum, each) => sum + each.minutes, 0),
  }));
}

/** `20 %` of a whole, `0 %` of nothing. */
export function share(part: number, whole: number): string {
  return `${whole === 0 ? 0 : Math.round((part / whole) * 100)} %`;
}

/** Metres an hour, `12.4`; undefined where no drilling time is recorded. */
export function metresPerHour({ mm, minutes }: Pace): string | undefined {
  return minutes === 0 ? undefined : ((mm / 1000 / minutes) * 60).toFixed(1);
}
