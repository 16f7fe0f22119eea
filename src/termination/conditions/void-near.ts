import * as z from 'zod';
import { wordAt } from '../../hole/drilled.ts';
import { depthFromMetres, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import type { Tri } from '../../quantity/tri.ts';
import { byReference } from '../../record/by-reference.ts';
import { breaksCarry, holdsVoid, voidFields } from '../../schema/cautions.ts';
import { fieldNamed, type LoggingSchema } from '../../schema/logging-schema.ts';
import type { Row } from '../../value/row.ts';
import { enough, historyOf } from '../evaluate/amount.ts';
import { historyFrom, type Step, stateAt } from '../evaluate/history.ts';
import { isAsked, logByRow, readField } from '../evaluate/log.ts';
import { anyOne, type Outcome, outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm, type ExpectedZone, type Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { type Stretch, within } from '../evaluate/stretch.ts';
import { joined, unloggedBelow, unloggedOf } from '../evaluate/unlogged.ts';
import { windowLegs } from '../evaluate/window.ts';
import { defineCondition, lengthM, metresM } from '../rules/condition-kind.ts';
import { asInterval, causesIn, rangesWords, typedFor } from '../rules/doubts.ts';
import { namesOf } from '../rules/names.ts';
import { aboveBit, intervalOf } from '../rules/seen-in-row.ts';

export const voidNear = defineCondition({
  key: 'voidNear',
  about: 'people',
  title: 'A void or old workings, met or expected near.',
  rationale:
    'A code whose caution says _void_ in the last metres, or the rig within so many metres of a void that the plan expects. Goes with _ask_ and `safety`: ' +
    'call before anything else. A metre without return or not logged yet may have been one, and so it stays for as long as no one has seen every ' +
    'metre where a void was expected, from `aheadM` above it down. A cavity that the driller felt counts as one logged, whatever he says later, until its record is taken out by hand. His word that nothing dropped and ' +
    'no cavity was felt does not count, unless the rule says `drillersWord`: then it stands for metres not logged yet, and only until they are; never for a metre ' +
    'where a void was logged and cleared, nor for one without return, nor where a void is expected. No warning is no clearance.',
  example: { inLastM: 6, aheadM: 12 },
  shape: {
    inLastM: lengthM.describe('Back from the lowest logged row, and all that is drilled below it'),
    aheadM: metresM.describe('Before the earliest depth at which an expected void could come'),
    drillersWord: z
      .literal(true)
      .optional()
      .describe(
        'Metres not logged yet count as no void where the driller said that nothing dropped and no cavity was felt (;solid); where this is left out only the log will do',
      ),
  },
  goesFirst: true,
  assess: ({ inLastM, aheadM, drillersWord = false }, situation) => {
    const expected = situation.expects.filter((zone) => zone.hazard === 'void');
    const found = met(situation, depthFromMetres(inLastM), drillersWord);
    const near = expected.map((zone) => ahead(situation, zone, depthFromMetres(aheadM)));
    // One that was met is said first; where none was, the one that has a name and a depth.
    if (found.state !== 'cannot tell') return anyOne(situation, [found, ...near]);
    const either = anyOne(situation, [...near, found]);
    // An expected void drowns no metre of which nothing came up: both are reasons to call. That the log is behind the rig is no news.
    return either.state === 'yes' && found.until !== undefined
      ? { ...either, reason: `${either.reason}; ${found.reason}` }
      : either;
  },
});

/**
 * From so far above the lowest logged row to the bit: the rig is metres ahead of the log, and a void counts from the moment it is logged, not only
 * where the bit stood when it was drilled through.
 */
function met(situation: Situation, aboveMm: number, drillersWord: boolean): Outcome {
  const log = logByRow(situation, (row) => voidIn(situation.schema, row));
  const stretches = withFelt(log, situation, drillersWord);
  const headMm = deepestMm(situation);
  const lowestRowMm = situation.rows.at(-1)?.toMm ?? situation.loggedMm;
  const lastMm = aboveMm + headMm - lowestRowMm;
  const legs = windowLegs(stretches, lastMm);
  const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
  const state = enough(sure, possible, 1);
  const window = within(stretches, headMm - lastMm);
  const seen = window.filter((each) => each.state === state);
  const unlogged = state === 'cannot tell' ? unloggedBelow(stretches, headMm - lastMm) : [];
  const byWord = state === 'no' ? window.filter(({ felt }) => felt !== undefined).map(asInterval) : [];
  const progress = metWords(state, window, byWord, { lastMm: aboveMm, headMm });
  return outcomeOf(situation, historyOf(legs, 1), {
    progress,
    reason: state === 'cannot tell' ? withCauses(situation, progress, seen) : progress,
    deciding: state === 'no' ? [] : joined(seen.map(asInterval)),
    unlogged,
    needs: unlogged.length === 0 ? [] : wordWanted(seen, drillersWord),
    ...(state === 'cannot tell' ? untilSeen(situation, seen, aboveMm) : {}),
    byWord,
    foreseen: false,
    ahead: aheadOf(
      from(headMm + (sure > 0 || unlogged.length > 0 || byWord.length > 0 ? 0 : 1)),
      from(headMm + (state === 'no' || unlogged.length > 0 ? 0 : situation.header.intervalMm)),
    ),
  });
}

/** A stretch, and what the driller felt there, where that is what it says. */
type Known = Stretch & {
  readonly felt?: 'solid' | 'cavity';
  /** That none was felt was said of it too. */
  readonly against?: true;
  /** A void was logged here, and cleared. */
  readonly cleared?: true;
};

/**
 * The log with the driller's word on it: a cavity is one whatever the log says; that none was felt stands, where the rule takes it, for a metre that no one has logged yet, and for no other.
 */
function withFelt(
  log: readonly Stretch[],
  { felt = [], voidsCleared = [] }: Situation,
  takesSolid: boolean,
): readonly Known[] {
  if (felt.length === 0 && voidsCleared.length === 0) return log;
  const edges = [...felt, ...voidsCleared]
    .flatMap(({ fromMm, toMm }) => [fromMm, toMm])
    .sort((a, b) => a - b);
  return log.flatMap((stretch) => {
    const inside = edges.filter((edge) => edge > stretch.fromMm && edge < stretch.toMm);
    const cuts = [...new Set([stretch.fromMm, ...inside, stretch.toMm])];
    return cuts.slice(1).map((toMm, index): Known => {
      const fromMm = cuts[index]!;
      const covers = (each: Pick<Interval, 'fromMm' | 'toMm'>) => each.fromMm <= fromMm && each.toMm >= toMm;
      const word = wordAt(felt, { fromMm: depthFromMm(fromMm), toMm: depthFromMm(toMm) })?.felt;
      const against = felt.some((each) => each.felt === 'solid' && covers(each))
        ? ({ against: true } as const)
        : {};
      if (word === 'cavity') return { fromMm, toMm, state: 'yes', felt: word, ...against };
      if (stretch.unlogged && voidsCleared.some(covers)) return { ...stretch, fromMm, toMm, cleared: true };
      if (word === 'solid' && stretch.unlogged)
        return takesSolid
          ? { fromMm, toMm, state: 'no', felt: word }
          : { ...stretch, fromMm, toMm, felt: word };
      return { ...stretch, fromMm, toMm, ...(stretch.state === 'yes' ? against : {}) };
    });
  });
}

/** What the driller's word could do for metres not logged: where the rule takes it, how it is noted; where it was given in vain, that it was. */
function wordWanted(seen: readonly Known[], takesSolid: boolean): readonly string[] {
  const cleared = seen.filter((each) => each.cleared).map(asInterval);
  if (cleared.length > 0)
    return [
      `a void was logged at ${rangesWords(joined(cleared))} and cleared: no word but the log will do there`,
    ];
  const unlogged = seen.filter((each) => each.unlogged);
  if (takesSolid) return [`or the driller’s word, if no cavity was felt: ${typedFor('solid', unlogged)}`];
  const given = unlogged.filter(({ felt }) => felt === 'solid').map(asInterval);
  return given.length === 0
    ? []
    : [`the driller’s word on ${rangesWords(given)} does not count for this rule`];
}

/** What ends the doubt over metres of which nothing came up: no one can log them better. */
function untilSeen(
  situation: Situation,
  seen: readonly Stretch[],
  aboveMm: number,
): { readonly until?: string } {
  const lost = situation.rows.filter(
    (row) =>
      breaksCarry(situation.schema, row) &&
      seen.some(({ fromMm, toMm }) => row.fromMm < toMm && row.toMm > fromMm),
  );
  const lowest = lost.at(-1);
  if (lowest === undefined) return {};
  const clearMm = Math.min(lowest.toMm, seen.at(-1)?.toMm ?? lowest.toMm) + aboveMm;
  return {
    until: `in doubt until the log is past ${formatDepth(clearMm)} m, or a call is recorded (;extend)`,
  };
}

function metWords(
  state: Tri,
  window: readonly Known[],
  byWord: readonly Interval[],
  { lastMm, headMm }: { readonly lastMm: number; readonly headMm: number },
): string {
  const where = `in the last ${formatDepth(lastMm)} m`;
  const lowest = window.findLast((each) => each.state === 'yes');
  if (lowest !== undefined) {
    const found = lowest.felt === undefined ? 'void logged' : 'cavity felt by the driller';
    const against = lowest.against === undefined ? '' : ', though the driller’s word was no cavity there too';
    return `${found} at ${formatInterval(lowest)}, ${aboveBit(headMm - lowest.toMm)}${against}`;
  }
  if (state !== 'no') return `not all of the last ${formatDepth(lastMm)} m seen`;
  return byWord.length === 0
    ? `no void ${where}`
    : `no void ${where}, at ${rangesWords(byWord)} by the driller’s word alone`;
}

/**
 * From so far before the void to its foot. A void without a foot is never left behind; one with a foot is, once every metre that was drilled
 * near it was seen to be rock: one that no one saw may have been it.
 */
function ahead(situation: Situation, zone: ExpectedZone, aheadMm: number): Outcome {
  const nearMm = Math.max(0, zone.fromMm - aheadMm);
  const bitMm = deepestMm(situation);
  // A void that was met where it was expected is the one: metres beside it that no one saw are no second one.
  const isMet = zone.toMm !== undefined && isVoidIn(situation, zone.fromMm, zone.toMm);
  const unseen = zone.toMm === undefined || isMet ? [] : unseenIn(situation, nearMm, zone.toMm);
  const left: Tri = unseen.length === 0 ? 'no' : 'cannot tell';
  const steps: Step[] = [
    { atMm: 0, state: 'no' },
    { atMm: nearMm, state: 'yes' },
    ...(zone.toMm === undefined ? [] : [{ atMm: zone.toMm + 1, state: left }]),
  ];
  const holds = { fromMm: Math.max(nearMm, bitMm), toMm: zone.toMm ?? Number.POSITIVE_INFINITY };
  const history = historyFrom(steps.filter(({ atMm }) => atMm <= bitMm));
  const inDoubt = stateAt(history, bitMm) === 'cannot tell';
  const text = inDoubt ? unseenWords(zone, unseen) : expectedWords(zone, bitMm);
  return outcomeOf(situation, history, {
    progress: text,
    reason: inDoubt ? withCauses(situation, text, unseen) : text,
    deciding: inDoubt ? unseen.map((each) => intervalOf(each.fromMm, each.toMm)) : [],
    ...(inDoubt ? { unlogged: unloggedOf(unseen) } : {}),
    foreseen: !inDoubt,
    ahead: aheadOf(holds.fromMm <= holds.toMm ? holds : undefined, from(bitMm)),
  });
}

/** True where a void was logged, or felt by the driller, between two depths. */
function isVoidIn(situation: Situation, topMm: number, footMm: number): boolean {
  const isIn = (each: Pick<Interval, 'fromMm' | 'toMm'>) => each.fromMm < footMm && each.toMm > topMm;
  const { schema, rows, felt = [] } = situation;
  return (
    rows.some((row) => isIn(row) && holdsVoid(schema, row.cells)) ||
    felt.some((each) => each.felt === 'cavity' && isIn(each))
  );
}

/** The metres between two depths that no one saw to be rock or a void. */
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
  return `${name} was expected at ${formatInterval(intervalOf(fromMm, toMm))} m, and ${metres} not seen`;
}

/** `old stope could come at 104 m, 8 m below the bit`, and its state once the bit has come to it. With a rod in hand the bit may be deeper. */
function expectedWords({ name, fromMm, toMm }: ExpectedZone, bitMm: number): string {
  const top = formatDepth(fromMm);
  const bit = `the bit is at ${formatDepth(bitMm)} m or deeper`;
  if (bitMm < fromMm)
    return `${name} could come at ${top} m, ${formatDepth(fromMm - bitMm)} m below the bit or less`;
  if (toMm === undefined) return `${name} could come at any metre from ${top} m, ${bit}`;
  const foot = formatDepth(toMm);
  if (bitMm <= toMm) return `${name} could come at any metre to ${foot} m, ${bit}`;
  return `${name} was expected to ${foot} m, ${formatDepth(bitMm - toMm)} m above the bit`;
}

/** A fact, and why the logged metres in doubt were not seen to be rock. */
function withCauses(situation: Situation, fact: string, doubts: readonly Stretch[]): string {
  const fields = voidFields(situation.schema);
  const names = namesOf(situation.schema);
  const causes = causesIn(situation, doubts, (row) =>
    row.noReturn
      ? ['no return']
      : breaksCarry(situation.schema, row)
        ? ['loss of return']
        : [
            ...fields
              .filter((field) => isAsked(row, field))
              .map((field) => `a question about ${names(field)} is open`),
            ...unobserved(situation.schema, row)
              .filter((field) => !isAsked(row, field))
              .map((field) => `${names(field)} not observed`),
          ],
  );
  return causes === '' ? fact : `${fact}: ${causes}`;
}

/**
 * A void that a row names is one whatever else is asked of it; what no one saw may have been one: no return, by mark or by a code of nothing to
 * sieve, a question, or none of the fields looked at that could name it.
 */
const voidIn = byReference((schema: LoggingSchema, row: Row): Tri => {
  if (holdsVoid(schema, row.cells)) return 'yes';
  if (row.noReturn || breaksCarry(schema, row)) return 'cannot tell';
  const fields = voidFields(schema);
  const isBlind = fields.length > 0 && unobserved(schema, row).length === fields.length;
  return fields.some((field) => isAsked(row, field)) || isBlind ? 'cannot tell' : 'no';
});

/** Fields that could name a void, and that no one looked at in a row; none where a schema has no such field. */
function unobserved(schema: LoggingSchema, row: Row): readonly string[] {
  return voidFields(schema).filter((name) => {
    const field = fieldNamed(schema, name);
    return field === undefined || readField(schema, row, field).says === 'unknown';
  });
}
