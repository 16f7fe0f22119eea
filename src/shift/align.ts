import type { Finding } from '../finding/finding.ts';
import { formatMinutes, localTime, type Stamp, stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { minuteOf, type Span, spansOf } from './current.ts';
import { SHIFT_QUERIES } from './findings.ts';
import { type PlodLine, shiftHeaderOf, shiftThings } from './shift.ts';
import { offsetsOf } from './shift-clock.ts';
import { activityNamed, type ShiftRules } from './shift-rules.ts';

/** A line of a plod with its number on the sheet, and its times in whole minutes since 1970. */
interface TimedLine {
  readonly number: number;
  readonly line: PlodLine;
  readonly from: number;
  readonly to: number;
}

/** A stretch of time over which neither side changes. */
export interface Stretch {
  readonly from: Stamp;
  readonly to: Stamp;
  readonly minutes: number;
  readonly own: Span | undefined;
  readonly plod: readonly TimedLine[];
}

/** Lines of the plods of a shift that have times, in the order of the sheet. */
export function timedLines(shift: Document): readonly TimedLine[] {
  return shiftThings(shift, 'plodLines').flatMap(([, line], index) =>
    line.startsAt === undefined || line.endsAt === undefined
      ? []
      : [{ number: index + 1, line, from: minuteOf(line.startsAt), to: minuteOf(line.endsAt) }],
  );
}

/** Both records side by side in time: every stretch of the shift, and of the plod where it runs past it. Their minutes make the whole. */
export function stretchesOf(shift: Document, now: Stamp): readonly Stretch[] {
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  const spans = spansOf(shift, now).filter((span) => span.minutes > 0);
  const lines = timedLines(shift);
  const cuts = [
    minuteOf(startsAt),
    minuteOf(endedAt ?? now),
    ...spans.flatMap((span) => [minuteOf(span.startedAt), minuteOf(span.until)]),
    ...lines.flatMap(({ from, to }) => [from, to]),
  ].toSorted((a, b) => a - b);
  const offsetAt = offsetsOf([
    startsAt,
    ...spans.map((span) => span.startedAt),
    ...lines.flatMap(({ line }) => (line.startsAt === undefined ? [] : [line.startsAt])),
    ...(endedAt === undefined ? [] : [endedAt]),
  ]);
  const at = (minute: number): Stamp => stamp(minute * 60_000, offsetAt(minute * 60_000));
  return cuts.slice(1).flatMap((to, index): readonly Stretch[] => {
    const from = cuts[index] ?? to;
    if (from === to) return [];
    return [
      {
        from: at(from),
        to: at(to),
        minutes: to - from,
        own: spans.findLast((span) => minuteOf(span.startedAt) <= from && minuteOf(span.until) >= to),
        plod: lines.filter((each) => each.from <= from && each.to >= to),
      },
    ];
  });
}

type Difference = 'timeDiffers' | 'activityDiffers' | 'holeDiffers' | 'overlap' | 'missing';

/** Where the plod and the record differ in time, pointed at by the clock, each stretch past tolerance once. Lines without times are left out. */
export function timeQueries(shift: Document, rules: ShiftRules, now: Stamp): readonly Finding[] {
  const all = shiftThings(shift, 'plodLines');
  const timed = timedLines(shift);
  if (timed.length === 0) return [];
  const whole = timed.length === all.length;
  const differing = stretchesOf(shift, now).map((stretch) => ({
    ...stretch,
    kind: differenceOf(stretch, rules, whole),
  }));
  return (
    joined(differing)
      // Two lines at one time are wrong however short it is: whoever typed = was told that it is queried.
      .filter((each) => each.kind === 'overlap' || each.minutes > rules.tolerances.minutes)
      .map((each) => finding(shift, rules, each))
  );
}

type Differing = Stretch & { readonly kind: Difference | undefined };

function differenceOf({ own, plod }: Stretch, rules: ShiftRules, whole: boolean): Difference | undefined {
  const [line, other] = plod;
  if (other !== undefined) return 'overlap';
  if (line === undefined) return whole && own !== undefined ? 'missing' : undefined;
  const charge = activityNamed(rules, line.line.activity)?.charge;
  if (charge === undefined) return undefined;
  if (own?.charge !== charge) return 'timeDiffers';
  if (own.activity !== line.line.activity) return 'activityDiffers';
  const { hole } = line.line;
  return hole !== undefined && own.hole !== undefined && hole !== own.hole ? 'holeDiffers' : undefined;
}

/** Stretches that touch and differ in the same way, as one. */
function joined(stretches: readonly Differing[]): readonly (Differing & { readonly kind: Difference })[] {
  const found: (Differing & { readonly kind: Difference })[] = [];
  for (const each of stretches) {
    const last = found.at(-1);
    if (each.kind === undefined) continue;
    if (last !== undefined && last.to === each.from && sameKey(last) === sameKey(each))
      found[found.length - 1] = { ...last, to: each.to, minutes: last.minutes + each.minutes };
    else found.push({ ...each, kind: each.kind });
  }
  return found;
}

function sameKey({ kind, own, plod }: Differing): string {
  const claims = plod.map(({ line }) => [line.activity, line.hole ?? null]);
  return JSON.stringify(
    kind === 'missing' || kind === 'overlap'
      ? [kind, claims]
      : [kind, own?.charge ?? null, own?.activity ?? null, own?.hole ?? null, claims],
  );
}

function finding(
  shift: Document,
  rules: ShiftRules,
  each: Differing & { readonly kind: Difference },
): Finding {
  const clocks = `${localTime(each.from)}–${localTime(each.to)}`;
  const place = { file: `shifts/${shift.id}.json`, thing: clocks };
  return SHIFT_QUERIES[each.kind].at(place, words(rules, each, clocks));
}

/** What differs over a stretch, worded to be read out to the driller. */
function words(
  rules: ShiftRules,
  { kind, own, plod, minutes, from, to }: Differing & { readonly kind: Difference },
  clocks: string,
): { readonly problem: string; readonly remedy: string } {
  const label = (code: string): string => activityNamed(rules, code)?.label.toLowerCase() ?? code;
  const claim = ({ line, number }: TimedLine): string =>
    `${label(line.activity)}${line.hole === undefined ? '' : ` on ${line.hole}`} (line ${number})`;
  const ours =
    own === undefined
      ? 'nothing'
      : `${label(own.activity)}${own.hole === undefined ? '' : ` on ${own.hole}`}`;
  const hours = `${formatMinutes(minutes)} h`;
  const said = plod.map(claim).join(' and ');
  const what = `Ask: what did the rig do from ${localTime(from)} to ${localTime(to)}?`;
  if (kind === 'overlap')
    return {
      problem: `${clocks}, ${hours}: the sheet has ${said} at the same time`,
      remedy: `${what} One of the two goes.`,
    };
  if (kind === 'missing')
    return { problem: `${clocks}, ${hours}: the sheet has nothing, the record ${ours}`, remedy: what };
  if (kind === 'activityDiffers')
    return { problem: `${clocks}, ${hours}: the sheet has ${said}, the record ${ours}`, remedy: what };
  if (kind === 'holeDiffers')
    return {
      problem: `${clocks}, ${hours}: the sheet has ${said}, the record ${ours}`,
      remedy: 'Ask: which hole was that?',
    };
  const [line] = plod;
  const charge = line === undefined ? '' : (activityNamed(rules, line.line.activity)?.charge ?? '');
  return {
    problem: `${clocks}, ${hours}: the sheet has ${said}, ${charge}; the record ${ours}${own === undefined ? '' : `, ${own.charge}`}`,
    remedy: what,
  };
}
