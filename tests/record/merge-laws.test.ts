import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainFault, replay } from '../../src/record/chain.ts';
import type { Document, Tables } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import { keptBySettling } from '../../src/record/questions.ts';
import { runs } from '../support/long-run.ts';
import { aDocument, aWish, deed, documentOf, edited, HOLE } from './build.ts';

/**
 * Copies of one document at several replicas, edited and merged in any order. Beside each copy stands, kept by the test and
 * not by the program, which writings its replica knows of; and every value written is a number used once, so that a value
 * names its writing.
 */
interface Replica {
  readonly document: Document;
  readonly knows: ReadonlySet<number>;
}

type Act =
  | { readonly do: 'write'; readonly at: number; readonly id: string; readonly field: string }
  | { readonly do: 'merge'; readonly at: number; readonly from: number };

const IDS = ['k1-1', '__proto__'] as const;
const anAct = (replicas: number): fc.Arbitrary<Act> =>
  fc.oneof(
    {
      weight: 2,
      arbitrary: fc.record({
        do: fc.constant('write' as const),
        at: fc.nat({ max: replicas - 1 }),
        id: fc.constantFrom(...IDS),
        field: fc.constantFrom('py', 'ch'),
      }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        do: fc.constant('merge' as const),
        at: fc.nat({ max: replicas - 1 }),
        from: fc.nat({ max: replicas - 1 }),
      }),
    },
  );

const START = edited(HOLE, 0, ...IDS.map((id) => ({ put: ['rows', id] as const, thing: { py: 0, ch: 0 } })));

/** What each writing knew of when it was made: what it knowingly overwrote, however far back. */
type Knowledge = Map<number, ReadonlySet<number>>;

function run(
  acts: readonly Act[],
  replicas: number,
  each: (before: Replica, from: Replica, after: Document) => void,
) {
  const knewWhenWritten: Knowledge = new Map();
  const all: Replica[] = Array.from({ length: replicas }, () => ({ document: START, knows: new Set([0]) }));
  acts.forEach((act, index) => {
    const here = all[act.at] as Replica;
    const number = index + 1;
    if (act.do === 'write') {
      knewWhenWritten.set(number, here.knows);
      const change = { patch: ['rows', act.id] as const, set: { [act.field]: number } };
      all[act.at] = {
        document: edited(here.document, number, change),
        knows: new Set([...here.knows, number]),
      };
      return;
    }
    const from = all[act.from] as Replica;
    const { document } = merge(here.document, from.document, deed(number));
    each(here, from, document);
    all[act.at] = { document, knows: new Set([...here.knows, ...from.knows]) };
  });
  return knewWhenWritten;
}

const cells = (tables: Tables) =>
  IDS.flatMap((id) =>
    Object.entries(tables.rows?.[id] ?? {}).map(([field, value]) => [id, field, value as number] as const),
  );

const asked = (tables: Tables, id: string, field: string): readonly unknown[] =>
  Object.values(tables.questions ?? {})
    .filter((question) => question.thing === id && question.field === field)
    .flatMap((question) => [question.ours, question.theirs]);

/** Found by a search: copy 1 has an open question against 2's value when it takes in 0's change of its own. */
const FOUND: Act[] = [
  { do: 'write', at: 2, id: '__proto__', field: 'ch' },
  { do: 'write', at: 1, id: '__proto__', field: 'ch' },
  { do: 'merge', at: 0, from: 1 },
  { do: 'merge', at: 1, from: 2 },
  { do: 'write', at: 0, id: '__proto__', field: 'ch' },
  { do: 'merge', at: 1, from: 0 },
];

