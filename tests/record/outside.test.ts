import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChanges } from '../../src/record/apply.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { sameJson } from '../../src/record/json.ts';
import { difference, outsideChanges, recordOutside } from '../../src/record/outside.ts';
import { runs } from '../support/long-run.ts';
import { aDocument, deed, edited, HOLE } from './build.ts';

describe('the difference of two states', () => {
  test('applied to the first gives the second', () => {
    fc.assert(
      fc.property(aDocument, aDocument, ({ tables: from }, { tables: to }) => {
        const applied = applyChanges(from, difference(from, to));
        expect(applied.ok && sameJson(applied.tables, to)).toBe(true);
      }),
      { numRuns: runs(500) },
    );
  });

  test('of a state and itself is nothing, the order of keys aside', () => {
    fc.assert(
      fc.property(aDocument, ({ tables }) => {
        expect(difference(tables, JSON.parse(JSON.stringify(tables)))).toEqual([]);
      }),
    );
    expect(difference({ rows: { a: { x: 1, y: 2 } } }, { rows: { a: { y: 2, x: 1 } } })).toEqual([]);
    expect(difference({ rows: {} }, {})).toEqual([]);
  });

  test('names only the fields that differ', () => {
    expect(difference({ rows: { a: { x: 1, y: 2, z: 3 } } }, { rows: { a: { x: 1, y: 4 } } })).toEqual([
      { patch: ['rows', 'a'], set: { y: 4 }, unset: ['z'] },
    ]);
  });

  test('tells a field that is null from one that is not there', () => {
    expect(difference({ rows: { a: {} } }, { rows: { a: { x: null } } })).toEqual([
      { patch: ['rows', 'a'], set: { x: null } },
    ]);
    expect(difference({ rows: { a: { x: null } } }, { rows: { a: {} } })).toEqual([
      { patch: ['rows', 'a'], unset: ['x'] },
    ]);
  });
});

describe('tables that were edited outside', () => {
  const held = edited(HOLE, 1, { put: ['rows', 'k1-1'], thing: { rock: 'BST' } });
  const changed = { ...held, tables: { rows: { 'k1-1': { rock: 'SHL' } } } };

  test('are found, and become a marked link of the history with what stood before', () => {
    expect(outsideChanges(changed)).toEqual([{ patch: ['rows', 'k1-1'], set: { rock: 'SHL' } }]);
    const recorded = recordOutside(changed, deed(2));
    expect(recorded.tables).toEqual(changed.tables);
    expect(recorded.history.at(-1)).toMatchObject({
      outside: true,
      changes: [{ patch: ['rows', 'k1-1'], set: { rock: 'SHL' }, before: { rock: 'BST' } }],
    });
  });

  test('once recorded agree with their history, and its chain holds', () => {
    fc.assert(
      fc.property(aDocument, aDocument, (document, other) => {
        const recorded = recordOutside({ ...document, tables: other.tables }, deed(90));
        expect(chainFault(recorded.history)).toBeUndefined();
        expect(sameJson(replay(recorded.history), other.tables)).toBe(true);
        expect(outsideChanges(recorded)).toEqual([]);
        expect(recordOutside(recorded, deed(91))).toBe(recorded);
      }),
    );
  });

  test('a document that no one touched outside stays the same document', () => {
    expect(recordOutside(held, deed(2))).toBe(held);
  });
});
