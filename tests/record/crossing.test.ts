import { describe, expect, test } from 'vitest';
import { everyEntry, heldBy, standingOf } from '../../src/record/ancestry.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import type { Change, Document, Entry } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import { QUESTIONS, questionsIn, settledAs } from '../../src/record/questions.ts';
import { LONG_RUN, part } from '../support/long-run.ts';
import { deed, edited, HOLE } from './build.ts';

const IDS = Array.from({ length: 12 }, (_, index) => `k0-${index}`);
const START = edited(HOLE, 0, ...IDS.map((id) => ({ put: ['rows', id] as const, thing: { py: 0, ch: 0 } })));

let number = 0;
const next = (): number => {
  number += 1;
  return number;
};
const logged = (document: Document, side: number): Document => {
  const made = next();
  return edited(document, made, { put: ['rows', `k${side}-${made}`], thing: { py: made } });
};
const taken = (ours: Document, theirs: Document): Document => merge(ours, theirs, deed(next())).document;

/** Every evening each copy logs a row, then every one takes in what the others were before any of them took anything in. */
function evening(copies: readonly Document[]): readonly Document[] {
  const mailed = copies.map((copy, side) => logged(copy, side + 1));
  return mailed.map((ours, side) =>
    mailed.reduce((mine, theirs, other) => (other === side ? mine : taken(mine, theirs)), ours),
  );
}

function crossed(sides: number, evenings: number): readonly Document[] {
  let copies: readonly Document[] = Array.from({ length: sides }, () => START);
  for (let count = 0; count < evenings; count += 1) copies = evening(copies);
  return copies;
}

const stored = (history: readonly Entry[]): readonly Entry[] =>
  history.flatMap((entry) => [entry, ...(entry.incoming ?? [])]);

describe.each([2, 3])('%i copies that mail each other the same evening, every evening', (sides) => {
  test('hold every entry once, and grow by the same every evening', () => {
    const sizes = (LONG_RUN ? [20, 40, 80] : [10, 20, 40]).map((evenings) => {
      const [one] = crossed(sides, evenings) as [Document];
      const entries = stored(one.history);
      expect(entries).toHaveLength(everyEntry(one.history).length);
      expect(
        entries.every(({ incoming }) => (incoming ?? []).every((inner) => inner.incoming === undefined)),
      ).toBe(true);
      return { entries: entries.length, bytes: JSON.stringify(one).length };
    }) as [Size, Size, Size];
    const [small, middle, large] = sizes;
    expect(large.entries - middle.entries).toBe(2 * (middle.entries - small.entries));
    expect(large.bytes - middle.bytes).toBeLessThan(2.1 * (middle.bytes - small.bytes));
  });

  test('come to the same rows, hold a chain that holds, and are the same when nothing new was logged', () => {
    let copies = crossed(sides, 15);
    for (const { history, tables } of copies) {
      expect(chainFault(history)).toBeUndefined();
      expect(sameJson(replay(history), tables)).toBe(true);
      expect(sameJson(tables, copies[0]?.tables)).toBe(true);
    }
    const [one, other] = copies as [Document, Document];
    expect(standingOf(one, other)).toBe('same');
    const quiet = copies.map((ours) => copies.reduce(taken, ours));
    expect(quiet.map(({ history }) => history.length)).toEqual(copies.map(({ history }) => history.length));
    copies = quiet;
  });
});

interface Size {
  readonly entries: number;
  readonly bytes: number;
}

/**
 * The oracle: it knows no history and no hash. Beside each copy it keeps which writings that copy knows of, and of each writing
 * which ones its writer knew. What no one wrote over knowingly is still to be reckoned with.
 */
interface Writing {
  readonly cell: string;
  readonly value: number;
  readonly knew: ReadonlySet<number>;
}
interface Copy {
  readonly document: Document;
  readonly knows: ReadonlySet<number>;
}

const cellOf = (id: string, field: string): string => `${id} ${field}`;

class Oracle {
  readonly writings = new Map<number, Writing>();

  write(copy: Copy, cell: string, value: number): ReadonlySet<number> {
    const id = this.writings.size;
    this.writings.set(id, { cell, value, knew: copy.knows });
    return new Set([...copy.knows, id]);
  }

  /** Values of a cell that a copy knows of and that no one it knows of wrote over knowingly. */
  reckonedWith(copy: Copy, cell: string): readonly number[] {
    const known = [...copy.knows].map((id) => [id, this.writings.get(id) as Writing] as const);
    const here = known.filter(([, writing]) => writing.cell === cell);
    const last = here.filter(([id]) => !here.some(([, later]) => later.knew.has(id)));
    return [...new Set(last.map(([, { value }]) => value))];
  }
}

