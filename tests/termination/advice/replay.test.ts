import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { VERDICTS } from '../../../src/hole/ending.ts';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import { replay } from '../../../src/termination/advice/replay.ts';
import { weigh } from '../../../src/termination/advice/weigh.ts';
import { extendedBy, situationAt } from '../../../src/termination/advice/what-if.ts';
import { evaluateRules } from '../../../src/termination/evaluate/evaluate-rule.ts';
import { deepestMm } from '../../../src/termination/evaluate/situation.ts';
import { runs } from '../../support/long-run.ts';
import { askedArbitrary, asRule, pairArbitrary } from '../arbitrary-hole.ts';
import { BARREN, metresOf, outcome, row, rule, situation, times } from '../build.ts';

const TAIL = rule({ inARow: { where: BARREN, forM: 3 } }, { name: 'barren tail' });
const MINIMUM = rule({ minimumReached: { minimumM: 5 } }, { name: 'minimum', verdict: 'not yet' });

describe('replayed on a finished hole, rules', () => {
  test('say where they would have ended it and how many metres that saves', () => {
    const found = replay([TAIL], situation(metresOf([5, 0, 0, 0, 0, 0])));
    expect(found).toMatchObject({ wouldEndMm: 4000, endedMm: 6000, savedMm: 2000 });
    expect(found.rules).toMatchObject([{ firstMetMm: 4000 }]);
  });

  test('count a rule that holds the hole open', () => {
    expect(replay([TAIL, MINIMUM], situation(metresOf(times(8, 0))))).toMatchObject({
      wouldEndMm: 5000,
      savedMm: 3000,
    });
  });

  test('say how many metres at least were missing where they never advised ending', () => {
    const found = replay([TAIL], situation(metresOf([0, 0, 5, 0])));
    expect(found).toMatchObject({ endedMm: 4000, missedMm: 2000 });
    expect(found.wouldEndMm).toBeUndefined();
    expect(found.rules[0]?.firstMetMm).toBeUndefined();
  });

  test('say nothing of metres missed where no rule ends a hole', () => {
    expect(replay([MINIMUM], situation(metresOf([0]))).missedMm).toBeUndefined();
  });

  test('give the verdict from depth to depth, with the rules that gave it', () => {
    const { verdicts } = replay([TAIL], situation(metresOf([0, 0, 0, 5, 0, 0, 0])));
    expect(verdicts.map(({ atMm, verdict }) => [atMm, verdict])).toEqual([
      [0, 'not yet'],
      [3000, 'may end'],
      [3001, 'not yet'],
      [7000, 'may end'],
    ]);
    expect(verdicts[1]?.by).toEqual([TAIL]);
  });

  test('give at every depth the verdict that the hole cut there has', { timeout: 300_000 }, () => {
    const rules = fc.array(fc.tuple(askedArbitrary, fc.constantFrom(...VERDICTS)), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(pairArbitrary, rules, fc.nat(60), ({ situation: at }, asked, depth) => {
        const all = asked.map(([when, verdict]) => rule(asRule(when), { verdict }));
        const here = Math.min(depth, deepestMm(at));
        const cut = situationAt(at, depthFromMm(here));
        const reached = replay(all, at).verdicts.findLast(({ atMm }) => atMm <= here)?.verdict ?? 'not yet';
        expect(reached).toBe(weigh(evaluateRules(all, cut)).verdict);
      }),
      { numRuns: runs(2000) },
    );
  });
});

describe('what if', () => {
  const when = { inARow: { where: BARREN, forM: 4 } };

  test('reads the rows that might come below the logged head', () => {
    const at = situation(metresOf([5, 0, 0]));
    expect(outcome(when, at).state).toBe('not met');
    const extended = extendedBy(at, metresOf([0, 0], 3));
    expect(extended).toMatchObject({ loggedMm: 5000, drilledMm: 5000 });
    expect(outcome(when, extended).state).toBe('met');
  });

  test('leaves the rig where it is while the log catches up', () => {
    const extended = extendedBy(situation(metresOf([5]), { drilledM: 12 }), metresOf([0], 1));
    expect(extended).toMatchObject({ loggedMm: 2000, drilledMm: 12_000 });
  });

  test('stops the log at a gap, and changes nothing that is logged', () => {
    const extended = extendedBy(situation(metresOf([5, 0])), [row(0, 1, 0), row(2, 3, 0), row(4, 5, 0)]);
    expect(extended.loggedMm).toBe(3000);
    expect(extended.rows[0]).toEqual(row(0, 1, 5));
  });

  test('leaves the situation itself as it is', () => {
    const at = situation(metresOf([5, 0]));
    const before = JSON.stringify(at);
    extendedBy(at, metresOf([0], 2));
    situationAt(at, depthFromMm(1000));
    expect(JSON.stringify(at)).toBe(before);
  });
});

describe('a hole cut at a depth', () => {
  test('cuts the row that reaches over it, the stream and both heads', () => {
    const at = situation([row(0, 4, 0), row(4, 8, 0)], {
      drilledM: 12,
      stream: [{ fromMm: depthFromMm(0), toMm: depthFromMm(12_000), moisture: 'wet' }],
    });
    expect(situationAt(at, depthFromMm(6000))).toMatchObject({
      loggedMm: 6000,
      drilledMm: 6000,
      rows: [{ toMm: 4000 }, { toMm: 6000 }],
      stream: [{ toMm: 6000 }],
    });
  });

  test('knows no hold and no shot that came deeper', () => {
    const deep = depthFromMm(8000);
    const at = situation(metresOf(times(10, 0)), {
      hold: { because: 'wait', by: 'ABC', sinceMm: deep },
      direction: [{ atMm: deep, offPlanMm: 9000 }],
      pace: [{ atMm: deep, metresPerHour: 3 }],
    });
    const cut = situationAt(at, depthFromMm(7000));
    expect(cut).toMatchObject({ direction: [], pace: [] });
    expect(cut.hold).toBeUndefined();
    expect(situationAt(at, deep).hold).toBeDefined();
  });
});
