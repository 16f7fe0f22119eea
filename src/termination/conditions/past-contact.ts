import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { type History, historyFrom, type Step } from '../evaluate/history.ts';
import { logWhere } from '../evaluate/log.ts';
import { type Outcome, outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { mayHold, unloggedOf } from '../evaluate/unlogged.ts';
import { defineCondition, lengthM, metresM } from '../rules/condition-kind.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf, withDoubt } from '../rules/seen-in-row.ts';

/** How thick the rock below a contact has to be where the rule doesn't say (common practice): a dyke of a metre or two is no contact. */
const THICK_M = 3;

export const pastContact = defineCondition({
  key: 'pastContact',
  about: 'log',
  title: 'The hole is so far past a contact.',
  rationale:
    `The contact is the top of the first metres that are \`into\` the rock below it for \`thickM\` in a row (${THICK_M} m where it isn’t said): a thin dyke ` +
    'is no contact, nor is a second rock in a row; only the main rock counts. How far past is measured at the drilled head. ' +
    'The contact may lie in metres drilled and not yet logged: without one in the log they make it can’t tell.',
  example: { into: { field: 'rock', is: 'GRN' }, byM: 12, thickM: 3 },
  shape: {
    into: conditionSchema.describe('What holds below the contact'),
    byM: metresM.describe('Metres past it'),
    thickM: lengthM
      .optional()
      .describe(`How thick the rock below has to be, in metres; ${THICK_M} where it isn’t said`),
  },
  asks: ({ into }) => [into],
  assess: ({ into, byM, thickM }, situation) => {
    const stretches = logWhere(situation, into, 'main rock');
    const thickMm = depthFromMetres(thickM ?? THICK_M);
    // Past it is past its top by what is asked, and by as much as makes a contact of it.
    const needMm = Math.max(1, depthFromMetres(byM), thickMm);
    const sure = runsWhere(stretches, ({ state }) => state === 'yes').find((run) => lengthMm(run) >= thickMm);
    const maybe = runsWhere(stretches, ({ state }) => state !== 'no').find((run) => lengthMm(run) >= thickMm);
    const history = contactHistory(situation, needMm, sure?.fromMm, maybe?.fromMm);
    const doubts = stretches.filter(
      (each) => each.state === 'cannot tell' && each.fromMm < (sure?.fromMm ?? Number.POSITIVE_INFINITY),
    );
    const what = cutOff(situation.schema, into);
    const found =
      sure === undefined
        ? notFound(situation, stretches, what, thickMm)
        : past(situation, sure, what, Math.max(1, depthFromMetres(byM)), needMm);
    const outcome = outcomeOf(situation, history, {
      ...found,
      unlogged: unloggedOf(doubts),
      ahead: aheadOf(
        from(Math.max(situation.drilledMm, earliestTopMm(stretches, situation, thickMm) + needMm)),
        failing(situation, sure, needMm),
      ),
    });
    if (outcome.state !== 'cannot tell') return outcome;
    const { progress } = outcome;
    return {
      ...outcome,
      reason: withDoubt(situation, into, progress, doubts),
      deciding: doubts.map((each) => intervalOf(each.fromMm, each.toMm)),
    };
  },
});

type Run = { readonly fromMm: number; readonly toMm: number };

const lengthMm = ({ fromMm, toMm }: Run): number => toMm - fromMm;

/** Stretches next to each other that are wanted, as one each. */
function runsWhere(stretches: readonly Stretch[], wanted: (each: Stretch) => boolean): readonly Run[] {
  const runs: Run[] = [];
  for (const each of stretches) {
    if (!wanted(each)) continue;
    const above = runs.at(-1);
    if (above?.toMm === each.fromMm) runs.splice(-1, 1, { fromMm: above.fromMm, toMm: each.toMm });
    else runs.push(each);
  }
  return runs;
}

type Said = Pick<Outcome, 'amount' | 'progress' | 'reason' | 'deciding' | 'foreseen' | 'proviso'>;

function past(situation: Situation, contact: Run, what: string, byMm: number, needMm: number): Said {
  const haveMm = Math.max(0, situation.drilledMm - contact.fromMm);
  const text = `drilled ${formatDepth(haveMm)} of ${formatDepth(byMm)} m past the contact at ${formatDepth(contact.fromMm)} m (${what})`;
  return {
    amount: { haveMm, needMm },
    progress: text,
    reason: text,
    deciding: [intervalOf(contact.fromMm, contact.toMm)],
    foreseen: true,
  };
}

function notFound(situation: Situation, stretches: readonly Stretch[], what: string, thickMm: number): Said {
  const thin = runsWhere(stretches, ({ state }) => state === 'yes').at(-1);
  const thick = `${formatDepth(thickMm)} m thick`;
  const footMm = stretches.findLast(({ unlogged }) => !unlogged)?.toMm ?? situation.header.logFromMm;
  const text =
    thin === undefined
      ? `no contact to ${formatDepth(footMm)} m (${what}, ${thick})`
      : `no contact to ${formatDepth(footMm)} m (${what} at ${formatInterval(thin)}, not ${thick})`;
  return { progress: text, reason: text, deciding: [], foreseen: false, proviso: what };
}

/** Past a contact by the depth of the hole, the rig's: surely from the sure one on, maybe from the first that may be one. */
function contactHistory(
  { drilledMm }: Situation,
  needMm: number,
  sureMm: number | undefined,
  maybeMm: number | undefined,
): History {
  const steps: Step[] = [{ atMm: 0, state: 'no' }];
  if (maybeMm !== undefined) steps.push({ atMm: maybeMm + needMm, state: 'cannot tell' });
  if (sureMm !== undefined) steps.push({ atMm: sureMm + needMm, state: 'yes' });
  return historyFrom(steps.filter(({ atMm }) => atMm === 0 || atMm <= drilledMm));
}

/** The shallowest top that a contact can come to have, what is not logged turning out as it suits. */
function earliestTopMm(stretches: readonly Stretch[], situation: Situation, thickMm: number): number {
  const headMm = deepestMm(situation);
  const run = runsWhere(stretches, mayHold).find((each) => lengthMm(each) >= thickMm || each.toMm === headMm);
  return run?.fromMm ?? headMm;
}

/** Until a sure contact is far enough above, or for ever where there is none. */
function failing(situation: Situation, sure: Run | undefined, needMm: number) {
  const headMm = deepestMm(situation);
  if (sure === undefined) return from(headMm);
  const dueMm = sure.fromMm + needMm;
  return situation.drilledMm >= dueMm ? undefined : { fromMm: headMm, toMm: Math.max(headMm, dueMm - 1) };
}
