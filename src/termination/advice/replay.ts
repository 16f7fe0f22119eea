import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import { evaluateRules, type RuleState } from '../evaluate/evaluate-rule.ts';
import { type History, type stateAt, statesDown } from '../evaluate/history.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import type { Rule } from '../rules/rule.ts';
import { type Verdict, weigh } from './weigh.ts';

/** The verdict from a depth on, had the rules been compared with the hole as it went down, logged to the rig. */
export type VerdictFrom = { readonly atMm: Depth; readonly verdict: Verdict; readonly by: readonly Rule[] };

/** Where one rule would have spoken in a finished hole. */
type RuleReplay = {
  readonly rule: Rule;
  /** The first depth at which it was met; undefined where it never was. */
  readonly firstMetMm?: Depth;
};

/** A finished hole under a set of rules. */
export type Replay = {
  readonly verdicts: readonly VerdictFrom[];
  readonly rules: readonly RuleReplay[];
  /** Where the verdict first was may end or end; undefined where it never was. */
  readonly wouldEndMm?: Depth;
  readonly endedMm: Depth;
  /** Metres drilled below where the rules would have ended the hole. */
  readonly savedMm?: Depth;
  /** The rules never advised ending: at least so many metres more would have been needed; undefined where none would do. */
  readonly missedMm?: Depth;
};

/**
 * Holds rules against a finished hole at every depth it had. What was amended later counts as amended: it is today's log,
 * and the log is taken to keep up with the rig.
 */
export function replay(rules: readonly Rule[], finished: Situation): Replay {
  const outcomes = evaluateRules(rules, finished);
  const verdicts = verdictsDown(
    outcomes.map((outcome) => outcome.rule),
    outcomes.map((outcome) => outcome.history),
    deepestMm(finished),
  );
  const ends = verdicts.find(({ verdict }) => verdict === 'end' || verdict === 'may end');
  const endedMm = finished.drilledMm;
  const earliest = outcomes
    .filter(({ rule }) => rule.verdict === 'end' || rule.verdict === 'may end')
    .flatMap(({ earliestMm }) => earliestMm ?? []);
  return {
    verdicts,
    rules: outcomes.map(({ rule, history }) => ({ rule, ...firstMet(history) })),
    endedMm,
    ...(ends === undefined
      ? missed(earliest, endedMm)
      : { wouldEndMm: ends.atMm, savedMm: depthFromMm(Math.max(0, endedMm - ends.atMm)) }),
  };
}

/** The verdict at each depth, from the histories of the rules; neighbours alike are one. */
function verdictsDown(
  rules: readonly Rule[],
  histories: readonly History[],
  footMm: number,
): readonly VerdictFrom[] {
  const found: VerdictFrom[] = [];
  for (const { atMm, states } of statesDown(histories)) {
    if (atMm > footMm) break;
    const standings = rules.map((rule, index) => ({ rule, state: stateOf(states[index]!) }));
    const { verdict, by } = weigh(standings);
    if (found.at(-1)?.verdict === verdict) continue;
    found.push({ atMm: depthFromMm(atMm), verdict, by: by.map(({ rule }) => rule) });
  }
  return found;
}

function stateOf(state: ReturnType<typeof stateAt>): RuleState {
  return state === 'yes' ? 'met' : state === 'no' ? 'not met' : state;
}

function firstMet(history: History): { readonly firstMetMm?: Depth } {
  const first = history.find((step) => step.state === 'yes');
  return first === undefined ? {} : { firstMetMm: depthFromMm(first.atMm) };
}

function missed(earliest: readonly number[], endedMm: number): { readonly missedMm?: Depth } {
  return earliest.length === 0 ? {} : { missedMm: depthFromMm(Math.max(0, Math.min(...earliest) - endedMm)) };
}
