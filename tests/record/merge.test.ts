import { describe, expect, test } from 'vitest';
import { countHeld, heldBy, standingOf } from '../../src/record/ancestry.ts';
import { inverse } from '../../src/record/apply.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import type { Change, Document } from '../../src/record/document.ts';
import { merge } from '../../src/record/merge.ts';
import { deed, edited, HOLE } from './build.ts';

const put = (id: string, thing: { readonly [field: string]: number }): Change => ({
  put: ['rows', id],
  thing,
});
const set = (id: string, thing: { readonly [field: string]: number }): Change => ({
  patch: ['rows', id],
  set: thing,
});

const start = edited(HOLE, 1, put('k1-1', { py: 2, ch: 1 }));

const merged = (ours: Document, theirs: Document, number: number) => merge(ours, theirs, deed(number));

/** The inverse of the last edit, as undo appends it. */
function undone(document: Document, number: number): Document {
  const last = document.history.at(-1);
  if (last === undefined) throw new Error('nothing to undo');
  return edited(document, number, ...inverse(last.changes));
}

describe('the standing of another copy', () => {
  const longer = edited(start, 2, set('k1-1', { py: 3 }));
  const other = edited(start, 3, set('k1-1', { ch: 2 }));
  const stranger = edited(HOLE, 4, put('z9-1', { py: 1 }));

  test.each([
    ['same', start, start],
    ['same', HOLE, HOLE],
    ['newer', start, longer],
    ['newer', HOLE, start],
    ['older', longer, start],
    ['older', start, HOLE],
    ['diverged', longer, other],
    ['unrelated', start, stranger],
  ] as const)('is %s by what each holds of the other (%#)', (standing, ours, theirs) => {
    expect(standingOf(ours, theirs)).toBe(standing);
  });

  test('is older once its entries are merged in, and newer seen from there', () => {
    const both = merged(longer, other, 5).document;
    expect(standingOf(both, other)).toBe('older');
    expect(standingOf(other, both)).toBe('newer');
    expect(standingOf(longer, both)).toBe('newer');
    expect(countHeld(other.history, heldBy(both.history))).toBe(other.history.length);
  });

  test('of copies merged from strangers is no longer unrelated', () => {
    const both = merged(start, stranger, 5).document;
    expect(standingOf(both, edited(stranger, 6, put('z9-2', { py: 1 })))).toBe('diverged');
  });
});

describe('a merge', () => {
  test('takes what only the other copy changed and keeps what only ours did', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }), put('k1-2', { py: 1 }));
    const theirs = edited(start, 3, set('k1-1', { ch: 2 }), put('m2-1', { py: 9 }));
    const { document, questions } = merged(ours, theirs, 4);
    expect(document.tables).toEqual({
      rows: { 'k1-1': { py: 3, ch: 2 }, 'k1-2': { py: 1 }, 'm2-1': { py: 9 } },
    });
    expect(questions).toEqual([]);
  });

  test('where both changed one cell keeps ours and asks, with theirs in the question', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }));
    const theirs = edited(start, 3, set('k1-1', { py: 5 }));
    const { document, questions } = merge(ours, theirs, deed(4));
    expect(document.tables.rows).toEqual({ 'k1-1': { py: 3, ch: 1 } });
    expect(Object.entries(document.tables.questions ?? {})).toEqual([
      [
        expect.stringMatching(/^asked-[0-9a-f]{16}$/),
        { table: 'rows', thing: 'k1-1', field: 'py', ours: 3, theirs: 5, state: 'open' },
      ],
    ]);
    expect(questions).toEqual([{ table: 'rows', id: 'k1-1', field: 'py', ours: 3, theirs: 5 }]);
  });

  test('where both changed one cell to the same asks nothing', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }));
    const theirs = edited(start, 3, set('k1-1', { py: 3 }));
    expect(merged(ours, theirs, 4).questions).toEqual([]);
  });

  test('asks of the whole thing where one copy took it out and the other changed it', () => {
    const changed = edited(start, 2, set('k1-1', { py: 3 }));
    const without = edited(start, 3, { remove: ['rows', 'k1-1'] });
    expect(merged(changed, without, 4).questions).toEqual([
      { table: 'rows', id: 'k1-1', ours: { py: 3, ch: 1 }, theirs: undefined },
    ]);
    expect(merged(without, changed, 4).questions).toEqual([
      { table: 'rows', id: 'k1-1', ours: undefined, theirs: { py: 3, ch: 1 } },
    ]);
  });

  test('takes out what the other copy took out and ours left alone', () => {
    const ours = edited(start, 2, put('k1-2', { py: 1 }));
    const theirs = edited(start, 3, { remove: ['rows', 'k1-1'] });
    expect(merged(ours, theirs, 4).document.tables).toEqual({ rows: { 'k1-2': { py: 1 } } });
  });

  test('of two things under one id, as of two plans, asks of each field that differs', () => {
    const ours = edited(HOLE, 2, put('plan', { depthM: 120, dip: -60 }));
    const theirs = edited(HOLE, 3, put('plan', { depthM: 150, dip: -60 }));
    const { document, questions } = merged(ours, theirs, 4);
    expect(document.tables.rows).toEqual({ plan: { depthM: 120, dip: -60 } });
    expect(questions).toEqual([{ table: 'rows', id: 'plan', field: 'depthM', ours: 120, theirs: 150 }]);
  });

  test('of what the other copy changed and took back asks nothing', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }));
    const theirs = undone(edited(start, 3, set('k1-1', { py: 5 })), 4);
    const { document, questions } = merged(ours, theirs, 5);
    expect(questions).toEqual([]);
    expect(document.tables.rows?.['k1-1']).toEqual({ py: 3, ch: 1 });
  });

  test('of a newer copy is that copy, of an older one or the same is ours', () => {
    const newer = edited(start, 2, set('k1-1', { py: 3 }));
    expect(merged(start, newer, 3)).toEqual({ document: newer, questions: [] });
    expect(merged(newer, start, 3)).toEqual({ document: newer, questions: [] });
    expect(merged(newer, newer, 3)).toEqual({ document: newer, questions: [] });
  });

  test('is one entry that follows both tips and holds the other copy whole', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }));
    const theirs = edited(edited(start, 3, set('k1-1', { ch: 5 })), 4, set('k1-1', { ch: 6 }));
    const { document } = merged(ours, theirs, 5);
    const entry = document.history.at(-1);
    expect(entry?.follows).toEqual([ours.history.at(-1)?.hash, theirs.history.at(-1)?.hash]);
    expect(entry?.incoming).toEqual(theirs.history.slice(1));
    expect(chainFault(document.history)).toBeUndefined();
    expect(replay(document.history)).toEqual(document.tables);
  });
});