describe('merging copies in any order', () => {
  test('loses nothing: each value stands, is in a question, or was overwritten by someone who knew it', () => {
    fc.assert(
      fc.property(fc.array(anAct(3), { maxLength: 25 }), (acts) => {
        const merges: [Replica, Replica, Document][] = [];
        const knew = run(acts, 3, (...merged) => merges.push(merged));
        for (const [here, from, after] of merges) {
          for (const [id, field, value] of [...cells(here.document.tables), ...cells(from.document.tables)]) {
            const stands = cells(after.tables).find(([i, f]) => i === id && f === field)?.[2] as number;
            // What stands, or is asked about, may have been written over this value by someone who knew it.
            const there = [stands, ...asked(after.tables, id, field)] as number[];
            expect(there.some((each) => each === value || knew.get(each)?.has(value))).toBe(true);
          }
        }
      }),
      { numRuns: runs(2000) },
    );
  });

  test('asks only where neither value was written by someone who knew the other', () => {
    fc.assert(
      fc.property(fc.array(anAct(3), { maxLength: 25 }), (acts) => {
        const merges: [Replica, Replica, Document][] = [];
        const knew = run(acts, 3, (...merged) => merges.push(merged));
        for (const [here, from, after] of merges) {
          const before = { ...here.document.tables.questions, ...from.document.tables.questions };
          for (const [id, question] of Object.entries(after.tables.questions ?? {})) {
            if (Object.hasOwn(before, id)) continue;
            const [ours, theirs] = [question.ours as number, question.theirs as number];
            expect(knew.get(ours)?.has(theirs)).not.toBe(true);
            expect(knew.get(theirs)?.has(ours)).not.toBe(true);
          }
        }
      }),
      { numRuns: runs(2000), examples: [[FOUND]] },
    );
  });

  test('leaves a chain that holds and a history that makes the tables', () => {
    fc.assert(
      fc.property(fc.array(anAct(3), { maxLength: 15 }), (acts) => {
        run(acts, 3, (_here, _from, after) => {
          expect(chainFault(after.history)).toBeUndefined();
          expect(sameJson(replay(after.history), after.tables)).toBe(true);
        });
      }),
    );
  });
});

describe('merging two copies with things made, changed and taken out', () => {
  const parted = fc
    .tuple(aDocument, fc.array(aWish, { maxLength: 6 }), fc.array(aWish, { maxLength: 6 }))
    .map(([start, mine, yours]) => ({
      start,
      ours: documentOf(mine, start, 30),
      theirs: documentOf(yours, start, 60),
    }));
  const merged = ({ ours, theirs }: { ours: Document; theirs: Document }) => {
    return merge(ours, theirs, deed(99));
  };

  test('gives the same however often it is done', () => {
    fc.assert(
      fc.property(parted, (copies) => {
        expect(merged(copies)).toEqual(merged(copies));
      }),
    );
  });

  test('gives the same from either side wherever nothing is asked', () => {
    fc.assert(
      fc.property(parted, ({ ours, theirs }) => {
        const one = merged({ ours, theirs });
        const other = merged({ ours: theirs, theirs: ours });
        expect(other.questions.length).toBe(one.questions.length);
        if (one.questions.length === 0)
          expect(sameJson(other.document.tables, one.document.tables)).toBe(true);
      }),
      { numRuns: runs(500) },
    );
  });

  test('gives theirs where only they went on', () => {
    fc.assert(
      fc.property(parted, ({ start, theirs }) => {
        expect(merged({ ours: start, theirs })).toEqual({ document: theirs, questions: [] });
      }),
    );
  });

  test('keeps both histories whole', () => {
    fc.assert(
      fc.property(parted, (copies) => {
        const { history } = merged(copies).document;
        const held = history
          .flatMap((entry) => [entry, ...(entry.incoming ?? [])])
          .map((entry) => entry.hash);
        for (const entry of [...copies.ours.history, ...copies.theirs.history])
          expect(held).toContain(entry.hash);
        expect(chainFault(history)).toBeUndefined();
      }),
    );
  });
});

/** Copies that log rows and settle those that stand over one metre: the metre is a field, as the record knows no depths. */
type RowAct =
  | { readonly do: 'log' | 'settle'; readonly at: number; readonly metre: number; readonly pick: number }
  | { readonly do: 'amend'; readonly at: number; readonly metre: number; readonly pick: number }
  | { readonly do: 'merge'; readonly at: number; readonly from: number };

