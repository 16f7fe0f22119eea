import { type Depth, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import type { RuleOutcome } from '../evaluate/evaluate-rule.ts';
import type { Situation } from '../evaluate/situation.ts';
import { type Verdict, weigh } from './weigh.ts';

/** Stands above every verdict. */
const ADVICE_HEADING = 'advice on ending the hole';
/** Stands below it where there is room. */
export const ADVICE_LIMITS =
  'Advice only: the driller and the rules of the site prevail. It is no command to the rig.';

/** What the rules advise. */
export type Advice = {
  readonly heading: typeof ADVICE_HEADING;
  readonly verdict: Verdict;
  /** The verdict with its reason, one sentence. */
  readonly sentence: string;
  /** The rules that gave it. */
  readonly by: readonly RuleOutcome[];
  /** The log it rests on. */
  readonly loggedMm: Depth;
  /** Metres drilled and not logged. */
  readonly unloggedMm: Depth;
};

/** The advice, or why none is shown: the driller has stopped for safety or hole condition. */
export type Shown =
  | { readonly shown: true; readonly advice: Advice }
  | { readonly shown: false; readonly because: string };

/** What the rules advise, with its reason and what it rests on. Undefined words nowhere: a hole without rules says so. */
export function adviceOf(outcomes: readonly RuleOutcome[], situation: Situation): Advice {
  const { verdict, by } = weigh(outcomes);
  const unlogged = Math.max(0, situation.drilledMm - situation.loggedMm);
  return {
    heading: ADVICE_HEADING,
    verdict,
    sentence: `${verdict.toUpperCase()}: ${reasonOf(by, outcomes, situation)}.`,
    by,
    loggedMm: situation.loggedMm,
    unloggedMm: depthFromMm(unlogged),
  };
}

/** The advice where it may be shown: not while the driller has stopped for safety or hole condition. */
export function shownAdvice(outcomes: readonly RuleOutcome[], situation: Situation): Shown {
  const { openStop } = situation;
  return openStop === undefined
    ? { shown: true, advice: adviceOf(outcomes, situation) }
    : { shown: false, because: `stopped by ${openStop.by}: ${openStop.because}` };
}

/** What a verdict rests on: `on the log to 46 m; 8 m drilled and not logged`. */
export function restsOn(advice: Pick<Advice, 'loggedMm' | 'unloggedMm'>): string {
  const log = `on the log to ${formatDepth(advice.loggedMm)} m`;
  return advice.unloggedMm === 0 ? log : `${log}; ${formatDepth(advice.unloggedMm)} m drilled and not logged`;
}

function reasonOf(
  by: readonly RuleOutcome[],
  outcomes: readonly RuleOutcome[],
  situation: Situation,
): string {
  const texts = by.length > 0 ? by.map(ruleSays) : [nothingEnds(outcomes, situation)];
  return texts.join('; ');
}

/** A rule's name and reason; where it can't be told that is said first. */
function ruleSays(outcome: RuleOutcome): string {
  const doubt = outcome.state === 'cannot tell' ? 'can’t tell, ' : '';
  return `${outcome.rule.name}: ${doubt}${outcome.reason}`;
}

/** Why nothing ends the hole: the ending rule that could be met the soonest. */
function nothingEnds(outcomes: readonly RuleOutcome[], situation: Situation): string {
  const ends = outcomes.filter(({ rule }) => rule.verdict === 'end' || rule.verdict === 'may end');
  const soonest = [...ends].sort((a, b) => (a.earliestMm ?? Infinity) - (b.earliestMm ?? Infinity))[0];
  if (soonest !== undefined) return ruleSays(soonest);
  return `no rule ends this hole, drilled ${formatDepth(situation.drilledMm)} m`;
}
