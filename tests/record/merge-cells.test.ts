import { describe, expect, it } from 'vitest';
import { apply } from '../../src/record/apply.ts';
import { type Change, type Document, emptyDocument } from '../../src/record/document.ts';
import { merge } from '../../src/record/merge.ts';

const deed = (edit: string) => ({ edit, at: '2026-03-14T08:00:00+08:00', by: 'NOK', what: edit });

function edited(document: Document, edit: string, ...changes: Change[]): Document {
  const done = apply(document, deed(edit), changes);
  if (!done.ok) throw new Error(done.problem);
  return done.document;
}

const cells = { rock: { code: 'BAS' }, veins: { percent: 2 } };
const start = edited(emptyDocument({ kind: 'hole', id: 'MBRC900' }), 'a-1', {
  put: ['rows', 'a-2'],
  thing: { fromMm: 0, toMm: 1000, cells },
});
const amended = (edit: string, changed: object): Document =>
  edited(start, edit, { patch: ['rows', 'a-2'], set: { cells: { ...cells, ...changed } } });
const merged = (ours: Document, theirs: Document) => merge(ours, theirs, deed('m-1'));

describe('two copies that amend one row', () => {
  it('in different cells keep both, and ask nothing', () => {
    const { document, questions } = merged(
      amended('a-3', { rock: { code: 'DOL' } }),
      amended('b-1', { veins: { percent: 5 } }),
    );
    expect(document.tables.rows?.['a-2']?.cells).toEqual({ rock: { code: 'DOL' }, veins: { percent: 5 } });
    expect(questions).toEqual([]);
  });

  it('in the same cell ask about that cell alone', () => {
    const { document, questions } = merged(
      amended('a-3', { rock: { code: 'DOL' } }),
      amended('b-1', { rock: { code: 'GAB' }, veins: { percent: 5 } }),
    );
    expect(document.tables.rows?.['a-2']?.cells).toEqual({ rock: { code: 'DOL' }, veins: { percent: 5 } });
    expect(questions).toEqual([
      { table: 'rows', id: 'a-2', field: 'cells.rock', ours: { code: 'DOL' }, theirs: { code: 'GAB' } },
    ]);
  });

  it('one taking a cell out and the other adding one keep both', () => {
    const { document, questions } = merged(
      edited(start, 'a-3', { patch: ['rows', 'a-2'], set: { cells: { rock: { code: 'BAS' } } } }),
      amended('b-1', { fizz: { level: 1 } }),
    );
    expect(document.tables.rows?.['a-2']?.cells).toEqual({ rock: { code: 'BAS' }, fizz: { level: 1 } });
    expect(questions).toEqual([]);
  });
});

describe('what is new of a cell, in two copies', () => {
  const strike = (atMm: number, number: number) => ({ WST: { atMm, number } });
  const events = (held: object) => ({ events: { events: held } });
  const none = { events: { absent: 'none' } };
  const within = (base: object, edit: string, changed: object): Document =>
    edited(edited(start, 'a-0', { patch: ['rows', 'a-2'], set: { cells: { ...cells, ...base } } }), edit, {
      patch: ['rows', 'a-2'],
      set: { cells: { ...cells, ...base, ...changed } },
    });
  const cellsOf = (document: Document) => document.tables.rows?.['a-2']?.cells;

  it.each([
    ['where none was logged', none],
    ['beside one that was there', events({ TFR: { atMm: 100 } })],
  ])('keeps the events of both %s, in either order, and asks nothing', (_, base) => {
    const there = 'absent' in base.events ? {} : base.events.events;
    const ours = within(base, 'a-3', events({ ...there, ...strike(200, 2) }));
    const theirs = within(base, 'b-1', events({ ...there, FLT: { atMm: 700 } }));
    const both = { ...cells, ...events({ ...there, ...strike(200, 2), FLT: { atMm: 700 } }) };
    for (const [one, other] of [
      [ours, theirs],
      [theirs, ours],
    ] as const) {
      const { document, questions } = merged(one, other);
      expect(questions).toEqual([]);
      expect(cellsOf(document)).toEqual(both);
      expect(cellsOf(merge(other, document, deed('m-2')).document)).toEqual(both);
    }
  });

  it('takes out an event that one copy took out, and keeps what the other put in', () => {
    const base = events({ TFR: { atMm: 100 }, FLT: { atMm: 300 } });
    const { document, questions } = merged(
      within(base, 'a-3', events({ FLT: { atMm: 300 } })),
      within(base, 'b-1', events({ TFR: { atMm: 100 }, FLT: { atMm: 300 }, ...strike(700, 4) })),
    );
    expect(questions).toEqual([]);
    expect(cellsOf(document)).toEqual({ ...cells, ...events({ FLT: { atMm: 300 }, ...strike(700, 4) }) });
  });

  it('asks about the cell where both say something else of one event, and who keeps ours is not asked again', () => {
    const base = events(strike(200, 2));
    const ours = within(base, 'a-3', events(strike(200, 3)));
    const theirs = within(base, 'b-1', events({ ...strike(200, 9), FLT: { atMm: 700 } }));
    const { document, questions } = merged(ours, theirs);
    expect(questions.map(({ field }) => field)).toEqual(['cells.events']);
    expect(cellsOf(document)).toEqual({ ...cells, ...events(strike(200, 3)) });
    const [asked = ''] = Object.keys(document.tables.questions ?? {});
    const stored = document.tables.questions?.[asked];
    const settled = edited(document, 'a-4', {
      patch: ['questions', asked],
      set: {
        state: 'settled',
        settled: sameWords(stored?.ours, events(strike(200, 3)).events) ? 'ours' : 'theirs',
      },
    });
    const again = merge(theirs, settled, deed('m-2'));
    expect(again.questions).toEqual([]);
    expect(cellsOf(again.document)).toEqual({ ...cells, ...events(strike(200, 3)) });
  });

  it('asks where one copy says that there was none and the other puts one more in', () => {
    const base = events(strike(200, 2));
    const { questions } = merged(
      within(base, 'a-3', none),
      within(base, 'b-1', events({ ...strike(200, 2), FLT: { atMm: 700 } })),
    );
    expect(questions.map(({ field }) => field)).toEqual(['cells.events']);
  });

  it.each([
    [
      'qualifiers',
      { rock: { code: 'BAS', qualified: { BAS: { shades: 'PAL' } } } },
      { rock: { code: 'BAS', qualified: { BAS: { shades: 'DRK' } } } },
    ],
    ['textures', { rock: { codes: { VUG: true } } }, { rock: { codes: { POR: true } } }],
    [
      'third rocks',
      { rock: { code: 'BAS', second: { code: 'SHL', percent: 30 }, third: { code: 'CHT', percent: 10 } } },
      { rock: { code: 'BAS', second: { code: 'SHL', percent: 30 }, third: { code: 'GAB', percent: 10 } } },
    ],
  ])('asks about the one cell where both copies say other %s of it, and loses neither', (_, one, other) => {
    const { document, questions } = merged(amended('a-3', one), amended('b-1', other));
    expect(questions).toEqual([
      { table: 'rows', id: 'a-2', field: 'cells.rock', ours: one.rock, theirs: other.rock },
    ]);
    expect(cellsOf(document)).toEqual({ ...cells, ...one });
  });

  const sameWords = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
});
