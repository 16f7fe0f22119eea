import type { Tri } from '../../quantity/tri.ts';
import { historyFrom } from './history.ts';
import { notGiven, type Outcome, outcomeOf } from './outcome.ts';
import { deepestMm, type Situation } from './situation.ts';
import { aheadOf, from } from './span.ts';

/**
 * A condition on something that is told now and then and stands until it is told again. `state` says undefined of an entry that
 * doesn't speak of the matter; before the first that does it can't be told. What is told next no one knows: it may turn at any depth.
 */
export function known<Entry extends { readonly atMm: number }>(
  situation: Situation,
  entries: readonly Entry[],
  state: (entry: Entry) => Tri | undefined,
  words: {
    readonly unknown: string | ((entries: readonly Entry[]) => string);
    readonly told: (entry: Entry) => string;
  },
): Outcome {
  const deepest = deepestMm(situation);
  const speaking = entries.filter((entry) => entry.atMm <= deepest && state(entry) !== undefined);
  const last = speaking.at(-1);
  if (last === undefined) {
    const { unknown } = words;
    return notGiven(situation, typeof unknown === 'string' ? unknown : unknown(entries));
  }
  const steps = speaking.map((entry) => ({
    atMm: entry.atMm,
    state: state(entry) ?? ('cannot tell' as const),
  }));
  const text = words.told(last);
  return outcomeOf(situation, historyFrom([{ atMm: 0, state: 'cannot tell' }, ...steps]), {
    progress: text,
    reason: text,
    deciding: [],
    foreseen: false,
    ahead: aheadOf(from(deepest), from(deepest)),
  });
}

/** Why the direction of the hole says nothing yet, and what it needs. */
export function directionWanted(entries: Situation['direction']): string {
  if (entries.length === 0) return 'no shot yet to compare with the plan: record one (;shot)';
  return entries.some((one) => one.noTarget === true && one.offPlanMm !== undefined)
    ? 'the plan has no depth of a target to compare with: call whoever made it'
    : 'its shots look wrong: check them on the survey (F6), then fix or reject them';
}
