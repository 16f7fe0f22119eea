import { formatDepth } from '../../quantity/depth.ts';
import { type History, historyFrom, type Step } from '../evaluate/history.ts';
import { outcomeOf } from '../evaluate/outcome.ts';
import type { Situation } from '../evaluate/situation.ts';
import { aheadOf, from } from '../evaluate/span.ts';
import { defineCondition } from '../rules/condition-kind.ts';

export const rodFinished = defineCondition({
  key: 'rodFinished',
  about: 'depth',
  title: 'The rod in the hole is finished.',
  rationale:
    'Goes with _not yet_: the rest of a rod costs little, and a hole that ends on a rod has a depth that everybody can count. ' +
    'Rod ends come from the rod length and the first rod’s offset in the header of the hole.',
  example: {},
  shape: {},
  assess: (_said, situation) => {
    const haveMm = situation.drilledMm;
    const endMm = rodEndFrom(situation, haveMm);
    const unfinished = haveMm < endMm;
    const text = unfinished
      ? `drilled ${formatDepth(haveMm)} m, the rod ends at ${formatDepth(endMm)} m`
      : `drilled ${formatDepth(haveMm)} m, the end of a rod`;
    return outcomeOf(situation, rodHistory(situation), {
      amount: { haveMm, needMm: endMm },
      progress: text,
      reason: text,
      deciding: [],
      foreseen: true,
      ahead: aheadOf(from(endMm), from(unfinished ? haveMm : haveMm + 1)),
    });
  },
});

/** The first rod end at or below a depth. The collar counts as one. */
export function rodEndFrom(situation: Pick<Situation, 'header'>, depthMm: number): number {
  const { rodMm, firstRodOffsetMm } = situation.header;
  if (depthMm <= 0) return 0;
  const rods = Math.max(
    Math.ceil((depthMm - firstRodOffsetMm) / rodMm),
    Math.floor(-firstRodOffsetMm / rodMm) + 1,
  );
  return firstRodOffsetMm + rods * rodMm;
}

function rodHistory(situation: Situation): History {
  const steps: Step[] = [];
  for (let endMm = 0; endMm <= situation.drilledMm; endMm = rodEndFrom(situation, endMm + 1)) {
    steps.push({ atMm: endMm, state: 'yes' });
    if (endMm < situation.drilledMm) steps.push({ atMm: endMm + 1, state: 'no' });
  }
  return historyFrom(steps);
}
