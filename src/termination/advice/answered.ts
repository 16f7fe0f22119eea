import type { Decision } from '../../hole/ending.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import type { Rule } from '../rules/rule.ts';

/**
 * The call that was made about what a rule asks: a decision to go on that names who was called, and was about this rule, made where the rule stood as it does, at or below
 * the depth since which it does. Undefined where it still asks: no one was called, it came to ask again since, or the depth that was settled is
 * drilled. `unlogged`: the metres in doubt that no one has logged yet. Such a call settles an `ask`, and a safety rule in doubt; a danger that is met it never settles ({@link isSettled}). The permit that ends a hole can't be settled so, nor can stopping short by going on.
 */
export function answeredBy(
  decisions: readonly Decision[],
  rule: Rule,
  state: Decision['rules'][number]['state'],
  sinceMm: number,
  drilledMm: number,
  deciding: readonly Interval[],
  unlogged: readonly Interval[] = [],
): Decision | undefined {
  const asks = state === 'met' ? rule.verdict === 'ask' : state === 'cannot tell' && rule.safety === true;
  if (!asks || rule.whenEnding) return undefined;
  return decisions.findLast(
    (decision) =>
      decision.kind === 'extended' &&
      decision.called !== undefined &&
      (decision.settles === undefined || decision.settles.includes(rule.name)) &&
      decision.depthMm >= sinceMm &&
      drilledMm < (decision.toMm ?? Number.POSITIVE_INFINITY) &&
      decision.rules.some(
        (each) => each.rule === rule.name && each.state === state && knewOf(decision, each.words),
      ),
  );

  /** A decision settles only what was there to be known: a danger that it names, a doubt about metres that were drilled then. */
  function knewOf(decision: Decision, words: string): boolean {
    if (rule.safety !== true) return true;
    if (state === 'met') return deciding.every((one) => words.includes(formatInterval(one)));
    // What was logged since, and came to nothing, is news: no one was called about that.
    return deciding.every((one) => one.toMm <= (isUnlogged(one) ? decision.depthMm : decision.loggedMm));
  }

  function isUnlogged(one: Interval): boolean {
    return unlogged.some((each) => each.fromMm <= one.fromMm && each.toMm >= one.toMm);
  }
}

/** True of a rule whose question is settled. A danger that is met stays one, whoever was called about it. */
export function isSettled({
  rule,
  state,
  answered,
}: {
  readonly rule: Rule;
  readonly state: Decision['rules'][number]['state'];
  readonly answered?: unknown;
}): boolean {
  return answered !== undefined && !(state === 'met' && rule.safety === true);
}
