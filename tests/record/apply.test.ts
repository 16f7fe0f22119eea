import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { apply, applyChanges, hindrance, inverse } from '../../src/record/apply.ts';
import { replay } from '../../src/record/chain.ts';
import { canonicalJson, own, sameJson } from '../../src/record/json.ts';
import { runs } from '../support/long-run.ts';
import { aDocument, aThing, aWish, changeFor, deed, documentOf, edited, HOLE, HOSTILE } from './build.ts';

const row = { put: ['rows', 'k1-1'], thing: { fromMm: 0, rock: 'BST' } } as const;

describe('applying changes', () => {
  test('a put makes a thing, a patch changes its fields, a removal takes it out', () => {
    const made = documentOf([]);
    const put = edited(made, 1, row);
    expect(put.tables).toEqual({ rows: { 'k1-1': { fromMm: 0, rock: 'BST' } } });
    const patched = edited(put, 2, { patch: ['rows', 'k1-1'], set: { rock: 'SHL' }, unset: ['fromMm'] });
    expect(patched.tables).toEqual({ rows: { 'k1-1': { rock: 'SHL' } } });
    expect(edited(patched, 3, { remove: ['rows', 'k1-1'] }).tables).toEqual({});
  });

  test('history keeps what stood before each change, and only of the fields that it changed', () => {
    const document = edited(edited(HOLE, 1, row), 2, {
      patch: ['rows', 'k1-1'],
      set: { rock: 'SHL', note: 1 },
    });
    expect(document.history[1]?.changes).toEqual([
      { patch: ['rows', 'k1-1'], set: { rock: 'SHL', note: 1 }, before: { rock: 'BST' } },
    ]);
  });

  test('a put over a thing, and a patch or removal of none, is refused with the reason', () => {
    const { tables } = edited(HOLE, 1, row);
    expect(applyChanges(tables, [row])).toEqual({ ok: false, problem: 'rows k1-1 is already there' });
    expect(applyChanges({}, [{ remove: ['rows', 'k1-1'] }])).toEqual({
      ok: false,
      problem: 'rows k1-1 is not there',
    });
    expect(applyChanges({}, [{ patch: ['constructor', 'name'], set: {} }])).toEqual({
      ok: false,
      problem: 'constructor name is not there',
    });
  });

  test('a patch that both sets and takes out a field is refused', () => {
    const { tables } = edited(HOLE, 1, row);
    expect(
      applyChanges(tables, [{ patch: ['rows', 'k1-1'], set: { rock: 'SHL' }, unset: ['rock'] }]),
    ).toEqual({ ok: false, problem: 'rock of rows k1-1 is both set and taken out' });
  });

  test('an edit is all or nothing', () => {
    const document = edited(HOLE, 1, row);
    const before = canonicalJson(document);
    const result = apply(document, deed(2), [{ patch: ['rows', 'k1-1'], set: { rock: 'SHL' } }, row]);
    expect(result.ok).toBe(false);
    expect(canonicalJson(document)).toBe(before);
  });

  test('the document that an edit starts from stays as it was', () => {
    fc.assert(
      fc.property(aDocument, aWish, (document, wish) => {
        const before = canonicalJson(document);
        edited(document, 99, changeFor(document.tables, wish));
        expect(canonicalJson(document)).toBe(before);
      }),
    );
  });

  test.each(HOSTILE)('a table, a thing and a field named %s are kept like any other', (name) => {
    const document = edited(HOLE, 1, { put: [name, name], thing: Object.fromEntries([[name, 1]]) });
    expect(Object.entries(own(document.tables, name) ?? {})).toEqual([
      [name, Object.fromEntries([[name, 1]])],
    ]);
    expect(own(own(own(document.tables, name), name), name)).toBe(1);
    const patched = edited(document, 2, { patch: [name, name], set: Object.fromEntries([[name, 2]]) });
    expect(own(own(own(patched.tables, name), name), name)).toBe(2);
    expect(own(edited(patched, 3, { remove: [name, name] }).tables, name) ?? {}).toEqual({});
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  test.each(HOSTILE)('a table named %s that no one made holds nothing', (name) => {
    expect(own(HOLE.tables, name)).toBeUndefined();
  });
});

test('an entry says which edit it takes back or does again, where it does', () => {
  const said = (more: Parameters<typeof deed>[1]) => {
    const result = apply(HOLE, deed(1, more), [row]);
    return (
      result.ok && [result.entry.undoes, result.entry.redoes, Object.keys(result.entry).includes('undoes')]
    );
  };
  expect(said({})).toEqual([undefined, undefined, false]);
  expect(said({ undoes: 'k1-7' })).toEqual(['k1-7', undefined, true]);
  expect(said({ redoes: 'k1-8' })).toEqual([undefined, 'k1-8', false]);
});

describe('taking changes back', () => {
  test('applying the inverse gives the tables from before', () => {
    fc.assert(
      fc.property(aDocument, fc.array(aWish, { minLength: 1, maxLength: 5 }), (document, wishes) => {
        const after = wishes.reduce(
          (state, wish) => {
            const applied = applyChanges(state.tables, [changeFor(state.tables, wish)]);
            if (!applied.ok) throw new Error(applied.problem);
            return { tables: applied.tables, done: [...state.done, ...applied.done] };
          },
          { tables: document.tables, done: [] as Parameters<typeof inverse>[0][number][] },
        );
        const back = applyChanges(after.tables, inverse(after.done));
        expect(back.ok && sameJson(back.tables, document.tables)).toBe(true);
      }),
    );
  });

  test('nothing hinders taking back the latest edit', () => {
    fc.assert(
      fc.property(aDocument, (document) => {
        const last = document.history.at(-1);
        expect(last && hindrance(document, last)).toBeUndefined();
      }),
    );
  });

  test('it is refused exactly when something that the edit touched stands otherwise now', () => {
    fc.assert(
      fc.property(aDocument, fc.array(aWish, { maxLength: 3 }), (document, later) => {
        const entry = document.history.at(-1);
        if (entry === undefined) throw new Error('a document here has a history');
        const now = documentOf(later, document, 50);
        const left = entry.changes.map((change) => {
          const [table, id] = 'put' in change ? change.put : 'patch' in change ? change.patch : change.remove;
          const [then, is] = [document, now].map(({ tables }) => own(own(tables, table), id));
          if (!('patch' in change)) return [then, is];
          const fields = [...Object.keys(change.set ?? {}), ...(change.unset ?? [])];
          return [then, is].map(
            (thing) =>
              thing && fields.map((field) => (Object.hasOwn(thing, field) ? [own(thing, field)] : [])),
          );
        });
        const touchedStands = left.every(([then, is]) => sameJson(then, is));
        expect(hindrance(now, entry) === undefined).toBe(touchedStands);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('what is not refused can be taken back', () => {
    fc.assert(
      fc.property(aDocument, fc.array(aWish, { maxLength: 3 }), (document, later) => {
        const entry = document.history.at(-1);
        const now = documentOf(later, document, 50);
        if (entry === undefined || hindrance(now, entry) !== undefined) return;
        expect(applyChanges(now.tables, inverse(entry.changes)).ok).toBe(true);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('an edit that touches one thing twice can be taken back: only how it left the thing counts', () => {
    const document = edited(HOLE, 1, row, { patch: ['rows', 'k1-1'], set: { rock: 'SHL' } });
    const entry = document.history[0];
    expect(entry && hindrance(document, entry)).toBeUndefined();
  });

  test.each([
    [{ patch: ['rows', 'k1-1'], set: { rock: 'SHL' } } as const, 'rows k1-1 has been changed since'],
    [{ remove: ['rows', 'k1-1'] } as const, 'rows k1-1 has been taken out since'],
  ])('the reason names what is in the way (%#)', (change, reason) => {
    const document = edited(HOLE, 1, row);
    const entry = document.history[0];
    expect(entry && hindrance(edited(document, 2, change), entry)).toBe(reason);
  });

  test('a later change to another field of a patched thing is not a hindrance; to the same field it is', () => {
    const document = edited(edited(HOLE, 1, row), 2, {
      patch: ['rows', 'k1-1'],
      set: { rock: 'SHL' },
      unset: ['fromMm'],
    });
    const entry = document.history[1];
    const patch = (set: Parameters<typeof Object.keys>[0]) =>
      entry && hindrance(edited(document, 3, { patch: ['rows', 'k1-1'], set: { ...set } }), entry);
    expect(patch({ note: 'x' })).toBeUndefined();
    expect(patch({ rock: null })).toBe('rock of rows k1-1 has been changed since');
    expect(patch({ fromMm: 0 })).toBe('fromMm of rows k1-1 has been set since');
  });
});

describe('history', () => {
  test('replayed from nothing makes the tables', () => {
    fc.assert(
      fc.property(aDocument, (document) => {
        expect(sameJson(replay(document.history), document.tables)).toBe(true);
      }),
    );
  });

  test('a thing and its fields survive the journey through a file, whatever they are named', () => {
    fc.assert(
      fc.property(aThing, (thing) => {
        const document = edited(HOLE, 1, { put: ['rows', 'k1-1'], thing });
        expect(sameJson(JSON.parse(JSON.stringify(document)), document)).toBe(true);
      }),
    );
  });
});
