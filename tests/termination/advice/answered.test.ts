import { describe, expect, test } from 'vitest';
import type { Decision } from '../../../src/hole/ending.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { decide } from '../../../src/termination/advice/decision.ts';
import { adviceOf } from '../../../src/termination/advice/verdict.ts';
import { situationAt } from '../../../src/termination/advice/what-if.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import type { Situation } from '../../../src/termination/evaluate/situation.ts';
import { metresOf, rule, type Said, situation, times } from '../build.ts';

const LOST = rule({ noReturnInARow: { forM: 2 } }, { name: 'no return', verdict: 'ask' });
const lost = (said: readonly Said[], decisions: readonly Decision[] = []) =>
  situation(metresOf(said), { decisions });
const advice = (at: Situation, rules = [LOST]) => adviceOf(evaluateRules(rules, at), at);

/** The decision of a person who was asked and called someone. */
function goOn(at: Situation, kind: Decision['kind'] = 'extended', rules = [LOST]): Decision {
  const made = decide(
    {
      kind,
      reason: 'air up',
      called: 'the manager',
      at: '2026-03-14T07:42:10+08:00' as Stamp,
      by: 'ABC',
      rulesHash: 'a',
      schemaHash: 'b',
    },
    evaluateRules(rules, at),
    at,
    {},
  );
  if (!made.ok) throw new Error('refused');
  return made.value;
}

describe('what a rule asks', () => {
  const asked = lost([0, 'no return', 'no return']);
  const settled = goOn(asked);

  test('is settled by a decision to go on, and says by whom', () => {
    expect(advice(asked).verdict).toBe('ask');
    const later = lost([0, ...times(4, 'no return')], [settled]);
    expect(advice(later).verdict).toBe('not yet');
    expect(evaluateRules([LOST], later)[0]?.reason).toBe(
      'no return for 4 m (2 needed) in a row; settled by ABC at 3 m, the manager called',
    );
  });

  test('is asked again where it came to be met again', () => {
    const again = lost([0, 'no return', 'no return', 0, 'no return', 'no return'], [settled]);
    expect(advice(again).verdict).toBe('ask');
  });

  test('is not settled by a decision of another kind, nor by one on another rule', () => {
    expect(advice(lost([0, 'no return', 'no return'], [goOn(asked, 'held')])).verdict).toBe('ask');
    const other = { ...LOST, name: 'other' };
    expect(advice(lost([0, 'no return', 'no return'], [goOn(asked, 'extended', [other])])).verdict).toBe(
      'ask',
    );
  });

  test('is not settled yet in the hole cut above the decision', () => {
    const at = lost([0, ...times(4, 'no return')], [{ ...settled, depthMm: depthFromMetres(5) }]);
    expect(advice(situationAt(at, depthFromMetres(4))).verdict).toBe('ask');
  });

  test('is settled for a safety rule in doubt while the same doubt stands', () => {
    const safe = rule(
      { voidNear: { inLastM: 6, aheadM: 0 } },
      { name: 'void', verdict: 'ask', safety: true },
    );
    const doubt = lost([0, 'no return']);
    expect(advice(doubt, [safe]).verdict).toBe('ask');
    expect(advice(lost([0, 'no return', 0], [goOn(doubt, 'extended', [safe])]), [safe]).verdict).toBe(
      'not yet',
    );
  });
});

test('a permit that ends the hole is not settled by a decision to go on', () => {
  const permit = rule({ boundaryNear: { boundaryM: 3, withinM: 0 } }, { name: 'permit', verdict: 'end' });
  const at = situation(metresOf(times(3, 0)));
  const decisions = [goOn(at, 'extended', [permit])];
  expect(advice(situation(metresOf(times(4, 0)), { decisions }), [permit]).verdict).toBe('end');
});

describe('a decision to go on', () => {
  const END = rule({ maximumReached: { maximumM: 12 } }, { name: 'maximum', verdict: 'end' });
  const at = (drilledM: number, toM?: number) => {
    const here = situation(metresOf(times(12, 0)));
    const decision = goOn(here, 'extended', [END]);
    const decisions = [toM === undefined ? decision : { ...decision, toMm: depthFromMetres(toM) }];
    return situation(metresOf(times(drilledM, 0)), { decisions });
  };

  test('holds the advice until the depth that was settled is drilled', () => {
    expect(advice(at(12, 30), [END]).sentence).toBe(
      'NOT YET: goes on to 30 m, decided by ABC at 12 m, the manager called: air up.',
    );
    expect(advice(at(29, 30), [END]).verdict).toBe('not yet');
    expect(advice(at(30, 30), [END]).verdict).toBe('end');
  });

  test('that names no depth holds it for a rod', () => {
    expect(advice(at(17), [END]).verdict).toBe('not yet');
    expect(advice(at(18), [END]).verdict).toBe('end');
  });

  test('is asked about again once what was settled is drilled', () => {
    const asked = lost([0, 'no return', 'no return']);
    const settled = { ...goOn(asked), toMm: depthFromMetres(5) };
    expect(advice(lost([0, ...times(3, 'no return')], [settled])).verdict).toBe('not yet');
    expect(advice(lost([0, ...times(4, 'no return')], [settled])).verdict).toBe('ask');
  });

  test('is over when the hole is held', () => {
    const extended = at(13, 30).decisions![0]!;
    const here = situation(metresOf(times(13, 0)), {
      decisions: [extended, { ...extended, kind: 'held' }],
    });
    expect(advice(here, [END]).verdict).toBe('end');
  });
});
