import type { Decision } from '../../hole/ending.ts';
import type { Rule } from '../rules/rule.ts';

/**
 * The decision that settled what a rule asks: to go on, made where the rule stood as it does, at or below the depth since which
 * it does. Undefined where it still asks: no one decided, it came to ask again since, or the depth that was settled is drilled. Only an
 * `ask` (or a safety rule in doubt) can be settled so; the permit that ends a hole can't, nor can stopping short by going on.
 */
export function answeredBy(
  decisions: readonly Decision[],
  rule: Rule,
  state: Decision['rules'][number]['state'],
  sinceMm: number,
  drilledMm: number,
): Decision | undefined {
  const asks = state === 'met' ? rule.verdict === 'ask' : state === 'cannot tell' && rule.safety === true;
  if (!asks || rule.whenEnding) return undefined;
  return decisions.findLast(
    (decision) =>
      decision.kind === 'extended' &&
      decision.depthMm >= sinceMm &&
      drilledMm < (decision.toMm ?? Number.POSITIVE_INFINITY) &&
      decision.rules.some((each) => each.rule === rule.name && each.state === state),
  );
}
