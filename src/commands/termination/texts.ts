import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { AdviceStanding } from '../../standing/advice.ts';
import {
  ADVICE_LIMITS,
  dangersFirst,
  headlines,
  isDanger,
  restsOn,
} from '../../termination/advice/verdict.ts';
import type { RuleOutcome } from '../../termination/evaluate/evaluate-rule.ts';
import { adviceWords } from '../../termination/rules/rule.ts';
import { tableText } from '../table-text.ts';

/** The advice on a hole as text: what it rests on, the verdict with its reason, every danger, every rule. While the driller has stopped, the dangers. */
export function adviceText(hole: string, { shown, outcomes, ahead }: AdviceStanding): string {
  const head = headlines(shown, outcomes).map(({ words, danger }) => (danger ? `! ${words}` : words));
  if (!shown.shown) return [`${hole}, advice on ending the hole`, ...head].join('\n');
  const rules = dangersFirst(outcomes).map((outcome) => [
    isDanger(outcome) ? `! ${outcome.rule.name}` : outcome.rule.name,
    adviceWords(outcome.rule),
    outcome.state,
    outcome.state === 'cannot tell' ? outcome.reason : outcome.progress.text,
  ]);
  return [
    `${hole}, ${shown.advice.heading}, ${restsOn(shown.advice)}`,
    ...head,
    '',
    tableText([['rule', 'does', 'stands', ''], ...rules]),
    '',
    ...ahead.map((warning) => warning.words),
    ADVICE_LIMITS,
  ].join('\n');
}

/** Why one rule stands as it does: its words, its condition, since when, and the metres that decided it. */
export function whyText({
  rule,
  state,
  reason,
  progress,
  sinceMm,
  deciding,
  earliestMm,
  proviso,
}: RuleOutcome): string {
  return [
    `${rule.name}: ${state} since ${formatDepth(turnedMm(sinceMm))} m. ${reason}.`,
    rule.words,
    `${rule.verdict === 'not yet' ? 'Holds the hole until' : `Advises "${rule.verdict}" where`}: ${JSON.stringify(rule.when)}`,
    `Stands at: ${progress.text}`,
    ...(deciding.length === 0 ? [] : [`Decided by: ${deciding.map(formatInterval).join(', ')}`]),
    // A danger is nothing that "could be met": of that only what is known of it is said.
    ...(earliestMm === undefined || rule.safety
      ? []
      : [
          `Could be met at ${formatDepth(earliestMm)} m at the earliest${proviso === undefined ? '' : `, if ${proviso}`}.`,
        ]),
  ].join('\n');
}

/** What turns just below a depth is said of that depth: the millimetre past it is how it is counted, and nothing that anybody measured. */
function turnedMm(sinceMm: number): number {
  return Math.floor(sinceMm / 10) * 10;
}