describe('copies that go on after a merge', () => {
  test('are not asked again about what the other went on from', () => {
    const ours = edited(start, 2, put('k1-2', { py: 1 }));
    const theirs = edited(start, 3, set('k1-1', { py: 5 }));
    const both = edited(merged(ours, theirs, 4).document, 5, set('k1-1', { py: 7 }));
    const further = edited(theirs, 6, put('m2-1', { py: 9 }));
    const { document, questions } = merged(both, further, 7);
    expect(questions).toEqual([]);
    expect(document.tables.rows?.['k1-1']).toEqual({ py: 7, ch: 1 });
  });

  test('take what the other changed again', () => {
    const ours = edited(start, 2, put('k1-2', { py: 1 }));
    const theirs = edited(start, 3, set('k1-1', { py: 5 }));
    const both = merged(ours, theirs, 4).document;
    const { document, questions } = merged(both, edited(theirs, 5, set('k1-1', { py: 6 })), 6);
    expect(questions).toEqual([]);
    expect(document.tables.rows?.['k1-1']).toEqual({ py: 6, ch: 1 });
  });

  test('each having merged the other, keep a value that one of them put back since', () => {
    const ours = edited(start, 2, set('k1-1', { py: 5 }));
    const theirs = edited(start, 3, put('m2-1', { py: 9 }));
    const here = edited(merged(ours, theirs, 4).document, 5, set('k1-1', { py: 2 }));
    const there = merged(theirs, ours, 6).document;
    for (const [one, other] of [
      [here, there],
      [there, here],
    ] as const) {
      const { document, questions } = merged(one, other, 7);
      expect(questions).toEqual([]);
      expect(document.tables.rows?.['k1-1']).toEqual({ py: 2, ch: 1 });
    }
  });

  test('where a third copy had asked against a value, and someone who knew that value changed it, take the change: it is still asked about against the third', () => {
    const third = edited(start, 2, set('k1-1', { py: 1 }));
    const ours = edited(start, 3, set('k1-1', { py: 3 }));
    const theirs = edited(ours, 4, set('k1-1', { py: 5 }));
    const asked = merged(ours, third, 5).document;
    for (const [one, other] of [
      [asked, theirs],
      [theirs, asked],
    ] as const) {
      const { document, questions } = merged(one, other, 6);
      expect(questions).toEqual([]);
      expect(document.tables.rows?.['k1-1']).toEqual({ py: 5, ch: 1 });
      expect(Object.values(document.tables.questions ?? {})).toMatchObject([
        { thing: 'k1-1', field: 'py', ours: 1, theirs: 3, state: 'open' },
      ]);
    }
  });

  test('take such a change of a field of a plan that two copies made apart', () => {
    const third = edited(HOLE, 2, put('plan', { depthM: 150, dip: -60 }));
    const ours = edited(HOLE, 3, put('plan', { depthM: 120, dip: -60 }));
    const theirs = edited(ours, 4, set('plan', { depthM: 130 }));
    const { document, questions } = merged(merged(ours, third, 5).document, theirs, 6);
    expect(questions).toEqual([]);
    expect(document.tables.rows?.plan).toEqual({ depthM: 130, dip: -60 });
  });

  test('ask where the value that was changed had been written a second time, by someone apart', () => {
    const third = edited(start, 2, set('k1-1', { py: 3 }));
    const ours = edited(start, 3, set('k1-1', { py: 3 }));
    const theirs = edited(ours, 4, set('k1-1', { py: 5 }));
    const { questions } = merged(merged(ours, third, 5).document, theirs, 6);
    expect(questions).toEqual([{ table: 'rows', id: 'k1-1', field: 'py', ours: 3, theirs: 5 }]);
  });

  test('each having asked already about a cell that both had changed, are not asked a second time: the question is open still', () => {
    const ours = edited(start, 2, set('k1-1', { py: 3 }));
    const theirs = edited(start, 3, set('k1-1', { py: 5 }));
    const here = merged(ours, theirs, 4).document;
    const there = merged(theirs, ours, 5).document;
    const { document, questions } = merged(here, there, 6);
    expect(questions).toEqual([]);
    expect(Object.values(document.tables.questions ?? {})).toMatchObject([
      { thing: 'k1-1', field: 'py', ours: 3, theirs: 5, state: 'open' },
    ]);
  });
});
