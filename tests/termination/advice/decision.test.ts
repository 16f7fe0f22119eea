import { describe, expect, test } from 'vitest';
import { decision as decisionSchema } from '../../../src/hole/ending.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { checkDecisions, type Decided, decide, isAgainst } from '../../../src/termination/advice/decision.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { BARREN, metresOf, rule, situation, times } from '../build.ts';

const RULES = [rule({ inARow: { where: BARREN, forM: 3 } }, { name: 'barren tail' })];
const PLACE = { hole: 'ZQRC004' };
const DECIDED: Decided = {
  kind: 'ended',
  at: '2026-03-14T07:42:10+08:00' as Stamp,
  by: 'ABC',
  rulesHash: 'a'.repeat(64),
  schemaHash: 'b'.repeat(64),
};
const BARREN_HOLE = situation(metresOf(times(6, 0)));
const RICH_HOLE = situation(metresOf([0, 0, 0, 5]), { drilledM: 6 });

const decided = (more: Partial<Decided>, at = BARREN_HOLE) =>
  decide({ ...DECIDED, ...more }, evaluateRules(RULES, at), at, PLACE);

describe('a decision', () => {
  test('is recorded with the verdict, how each rule stood, and the log it rested on', () => {
    const found = decided({});
    expect(found).toMatchObject({
      ok: true,
      value: {
        kind: 'ended',
        verdict: 'may end',
        depthMm: 6000,
        loggedMm: 6000,
        rules: [{ rule: 'barren tail', state: 'met', words: 'pyrite < 1 % for 6 m (3 needed) in a row' }],
        by: 'ABC',
      },
    });
    expect(decisionSchema.safeParse(found.ok && found.value).success).toBe(true);
  });

  test('against the advice is refused without a reason, a blank one too', () => {
    for (const reason of [undefined, '  ']) {
      const found = decided(reason === undefined ? {} : { reason }, RICH_HOLE);
      expect(found.ok).toBe(false);
      expect(found.ok || found.findings[0]).toMatchObject({
        code: 'termination-ended-without-reason',
        place: { hole: 'ZQRC004', fromMm: 6000 },
        problem: 'ended where the advice was "not yet", without a reason',
      });
    }
  });

  test('against the advice is recorded with its reason and who was called', () => {
    const found = decided({ reason: ' bit stuck ', called: 'exploration manager' }, RICH_HOLE);
    expect(found).toMatchObject({ ok: true, value: { reason: 'bit stuck', called: 'exploration manager' } });
  });

  test.each([
    ['ended', 'may end', false],
    ['ended', 'end', false],
    ['ended', 'not yet', true],
    ['ended early', 'ask', true],
    ['extended', 'end', true],
    ['extended', 'ask', true],
    ['extended', 'not yet', false],
    ['held', 'end', false],
    ['reopened', 'end', false],
  ] as const)('%s where the advice is %s goes against it: %s', (kind, verdict, against) => {
    expect(isAgainst(kind, verdict)).toBe(against);
  });
});

describe('the check of a hole', () => {
  test('shows a decision against the advice with its reason', () => {
    const found = decided({ reason: 'bit stuck', called: 'the manager' }, RICH_HOLE);
    const findings = checkDecisions(found.ok ? [found.value] : [], PLACE);
    expect(findings).toMatchObject([
      {
        code: 'termination-ended-against-advice',
        severity: 'note',
        excerpt: 'bit stuck',
        problem: 'ended by ABC where the advice, on the log to 4 m, was "not yet"',
        remedy: 'No action needed (the manager was called); shown for tuning the rules.',
      },
    ]);
  });

  test('faults one that came in without a reason', () => {
    const found = decided({ reason: 'bit stuck' }, RICH_HOLE);
    if (!found.ok) throw new Error('refused');
    const { reason: _lost, ...bare } = found.value;
    expect(checkDecisions([bare], PLACE)).toMatchObject([{ code: 'termination-ended-without-reason' }]);
  });

  test('says nothing of a decision with the advice', () => {
    const found = decided({});
    expect(checkDecisions(found.ok ? [found.value] : [], PLACE)).toEqual([]);
  });
});
