import type { Condition } from '../../condition/condition.ts';
import type { Decision } from '../../hole/ending.ts';
import { type Depth, depthFromMm, formatDepth } from '../../quantity/depth.ts';
import type { Interval } from '../../quantity/interval.ts';
import type { Tri } from '../../quantity/tri.ts';
import { answeredBy } from '../advice/answered.ts';
import { ruleCodeRetired } from '../findings.ts';
import { checkFields } from '../rules/check-fields.ts';
import { kindOfLeaf, type Leaf, leavesOf, type Rule, type RuleCondition } from '../rules/rule.ts';
import { sightOf } from '../rules/seen-in-row.ts';
import { type History, sinceMm } from './history.ts';
import { anyOne, everyOne, foreseenAt, notGiven, type Outcome, opposite } from './outcome.ts';
import { deepestMm, type Situation } from './situation.ts';
import { logMore } from './unlogged.ts';

/** The state of a rule, in the words that a decision records. */
export type RuleState = Decision['rules'][number]['state'];

/** A rule compared with a situation. */
export type RuleOutcome = {
  readonly rule: Rule;
  readonly state: RuleState;
  /** How far it is, with its cut-off, for the panel; the lengths are there where the rule counts metres. */
  readonly progress: { readonly haveMm?: number; readonly needMm?: number; readonly text: string };
  /** The depth the hole had when it came to stand so. */
  readonly sinceMm: Depth;
  /** The metres that decided it, the shallowest first. */
  readonly deciding: readonly Interval[];
  /** No hole that goes on from here meets it above this depth, however its metres turn out; undefined where none ever does. */
  readonly earliestMm?: Depth;
  /** Where it is seen coming; undefined where it isn't: something that may turn at any metre, or never. */
  readonly foreseenMm?: Depth;
  /** What has to go on for it to be met, where that is not drilling alone. */
  readonly proviso?: string;
  /** The decision to go on that settled what it asks; it doesn't ask again until it comes to stand so again. */
  readonly answered?: Decision;
  /** Of a met rule about safety that asks the log: what was seen, where, and how far above the bit. */
  readonly sight?: string;
  /** Metres not logged that could change how it stands. */
  readonly unlogged?: readonly Interval[];
  /** Metres not logged of which only the driller's word says that it isn't met. */
  readonly byWord?: readonly Interval[];
  /** Why it stands so. */
  readonly reason: string;
  /** What ends a doubt that nothing done at once would end; the reason says it too, last. */
  readonly until?: string;
  /** How it stood at each depth the hole had. */
  readonly history: History;
};

const STATES: { readonly [T in Tri]: RuleState } = {
  yes: 'met',
  no: 'not met',
  'cannot tell': 'cannot tell',
};

/** How a fault of a rule is taken: it can't be told then, or it is passed over and what is known decides. */
type Faults = 'cannot tell' | 'passed over';

/** A condition compared with a situation. */
export function assess(
  condition: RuleCondition,
  situation: Situation,
  faults: Faults = 'cannot tell',
): Outcome {
  if ('all' in condition)
    return everyOne(
      situation,
      condition.all.map((each) => assess(each, situation, faults)),
    );
  if ('any' in condition)
    return anyOne(
      situation,
      condition.any.map((each) => assess(each, situation, faults)),
    );
  if ('not' in condition) return opposite(assess(condition.not, situation, faults));
  return assessLeaf(condition, situation, faults);
}

/** What a rule comes to. A danger that was seen stays one, whatever else its rule names that isn't there. */
function assessRule({ safety, when }: Rule, situation: Situation): Outcome {
  const known = safety ? assess(when, situation, 'passed over') : undefined;
  return known?.state === 'yes' ? known : assess(when, situation);
}

function assessLeaf(leaf: Leaf, situation: Situation, passOver: Faults): Outcome {
  const kind = kindOfLeaf(leaf);
  // The kind was found by the key that holds its own shape; the compiler can't pair the two through the union.
  const said = (leaf as { readonly [key: string]: unknown })[kind.key];
  const faults =
    kind.asks === undefined || passOver === 'passed over'
      ? []
      : faultsOf(kind.asks(said as never), situation);
  return faults.length === 0
    ? kind.assess(said as never, situation)
    : notGiven(situation, `${[...new Set(faults)].join('; ')}: fix the rule in project.json`);
}

