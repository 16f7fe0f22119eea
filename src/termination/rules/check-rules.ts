import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { depthFromMm, formatDepth } from '../../quantity/depth.ts';
import { canSay } from '../../schema/cautions.ts';
import type { LoggingSchema } from '../../schema/logging-schema.ts';
import { goesFirst } from '../advice/weigh.ts';
import { assess } from '../evaluate/evaluate-rule.ts';
import type { Situation } from '../evaluate/situation.ts';
import { type Ahead, aheadOf, aheadOfAll, aheadOfAny, aheadOfNot } from '../evaluate/span.ts';
import {
  nothingEnds,
  overrideWithout,
  ruleCallsNoOne,
  ruleHeldBack,
  ruleNeverMet,
  ruleSeesNoVoid,
  rulesContradict,
  ruleTwice,
} from '../findings.ts';
import { rulesFor, type TerminationSettings } from '../settings.ts';
import { checkFields } from './check-fields.ts';
import { kindOfLeaf, type Leaf, leavesOf, type Rule, type RuleCondition } from './rule.ts';
import { canBe } from './satisfiable.ts';

/** What is wrong with the rules of a project and of each hole that has rules of its own. */
export function checkTermination(
  settings: TerminationSettings,
  schema: LoggingSchema,
  place: Place,
): readonly Finding[] {
  const project = checkRules(settings.rules, schema, place);
  const said = new Set(project.map((finding) => `${finding.code} ${finding.problem}`));
  const holes = (settings.holes ?? []).flatMap(({ hole, without }) => {
    const at = { ...place, hole };
    const missing = (without ?? []).filter((name) => !settings.rules.some((rule) => rule.name === name));
    return [
      ...missing.map((name) =>
        overrideWithout.at(at, {
          problem: `there is no rule "${name}" to do without`,
          remedy: `Name one of: ${settings.rules.map((rule) => rule.name).join(', ')}.`,
        }),
      ),
      ...checkRules(rulesFor(settings, [hole]), schema, at).filter(
        (finding) => !said.has(`${finding.code} ${finding.problem}`),
      ),
    ];
  });
  return [...project, ...holes];
}

/** What is wrong with rules that are in force together: names, fields and codes, rules that can't be met, rules at odds. */
export function checkRules(rules: readonly Rule[], schema: LoggingSchema, place: Place): readonly Finding[] {
  const at = (rule: Rule): Place => ({ ...place, thing: `rule ${rule.name}` });
  const fields = rules.flatMap((rule) =>
    leavesOf(rule.when).flatMap((leaf) =>
      conditionsOf(leaf).flatMap((each) => checkFields(each, schema, at(rule))),
    ),
  );
  const aheads = rules.map((rule) => ({ rule, ahead: aheadOnBlank(rule.when, schema) }));
  return [
    ...pairsOf(rules).flatMap(([a, b]) => checkPair(a, b, at(b))),
    ...fields,
    ...aheads.filter(({ ahead }) => ahead.holds === undefined).map(({ rule }) => neverMet(rule, at(rule))),
    ...rules.flatMap((rule) => seesNoVoid(rule, schema, at(rule))),
    ...rules.filter(callsNoOne).map((rule) => noCall(rule, at(rule))),
    ...heldBack(aheads, at),
    ...checkEnding(rules, place),
  ];
}

function pairsOf(rules: readonly Rule[]): readonly (readonly [Rule, Rule])[] {
  return rules.flatMap((a, index) => rules.slice(index + 1).map((b) => [a, b] as const));
}

function checkPair(a: Rule, b: Rule, place: Place): readonly Finding[] {
  const twice = ruleTwice.at(place, {
    problem: 'two rules have this name',
    remedy: 'Name one of them otherwise.',
  });
  if (a.name === b.name) return [twice];
  if (a.verdict === b.verdict || a.whenEnding || b.whenEnding) return [];
  if (JSON.stringify(a.when) !== JSON.stringify(b.when)) return [];
  return [
    rulesContradict.at(place, {
      problem: `asks the same as "${a.name}", and advises "${b.verdict}" where that advises "${a.verdict}"`,
      remedy: 'Keep the one that is meant.',
    }),
  ];
}

function neverMet(rule: Rule, place: Place): Finding {
  return ruleNeverMet.at(place, {
    problem: 'no log and no depth can meet it',
    excerpt: JSON.stringify(rule.when),
    remedy: 'Look for a part that excludes another, or more metres asked than are counted.',
  });
}

