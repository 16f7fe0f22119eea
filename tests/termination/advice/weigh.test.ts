import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { VERDICTS } from '../../../src/hole/ending.ts';
import { type Standing, weigh } from '../../../src/termination/advice/weigh.ts';
import type { RuleState } from '../../../src/termination/evaluate/evaluate-rule.ts';
import type { Rule, RuleCondition } from '../../../src/termination/rules/rule.ts';
import { rule } from '../build.ts';

const DEPTH: RuleCondition = { maximumReached: { maximumM: 100 } };
const BOUNDARY: RuleCondition = { boundaryNear: { boundaryM: 100, withinM: 0 } };

const standing = (verdict: Rule['verdict'], state: RuleState, more: Partial<Rule> = {}): Standing => ({
  rule: rule(DEPTH, { verdict, ...more }),
  state,
});

describe('the verdict', () => {
  test('is not yet where no rule is met', () => {
    expect(weigh([standing('end', 'not met'), standing('may end', 'not met')])).toEqual({
      verdict: 'not yet',
      by: [],
    });
    expect(weigh([])).toEqual({ verdict: 'not yet', by: [] });
  });

  test('is end before may end', () => {
    const end = standing('end', 'met');
    expect(weigh([standing('may end', 'met'), end])).toEqual({ verdict: 'end', by: [end] });
  });

  test('is not yet while a rule that holds the hole open is not met, whatever would end it', () => {
    const minimum = standing('not yet', 'not met');
    expect(weigh([standing('end', 'met'), minimum])).toEqual({ verdict: 'not yet', by: [minimum] });
    expect(weigh([standing('end', 'met'), standing('not yet', 'met')]).verdict).toBe('end');
  });

  test('is not yet where it can’t be told whether a rule holds the hole open', () => {
    expect(weigh([standing('end', 'met'), standing('not yet', 'cannot tell')]).verdict).toBe('not yet');
  });

  test('is ask before not yet', () => {
    expect(weigh([standing('not yet', 'not met'), standing('ask', 'met')]).verdict).toBe('ask');
  });

  test('is ask where a safety rule can’t be told, and not where another can’t', () => {
    expect(weigh([standing('end', 'cannot tell', { safety: true })]).verdict).toBe('ask');
    expect(weigh([standing('ask', 'cannot tell')]).verdict).toBe('not yet');
  });

  test('is that of a boundary, a void or a hold before all others, also of a minimum depth', () => {
    const boundary = { rule: rule(BOUNDARY, { verdict: 'end' }), state: 'met' } as const;
    expect(weigh([standing('not yet', 'not met'), standing('ask', 'met'), boundary])).toEqual({
      verdict: 'end',
      by: [boundary],
    });
  });

  test('is ask where of two that go first one asks and one ends', () => {
    const held = { rule: rule({ held: {} }, { verdict: 'ask' }), state: 'met' } as const;
    const boundary = { rule: rule(BOUNDARY, { verdict: 'end' }), state: 'met' } as const;
    expect(weigh([boundary, held]).verdict).toBe('ask');
  });

  test('is ask where ending is advised and a limit on ending is met or can’t be told; else the limit is silent', () => {
    const limit = (state: RuleState) => standing('ask', state, { whenEnding: true });
    expect(weigh([standing('may end', 'met'), limit('met')]).verdict).toBe('ask');
    expect(weigh([standing('may end', 'met'), limit('cannot tell')]).verdict).toBe('ask');
    expect(weigh([standing('may end', 'met'), limit('not met')]).verdict).toBe('may end');
    expect(weigh([standing('may end', 'not met'), limit('met')]).verdict).toBe('not yet');
  });

  test('never ends a hole by what can’t be told: settling every doubt as not met ends no hole that was not ended', () => {
    const standings = fc.array(
      fc.record({
        rule: fc.record({
          when: fc.constantFrom(DEPTH, BOUNDARY, { held: {} }),
          verdict: fc.constantFrom(...VERDICTS),
          safety: fc.constantFrom<true | undefined>(true, undefined),
          whenEnding: fc.constantFrom<true | undefined>(true, undefined),
        }),
        state: fc.constantFrom<RuleState>('met', 'not met', 'cannot tell'),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(standings, (found) => {
        const given = found as unknown as readonly Standing[];
        const { verdict } = weigh(given);
        fc.pre(verdict === 'end' || verdict === 'may end');
        const doubted = given.filter(({ state }) => state !== 'cannot tell');
        expect(weigh(doubted).verdict).toBe(verdict);
      }),
    );
  });
});
