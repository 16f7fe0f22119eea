import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { adviceOf } from '../../../src/termination/advice/verdict.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { checkRules } from '../../../src/termination/rules/check-rules.ts';
import { OROGENIC_GOLD_RULES } from '../../../src/termination/rules/starter/orogenic-gold.ts';
import { resolveStyle } from '../../support/styles.ts';
import { metresOf, type Said, situation, times } from '../build.ts';

const PLAN = { depthMm: depthFromMetres(60) };
const LODE: readonly Said[] = [...times(20, 0), 3, 5, 4];

function verdict(said: readonly Said[]): string {
  const stream = [{ fromMm: depthFromMetres(0), toMm: depthFromMetres(200), moisture: 'dry' as const }];
  const at = situation(metresOf(said), { plan: PLAN, stream });
  return adviceOf(evaluateRules(OROGENIC_GOLD_RULES, at), at).verdict;
}

describe('the starter rules for orogenic gold', () => {
  test('are in order, on the starter style that they are for', () => {
    const style = resolveStyle('orogenic-gold');
    const found = style && checkRules(OROGENIC_GOLD_RULES, style, {});
    // Whom to call is the site’s own.
    expect(found?.map(({ code }) => code)).toEqual(['termination-rule-calls-no-one']);
  });

  test('hold a barren hole open to its planned depth', () => {
    expect(verdict(times(54, 0))).toBe('not yet');
    expect(verdict(times(60, 0))).toBe('end');
  });

  test('allow ending behind the lode, at a rod’s end', () => {
    expect(verdict([...LODE, ...times(13, 0)])).toBe('may end');
    expect(verdict([...LODE, ...times(14, 0)])).toBe('not yet');
  });

  test('ask before stopping far short of the plan', () => {
    expect(verdict([3, 5, ...times(10, 0)])).toBe('ask');
  });

  test('ask before going far past the plan', () => {
    expect(verdict([...times(60, 0), ...times(12, 3)])).toBe('ask');
    expect(verdict([...times(60, 0), ...times(6, 3)])).toBe('not yet');
  });

  test('ask where a metre did not come up: it may have been a void', () => {
    expect(verdict([...times(10, 0), 'no return', 0])).toBe('ask');
  });
});
