import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Tri } from '../../quantity/tri.ts';
import { holdsVoid, voidFields } from '../../schema/cautions.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';
import { enough, historyOf } from '../evaluate/amount.ts';
import { historyFrom, type Step, stateAt } from '../evaluate/history.ts';
import { isAsked, logByRow } from '../evaluate/log.ts';
import { anyOne, type Outcome, outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm, type ExpectedZone, type Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { type Stretch, within } from '../evaluate/stretch.ts';
import { unloggedBelow, unloggedOf } from '../evaluate/unlogged.ts';
import { windowLegs } from '../evaluate/window.ts';
import { defineCondition, lengthM, metresM } from '../rules/condition-kind.ts';
import { causesIn } from '../rules/doubts.ts';
import { namesOf } from '../rules/names.ts';
import { aboveBit, intervalOf } from '../rules/seen-in-row.ts';

export const voidNear = defineCondition({
  key: 'voidNear',
  about: 'people',
  title: 'A void or old workings, met or expected near.',
  rationale:
    'A code whose caution says _void_ in the last metres, or the rig within so many metres of a void that the plan expects. Goes with _ask_ and `safety`: ' +
    'call before anything else. A metre without return or not logged yet may have been one, and so it stays for as long as nobody has seen every ' +
    'metre where a void was expected, from `aheadM` above it down. No warning is no clearance.',
  example: { inLastM: 6, aheadM: 12 },
  shape: {
    inLastM: lengthM.describe('Back from the lowest logged row, and all that is drilled below it'),
    aheadM: metresM.describe('Before the earliest depth at which an expected void could come'),
  },
  goesFirst: true,
  assess: ({ inLastM, aheadM }, situation) => {
    const expected = situation.expects.filter((zone) => zone.hazard === 'void');
    const met = logged(situation, depthFromMetres(inLastM));
    const near = expected.map((zone) => ahead(situation, zone, depthFromMetres(aheadM)));
    // One that was met is said first; where none was, the one that has a name and a depth.
    return anyOne(situation, met.state === 'cannot tell' ? [...near, met] : [met, ...near]);
  },
});

/**
 * From so far above the lowest logged row to the bit: the rig is metres ahead of the log, and a void counts from the moment it is logged, not only
 * where the bit stood when it was drilled through.
 */
function logged(situation: Situation, aboveMm: number): Outcome {
  const stretches = logByRow(situation, (row) => voidIn(situation.schema, row));
  const headMm = deepestMm(situation);
  const lowestRowMm = situation.rows.at(-1)?.toMm ?? situation.loggedMm;
  const lastMm = aboveMm + headMm - lowestRowMm;
  const legs = windowLegs(stretches, lastMm);
  const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
  const state = enough(sure, possible, 1);
  const inWindow = stretches.filter((each) => each.toMm > headMm - lastMm && each.state === state);
  const seen = within(inWindow, headMm - lastMm);
  const unlogged = state === 'cannot tell' ? unloggedBelow(stretches, headMm - lastMm) : [];
  const progress = loggedWords(state, seen, aboveMm, headMm);
  return outcomeOf(situation, historyOf(legs, 1), {
    progress,
    reason: state === 'cannot tell' ? withCauses(situation, progress, seen) : progress,
    deciding: state === 'no' ? [] : seen.map((each) => intervalOf(each.fromMm, each.toMm)),
    unlogged,
    foreseen: false,
    ahead: aheadOf(
      from(headMm + (sure > 0 || unlogged.length > 0 ? 0 : 1)),
      from(headMm + (state === 'no' || unlogged.length > 0 ? 0 : situation.header.intervalMm)),
    ),
  });
}

function loggedWords(state: Tri, seen: readonly Stretch[], lastMm: number, headMm: number): string {
  const where = `in the last ${formatDepth(lastMm)} m`;
  const lowest = seen.at(-1);
  if (state !== 'yes' || lowest === undefined)
    return state === 'no' ? `no void ${where}` : `a void ${where} can’t be ruled out`;
  return `void logged at ${formatInterval(lowest)}, ${aboveBit(headMm - lowest.toMm)}`;
}

/**
 * From so far before the void to its foot. A void without a foot is never left behind; one with a foot is, once every metre that was drilled
 * near it was seen to be rock: one that nobody saw may have been it.
 */
function ahead(situation: Situation, zone: ExpectedZone, aheadMm: number): Outcome {
  const nearMm = Math.max(0, zone.fromMm - aheadMm);
  const { drilledMm } = situation;
  const unseen = zone.toMm === undefined ? [] : unseenIn(situation, nearMm, zone.toMm);
  const left: Tri = unseen.length === 0 ? 'no' : 'cannot tell';
  const steps: Step[] = [
    { atMm: 0, state: 'no' },
    { atMm: nearMm, state: 'yes' },
    ...(zone.toMm === undefined ? [] : [{ atMm: zone.toMm + 1, state: left }]),
  ];
  const holds = { fromMm: Math.max(nearMm, drilledMm), toMm: zone.toMm ?? Number.POSITIVE_INFINITY };
  const history = historyFrom(steps.filter(({ atMm }) => atMm <= drilledMm));
  const inDoubt = stateAt(history, deepestMm(situation)) === 'cannot tell';
  const text = inDoubt ? unseenWords(zone, unseen) : expectedWords(zone, drilledMm);
  return outcomeOf(situation, history, {
    progress: text,
    reason: inDoubt ? withCauses(situation, text, unseen) : text,
    deciding: inDoubt ? unseen.map((each) => intervalOf(each.fromMm, each.toMm)) : [],
    ...(inDoubt ? { unlogged: unloggedOf(unseen) } : {}),
    foreseen: !inDoubt,
    ahead: aheadOf(holds.fromMm <= holds.toMm ? holds : undefined, from(drilledMm)),
  });
}

/** The metres between two depths that nobody saw to be rock or a void. */
function unseenIn(situation: Situation, topMm: number, footMm: number): readonly Stretch[] {
  return within(
    logByRow(situation, (row) => voidIn(situation.schema, row)),
    topMm,
  )
    .filter(({ fromMm, state }) => fromMm < footMm && state === 'cannot tell')
    .map((each) => (each.toMm > footMm ? { ...each, toMm: footMm } : each));
}

/** `old stope was expected at 30–34 m, and 30–34 was not seen`. */
function unseenWords({ name, fromMm, toMm = fromMm }: ExpectedZone, unseen: readonly Stretch[]): string {
  const metres = unseen.map(formatInterval).join(', ');
  return `${name} was expected at ${formatInterval(intervalOf(fromMm, toMm))} m, and nobody saw ${metres}`;
}

/** `old stope could come at 104 m, 8 m below the bit`, and how it stands once the bit has come to it. */
function expectedWords({ name, fromMm, toMm }: ExpectedZone, drilledMm: number): string {
  const top = formatDepth(fromMm);
  const bit = formatDepth(drilledMm);
  if (drilledMm < fromMm)
    return `${name} could come at ${top} m, ${formatDepth(fromMm - drilledMm)} m below the bit`;
  if (toMm === undefined) return `${name} could come at any metre from ${top} m, the bit is at ${bit} m`;
  const foot = formatDepth(toMm);
  if (drilledMm <= toMm) return `${name} could come at any metre to ${foot} m, the bit is at ${bit} m`;
  return `${name} was expected to ${foot} m, ${formatDepth(drilledMm - toMm)} m above the bit`;
}

/** A fact, and why the logged metres in doubt were not seen to be rock. */
function withCauses(situation: Situation, fact: string, doubts: readonly Stretch[]): string {
  const fields = voidFields(situation.schema);
  const names = namesOf(situation.schema);
  const causes = causesIn(situation, doubts, (row) =>
    row.noReturn
      ? ['no return']
      : fields
          .filter((field) => isAsked(row, field))
          .map((field) => `a question about ${names(field)} is open`),
  );
  return causes === '' ? fact : `${fact}: ${causes}`;
}

/** A void that a row names is one whatever else is asked of it; what nobody saw may have been one. */
function voidIn(schema: LoggingSchema, row: Row): Tri {
  if (holdsVoid(schema, row.cells)) return 'yes';
  return row.noReturn || voidFields(schema).some((field) => isAsked(row, field)) ? 'cannot tell' : 'no';
}
