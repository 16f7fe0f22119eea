import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chosen, settleQuestion } from '../../src/acts/settle.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import { inverse } from '../../src/record/apply.ts';
import { type Change, type Document, emptyDocument, type Thing } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { rowsLoggedTwice } from '../../src/standing/logged-twice.ts';
import { openQuestions, questionFindings, questionWords, standing } from '../../src/standing/questions.ts';
import { holeMade } from '../desk/support/values.ts';
import { deed, edited } from '../record/build.ts';
import { resolveStyle } from '../support/styles.ts';

/** A schema that asks nothing of a row: what a row must hold is not what is tried here. */
const SCHEMA: LoggingSchema = { ...(resolveStyle('orogenic-gold') as LoggingSchema), fields: [] };
const PROJECT = { schema: SCHEMA } as Project;
const remark = (id: string, text: string): Change => ({ patch: ['rows', id], set: { remark: text } });

const START = edited(
  emptyDocument({ kind: 'hole', id: 'ZQRC001' }),
  1,
  ...holeMade(),
  ...[0, 1, 2].map(
    (metre): Change => ({
      put: ['rows', `k1-${metre}`],
      thing: { fromMm: metre * 1000, toMm: metre * 1000 + 1000, cells: {}, remark: 'as logged' },
    }),
  ),
);

let made = 0;
const merged = (ours: Document, theirs: Document) => merge(ours, theirs, deed(++made + 100)).document;

function settled(document: Document, question: string, chosen: Chosen): Document {
  const done = settleQuestion(PROJECT, document, question, chosen, () => `s-${++made}`);
  if (!done.ok) throw new Error(done.findings.map((each) => each.problem).join('; '));
  return edited(document, ++made + 100, ...done.value.changes);
}

function firstOf(document: Document): string {
  const [first] = openQuestions(document);
  if (first === undefined) throw new Error('nothing is open');
  return first[0];
}

const ours = edited(START, 2, remark('k1-1', 'fresh'));
const theirs = edited(START, 3, remark('k1-1', 'oxidised'));
const refusal = (document: Document, chosen: Chosen = 'theirs') => {
  const done = settleQuestion(PROJECT, document, firstOf(document), chosen, () => 's-0');
  return done.ok ? undefined : done.findings[0];
};

