import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asOf, chainFault, replay } from '../../src/record/chain.ts';
import type { Document, Entry } from '../../src/record/document.ts';
import { hashHolds, sealed } from '../../src/record/hash.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import { aDocument, deed, edited, HOLE } from './build.ts';

const row = { put: ['rows', 'k1-1'], thing: { rock: 'BST' } } as const;

/** A history with a merge in it: ours and theirs parted after the first entry. */
function withMerge(): Document {
  const start = edited(HOLE, 1, row);
  const ours = edited(start, 2, { put: ['rows', 'k1-2'], thing: { rock: 'SHL' } });
  const theirs = edited(start, 3, { put: ['rows', 'm2-1'], thing: { rock: 'BIF' } });
  const further = edited(theirs, 4, { put: ['rows', 'm2-2'], thing: { rock: 'BIF' } });
  return merge(ours, further, deed(5)).document;
}

/** Every way to make one leaf of a JSON value another text. */
function tamperings(value: unknown): unknown[] {
  if (value === null || typeof value !== 'object') return [`${String(value)}x`];
  if (Array.isArray(value))
    return value.flatMap((item, index) => tamperings(item).map((bad) => value.with(index, bad)));
  return Object.entries(value).flatMap(([key, item]) =>
    tamperings(item).map((bad) => Object.fromEntries([...Object.entries(value), [key, bad]])),
  );
}

describe('the chain of a history', () => {
  test('of a document made by edits holds', () => {
    fc.assert(fc.property(aDocument, (document) => chainFault(document.history) === undefined));
    expect(chainFault([])).toBeUndefined();
  });

  test('with a merge in it holds', () => {
    expect(chainFault(withMerge().history)).toBeUndefined();
  });

  test('is broken by any one value changed, the values merged in included', () => {
    const { history } = withMerge();
    const all = tamperings(history) as Entry[][];
    expect(all.length).toBeGreaterThan(40);
    for (const tampered of all) expect(chainFault(tampered)).toBeDefined();
  });

  test('is broken by a member added to an entry or to its changes', () => {
    const [entry] = edited(HOLE, 1, row).history;
    if (entry === undefined) throw new Error('an edit leaves an entry');
    expect(chainFault([{ ...entry, ...{ note: 'x' } }])?.index).toBe(0);
    expect(hashHolds({ ...entry, outside: true })).toBe(false);
  });

  test('is broken by an entry left out, doubled or moved, and the first that does not hold is named', () => {
    fc.assert(
      fc.property(aDocument, fc.nat(), fc.nat(), ({ history }, a, b) => {
        const one = a % history.length;
        const other = b % history.length;
        const entry = history[one] as Entry;
        const without = history.toSpliced(one, 1);
        if (one < history.length - 1) expect(chainFault(without)?.index).toBe(one);
        expect(chainFault(history.toSpliced(one, 0, entry))?.index).toBe(one + 1);
        if (one !== other)
          expect(chainFault(without.toSpliced(other, 0, entry))?.index).toBe(Math.min(one, other));
      }),
    );
  });

  test('is broken by an entry rewritten and hashed again, at the entry after it', () => {
    const { history } = edited(edited(HOLE, 1, row), 2, { remove: ['rows', 'k1-1'] });
    const [first, second] = history as [Entry, Entry];
    const { hash: _, ...rest } = first;
    const forged = sealed({ ...rest, by: 'Bob' });
    expect(chainFault([forged, second])).toEqual({
      index: 1,
      problem: 'it does not follow the entry above it',
    });
  });

  test('is broken by a merged copy that is cut, reordered, or parted from another history', () => {
    const { history } = withMerge();
    const last = history.at(-1) as Entry;
    const { hash: _, ...rest } = last;
    const [one, two] = last.incoming as [Entry, Entry];
    const tipped = (member: 'incoming' | 'merged', entries: readonly Entry[], tip = entries.at(-1)) => {
      const { incoming: _, ...bare } = rest;
      const follows = [rest.follows[0] as string, ...(tip ? [tip.hash] : [])];
      return chainFault([...history.slice(0, -1), sealed({ ...bare, [member]: entries, follows })])?.problem;
    };
    expect(tipped('incoming', [one, two])).toBeUndefined();
    expect(tipped('incoming', [one], two)).toBe('an entry merged in: nothing follows it');
    expect(tipped('incoming', [two, one])).toBe('an entry merged in: it follows an entry that is not there');
    expect(tipped('incoming', [two])).toBe('an entry merged in: it follows an entry that is not there');
    expect(tipped('incoming', [one, one])).toBe('an entry merged in: it is there twice');
    expect(tipped('incoming', [one, two], one)).toBe('an entry merged in: nothing follows it');
    expect(tipped('incoming', [])).toBe('it is not a merge and holds entries of another copy');
    expect(tipped('merged', [one, two])).toBeUndefined();
    expect(tipped('merged', [one], two)).toBe('it does not name the copy it merged');
    expect(tipped('merged', [two, one])).toBe('the copy it merged did not part from this history');
    expect(tipped('merged', [two])).toBe('the copy it merged did not part from this history');
    expect(tipped('merged', [one, one])).toBe('an entry merged in: it does not follow the entry above it');
    expect(tipped('merged', [])).toBe('it names an entry that is not there');
  });
});

describe('an earlier state', () => {
  test('is what the first entries of the history make', () => {
    fc.assert(
      fc.property(aDocument, fc.nat(), (document, nth) => {
        const count = nth % (document.history.length + 1);
        const earlier = asOf(document, count);
        expect(earlier.history).toEqual(document.history.slice(0, count));
        expect(sameJson(earlier.tables, replay(earlier.history))).toBe(true);
      }),
    );
  });

  test('before the first entry is empty', () => {
    expect(asOf(edited(HOLE, 1, row), 0)).toEqual(HOLE);
  });

  test('of a history that does not fit itself is an error of whoever did not verify it', () => {
    const { history } = edited(edited(HOLE, 1, row), 2, { remove: ['rows', 'k1-1'] });
    expect(() => replay(history.slice(1))).toThrow(
      'history does not fit itself at edit k1-2: rows k1-1 is not there',
    );
  });
});
