import type { VERDICTS } from '../../hole/ending.ts';
import type { RuleState } from '../evaluate/evaluate-rule.ts';
import { kindOfLeaf, leavesOf, type Rule } from '../rules/rule.ts';
import { isSettled } from './answered.ts';
import type { Extension } from './extension.ts';

/** Advice on ending the hole. */
export type Verdict = (typeof VERDICTS)[number];

/** How one rule stands, and whether what it asks was settled by a decision to go on. */
export type Standing = { readonly rule: Rule; readonly state: RuleState; readonly answered?: unknown };

/** What the verdict is asked for. */
export type Occasion = {
  /** A decision to go on that is not drilled out. */
  readonly extension?: Extension;
  /** The hole is about to be ended, whatever the rules say: those about stopping short speak. */
  readonly ending?: boolean;
};

/** A verdict and the rules that gave it; none where nothing speaks for ending, or a decision to go on gave it. */
export type Weighed<S extends Standing> = {
  readonly verdict: Verdict;
  readonly by: readonly S[];
  readonly extension?: Extension;
};

/**
 * The verdict of several rules. The first of these that applies:
 * 1. a hold, a void or a permit limit that is met: ask or end, as its rule says;
 * 2. a met rule that says ask; a safety rule that can't be told: ask; where the hole is being ended, a rule with `whenEnding` too;
 * 3. a decision to go on that is not drilled out: not yet;
 * 4. a rule that says not yet, and holds the hole open until it is met, is not met or can't be told: not yet;
 * 5. a met rule that says end, then one that says may end; where a rule with `whenEnding` is met or can't be told: ask;
 * 6. not yet.
 * A question that was settled by a decision to go on no longer speaks; a danger that is met always does. Nothing that can't be told ever ends a hole.
 */
export function weigh<S extends Standing>(
  standings: readonly S[],
  { extension, ending = false }: Occasion = {},
): Weighed<S> {
  const open = standings.filter((each) => !isSettled(each));
  return (
    goingFirst(open) ??
    asking(open, ending) ??
    (extension === undefined ? undefined : { verdict: 'not yet', by: [], extension }) ??
    holdingBack(open) ??
    endingBy(open)
  );
}

function goingFirst<S extends Standing>(standings: readonly S[]): Weighed<S> | undefined {
  const first = standings.filter(({ rule, state }) => state === 'met' && goesFirst(rule));
  return given('ask', withVerdict(first, 'ask')) ?? given('end', withVerdict(first, 'end'));
}

/** True of a rule about a hold, a void or a permit limit. */
export function goesFirst(rule: Rule): boolean {
  return leavesOf(rule.when).some((leaf) => kindOfLeaf(leaf).goesFirst === true);
}

function asking<S extends Standing>(standings: readonly S[], ending: boolean): Weighed<S> | undefined {
  const asks = standings.filter(({ rule, state }) => {
    if (ending && rule.whenEnding) return state !== 'not met';
    return state === 'met'
      ? rule.verdict === 'ask' && !rule.whenEnding
      : state === 'cannot tell' && rule.safety;
  });
  return given('ask', asks);
}

function holdingBack<S extends Standing>(standings: readonly S[]): Weighed<S> | undefined {
  return given(
    'not yet',
    standings.filter(({ rule, state }) => rule.verdict === 'not yet' && state !== 'met'),
  );
}

function endingBy<S extends Standing>(standings: readonly S[]): Weighed<S> {
  const met = standings.filter(({ state }) => state === 'met');
  const ends = given('end', withVerdict(met, 'end')) ?? given('may end', withVerdict(met, 'may end'));
  if (ends === undefined) return { verdict: 'not yet', by: [] };
  const limits = standings.filter(({ rule, state }) => rule.whenEnding && state !== 'not met');
  return given('ask', limits) ?? ends;
}

function withVerdict<S extends Standing>(standings: readonly S[], verdict: Verdict): readonly S[] {
  return standings.filter(({ rule }) => rule.verdict === verdict);
}

function given<S extends Standing>(verdict: Verdict, by: readonly S[]): Weighed<S> | undefined {
  return by.length === 0 ? undefined : { verdict, by };
}
