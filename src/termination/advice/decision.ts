import type { Finding } from '../../finding/finding.ts';
import { ok, type Result, refused } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Decision } from '../../hole/ending.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import type { Stamp } from '../../quantity/stamp.ts';
import type { RuleOutcome } from '../evaluate/evaluate-rule.ts';
import type { Situation } from '../evaluate/situation.ts';
import { askedAndCalled, endedAgainstAdvice, endedWithoutReason, extendedNowhere } from '../findings.ts';
import { occasionOf } from './verdict.ts';
import { type Verdict, weigh } from './weigh.ts';

/** What a person decides on the hole's end, and what goes with it. */
export type Decided = {
  readonly kind: Decision['kind'];
  readonly reason?: string;
  readonly called?: string;
  /** For `extended`: the rules that the call was about. */
  readonly settles?: readonly string[];
  /** For `extended`: the depth to go on to, where one is settled. */
  readonly toMm?: Depth;
  readonly at: Stamp;
  readonly by: string;
  /** SHA-256 of the rules and of the logging schema in force. */
  readonly rulesHash: string;
  readonly schemaHash: string;
};

/** Decisions that end a hole. */
const ENDINGS: readonly Decision['kind'][] = ['ended', 'ended early'];

/** Decisions that the verdict speaks against: ending where it doesn't advise it, going on where it says end. */
const AGAINST: { readonly [K in Decision['kind']]: readonly Verdict[] } = {
  ended: ['not yet', 'ask'],
  'ended early': ['not yet', 'ask'],
  extended: ['end', 'ask'],
  held: [],
  reopened: [],
};

/** True of a decision that needs a reason, because the verdict speaks against it. */
export function isAgainst(kind: Decision['kind'], verdict: Verdict): boolean {
  return AGAINST[kind].includes(verdict);
}

/**
 * The decision as it is recorded: with the verdict, the state of each rule and the logged depth they rested on. Refused where it goes
 * against the verdict and gives no reason. An `ask` is answered by a reason, and by whom was called where someone was.
 */
export function decide(
  decided: Decided,
  outcomes: readonly RuleOutcome[],
  situation: Situation,
  place: Place,
): Result<Decision> {
  const { verdict } = weigh(outcomes, occasionOf(situation, ENDINGS.includes(decided.kind)));
  const { reason, called, settles, ...rest } = decided;
  const said = reason?.trim() ?? '';
  const decision: Decision = {
    ...rest,
    depthMm: situation.drilledMm,
    loggedMm: situation.loggedMm,
    verdict,
    rules: outcomes.map((outcome) => ({
      rule: outcome.rule.name,
      state: outcome.state,
      // What a danger was, and where: so that no one takes a later one for it.
      words: outcome.sight === undefined ? outcome.reason : `${outcome.sight}: ${outcome.reason}`,
    })),
    ...(said === '' ? {} : { reason: said }),
    ...(called === undefined || called.trim() === '' ? {} : { called: called.trim() }),
    ...(settles === undefined ? {} : { settles: [...settles] }),
  };
  const wrong = drilledAlready(decision, place) ?? reasonMissing(decision, place);
  return wrong === undefined ? ok(decision) : refused(wrong);
}

function drilledAlready({ toMm, depthMm }: Decision, place: Place): Finding | undefined {
  if (toMm === undefined || toMm > depthMm) return undefined;
  return extendedNowhere.at(
    { ...place, fromMm: depthMm },
    {
      problem: `the hole is at ${formatDepth(depthMm)} m already, it can’t go on to ${formatDepth(toMm)} m`,
      remedy: 'Give a depth below that, like ;extend to 132, or how much further, like ;extend 12 m more.',
    },
  );
}

function reasonMissing(decision: Decision, place: Place): Finding | undefined {
  if (decision.reason !== undefined || !isAgainst(decision.kind, decision.verdict)) return undefined;
  return endedWithoutReason.at(
    { ...place, fromMm: decision.depthMm },
    {
      problem: `${decision.kind} where the advice was "${decision.verdict}", without a reason`,
      remedy:
        decision.verdict === 'ask'
          ? 'Say who was called and what was settled.'
          : 'Say why, in a few words; it is kept with the hole.',
    },
  );
}

/** What the check says of the decisions of a hole: those against the advice, with their reason or for want of one. */
export function checkDecisions(decisions: readonly Decision[], place: Place): readonly Finding[] {
  return decisions
    .filter(({ kind, verdict }) => isAgainst(kind, verdict))
    .map((decision) => reasonMissing(decision, place) ?? noted(decision, place));
}

function noted(decision: Decision, place: Place): Finding {
  const { kind, verdict, depthMm, loggedMm, by, reason, called } = decision;
  const isAnswered = verdict === 'ask' && called !== undefined;
  const call = isAnswered
    ? `, and ${called} was called`
    : verdict === 'ask'
      ? ', and no one is named as called'
      : '';
  return (isAnswered ? askedAndCalled : endedAgainstAdvice).at(
    { ...place, fromMm: depthMm },
    {
      problem: `${kind} by ${by} where the advice, on the log to ${formatDepth(loggedMm)} m, was "${verdict}"${call}`,
      excerpt: reason ?? '',
      remedy: `No action needed${called === undefined || isAnswered ? '' : ` (${called} was called)`}; shown for tuning the rules.`,
    },
  );
}
