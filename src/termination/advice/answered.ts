import type { Decision } from '../../hole/ending.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { leavesOf, type Rule } from '../rules/rule.ts';

/**
 * The decision that settled what a rule asks: to go on, made where the rule stood as it does, at or below the depth since which
 * it does. Undefined where it still asks: no one decided, it came to ask again since, or the depth that was settled is drilled. Only an
 * `ask` (or a safety rule in doubt) can be settled so; the permit that ends a hole can't, nor can stopping short by going on. A rule that is met and
 * wants somebody called ({@link wantsCall}) is settled only by a decision that names who was.
 */
export function answeredBy(
  decisions: readonly Decision[],
  rule: Rule,
  state: Decision['rules'][number]['state'],
  sinceMm: number,
  drilledMm: number,
  deciding: readonly Interval[],
): Decision | undefined {
  const asks = state === 'met' ? rule.verdict === 'ask' : state === 'cannot tell' && rule.safety === true;
  if (!asks || rule.whenEnding) return undefined;
  return decisions.findLast(
    (decision) =>
      decision.kind === 'extended' &&
      decision.depthMm >= sinceMm &&
      (state !== 'met' || decision.called !== undefined || !wantsCall(rule)) &&
      drilledMm < (decision.toMm ?? Number.POSITIVE_INFINITY) &&
      decision.rules.some(
        (each) =>
          each.rule === rule.name &&
          each.state === state &&
          (state !== 'met' || rule.safety !== true || isKnown(deciding, decision, each.words)),
      ),
  );
}

/** True where what makes a danger was there when somebody decided: logged by then, or named in the words kept with the decision. The next void asks anew. */
function isKnown(deciding: readonly Interval[], { loggedMm }: Decision, words: string): boolean {
  const lowest = deciding.at(-1);
  return lowest === undefined || lowest.toMm <= loggedMm || words.includes(formatInterval(lowest));
}

/** True of a rule that the geologist can't settle alone: a danger, a limit that others set, and whatever names whom to call. */
export function wantsCall({ safety, call, when }: Rule): boolean {
  return safety === true || call !== undefined || leavesOf(when).some((leaf) => 'delegatedLimit' in leaf);
}
