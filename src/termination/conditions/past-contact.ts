import { conditionSchema } from '../../condition/condition.ts';
import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { enough, historyOf, type Leg } from '../evaluate/amount.ts';
import { always, type History } from '../evaluate/history.ts';
import { logWhere } from '../evaluate/log.ts';
import { notGiven, outcomeOf } from '../evaluate/outcome.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import type { Stretch } from '../evaluate/stretch.ts';
import { defineCondition, metresM } from '../rules/condition-kind.ts';
import { cutOff } from '../rules/names.ts';
import { intervalOf } from '../rules/seen-in-row.ts';

export const pastContact = defineCondition({
  key: 'pastContact',
  about: 'log',
  title: 'The hole is so far past a contact.',
  rationale:
    'The contact is the top of the first metre of the log that is `into` the rock below it. How far past is measured at the drilled head, so that the ' +
    'metres drilled and not yet logged count for the distance; as the contact may itself lie in them, without one in the log they ' +
    'make it can’t tell.',
  example: { into: { field: 'rock', is: 'GRN' }, byM: 12 },
  shape: {
    into: conditionSchema.describe('What holds below the contact'),
    byM: metresM.describe('Metres past it'),
  },
  asks: ({ into }) => [into],
  assess: ({ into, byM }, situation) => {
    const stretches = logWhere(situation, into);
    const needMm = Math.max(1, depthFromMetres(byM));
    const what = cutOff(situation.schema, into);
    const contact = stretches.find((each) => each.state === 'yes');
    const doubt = firstInDoubt(stretches, situation);
    const history = contactHistory(stretches, situation, needMm);
    if (contact === undefined) {
      const text = `no contact into ${what} in the log to ${formatDepth(situation.loggedMm)} m`;
      const none = notGiven(situation, text);
      const earliestMm = Math.max(situation.drilledMm, situation.loggedMm + needMm);
      return outcomeOf(situation, history, {
        ...none,
        ahead: aheadOf(from(earliestMm), none.ahead.fails),
        proviso: what,
      });
    }
    const haveMm = Math.max(0, situation.drilledMm - contact.fromMm);
    const text = `drilled ${formatDepth(haveMm)} of ${formatDepth(needMm)} m past ${formatDepth(contact.fromMm)} m (${what})`;
    const earlier =
      doubt < contact.fromMm && enough(haveMm, situation.drilledMm - doubt, needMm) === 'cannot tell';
    const reason = earlier ? `${text}; it may lie above, from ${formatDepth(doubt)} m` : text;
    const dueMm = Math.max(situation.drilledMm, contact.fromMm + needMm);
    return outcomeOf(situation, history, {
      amount: { haveMm, needMm },
      progress: text,
      reason,
      deciding: [intervalOf(contact.fromMm, contact.toMm)],
      foreseen: true,
      ahead: aheadOf(
        from(dueMm),
        haveMm >= needMm
          ? undefined
          : { fromMm: deepestMm(situation), toMm: Math.max(deepestMm(situation), dueMm - 1) },
      ),
    });
  },
});

/** The depth from which the contact may be, if a metre above the first sure one is in doubt. */
function firstInDoubt(stretches: readonly Stretch[], situation: Situation): number {
  return stretches.find((each) => each.state !== 'no')?.fromMm ?? situation.loggedMm;
}

/**
 * Past the contact by the depth of the hole: the distance from the first sure metre, and from the first that may be one. Metres
 * below the logged head are in doubt; at the depth of the first sure metre the hole is not past it.
 */
function contactHistory(stretches: readonly Stretch[], situation: Situation, needMm: number): History {
  const sureMm = stretches.find((each) => each.state === 'yes')?.fromMm;
  const possibleMm = firstInDoubt(stretches, situation);
  const footMm = situation.drilledMm;
  const cuts = [possibleMm, sureMm ?? footMm, footMm]
    .map((cut) => Math.min(cut, footMm))
    .sort((a, b) => a - b);
  const legs = cuts.map((toMm, index): Leg => {
    const above = cuts[index - 1] ?? 0;
    const sure = sureMm !== undefined && above >= sureMm ? toMm - sureMm : 0;
    const possible = above >= possibleMm ? toMm - possibleMm : 0;
    return { toMm, sure, sureSlope: Math.sign(sure), possible, possibleSlope: Math.sign(possible) };
  });
  return footMm === 0 ? always('no') : historyOf(legs, needMm);
}