/** What keeps comparisons from ever being answered: a field or a code that the logging schema lacks. No row can speak for or against such a rule. */
function faultsOf(asked: readonly Condition[], { schema }: Situation): readonly string[] {
  return asked
    .flatMap((each) => checkFields(each, schema, {}))
    .filter(({ code }) => code !== ruleCodeRetired.code)
    .map(({ problem }) => problem);
}

/** A rule compared with a situation: its state, how far it is, since when, and why. */
export function evaluateRule(rule: Rule, situation: Situation): RuleOutcome {
  const outcome = assessRule(rule, situation);
  const { history, amount, deciding, ahead, proviso } = outcome;
  const { progress, reason } = withToLog(outcome, situation);
  const foreseenMm = foreseenAt(outcome);
  const state = STATES[outcome.state];
  const since = sinceMm(history);
  // What was settled about a danger to a depth is used up where the bit is; else where the rods are.
  const reachedMm = rule.safety ? deepestMm(situation) : situation.drilledMm;
  const { decisions = [] } = situation;
  const answered = answeredBy(decisions, rule, state, since, reachedMm, deciding, outcome.unlogged);
  const sight = rule.safety && state === 'met' ? sightOf(situation, askedBy(rule), deciding) : undefined;
  const until = state === 'cannot tell' ? outcome.until : undefined;
  const settled = answered === undefined ? [] : [settledWords(rule, state, answered)];
  return {
    rule,
    state,
    ...(sight === undefined ? {} : { sight }),
    ...(outcome.byWord === undefined || outcome.byWord.length === 0 ? {} : { byWord: outcome.byWord }),
    ...(outcome.unlogged === undefined || outcome.unlogged.length === 0
      ? {}
      : { unlogged: outcome.unlogged }),
    progress: { ...(amount ?? {}), text: progress },
    sinceMm: depthFromMm(since),
    deciding,
    ...(foreseenMm === undefined ? {} : { foreseenMm: depthFromMm(foreseenMm) }),
    ...(ahead.holds === undefined ? {} : { earliestMm: depthFromMm(ahead.holds.fromMm) }),
    ...(proviso === undefined ? {} : { proviso }),
    ...(answered === undefined ? {} : { answered }),
    reason: [reason, ...(until === undefined ? [] : [until]), ...settled].join('; '),
    ...(until === undefined || answered !== undefined ? {} : { until }),
    history,
  };
}

/** The conditions over rows that a rule asks. */
function askedBy({ when }: Rule): readonly Condition[] {
  return leavesOf(when).flatMap((leaf) => {
    const kind = kindOfLeaf(leaf);
    // As where it is assessed: the key found the kind, the compiler can't pair the two.
    const said = (leaf as { readonly [key: string]: unknown })[kind.key];
    return kind.asks === undefined ? [] : kind.asks(said as never);
  });
}

/** Progress and reason, with what has to be logged, read or noted before it can be told. */
function withToLog(
  { state, unlogged = [], needs = [], progress, reason }: Outcome,
  situation: Situation,
): { readonly progress: string; readonly reason: string } {
  const log = unlogged.length === 0 ? [] : [logMore(unlogged, deepestMm(situation))];
  const more = [...log, ...needs].join(', ');
  if (state !== 'cannot tell' || more === '') return { progress, reason };
  return {
    progress: `${progress}: ${more}`,
    reason: reason === progress ? `${progress}: ${more}` : `${reason}; ${more}`,
  };
}

/** Who settled what a rule asks, and where; of a danger, which nothing said settles, who was called. */
export function settledWords(rule: Rule, state: RuleState, { by, called, depthMm }: Decision): string {
  const at = `by ${by} at ${formatDepth(depthMm)} m`;
  if (rule.safety === true && state === 'met') return `${called} called ${at}`;
  return `settled ${at}, ${called} called`;
}

/** A hold that someone made is advice of its own: it must not hang on whether the project has a rule for it. */
const HOLD: Rule = {
  name: 'on hold',
  words: 'Someone wants to be called before this hole is ended or goes on.',
  verdict: 'ask',
  when: { held: {} },
};

/** Every rule compared with a situation, in the order they are written; a hold goes before them where no rule asks about it. */
export function evaluateRules(rules: readonly Rule[], situation: Situation): readonly RuleOutcome[] {
  const all = situation.hold === undefined || rules.some(asksOnHold) ? rules : [HOLD, ...rules];
  return all.map((rule) => evaluateRule(rule, situation));
}

/** True of a rule that asks whenever the hole is on hold, whatever else is so. */
function asksOnHold({ verdict, when, whenEnding }: Rule): boolean {
  return verdict === 'ask' && whenEnding === undefined && 'held' in when;
}
