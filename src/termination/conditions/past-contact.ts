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
import { readingsNeeded, withDoubt } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

/** How thick the rock below a contact has to be where the rule doesn't say (common practice): a dyke of a metre or two is not a contact. */
const THICK_M = 3;

export const pastContact = defineCondition({
  key: 'pastContact',
  about: 'log',
  title: 'The hole is so far past a contact.',
  rationale:
    `The contact is the top of the first metres that are \`into\` the rock below it for \`thickM\` in a row (${THICK_M} m where it isn’t said): a thin dyke ` +
    'is no contact, nor is a second rock in a row; only the main rock counts. It is a contact only for as long as the hole stays in that rock: where ' +
    'the log shows another for `thickM` in a row it was a dyke that the hole has left. How far past is measured at the drilled head. ' +
    'In metres that no one saw there may be a contact, and in `thickM` of them in a row the hole may have left the rock again: both make it can’t tell.',
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
    const isYes = ({ state }: Stretch): boolean => state === 'yes';
    const notNo = ({ state }: Stretch): boolean => state !== 'no';
    const exits = exitsOf(stretches, (each) => !notNo(each), thickMm);
    // What no one saw may be another rock: so thick, the hole may have left the contact's.
    const bodies = bodiesOf(
      stretches,
      isYes,
      exitsOf(stretches, (each) => !isYes(each), thickMm),
      thickMm,
    );
    const maybes = bodiesOf(stretches, notNo, exits, thickMm);
    const isIn = ({ leftMm }: Body): boolean => leftMm > situation.drilledMm;
    const sure = bodies.find(isIn);
    const seen = bodiesOf(stretches, isYes, exits, thickMm);
    const isPastSurely = sure !== undefined && situation.drilledMm >= sure.fromMm + needMm;
    const contact = isPastSurely ? sure : seen.find(isIn);
    const isSure = bodies.some((each) => isIn(each) && each.fromMm === contact?.fromMm);
    const leftMm = exits.findLast((exit) => exit.fromMm + thickMm <= situation.drilledMm)?.fromMm ?? 0;
    const history = contactHistory(situation, needMm, bodies, maybes);
    const doubts = stretches.filter(
      (each) =>
        each.state === 'cannot tell' &&
        each.fromMm >= leftMm &&
        each.fromMm < (sure?.fromMm ?? Number.POSITIVE_INFINITY),
    );
    const what = cutOff(situation.schema, into);
    const found =
      contact === undefined
        ? notFound(situation, stretches, what, thickMm, seen)
        : past(situation, contact, what, Math.max(1, depthFromMetres(byM)), needMm, isSure);
    const outcome = outcomeOf(situation, history, {
      ...found,
      unlogged: unloggedOf(doubts),
      ahead: aheadOf(
        from(Math.max(situation.drilledMm, earliestTopMm(stretches, situation, thickMm, leftMm) + needMm)),
        from(deepestMm(situation)),
      ),
    });
    if (outcome.state !== 'cannot tell') return outcome;
    const { progress } = outcome;
    return {
      ...outcome,
      reason: withDoubt(situation, into, progress, doubts),
      needs: readingsNeeded(situation, into, doubts),
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

/** Rock below a contact that goes on: the first of its runs that is thick enough, and the depth at which it was left. */
type Body = Run & { readonly leftMm: number };

/** Runs of another rock, as thick as makes a contact: the hole has left what lay above. */
function exitsOf(
  stretches: readonly Stretch[],
  isOther: (each: Stretch) => boolean,
  thickMm: number,
): readonly Run[] {
  return runsWhere(stretches, isOther).filter((run) => lengthMm(run) >= thickMm);
}

function bodiesOf(
  stretches: readonly Stretch[],
  wanted: (each: Stretch) => boolean,
  exits: readonly Run[],
  thickMm: number,
): readonly Body[] {
  const bodies: Body[] = [];
  for (const run of runsWhere(stretches, wanted)) {
    if (lengthMm(run) < thickMm || run.fromMm < (bodies.at(-1)?.leftMm ?? 0)) continue;
    const exit = exits.find(({ fromMm }) => fromMm >= run.toMm);
    bodies.push({ ...run, leftMm: exit === undefined ? Number.POSITIVE_INFINITY : exit.fromMm + thickMm });
  }
  return bodies;
}

type Said = Pick<Outcome, 'amount' | 'progress' | 'reason' | 'deciding' | 'foreseen' | 'proviso'>;

function past(
  situation: Situation,
  contact: Run,
  what: string,
  byMm: number,
  needMm: number,
  isSure: boolean,
): Said {
  const haveMm = Math.max(0, situation.drilledMm - contact.fromMm);
  const goesOn = isSure ? '' : ', if it goes on where no one saw';
  const text = `drilled ${formatDepth(haveMm)} of ${formatDepth(byMm)} m past the contact at ${formatDepth(contact.fromMm)} m (${what}${goesOn})`;
  return {
    amount: { haveMm, needMm },
    progress: text,
    reason: text,
    deciding: [intervalOf(contact.fromMm, contact.toMm)],
    ...(isSure ? { foreseen: true } : { foreseen: false, proviso: what }),
  };
}

function notFound(
  situation: Situation,
  stretches: readonly Stretch[],
  what: string,
  thickMm: number,
  bodies: readonly Body[],
): Said {
  const thin = runsWhere(stretches, ({ state }) => state === 'yes').at(-1);
  const thick = `${formatDepth(thickMm)} m thick`;
  const footMm = stretches.findLast(({ unlogged }) => !unlogged)?.toMm ?? situation.header.logFromMm;
  const wasLeft = thin !== undefined && bodies.some(({ toMm }) => toMm === thin.toMm);
  const why =
    thin === undefined
      ? `${what}, ${thick}`
      : `${what} at ${formatInterval(thin)}, ${wasLeft ? 'left again' : `not ${thick}`}`;
  const text = `no contact to ${formatDepth(footMm)} m (${why})`;
  return { progress: text, reason: text, deciding: [], foreseen: false, proviso: what };
}

/** Past a contact by the depth of the hole, the rig's: surely in a sure body, maybe in what may be one, until it is left. */
function contactHistory(
  { drilledMm }: Situation,
  needMm: number,
  sure: readonly Body[],
  maybe: readonly Body[],
): History {
  const isPast = (bodies: readonly Body[], atMm: number): boolean =>
    bodies.some(({ fromMm, leftMm }) => atMm >= fromMm + needMm && atMm < leftMm);
  const turns = [...sure, ...maybe].flatMap(({ fromMm, leftMm }) => [fromMm + needMm, leftMm]);
  const depths = [...new Set(turns)].filter((atMm) => atMm <= drilledMm).sort((a, b) => a - b);
  const steps = depths.map((atMm): Step => {
    const state = isPast(sure, atMm) ? 'yes' : isPast(maybe, atMm) ? 'cannot tell' : 'no';
    return { atMm, state };
  });
  return historyFrom([{ atMm: 0, state: 'no' }, ...steps]);
}

/** The shallowest top that a contact can come to have, what is not logged turning out as it suits. */
function earliestTopMm(
  stretches: readonly Stretch[],
  situation: Situation,
  thickMm: number,
  leftMm: number,
): number {
  const headMm = deepestMm(situation);
  const run = runsWhere(stretches, mayHold).find(
    (each) => each.fromMm >= leftMm && (lengthMm(each) >= thickMm || each.toMm === headMm),
  );
  return run?.fromMm ?? headMm;
}
