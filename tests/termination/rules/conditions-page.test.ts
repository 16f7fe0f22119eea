import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { CONDITIONS } from '../../../src/termination/conditions/index.ts';
import { evaluateRule } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { checkRules } from '../../../src/termination/rules/check-rules.ts';
import { conditionsPage } from '../../../src/termination/rules/conditions-page.ts';
import { type RuleCondition, ruleConditionSchema } from '../../../src/termination/rules/rule.ts';
import { WORKED_CASES } from '../../../src/termination/rules/worked-cases.ts';
import { resolveStyle } from '../../support/styles.ts';
import { metresOf, rule, situation } from '../build.ts';

const PAGE = join(import.meta.dirname, '..', '..', '..', 'src', 'termination', 'CONDITIONS.md');

test('the page about conditions is what is generated from them', () => {
  expect(readFileSync(PAGE, 'utf8')).toBe(conditionsPage());
});

describe('each kind of condition', () => {
  test.each(CONDITIONS.map((kind) => [kind.key, kind] as const))(
    '%s reads its own example',
    (key, { example }) => {
      const condition = { [key]: example };
      expect(ruleConditionSchema.parse(condition)).toEqual(condition);
    },
  );

  test('has a key and a file of its own', () => {
    expect(new Set(CONDITIONS.map((kind) => kind.key)).size).toBe(CONDITIONS.length);
  });

  test.each(CONDITIONS.map((kind) => [kind.key, kind] as const))(
    '%s names fields and codes of the starter style in its example',
    (key, { example }) => {
      const style = resolveStyle('orogenic-gold');
      const when = { [key]: example } as unknown as RuleCondition;
      expect(style && checkRules([rule(when)], style, {})).toEqual([]);
    },
  );

  test('refuses a figure that is misspelt', () => {
    expect(ruleConditionSchema.safeParse({ pastTarget: { byMetres: 20 } }).success).toBe(false);
    expect(ruleConditionSchema.safeParse({ pastTarget: { byM: 20, by: 20 } }).success).toBe(false);
  });
});

describe('worked by hand', () => {
  test.each(WORKED_CASES.map((each) => [each.title, each] as const))('%s', (_title, each) => {
    const at = situation(metresOf(each.metres), {
      loggedM: each.metres.length,
      ...(each.drilledM === undefined ? {} : { drilledM: each.drilledM }),
      ...(each.plannedM === undefined ? {} : { plan: { depthMm: depthFromMetres(each.plannedM) } }),
    });
    const found = evaluateRule(rule(each.when), at);
    expect(found.state).toBe(each.state);
    if (each.haveM !== undefined) expect(found.progress.haveMm).toBe(each.haveM * 1000);
    if (each.sinceM !== undefined) expect(found.sinceMm).toBe(each.sinceM * 1000);
    if (each.earliestM !== undefined) expect(found.earliestMm).toBe(each.earliestM * 1000);
  });
});