describe('a question of two copies', () => {
  it('about an inner field of a row is put in the words of the row', () => {
    const schema = resolveStyle('orogenic-gold') as LoggingSchema;
    const [field] = schema.fields;
    const set = (id: number, more: Thing) => edited(START, id, { patch: ['rows', 'k1-1'], set: more });
    const both = merged(
      set(2, { carried: [String(field?.name)], noReturn: true, toMm: 1900 }),
      set(3, { carried: [], noReturn: null, toMm: 1800 }),
    );
    const said = questionWords(schema, both).map(({ cell, ours, theirs }) => `${cell}: ${ours} / ${theirs}`);
    expect(said).toEqual([
      '1–1.9, bottom of the row: 1.9 m / 1.8 m',
      `1–1.9, carried from the row above: ${field?.label} / `,
      '1–1.9, no return: yes / nothing',
    ]);
  });

  it('is said by row, field and both values', () => {
    expect(questionWords(SCHEMA, merged(ours, theirs))).toMatchObject([
      { cell: '1–2, remark', ours: 'fresh', theirs: 'oxidised', now: 'ours', stands: 'fresh' },
    ]);
  });

  it('settled with theirs takes it in, with ours leaves it; either way one edit that is taken back whole', () => {
    const asked = merged(ours, theirs);
    for (const [chosen, stands] of [
      ['ours', 'fresh'],
      ['theirs', 'oxidised'],
    ] as const) {
      const after = settled(asked, firstOf(asked), chosen);
      expect(after.tables.rows?.['k1-1']?.remark).toBe(stands);
      expect(Object.values(after.tables.questions ?? {})).toMatchObject([
        { state: 'settled', settled: chosen },
      ]);
      expect(after.history.length).toBe(asked.history.length + 1);
      const back = edited(after, ++made + 100, ...inverse(after.history.at(-1)?.changes ?? []));
      expect(sameJson(back.tables, asked.tables)).toBe(true);
    }
  });

  it('about a whole row takes it out, or puts it back', () => {
    const without = edited(START, 4, { remove: ['rows', 'k1-1'] });
    const kept = merged(ours, without);
    expect(questionWords(SCHEMA, kept)).toMatchObject([{ cell: '1–2, the whole row', theirs: 'taken out' }]);
    expect(settled(kept, firstOf(kept), 'theirs').tables.rows?.['k1-1']).toBeUndefined();
    const gone = merged(without, ours);
    expect(settled(gone, firstOf(gone), 'theirs').tables.rows?.['k1-1']).toMatchObject({ remark: 'fresh' });
  });

  it('does not put a row back over one that was logged in its place', () => {
    const without = edited(START, 4, { remove: ['rows', 'k1-1'] });
    const asked = edited(merged(without, ours), 5, {
      put: ['rows', 'k1-9'],
      thing: { fromMm: 1000, toMm: 1500, cells: {} },
    });
    expect(refusal(asked)).toMatchObject({
      code: 'question-does-not-fit',
      problem: '1–2 would cover metres of the row 1–1.5',
    });
  });

  it('refuses theirs where the cell was changed since, and says what is there now; ours keeps that', () => {
    const since = edited(merged(ours, theirs), 6, remark('k1-1', 'seen again'));
    expect(refusal(since)).toMatchObject({ code: 'question-changed-since' });
    expect(refusal(since)?.problem).toContain('it is seen again now');
    expect(questionFindings(SCHEMA, since)[0]?.problem).toContain('Changed since: it is seen again now');
    const after = settled(since, firstOf(since), 'ours');
    expect(after.tables.rows?.['k1-1']?.remark).toBe('seen again');
    expect(openQuestions(after)).toEqual([]);
  });

  it('of a row that is gone refuses theirs and can be closed with ours', () => {
    const gone = edited(merged(ours, theirs), 7, { remove: ['rows', 'k1-1'] });
    expect(refusal(gone)).toMatchObject({ code: 'not-there' });
    expect(questionFindings(SCHEMA, gone)[0]?.problem).toContain('What it belongs to was taken out since');
    expect(openQuestions(settled(gone, firstOf(gone), 'ours'))).toEqual([]);
  });

  it('settled is not asked again when the other copy comes back with more', () => {
    for (const chosen of ['ours', 'theirs'] as const) {
      const asked = merged(ours, theirs);
      const after = settled(asked, firstOf(asked), chosen);
      const more = edited(theirs, 8, remark('k1-2', 'more below'));
      const again = merged(after, more);
      expect(openQuestions(again)).toEqual([]);
      expect(again.tables.rows?.['k1-2']?.remark).toBe('more below');
      expect(again.tables.rows?.['k1-1']).toEqual(after.tables.rows?.['k1-1']);
    }
  });

  it('settled differently by each of the two is asked again', () => {
    const asked = merged(ours, theirs);
    const kept = settled(asked, firstOf(asked), 'ours');
    const taken = settled(asked, firstOf(asked), 'theirs');
    const open = openQuestions(merged(kept, taken));
    expect(open).toMatchObject([
      [
        expect.stringMatching(/^asked-/),
        { table: 'rows', thing: 'k1-1', field: 'remark', ours: 'fresh', theirs: 'oxidised' },
      ],
    ]);
  });

  it('asked by each of two merges is one question, and settling it in one copy settles it in both', () => {
    for (const chosen of ['ours', 'theirs'] as const) {
      const here = merged(ours, theirs);
      const there = merged(theirs, ours);
      expect(openQuestions(merged(here, there))).toHaveLength(1);
      const decided = settled(here, firstOf(here), chosen);
      for (const both of [merged(decided, there), merged(there, decided)]) {
        expect(openQuestions(both)).toEqual([]);
        expect(both.tables.rows?.['k1-1']?.remark).toBe(chosen === 'ours' ? 'fresh' : 'oxidised');
      }
    }
  });

  it('asked again after both had settled it stays open through the next merge', () => {
    const asked = merged(ours, theirs);
    const again = merged(settled(asked, firstOf(asked), 'ours'), settled(asked, firstOf(asked), 'theirs'));
    const [more, other] = [remark('k1-2', 'more'), remark('k1-0', 'other')];
    expect(openQuestions(merged(edited(again, 12, more), edited(again, 13, other)))).toHaveLength(1);
  });

  it('leaves none open after all are settled, in any order and either way', () => {
    const cell = fc.record({ row: fc.nat({ max: 2 }), ours: fc.string(), theirs: fc.string() });
    fc.assert(
      fc.property(
        fc.uniqueArray(cell, { minLength: 1, selector: (each) => each.row }),
        fc.array(fc.tuple(fc.nat(), fc.boolean()), { minLength: 3, maxLength: 3 }),
        (cells, order) => {
          const side = (which: 'ours' | 'theirs', number: number) =>
            edited(START, number, ...cells.map((each) => remark(`k1-${each.row}`, each[which])));
          let document = merged(side('ours', 10), side('theirs', 11));
          for (const [pick, isTheirs] of order) {
            const open = openQuestions(document);
            const [id, question] = open[pick % Math.max(1, open.length)] ?? [];
            if (id === undefined || question === undefined) break;
            document = settled(document, id, isTheirs ? 'theirs' : 'ours');
            expect(standing(document, question)).toEqual(isTheirs ? question.theirs : question.ours);
          }
          expect(openQuestions(document)).toEqual([]);
        },
      ),
    );
  });
});

