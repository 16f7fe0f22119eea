import { type Depth, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { rodEndFrom } from '../conditions/rod-finished.ts';
import type { RuleOutcome } from '../evaluate/evaluate-rule.ts';
import { deepestMm, type Situation } from '../evaluate/situation.ts';
import { extensionOf } from './extension.ts';
import { type Verdict, weigh } from './weigh.ts';

/** Something that can change within the next rod. */
export type Warning = {
  readonly rule: RuleOutcome;
  readonly verdict: Verdict;
  /** The earliest depth at which it can come. */
  readonly atMm: Depth;
  /** `if pyrite < 1 % goes on: may end in 4 m, at 58 m (barren tail)`. The proviso comes first: cut short, the rest would read as advice. */
  readonly words: string;
};

/**
 * What can be seen coming within the next rod, if everything favours it, the soonest first: rules not met now that would give another
 * verdict than today's. A rule that ends waits for those that hold it back. Said before the driller asks.
 */
export function warnAhead(outcomes: readonly RuleOutcome[], situation: Situation): readonly Warning[] {
  const extension = extensionOf(situation);
  const { verdict: now, by } = weigh(outcomes, extension === undefined ? {} : { extension });
  const asking = now === 'ask' ? by.map(({ rule }) => rule.name) : [];
  const horizonMm = rodEndFrom(situation, deepestMm(situation) + 1);
  return outcomes
    .filter(({ rule, state }) => state !== 'met' && rule.verdict !== 'not yet' && rule.verdict !== now)
    .filter(({ rule }) => !rule.whenEnding)
    .flatMap((outcome) => {
      const atMm = soonestMm(outcome, outcomes, extension?.toMm ?? 0);
      if (atMm === undefined || atMm > horizonMm) return [];
      return [warning(outcome, depthFromMm(atMm), situation, asking)];
    })
    .sort((a, b) => a.atMm - b.atMm);
}

/** When a rule can speak: not before it is met, and where it ends the hole not before all that hold it back have let go, a decision to go on among them. */
function soonestMm(
  outcome: RuleOutcome,
  outcomes: readonly RuleOutcome[],
  goesOnToMm: number,
): number | undefined {
  const { verdict } = outcome.rule;
  const waits = verdict === 'ask' ? [] : outcomes.filter(({ rule }) => rule.verdict === 'not yet');
  const held = waits.filter(({ state }) => state !== 'met').map(({ earliestMm }) => earliestMm);
  const depths = [outcome.foreseenMm, ...held, ...(verdict === 'ask' ? [] : [goesOnToMm])];
  return depths.includes(undefined) ? undefined : Math.max(...depths.map((depth) => depth ?? 0));
}

function warning(rule: RuleOutcome, atMm: Depth, situation: Situation, asking: readonly string[]): Warning {
  const { verdict, name } = rule.rule;
  // Rows below the last rod counted show that the bit is deeper.
  const inMm = atMm - deepestMm(situation);
  const when =
    inMm > 0
      ? `in ${formatDepth(inMm)} m, at ${formatDepth(atMm)} m`
      : `once the log is at ${formatDepth(Math.max(atMm, situation.loggedMm))} m`;
  const provisos = [
    ...(verdict === 'ask' || asking.length === 0 ? [] : [`once ${asking.join(' and ')} is answered`]),
    ...ifWords(rule, situation),
  ];
  const proviso = provisos.length === 0 ? '' : `${provisos.join(', ')}: `;
  return { rule, verdict, atMm, words: `${proviso}${verdict} ${when} (${name})` };
}

/** What has to go on, and gaps in the log that must not turn out to be otherwise. */
function ifWords({ proviso, unlogged = [] }: RuleOutcome, { rows }: Situation): readonly string[] {
  const footMm = rows.at(-1)?.toMm ?? 0;
  const gaps = unlogged.filter(({ toMm }) => toMm < footMm).map(formatInterval);
  const ifs = [
    ...(proviso === undefined ? [] : [`${proviso} goes on`]),
    ...(gaps.length === 0 ? [] : [`${gaps.join(', ')}, not logged, is no different`]),
  ];
  return ifs.length === 0 ? [] : [`if ${ifs.join(' and ')}`];
}
