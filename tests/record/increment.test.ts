import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { everyEntry, heldBy, standingOf } from '../../src/record/ancestry.ts';
import { chainFault } from '../../src/record/chain.ts';
import type { Document } from '../../src/record/document.ts';
import { completed, incrementSince } from '../../src/record/increment.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import { runs } from '../support/long-run.ts';
import { deed, documentOf, edited, HOLE } from './build.ts';

const IDS = ['k1-1', '__proto__'] as const;
const START = edited(HOLE, 0, ...IDS.map((id) => ({ put: ['rows', id] as const, thing: { py: 0, ch: 0 } })));
const headOf = (document: Document): string => document.history.at(-1)?.hash ?? '';

interface Act {
  readonly at: number;
  /** The copy that is taken in; its own number: it logs. */
  readonly from: number;
  readonly id: string;
}
const anAct: fc.Arbitrary<Act> = fc.record({
  at: fc.nat({ max: 2 }),
  from: fc.nat({ max: 2 }),
  id: fc.constantFrom(...IDS),
});

/** Three copies that log and take each other in; every state of each of them, in order. */
function statesOf(acts: readonly Act[]): readonly Document[][] {
  const states: Document[][] = [[START], [START], [START]];
  const now = (side: number): Document => states[side]?.at(-1) ?? START;
  for (const [index, { at, from, id }] of acts.entries())
    states[at]?.push(
      at === from
        ? edited(now(at), index + 1, { patch: ['rows', id], set: { py: index } })
        : merge(now(at), now(from), deed(index + 1)).document,
    );
  return states;
}

describe('an increment', () => {
  test('is completed, by whoever holds what it goes on from, to the copy that it was made of', () => {
    fc.assert(
      fc.property(fc.array(anAct, { maxLength: 24 }), (acts) => {
        const states = statesOf(acts);
        for (const sender of states) {
          const copy = sender.at(-1) ?? START;
          for (const receiver of states)
            for (const acknowledged of receiver) {
              const increment = incrementSince(copy, headOf(acknowledged));
              const holds = heldBy(copy.history).has(headOf(acknowledged));
              expect(increment !== undefined).toBe(holds);
              if (increment === undefined) continue;
              for (const later of receiver.slice(receiver.indexOf(acknowledged))) {
                const made = completed(increment, later.history);
                if (!made.ok) throw new Error(made.problem);
                expect(sameJson(made.document.tables, copy.tables)).toBe(true);
                expect(headOf(made.document)).toBe(headOf(copy));
                expect(new Set(heldBy(made.document.history))).toEqual(new Set(heldBy(copy.history)));
                expect(everyEntry(made.document.history)).toHaveLength(everyEntry(copy.history).length);
                expect(chainFault(made.document.history)).toBeUndefined();
                expect(standingOf(copy, made.document)).toBe('same');
              }
            }
        }
      }),
      { numRuns: runs(1000) },
    );
  });

  test('holds what was added and nothing of what the receiver has', () => {
    const later = edited(START, 1, { patch: ['rows', 'k1-1'], set: { py: 7 } });
    const increment = incrementSince(later, headOf(START));
    expect(increment?.entries.map(({ edit }) => edit)).toEqual(['k1-1']);
    expect(increment?.onto).toBe(headOf(START));
    expect(incrementSince(later, headOf(later))?.entries).toEqual([]);
  });

  test('is refused in words by whoever lacks what it goes on from', () => {
    const base = edited(START, 1, { patch: ['rows', 'k1-1'], set: { py: 7 } });
    const later = edited(base, 2, { patch: ['rows', 'k1-1'], set: { py: 8 } });
    const increment = incrementSince(later, headOf(base));
    if (increment === undefined) throw new Error('there must be one');
    const made = completed(increment, START.history);
    expect(made).toEqual({ ok: false, problem: `the edit ${headOf(base).slice(0, 8)} is not here` });
    const altered = { ...increment, entries: increment.entries.map((entry) => ({ ...entry, by: 'Bo' })) };
    expect(completed(altered, base.history)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('what it says is not what its hash was made of'),
    });
  });

  test('is not made onto a history that it shares nothing with', () => {
    const other = documentOf([{ table: 'rows', id: 'k1-1', thing: { py: 1 }, take: 'all' }]);
    expect(incrementSince(START, headOf(other))).toBeUndefined();
  });
});
