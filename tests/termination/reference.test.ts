import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { situationAt } from '../../src/termination/advice/what-if.ts';
import { evaluateRule } from '../../src/termination/evaluate/evaluate-rule.ts';
import { stateAt } from '../../src/termination/evaluate/history.ts';
import { deepestMm } from '../../src/termination/evaluate/situation.ts';
import { runs } from '../support/long-run.ts';
import { askedArbitrary, asRule, pairArbitrary } from './arbitrary-hole.ts';
import { BARREN, row, rule, situation } from './build.ts';
import { referenceState } from './reference.ts';

const HOLES = runs(5000);
const RULES_A_HOLE = 4;
const SLOW = 300_000;

test('rules on generated logs stand at every depth as the reference says, and since the depth it says', {
  timeout: SLOW,
}, () => {
  let pairs = 0;
  const states = { met: 0, 'not met': 0, 'cannot tell': 0 };
  fc.assert(
    fc.property(
      pairArbitrary,
      fc.array(askedArbitrary, { minLength: RULES_A_HOLE, maxLength: RULES_A_HOLE }),
      ({ hole, situation }, rules) => {
        const deepest = deepestMm(situation);
        for (const asked of rules) {
          const found = evaluateRule(rule(asRule(asked)), situation);
          const expected = Array.from({ length: deepest + 1 }, (_, depth) =>
            referenceState(asked, hole, depth),
          );
          expect(expected.map((_, depth) => stateAt(found.history, depth))).toEqual(expected);
          expect(found.sinceMm).toBe(expected.findLastIndex((each) => each !== expected.at(-1)) + 1);
          states[found.state]++;
          pairs++;
        }
      },
    ),
    { numRuns: HOLES },
  );
  expect(pairs).toBeGreaterThanOrEqual(HOLES * RULES_A_HOLE);
  for (const count of Object.values(states)) expect(count).toBeGreaterThan((HOLES * RULES_A_HOLE) / 20);
});

test('a hole cut at a depth is now its history says it stood there', { timeout: SLOW }, () => {
  fc.assert(
    fc.property(pairArbitrary, askedArbitrary, fc.nat(60), ({ situation }, asked, depth) => {
      const at = Math.min(depth, deepestMm(situation));
      const whole = evaluateRule(rule(asRule(asked)), situation);
      const cut = evaluateRule(rule(asRule(asked)), situationAt(situation, depthFromMm(at)));
      const state = { yes: 'met', no: 'not met', 'cannot tell': 'cannot tell' }[stateAt(whole.history, at)];
      expect(cut.state).toBe(state);
    }),
    { numRuns: runs(3000) },
  );
});

test('a hole cut between the rig and a row below a gap is as deep as it is cut', () => {
  const at = situation([row(1, 2, 0)], { loggedM: 0, drilledM: 0 });
  const seen = rule({ seen: { where: BARREN, forM: 1 } });
  expect(evaluateRule(seen, situationAt(at, depthFromMm(1000))).state).toBe('cannot tell');
  expect(stateAt(evaluateRule(seen, at).history, 1000)).toBe('cannot tell');
});
