import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateRule } from '../../src/termination/evaluate/evaluate-rule.ts';
import { runs } from '../support/long-run.ts';
import { askedArbitrary, asRule, leafArbitrary, metreArbitrary, pairArbitrary } from './arbitrary-hole.ts';
import { rule } from './build.ts';
import {
  type Asked,
  deepestOf,
  type Hole,
  referenceState,
  type Said,
  type Test,
  testOne,
} from './reference.ts';

const SLOW = 300_000;
/** Millimetres further than any rule here needs, shares apart. */
const FAR = 40;

/** The hole when so much more of it is logged: what is drilled and not logged first, from the top down; then below it, as the rig goes on. */
function goneOn(hole: Hole, more: readonly Said[]): Hole {
  const log = [...hole.log];
  let mm = hole.top;
  for (const said of more) {
    while (log[mm] !== undefined) mm++;
    log[mm] = said;
  }
  for (let gap = 0; gap < log.length; gap++) log[gap] ??= undefined;
  return { ...hole, log, drilled: Math.max(hole.drilled, log.length) };
}

/** Millimetres that are drilled and not logged. */
function unlogged(hole: Hole): number {
  let count = 0;
  for (let mm = hole.top; mm < deepestOf(hole); mm++) if (hole.log[mm] === undefined) count++;
  return count;
}

/** The state of a hole as it is, at its foot. */
function stateNow(asked: Asked, hole: Hole) {
  return referenceState(asked, hole, deepestOf(hole));
}

test('no hole that goes on meets a rule above its earliest depth', {
  timeout: SLOW,
}, () => {
  fc.assert(
    fc.property(
      pairArbitrary,
      askedArbitrary,
      fc.array(metreArbitrary, { maxLength: 25 }),
      ({ hole, situation }, asked, more) => {
        const { earliestMm } = evaluateRule(rule(asRule(asked)), situation);
        for (let length = 0; length <= more.length; length++) {
          const later = goneOn(hole, more.slice(0, length));
          const depth = deepestOf(later);
          if (stateNow(asked, later) === 'yes')
            expect(earliestMm ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(depth);
        }
      },
    ),
    { numRuns: runs(4000) },
  );
});

const ALL_SAID: readonly Said[] = ['BST', 'GRN'].flatMap((rock) =>
  [0, 0.1, 0.5, 1, 2, 5].map((pyrite) => ({ rock, pyrite })),
);

/** What a metre can say so that a test holds, or fails; undefined where none can. */
function saying(asked: Asked, wanted: 'yes' | 'no'): Said | undefined {
  if (asked.ask === 'no return')
    return { rock: 'BST', pyrite: 0, ...(wanted === 'yes' ? { doubt: asked.ask } : {}) };
  const { test: of } = asked as { readonly test: Test };
  return ALL_SAID.find((said) => testOne(of, said) === wanted);
}

const logLeaf = leafArbitrary.filter(({ ask }) =>
  ['run', 'seen', 'of last', 'share', 'since', 'no return'].includes(ask),
);

test('a rule on the log is met at its earliest depth when every metre from here favours it', {
  timeout: SLOW,
}, () => {
  let reached = 0;
  fc.assert(
    fc.property(pairArbitrary, logLeaf, ({ hole, situation }, asked) => {
      const yes = saying(asked, 'yes');
      const no = saying(asked, 'no');
      fc.pre(yes !== undefined && no !== undefined);
      const { earliestMm } = evaluateRule(rule(asRule(asked)), situation);
      const favours = (length: number): readonly (readonly Said[])[] => [
        Array.from({ length }, () => yes!),
        Array.from({ length }, () => no!),
        Array.from({ length }, (_, index) => (index === 0 ? yes! : no!)),
      ];
      let met: number | undefined;
      const behind = unlogged(hole);
      for (let length = behind; length <= behind + FAR && met === undefined; length++)
        if (
          stateNow(asked, hole) === 'yes' ||
          favours(length).some((more) => stateNow(asked, goneOn(hole, more)) === 'yes')
        )
          met = deepestOf(hole) + length - behind;
      if (met === undefined)
        expect(earliestMm ?? Number.POSITIVE_INFINITY).toBeGreaterThan(deepestOf(hole) + FAR);
      else {
        expect(earliestMm).toBe(met);
        reached++;
      }
    }),
    { numRuns: runs(5000) },
  );
  expect(reached).toBeGreaterThan(0.6 * runs(5000));
});
