import { describe, expect, it } from 'vitest';
import { apply } from '../../src/record/apply.ts';
import { type Change, type Document, emptyDocument } from '../../src/record/document.ts';
import { merge } from '../../src/record/merge.ts';

const deed = (edit: string) => ({ edit, at: '2026-03-14T08:00:00+08:00', by: 'NOK', what: edit });

function after(document: Document, edit: string, ...changes: Change[]): Document {
  const done = apply(document, deed(edit), changes);
  if (!done.ok) throw new Error(done.problem);
  return done.document;
}

const cells = { rock: { code: 'BAS' }, veins: { percent: 2 } };
const start = after(emptyDocument({ kind: 'hole', id: 'MBRC900' }), 'a-1', {
  put: ['rows', 'a-2'],
  thing: { fromMm: 0, toMm: 1000, cells },
});
const amended = (edit: string, changed: object): Document =>
  after(start, edit, { patch: ['rows', 'a-2'], set: { cells: { ...cells, ...changed } } });
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
      after(start, 'a-3', { patch: ['rows', 'a-2'], set: { cells: { rock: { code: 'BAS' } } } }),
      amended('b-1', { fizz: { level: 1 } }),
    );
    expect(document.tables.rows?.['a-2']?.cells).toEqual({ rock: { code: 'BAS' }, fizz: { level: 1 } });
    expect(questions).toEqual([]);
  });
});
