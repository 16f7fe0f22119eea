import type { RuleOutcome } from '../evaluate/evaluate-rule.ts';
import { isSettled } from './answered.ts';
import { alarms } from './verdict.ts';

/** Rules that ask for a call and have had none: met ones that ask, dangers, and what about safety can't be told. */
export function waitingForCall(outcomes: readonly RuleOutcome[]): readonly RuleOutcome[] {
  return outcomes.filter(
    (each) =>
      each.answered === undefined &&
      (alarms(each) || (each.state === 'cannot tell' && each.rule.safety === true && !each.rule.whenEnding)),
  );
}

/** What asks still: what waits for a call, and dangers, which no call settles. */
export function stillAsks(outcomes: readonly RuleOutcome[]): readonly RuleOutcome[] {
  return outcomes.filter(
    (each) =>
      alarms(each) ||
      (each.state === 'cannot tell' &&
        each.rule.safety === true &&
        !each.rule.whenEnding &&
        !isSettled(each)),
  );
}

/** The rules that a text names, each as a word of its own. */
function rulesNamed(text: string, outcomes: readonly RuleOutcome[]): readonly RuleOutcome[] {
  return outcomes.filter(({ rule }) =>
    new RegExp(`(?<![\\p{L}\\d])${escaped(rule.name)}(?![\\p{L}\\d])`, 'iu').test(text),
  );
}

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/**
 * The rules that a call is about: those its words name, else the only one that waits for a call. Undefined where several wait and none is
 * named: then whoever called has to say which.
 */
export function aboutCall(
  text: string,
  outcomes: readonly RuleOutcome[],
): readonly RuleOutcome[] | undefined {
  const named = rulesNamed(text, outcomes);
  if (named.length > 0) return named;
  const waiting = waitingForCall(outcomes);
  return waiting.length > 1 ? undefined : waiting;
}
