import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineContext } from '../../src/acts/line-context.ts';
import type { Project } from '../../src/project/project.ts';
import { apply } from '../../src/record/apply.ts';
import { asOf } from '../../src/record/chain.ts';
import { type Change, type Document, emptyDocument } from '../../src/record/document.ts';

const project = {
  schema: { fields: [], lists: {}, scales: {} },
  settings: { log: { gloves: false }, people: [] },
  sampling: { numbers: { prefixes: [] }, blocks: [] },
} as unknown as Project;

const header = {
  name: 'A',
  state: 'drilling',
  logFromMm: 0,
  intervalMm: 1000,
  rodMm: 6000,
  firstRodOffsetMm: 0,
};
const row = (metre: number): Change => ({
  put: ['rows', `k1-${metre}`],
  thing: { fromMm: metre * 1000, toMm: (metre + 1) * 1000, cells: {} },
});

/** A hole whose rows these people logged in turn; `undefined` takes the last row out, so that its id is put a second time. */
function holeBy(people: readonly (string | undefined)[]): Document {
  let hole = emptyDocument({ kind: 'hole', id: 'A' });
  const edit = (by: string, change: Change): void => {
    const deed = { edit: `k1-e${hole.history.length}`, at: '2026-03-14T08:00:00+08:00', by, what: 'edit' };
    const applied = apply(hole, deed, [change]);
    if (!applied.ok) throw new Error(applied.problem);
    hole = applied.document;
  };
  edit('AA', { put: ['hole', 'hole'], thing: header });
  for (const by of people) {
    const logged = Object.keys(hole.tables.rows ?? {}).length;
    if (by !== undefined) edit(by, row(logged));
    else if (logged > 0) edit('AA', { remove: ['rows', `k1-${logged - 1}`] });
  }
  return hole;
}

/** Who first put the lowest row, read off the whole history. */
function firstLogger(hole: Document): string | undefined {
  const id = Object.keys(hole.tables.rows ?? {}).at(-1);
  return hole.history.find(({ changes }) => changes.some((each) => 'put' in each && each.put[1] === id))?.by;
}

test('who logged above is whoever put the row first, however the history has grown and whichever state is asked about', () => {
  const people = fc.array(fc.constantFrom('AA', 'BB', 'CC', undefined), { maxLength: 12 });
  fc.assert(
    fc.property(people, fc.array(fc.nat(12), { maxLength: 8 }), (by, counts) => {
      const hole = holeBy(by);
      for (const count of [...counts, hole.history.length]) {
        const then = asOf(hole, Math.max(1, Math.min(count, hole.history.length)));
        const first = firstLogger(then);
        const expected =
          Object.keys(then.tables.rows ?? {}).length === 0 || first === 'AA' ? undefined : first;
        expect(lineContext(project, then, 0, 'AA').loggedBefore).toBe(expected);
      }
    }),
  );
});