/** A rule that asks for voids over a log that can't say one. */
function seesNoVoid(rule: Rule, schema: LoggingSchema, place: Place): readonly Finding[] {
  if (!leavesOf(rule.when).some((leaf) => 'voidNear' in leaf) || canSay(schema, 'void')) return [];
  return [
    ruleSeesNoVoid.at(place, {
      problem: 'it asks for voids, and no code in use has a caution that says void',
      remedy: 'Give the code for voids and old workings "caution": { "kind": "void", … } in logging.json.',
    }),
  ];
}

/** True of a rule about safety that names nobody to call. */
export function callsNoOne({ safety, call }: Rule): boolean {
  return safety === true && call === undefined;
}

function noCall({ name }: Rule, place: Place): Finding {
  return ruleCallsNoOne.at(place, {
    problem: `"${name}" says to call and names no person, number or channel`,
    remedy: 'Give the rule a "call" in project.json: "call": "the site manager, channel 4".',
  });
}

type RuleAhead = { readonly rule: Rule; readonly ahead: Ahead };

/** Rules that surely end a hole from a depth on, beside rules that surely hold it open deeper than that. */
function heldBack(aheads: readonly RuleAhead[], at: (rule: Rule) => Place): readonly Finding[] {
  const holding = aheads.filter(({ rule }) => rule.verdict === 'not yet');
  const ending = aheads.filter(
    ({ rule }) => (rule.verdict === 'end' || rule.verdict === 'may end') && !goesFirst(rule),
  );
  return ending.flatMap(({ rule, ahead }) => {
    const surelyMm = ahead.fails === undefined ? 0 : ahead.fails.toMm + 1;
    const holds = holding.find((each) => (each.ahead.holds?.fromMm ?? Number.POSITIVE_INFINITY) > surelyMm);
    if (holds === undefined || !Number.isFinite(surelyMm)) return [];
    const untilMm = holds.ahead.holds?.fromMm;
    const until = untilMm === undefined ? 'always' : `to ${formatDepth(untilMm)} m`;
    return [
      ruleHeldBack.at(at(rule), {
        problem: `ends the hole at ${formatDepth(surelyMm)} m, but "${holds.rule.name}" holds it open ${until}`,
        remedy: 'Make the one deeper or the other shallower.',
      }),
    ];
  });
}

function checkEnding(rules: readonly Rule[], place: Place): readonly Finding[] {
  if (rules.length === 0 || rules.some(({ verdict }) => verdict === 'end' || verdict === 'may end'))
    return [];
  return [
    nothingEnds.at(place, {
      problem: 'no rule advises ending a hole',
      remedy: 'Add a rule with the verdict "end" or "may end".',
    }),
  ];
}

/** Where a rule can be met in a hole that is not begun and has no plan: what needs one may come at any depth. */
function aheadOnBlank(condition: RuleCondition, schema: LoggingSchema): Ahead {
  if ('all' in condition) return aheadOfAll(condition.all.map((each) => aheadOnBlank(each, schema)));
  if ('any' in condition) return aheadOfAny(condition.any.map((each) => aheadOnBlank(each, schema)));
  if ('not' in condition) return aheadOfNot(aheadOnBlank(condition.not, schema));
  const { holds, fails } = assess(condition, blank(schema)).ahead;
  const loggable = conditionsOf(condition).every((each) => canBe(each, 'yes', schema));
  const leaves = !('sinceLastSeen' in condition) || canBe(condition.sinceLastSeen.where, 'no', schema);
  return aheadOf(loggable && leaves ? holds : undefined, fails);
}

/** The conditions over rows that a condition asks. */
function conditionsOf(leaf: Leaf) {
  const kind = kindOfLeaf(leaf);
  const said = (leaf as { readonly [key: string]: unknown })[kind.key];
  return 'asks' in kind && kind.asks !== undefined ? kind.asks(said as never) : [];
}

function blank(schema: LoggingSchema): Situation {
  const top = depthFromMm(0);
  return {
    schema,
    header: { logFromMm: top, intervalMm: 1000, rodMm: 6000, firstRodOffsetMm: 0 },
    rows: [],
    loggedMm: top,
    drilledMm: top,
    stream: [],
    expects: [],
    direction: [],
    pace: [],
  };
}