const aRowAct: fc.Arbitrary<RowAct> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom('log' as const, 'settle' as const, 'settle' as const, 'amend' as const),
      at: fc.nat({ max: 2 }),
      metre: fc.nat({ max: 1 }),
      pick: fc.nat({ max: 5 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('merge' as const),
      at: fc.nat({ max: 2 }),
      from: fc.nat({ max: 2 }),
    }),
  },
);

const rowsOver = (tables: Tables, metre: number): readonly string[] =>
  Object.entries(tables.rows ?? {}).flatMap(([id, row]) => (row.metre === metre ? [id] : []));

/** The copy after an act of its own: a row logged where it has none, one of two kept, a row amended. */
function acted(document: Document, act: RowAct, number: number): Document {
  if (act.do === 'merge') return document;
  const there = rowsOver(document.tables, act.metre);
  if (act.do === 'log')
    return there.length > 0
      ? document
      : edited(document, number, { put: ['rows', `k${act.at}-${number}`], thing: { metre: act.metre } });
  const picked = there[act.pick % Math.max(1, there.length)];
  if (picked === undefined) return document;
  if (act.do === 'amend') return edited(document, number, { patch: ['rows', picked], set: { py: number } });
  const out = there.find((id) => id !== picked);
  if (out === undefined) return document;
  return edited(
    document,
    number,
    { remove: ['rows', out] },
    ...keptBySettling(document.tables, [['rows', picked]]),
  );
}

function rowRun(acts: readonly RowAct[], each: (here: Document, from: Document, after: Document) => void) {
  const all: Document[] = [HOLE, HOLE, HOLE].map((hole) =>
    edited(hole, 0, { put: ['hole', 'hole'], thing: { name: 'ZQRC004' } }),
  );
  acts.forEach((act, index) => {
    const here = all[act.at] as Document;
    all[act.at] = acted(here, act, index + 1);
    if (act.do !== 'merge') return;
    const from = all[act.from] as Document;
    all[act.at] = merge(here, from, deed(index + 1)).document;
    each(here, from, all[act.at] as Document);
  });
  return all;
}

/** Two copies log one metre, take each other in, and each keeps its own row. */
const EACH_KEEPS_ITS_OWN: RowAct[] = [
  { do: 'log', at: 0, metre: 0, pick: 0 },
  { do: 'log', at: 1, metre: 0, pick: 0 },
  { do: 'merge', at: 0, from: 1 },
  { do: 'merge', at: 1, from: 0 },
  { do: 'settle', at: 0, metre: 0, pick: 0 },
  { do: 'settle', at: 1, metre: 0, pick: 1 },
  { do: 'merge', at: 0, from: 1 },
];

describe('merging copies that settled which of two rows is right', () => {
  test('leaves no metre without a row of which either copy has one: what a settlement kept is never gone by merging alone', () => {
    fc.assert(
      fc.property(fc.array(aRowAct, { maxLength: 30 }), (acts) => {
        rowRun(acts, (here, from, after) => {
          for (const metre of [0, 1]) {
            const had = [...rowsOver(here.tables, metre), ...rowsOver(from.tables, metre)];
            if (had.length > 0) expect(rowsOver(after.tables, metre)).not.toEqual([]);
          }
          expect(chainFault(after.history)).toBeUndefined();
          expect(sameJson(replay(after.history), after.tables)).toBe(true);
        });
      }),
      { numRuns: runs(4000), examples: [[EACH_KEEPS_ITS_OWN]] },
    );
  });

  test('has both rows again where the two kept different ones, and nothing to ask where they kept the same', () => {
    const [one, other] = rowRun(EACH_KEEPS_ITS_OWN, () => undefined) as [Document, Document];
    expect(rowsOver(one.tables, 0)).toHaveLength(2);
    const back = merge(other, one, deed(50)).document;
    expect(sameJson(back.tables, one.tables)).toBe(true);
    const agreed = EACH_KEEPS_ITS_OWN.map((act) => (act.do === 'settle' ? { ...act, pick: 0 } : act));
    const [same] = rowRun(agreed, () => undefined) as [Document];
    expect(rowsOver(same.tables, 0)).toHaveLength(1);
    expect(Object.values(same.tables.questions ?? {}).filter(({ state }) => state === 'open')).toEqual([]);
  });
});
