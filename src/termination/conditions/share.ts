import * as z from 'zod';
import { conditionSchema } from '../../condition/condition.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { historyOf, type Leg } from '../evaluate/amount.ts';
import { stateAt } from '../evaluate/history.ts';
import { logWhere } from '../evaluate/log.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import { topLeg } from '../evaluate/run.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import { type Ahead, aheadOf, from } from '../evaluate/span.ts';
import { lengthOf, type Stretch } from '../evaluate/stretch.ts';
import { mayHold, unloggedOf } from '../evaluate/unlogged.ts';
import { defineCondition } from '../rules/condition-kind.ts';
import { readingsNeeded, withDoubt } from '../rules/doubts.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

/** Shares are compared with in tenths of a percent, so that a share that is just met is met. */
const TENTHS = 10;
const WHOLE = 100 * TENTHS;

export const share = defineCondition({
  key: 'share',
  about: 'log',
  title: 'A share of the whole hole.',
  rationale:
    'The length that holds, in percent of the hole from the start of its log to the drilled head. Nothing drilled is not a share. Metres in doubt count both ways: ' +
    'it is met where they may all be against it, not met where even all of them could not help.',
  example: { where: { field: 'rock', is: 'BAS' }, atLeastPercent: 50 },
  shape: {
    where: conditionSchema.describe('What holds of a metre that counts'),
    atLeastPercent: z.number().min(0.1).max(100).multipleOf(0.1).describe('Percent of the drilled length'),
  },
  asks: ({ where }) => [where],
  assess: ({ where, atLeastPercent }, situation) => {
    const stretches = logWhere(situation, where);
    const tenths = Math.round(atLeastPercent * TENTHS);
    const what = cutOff(situation.schema, where);
    const loggedMm = lengthOf(stretches, ({ unlogged }) => !unlogged);
    const sureMm = lengthOf(stretches, (each) => each.state === 'yes');
    const history = historyOf(shareLegs(stretches, tenths), 0);
    const state = stateAt(history, deepestMm(situation));
    const percent = loggedMm === 0 ? 0 : Math.floor((sureMm * WHOLE) / loggedMm) / TENTHS;
    const drilledMm = lengthOf(stretches, () => true);
    const text = `${what} for ${percent} % of ${ofWords(loggedMm, drilledMm, `${atLeastPercent} %`)}`;
    const speaks = stretches.filter((each) => each.state === state);
    const unlogged = state === 'cannot tell' ? unloggedOf(stretches) : [];
    return outcomeOf(situation, history, {
      progress: text,
      reason: state === 'cannot tell' ? withDoubt(situation, where, text, speaks) : text,
      deciding: speaks.map((each) => intervalOf(each.fromMm, each.toMm)),
      unlogged,
      needs: state === 'cannot tell' ? readingsNeeded(situation, where, speaks) : [],
      ahead: shareAhead(situation, stretches, tenths, state),
      foreseen: sureMm > 0,
      proviso: what,
    });
  },
});

/** Of how many metres the percent is, and what is needed: where not all that is drilled is logged, of the logged ones. */
function ofWords(loggedMm: number, drilledMm: number, need: string): string {
  const drilled = `${formatDepth(drilledMm)} m`;
  return loggedMm === drilledMm
    ? `the ${drilled} drilled, ${need} needed`
    : `the ${formatDepth(loggedMm)} m logged, ${need} of the ${drilled} drilled needed`;
}

/** By how much the length that holds, in tenths of percent of the log, is over what it must be. */
function shareLegs(stretches: readonly Stretch[], tenths: number): readonly Leg[] {
  const legs = topLeg(stretches).map((leg) => ({ ...leg, sure: -1, possible: -1 }));
  let [sure, possible] = [0, 0];
  for (const { fromMm, toMm, state } of stretches) {
    const sureSlope = (state === 'yes' ? WHOLE : 0) - tenths;
    const possibleSlope = (state === 'no' ? 0 : WHOLE) - tenths;
    sure += sureSlope * (toMm - fromMm);
    possible += possibleSlope * (toMm - fromMm);
    legs.push({ toMm, sure, sureSlope, possible, possibleSlope });
  }
  return legs;
}

/** (sure + x) / (logged + x) ≥ share, for the least x. The whole of a log in which anything failed is out of reach. */
function shareAhead(
  situation: Situation,
  stretches: readonly Stretch[],
  tenths: number,
  state: 'yes' | 'no' | 'cannot tell',
): Ahead {
  const headMm = deepestMm(situation);
  const drilled = lengthOf(stretches, () => true);
  const wanting = Math.max(tenths * drilled - WHOLE * lengthOf(stretches, mayHold), drilled === 0 ? 1 : 0);
  const mayFail = state === 'no' || (state === 'cannot tell' && stretches.some(({ unlogged }) => unlogged));
  const more =
    tenths === WHOLE ? (wanting <= 1 ? wanting : undefined) : Math.ceil(wanting / (WHOLE - tenths));
  const fails = headMm + (mayFail ? 0 : situation.header.intervalMm);
  return aheadOf(more === undefined ? undefined : from(headMm + more), from(fails));
}
