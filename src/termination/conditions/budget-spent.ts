import { depthFromMetres, formatDepth } from '../../quantity/depth.ts';
import { notGiven } from '../evaluate/outcome.ts';
import { reached } from '../evaluate/reached.ts';
import { defineCondition, lengthM } from '../rules/condition-kind.ts';

export const budgetSpent = defineCondition({
  key: 'budgetSpent',
  about: 'depth',
  title: 'The metre budget is spent.',
  rationale:
    'The metres of the holes that share the budget and those of this one, together. Measured at the drilled head. It can’t be told while ' +
    'the metres of the other holes are not known.',
  example: { budgetM: 2400 },
  shape: { budgetM: lengthM.describe('Metres that the holes together may have') },
  assess: ({ budgetM }, situation) => {
    const usedMm = situation.usedElsewhereMm;
    if (usedMm === undefined) return notGiven(situation, 'the metres of the other holes are not known');
    const leftMm = depthFromMetres(budgetM) - usedMm;
    const text = `left of the budget (${budgetM} m, ${formatDepth(usedMm)} drilled elsewhere)`;
    const outcome = reached(situation, leftMm, text);
    if (leftMm > 0) return outcome;
    const spent = `the budget of ${budgetM} m is spent, ${formatDepth(usedMm)} m drilled elsewhere`;
    return { ...outcome, progress: spent, reason: spent };
  },
});