describe('two rows over the same metres that two copies settle each in its own way', () => {
  const CHOICES = ['first', 'second', 'both'] as const;
  const covered = (document: Document): ReadonlySet<number> =>
    new Set(
      rowsDown(document).flatMap(([, { fromMm, toMm }]) =>
        Array.from({ length: (toMm - fromMm) / 500 }, (_, index) => fromMm + index * 500),
      ),
    );
  const pairs = [
    ['the same metre', [3000, 4000], [3000, 4000]],
    ['a metre that one is within', [3000, 6000], [4000, 5000]],
    ['one at the top of the other', [3000, 6000], [3000, 4000]],
    ['metres that they share in part', [3000, 5000], [4000, 6000]],
  ] as const;
  const cases = pairs.flatMap(([what, ...rows]) =>
    CHOICES.flatMap((here) => CHOICES.map((there) => [what, here, there, rows] as const)),
  );

  it.each(cases)('%s: %s here and %s there', (_, here, there, [one, other]) => {
    const logged = (id: string, number: number, [fromMm, toMm]: readonly [number, number]) =>
      edited(START, number, { put: ['rows', id], thing: { fromMm, toMm, cells: {}, remark: id } });
    const asked = merged(logged('a-9', 30, one), logged('b-9', 20, other));
    const settle = (document: Document, chosen: Chosen) =>
      rowsLoggedTwice(document).reduce((all, pair) => settled(all, pair.id, chosen), document);
    const [ours, theirs] = [settle(asked, here), settle(asked, there)];
    const both = [merged(ours, theirs), merged(theirs, ours)] as const;
    for (const copy of both) {
      // No metre that both copies still had is without a row, and nothing is settled by chance.
      for (const at of covered(ours)) if (covered(theirs).has(at)) expect(covered(copy)).toContain(at);
      expect(rowsLoggedTwice(copy).length > 0 || openQuestions(copy).length > 0).toBe(
        here !== there || (here === 'both' && rowsDown(ours).length > 5),
      );
    }
    const rowsOf = (document: Document) =>
      rowsDown(document)
        .map(([id, row]) => [row.fromMm, row.toMm, id].join(' '))
        .sort();
    expect(rowsOf(both[1])).toEqual(rowsOf(both[0]));
    expect(rowsOf(merged(...both))).toEqual(rowsOf(both[0]));
    if (here !== there) {
      expect(rowsOf(both[0])).toEqual(rowsOf(asked));
      const again = settle(both[0], 'both');
      expect(covered(again)).toEqual(covered(asked));
      expect(rowsLoggedTwice(again)).toEqual([]);
      expect(rowsOf(merged(both[1], again))).toEqual(rowsOf(again));
    }
  });
});

describe('two rows over the same metres, both kept', () => {
  const row = (fromMm: number, toMm: number): Thing => ({ fromMm, toMm, cells: {} });
  it.each([
    ['the same metre', [0, 1000], [0, 1000], ['0-500', '500-1000']],
    ['a metre that one is within', [0, 3000], [1000, 2000], ['0-1000', '1000-2000', '2000-3000']],
    ['one at the top of the other', [0, 3000], [0, 1000], ['0-1000', '1000-3000']],
    ['one at the foot of the other', [0, 3000], [2000, 3000], ['0-2000', '2000-3000']],
    ['metres that they share in part', [0, 2000], [1000, 3000], ['0-1500', '1500-3000']],
    ['a length of one millimetre', [0, 2], [1, 3], ['0-1', '1-3']],
  ] as const)('%s: cut so that every millimetre is covered once', (_, ours, theirs, rows) => {
    for (const [one, other] of [
      [ours, theirs],
      [theirs, ours],
    ] as const) {
      const document = edited(
        emptyDocument({ kind: 'hole', id: 'ZQRC001' }),
        1,
        ...holeMade(),
        { put: ['rows', 'a-1'], thing: row(one[0], one[1]) },
        { put: ['rows', 'b-1'], thing: row(other[0], other[1]) },
      );
      const [pair] = rowsLoggedTwice(document);
      const after = settled(document, pair?.id ?? '', 'both');
      const down = rowsDown(after).map(([, each]) => `${each.fromMm}-${each.toMm}`);
      expect(down).toEqual(rows);
      expect(rowsLoggedTwice(after)).toEqual([]);
    }
  });

  it('are the first and the second in the same order in both copies, each with who wrote it and when', () => {
    const logged = (id: string, number: number, remark: string) =>
      edited(START, number, { put: ['rows', id], thing: { ...row(3000, 4000), remark } });
    const [rig, camp] = [logged('a-9', 30, 'rig'), logged('b-9', 20, 'camp')];
    const here = questionWords(SCHEMA, merged(rig, camp));
    expect(questionWords(SCHEMA, merged(camp, rig))).toEqual(here);
    expect(here).toMatchObject([
      { labels: ['first', 'second'], writers: ['Ada 2026-03-14 07:29', 'Ada 2026-03-14 07:39'] },
    ]);
    const done = settleQuestion(PROJECT, merged(rig, camp), here[0]?.id ?? '', 'ours', () => 's-1');
    expect(done.ok ? undefined : done.findings[0]?.problem).toBe(
      'both are in the hole, so neither is ours or theirs',
    );
  });
});
