import type { Finding } from '../finding/finding.ts';
import { cents } from '../quantity/cents.ts';
import { formatMinutes, instantMs, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { timeQueries } from './align.ts';
import { queryName } from './answers.ts';
import { CHARGE_CLASSES, type ChargeClass } from './charge-class.ts';
import { pointAt } from './claims.ts';
import { crewQueries } from './crew.ts';
import { type Span, spansOf } from './current.ts';
import { SHIFT_QUERIES } from './findings.ts';
import { holeFacts } from './hole-facts.ts';
import { isPriced, pricedItems } from './item-name.ts';
import { ownRecord } from './own-record.ts';
import { plodRecord, unknownActivities } from './plod-record.ts';
import { activitiesApart, recordBetween } from './point-in-time.ts';
import { type Reconciliation, reconcile } from './reconcile.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';
import { type ShiftRecord, type Work, workOf } from './shift-record.ts';
import { rulesOn, type ShiftRules } from './shift-rules.ts';
import { changedSince } from './signed.ts';
import { drilledOnAnother, drilledWhileStood } from './stood.ts';

/**
 * The query list of a shift, with the two records side by side: what the plods claim past tolerance, time of theirs on unknown
 * activities, and what makes our own record doubtful. Until a plod has come only our own record is questioned. `documents` hold the
 * holes that the rig may have been on, and its other shifts, whose bits drill on in this one; `now` ends a shift that goes on.
 */
export function queryList(
  shift: Document,
  documents: readonly Document[],
  project: ShiftRules,
  now: Stamp,
): Reconciliation {
  const { rig, date, startsAt, endedAt } = shiftHeaderOf(shift);
  const rules = rulesOn(project, rig, date);
  const holes = documents.filter((each) => each.kind === 'hole');
  const others = documents.filter((each) => each.kind === 'shift' && each.id !== shift.id);
  const file = `shifts/${shift.id}.json`;
  const own = ownRecord(shift, holes, now);
  const facts = holeFacts(holes, rig, startsAt, endedAt ?? now, [...others, shift]);
  const before = workBefore(shift, others);
  const held = reconcile(own, plodRecord(shift, rules), rules, facts, { file }, before);
  const ofOwn = [
    ...spansOf(shift, now)
      .filter(isUnauthorised)
      .map((span) => notAuthorised(file, span)),
    ...drilledWhileStood(shift, holes, rules, now),
    ...drilledOnAnother(shift, holes, rules, now),
    ...notInContract(file, rules, held),
  ];
  if (shiftThings(shift, 'plods').length === 0) return { ...withoutPlod(held), queries: ofOwn };
  return {
    ...held,
    queries: [
      ...timeQueries(shift, rules, now),
      ...held.queries
        .map((query) => pointed(query, shift, own, holes))
        .map((query) => withActivities(query, held, (charge) => activitiesApart(charge, shift, rules, now))),
      ...unknownFindings(file, shift, rules, spansOf(shift, now)),
      ...crewQueries(file, shift),
      ...ofOwn,
      ...changedSince(shift, held),
    ],
  };
}

/** How long after its end a shift is still the one before: a rig that works by day alone goes on the next morning. */
const BEFORE_MS = 24 * 3_600_000;

/** What a rig did in its shift before, by our record; nothing where that is longer ago, or was not ended. */
function workBefore(shift: Document, others: readonly Document[]): readonly Work[] {
  const { rig, startsAt } = shiftHeaderOf(shift);
  const [last] = others
    .flatMap((each) => {
      const { rig: by, endedAt } = shiftHeaderOf(each);
      const ms = endedAt === undefined ? Number.NaN : instantMs(startsAt) - instantMs(endedAt);
      return by === rig && ms >= 0 && ms <= BEFORE_MS ? [{ each, ms }] : [];
    })
    .toSorted((a, b) => a.ms - b.ms);
  return last === undefined ? [] : spansOf(last.each, startsAt).map((span) => workOf(span, span.charge));
}

/** Our own side of a shift whose plod has not come: the other side has no bill, not a bill of nothing with its minimum. */
function withoutPlod({ ownBill, comparisons }: Reconciliation): Omit<Reconciliation, 'queries'> {
  const own = comparisons.filter((each) => each.own !== 0);
  return {
    comparisons: own.map((each) => ({ ...each, plod: 0, difference: -each.own, past: false })),
    ownBill,
    plodBill: { lines: [], total: cents(0, 'down') },
  };
}

/** A query about the metres, wet metres or shots of a hole with the line of the sheet that it comes from. */
function pointed(query: Finding, shift: Document, own: ShiftRecord, holes: readonly Document[]): Finding {
  const [subject, hole = ''] = (query.place.thing ?? '').split(', ');
  if (subject !== 'metres' && subject !== 'wet' && subject !== 'shots') return query;
  const where = pointAt(subject, hole, shift, own, holes);
  return where === '' ? query : { ...query, problem: `${query.problem}; ${where}` };
}

/**
 * A query about hours, or the money for them, with the activities that make the difference. They stand in the remedy: an answer holds for the
 * figures of the problem.
 */
function withActivities(
  query: Finding,
  { ownBill, plodBill }: Reconciliation,
  apart: (charge: ChargeClass) => string,
): Finding {
  const [subject, of = ''] = (query.place.thing ?? '').split(', ');
  const from = [...ownBill.lines, ...plodBill.lines].find(({ what }) => what === of)?.from;
  const hours = subject === 'bill' && from?.subject === 'hours' ? from.of : subject === 'hours' ? of : '';
  const charge = CHARGE_CLASSES.find((each) => each === hours);
  const words = charge === undefined ? '' : apart(charge);
  return words === '' ? query : { ...query, remedy: `${query.remedy} By activity: ${words}.` };
}

function unknownFindings(
  file: string,
  shift: Document,
  rules: ShiftRules,
  spans: readonly Span[],
): readonly Finding[] {
  return unknownActivities(shift, rules).map(({ sheet, line, number }) => {
    const hours = `${formatMinutes(line.minutes)} h`;
    const { startsAt, endsAt } = line;
    const then =
      startsAt === undefined || endsAt === undefined
        ? ''
        : ` from ${localTime(startsAt)} to ${localTime(endsAt)}, where the record has ${recordBetween(spans, rules, startsAt, endsAt)}`;
    return SHIFT_QUERIES.activityUnknown.at(
      { file, thing: `plod ${sheet}, line ${number}` },
      {
        excerpt: `${line.activity} ${hours}`,
        problem: `${line.activity} is not an activity of this project, so its ${hours} are in no total`,
        remedy: `Ask the driller what it was${then}; add it to project.json, under shift, where it is new.`,
      },
    );
  });
}

/** Consumables of either side that the contract names no price for; nothing where it pays for none at all. */
function notInContract(
  file: string,
  { contract }: ShiftRules,
  { comparisons }: Pick<Reconciliation, 'comparisons'>,
): readonly Finding[] {
  return comparisons
    .filter(
      ({ subject, of, own, plod }) => subject === 'consumables' && own + plod > 0 && !isPriced(contract, of),
    )
    .map(({ of, own, plod }) =>
      SHIFT_QUERIES.notInContract.at(
        { file, thing: `price, ${of}` },
        {
          problem: `${of}: ${Math.max(own, plod)} used, not in the contract, so nothing is paid for it`,
          remedy: `The contract pays for ${pricedItems(contract)}. Ask which of them it is, or agree a price for project.json, under shift.`,
        },
      ),
    );
}

/** A query as it is in a list, with the name that it is answered by and what came of it. */
export const queryText = (query: Finding, answer: string): string =>
  `${queryName(query)} [${answer}] ${query.problem}\n   ${query.remedy}`;

/** Standby that no one is named for. */
export function isUnauthorised(span: Span): boolean {
  return span.charge === 'standby hourly' && span.authorisedBy === undefined;
}

function notAuthorised(file: string, span: Span): Finding {
  return SHIFT_QUERIES.standbyNotAuthorised.at(
    { file, thing: `${span.activity} from ${localTime(span.startedAt)}` },
    {
      problem: `standby from ${localTime(span.startedAt)}, ${formatMinutes(span.minutes)} h: who authorised it is not recorded`,
      remedy: `Ask, then record it: ${localTime(span.startedAt)} by and the name.`,
    },
  );
}