/** A generator of whole numbers below a bound that gives the same for the same seed. */
function dice(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const openOn = (document: Document, id: string, field: string) =>
  questionsIn(document.tables).filter(
    ([, each]) => each.state === 'open' && each.thing === id && each.field === field,
  );

/** Amends a cell by hand; where a question about it is open, settles all of them with the value that stands or another of them. */
function amend(oracle: Oracle, copy: Copy, roll: (below: number) => number): Copy {
  const id = IDS[roll(IDS.length)] as string;
  const field = roll(2) === 0 ? 'py' : 'ch';
  const open = openOn(copy.document, id, field);
  const stands = copy.document.tables.rows?.[id]?.[field] as number;
  const choices = open.flatMap(([, { ours, theirs }]) => [ours as number, theirs as number]);
  const value = open.length === 0 ? next() : (choices[roll(choices.length)] as number);
  const settled = open.map(
    ([question, each]): Change => ({
      patch: [QUESTIONS, question],
      set: settledAs(each, each.ours === value ? 'ours' : 'theirs', each),
    }),
  );
  const set: readonly Change[] = stands === value ? [] : [{ patch: ['rows', id], set: { [field]: value } }];
  return {
    document: edited(copy.document, next(), ...set, ...settled),
    knows: oracle.write(copy, cellOf(id, field), value),
  };
}

function held(oracle: Oracle, copy: Copy): void {
  for (const id of IDS)
    for (const field of ['py', 'ch']) {
      const values = oracle.reckonedWith(copy, cellOf(id, field));
      const stands = copy.document.tables.rows?.[id]?.[field] as number;
      const shown = openOn(copy.document, id, field).flatMap(([, { ours, theirs }]) => [ours, theirs]);
      if (values.length === 0) expect(stands).toBe(0);
      else if (values.length === 1) expect(stands).toBe(values[0]);
      else expect([stands, ...shown]).toEqual(expect.arrayContaining([...values]));
    }
}

describe('100 evenings of three copies, compared with an oracle that knows no history', () => {
  test.each(part([1, 2, 3], 3))(
    'stand as it says: one value where one is left, else every one asked about (seed %i)',
    (seed) => {
      const roll = dice(seed);
      const oracle = new Oracle();
      let copies: readonly Copy[] = Array.from({ length: 3 }, () => ({
        document: START,
        knows: new Set<number>(),
      }));
      const take = (ours: Copy, theirs: Copy): Copy => ({
        document: taken(ours.document, theirs.document),
        knows: new Set([...ours.knows, ...theirs.knows]),
      });
      for (let count = 0; count < 100; count += 1) {
        const mailed = copies.map((copy) =>
          Array.from({ length: roll(3) }).reduce<Copy>((mine) => amend(oracle, mine, roll), copy),
        );
        // Some mails go astray.
        copies = mailed.map((ours, side) =>
          mailed.reduce(
            (mine, theirs, other) => (other === side || roll(4) === 0 ? mine : take(mine, theirs)),
            ours,
          ),
        );
        for (const copy of copies) held(oracle, copy);
      }
      for (const { document } of copies) expect(chainFault(document.history)).toBeUndefined();
      const [one, two, three] = copies as [Copy, Copy, Copy];
      const all = take(take(one, two), three);
      expect(heldBy(all.document.history).size).toBe(everyEntry(all.document.history).length);
      held(oracle, all);
      const open = questionsIn(all.document.tables).filter(([, { state }]) => state === 'open');
      const asked = open.map(([, each]) => JSON.stringify([each.thing, each.field, each.ours, each.theirs]));
      expect(new Set(asked).size).toBe(asked.length);
      // Once one of them has settled everything, whoever takes that in has the same.
      const settled = edited(
        all.document,
        next(),
        ...open.map(([id, each]): Change => ({ patch: [QUESTIONS, id], set: settledAs(each, 'ours', each) })),
        ...open.flatMap(([, { thing, field = '', ours }], index): readonly Change[] =>
          open.findIndex(([, each]) => each.thing === thing && each.field === field) === index
            ? [{ patch: ['rows', thing], set: { [field]: ours } }]
            : [],
        ),
      );
      expect(sameJson(taken(two.document, settled).tables, settled.tables)).toBe(true);
    },
  );
});
