import { depthFromMetres } from '../../../src/quantity/depth.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { checkDecisions, decide } from '../../../src/termination/advice/decision.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { checkRules, checkTermination } from '../../../src/termination/rules/check-rules.ts';
import type { Rule } from '../../../src/termination/rules/rule.ts';
import { BARREN, metresOf, rule, SCHEMA, situation } from '../../termination/build.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const PLACE = { file: 'project.json' };
const END = rule({ maximumReached: { maximumM: 200 } }, { name: 'end', verdict: 'end' });
const rules = (code: string, input: string, ...more: readonly Rule[]): ErrorCase =>
  given(code, input, () => checkRules([...more, END], SCHEMA, PLACE));
type Seen = Extract<Rule['when'], { seen: unknown }>['seen']['where'];
const seen = (code: string, input: string, where: Seen): ErrorCase =>
  rules(code, input, rule({ seen: { where, forM: 1 } }, { name: 'seen' }));

const RICH = situation(metresOf([0, 0, 0, 5]), { drilledM: 6 });
const ended = (reason: string | undefined, more: Partial<Parameters<typeof decide>[0]> = {}) =>
  decide(
    {
      kind: 'ended',
      at: '2026-03-14T07:42:10+08:00' as Stamp,
      by: 'ABC',
      rulesHash: 'a'.repeat(64),
      schemaHash: 'b'.repeat(64),
      ...(reason === undefined ? {} : { reason }),
      ...more,
    },
    evaluateRules([rule({ inARow: { where: BARREN, forM: 3 } }, { name: 'barren tail' })], RICH),
    RICH,
    { hole: 'ZQRC004' },
  );

/** Errors of termination rules and of decisions. */
export const TERMINATION_CASES: readonly ErrorCase[] = [
  rules('termination-rule-twice', 'one name for two rules', END),
  seen('termination-rule-field-unknown', 'a misspelt field', { field: 'sulfides', seen: true }),
  seen('termination-rule-code-unknown', 'a misspelt code', { field: 'rock', isOneOf: ['BST', 'XXX'] }),
  seen('termination-rule-code-retired', 'a retired code', { field: 'rock', isOneOf: ['BST', 'OLD'] }),
  seen('termination-rule-senseless', 'at least 2 of a rock', { field: 'rock', atLeast: 2 }),
  rules(
    'termination-rule-never-met',
    '12 of the last 10 m',
    rule({ ofLast: { where: BARREN, atLeastM: 12, ofM: 10 } }),
  ),
  rules(
    'termination-rule-calls-no-one',
    'a safety rule without a call',
    rule({ voidNear: { inLastM: 6, aheadM: 12 } }, { name: 'void', verdict: 'ask', safety: true }),
  ),
  given('termination-rule-sees-no-void', 'voids asked of a log without a code for them', () =>
    checkRules(
      [rule({ voidNear: { inLastM: 6, aheadM: 12 } }, { name: 'void', verdict: 'ask', safety: true }), END],
      { ...SCHEMA, fields: [], lists: {} },
      PLACE,
    ),
  ),
  rules('termination-rules-contradict', 'one question, two verdicts', {
    ...END,
    name: 'ask first',
    verdict: 'ask',
  }),
  rules(
    'termination-rule-held-back',
    'a minimum below the maximum',
    rule({ minimumReached: { minimumM: 250 } }, { name: 'minimum', verdict: 'not yet' }),
  ),
  given('termination-nothing-ends', 'rules that only ask', () =>
    checkRules([rule({ held: {} }, { verdict: 'ask' })], SCHEMA, PLACE),
  ),
  given('termination-override-without', 'a hole without a rule that is not there', () =>
    checkTermination(
      { rules: [END], holes: [{ hole: 'ZQRC004', by: 'ABC', because: 'deeper target', without: ['tail'] }] },
      SCHEMA,
      PLACE,
    ),
  ),
  given('termination-ended-without-reason', 'ended against the advice, no reason', () =>
    findingsIn(ended(undefined)),
  ),
  given('termination-extended-nowhere', 'to go on to a depth that is drilled', () =>
    findingsIn(ended('zone open', { kind: 'extended', toMm: depthFromMetres(4) })),
  ),
  given('termination-asked-and-called', 'ended where the rules ask, and someone was called', () => {
    const decision = ended('zone closed off');
    return checkDecisions(decision.ok ? [{ ...decision.value, verdict: 'ask', called: 'Ines Falk' }] : [], {
      hole: 'ZQRC004',
    });
  }),
  given('termination-ended-against-advice', 'ended against the advice, with a reason', () => {
    const decision = ended('bit stuck');
    return checkDecisions(decision.ok ? [decision.value] : [], { hole: 'ZQRC004' });
  }),
];
