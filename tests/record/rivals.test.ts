import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settleQuestion } from '../../src/acts/settle.ts';
import { HOLE_RECORDS } from '../../src/hole/records.ts';
import type { Project } from '../../src/project/project.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { type Change, type Document, emptyDocument, type Thing } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { questionWords } from '../../src/standing/questions.ts';
import { streamFactAt } from '../../src/standing/stream.ts';
import { holeMade } from '../desk/support/values.ts';
import { runs } from '../support/long-run.ts';
import { resolveStyle } from '../support/styles.ts';
import { deed, edited } from './build.ts';

const SCHEMA: LoggingSchema = { ...(resolveStyle('orogenic-gold') as LoggingSchema), fields: [] };
const PROJECT = { schema: SCHEMA } as Project;
const START = edited(emptyDocument({ kind: 'hole', id: 'ZQRC001' }), 1, ...holeMade());
const put = (table: string, id: string, thing: Thing): Change => ({ put: [table, id], thing });
const seen = (id: string, from: number, to: number, more: Thing) =>
  put('stream', id, { fromMm: from * 1000, toMm: to * 1000, ...more });
const crossed = (one: Document, other: Document): readonly [Document, Document] => [
  merge(one, other, deed(50), HOLE_RECORDS).document,
  merge(other, one, deed(51), HOLE_RECORDS).document,
];
const moistureAt = (hole: Document, from: number) =>
  streamFactAt(hole, { fromMm: depthFromMm(from * 1000), toMm: depthFromMm(from * 1000 + 1000) }).moisture;
const asked = (hole: Document) =>
  questionWords(SCHEMA, hole).map(({ cell, ours, theirs, writers }) => [cell, ours, theirs, writers]);

describe('records of one place that two copies each made', () => {
  it('are one question in both copies, and the later one counts in both', () => {
    // The clock of these edits runs backwards: edit 3 is the earlier one.
    const dry = edited(START, 2, seen('a-1', 52, 54, { moisture: 'dry' }));
    const wet = edited(START, 3, seen('b-1', 52, 54, { moisture: 'wet' }));
    const [here, there] = crossed(dry, wet);
    for (const hole of [here, there]) {
      expect(moistureAt(hole, 52)).toBe('dry');
      expect(asked(hole)).toEqual([
        ['stream 52–54, moisture', 'dry', 'wet', ['Ada 2026-03-14 07:57', 'Ada 2026-03-14 07:56']],
      ]);
      expect(chainFault(hole.history)).toBeUndefined();
      expect(JSON.stringify(replay(hole.history))).toBe(JSON.stringify(hole.tables));
    }
    expect(Object.keys(here.tables.stream ?? {})).toEqual(Object.keys(there.tables.stream ?? {}));
  });

  it('settled with theirs say the other thing of the metres that they share, and of those alone', () => {
    const one = edited(START, 2, seen('a-1', 53, 55, { moisture: 'dry' }));
    const other = edited(START, 3, seen('b-1', 52, 54, { moisture: 'wet' }));
    const [here] = crossed(one, other);
    const [question] = questionWords(SCHEMA, here);
    expect(question?.cell).toBe('stream 53–54, moisture');
    const done = settleQuestion(PROJECT, here, question?.id ?? '', 'theirs', () => 's-1');
    if (!done.ok) throw new Error(done.findings[0]?.problem);
    const after = edited(here, 9, ...done.value.changes);
    expect([52, 53, 54].map((metre) => moistureAt(after, metre))).toEqual(['wet', 'wet', 'dry']);
    expect(questionWords(SCHEMA, after)).toEqual([]);
  });

  it.each([
    ['a bit', 'bits', { depthMm: 60_000, bitMm: 138 }, { depthMm: 60_000, bitMm: 136 }, 'bitMm'],
    [
      'a rod',
      'hygiene',
      { rod: 'k-1', splitterLevel: true },
      { rod: 'k-1', splitterLevel: false },
      'splitterLevel',
    ],
    [
      'masses',
      'stream',
      { fromMm: 0, toMm: 1000, bulkG: 30_000 },
      { fromMm: 0, toMm: 1000, bulkG: 24_000 },
      'bulkG',
    ],
    [
      'the driller’s word',
      'feltByDriller',
      { fromMm: 0, toMm: 6000, felt: 'solid' },
      { fromMm: 3000, toMm: 6000, felt: 'cavity' },
      'felt',
    ],
  ] as const)('of %s are a question too', (_, table, one, other, field) => {
    const [here, there] = crossed(
      edited(START, 2, put(table, 'a-1', one)),
      edited(START, 3, put(table, 'b-1', other)),
    );
    for (const hole of [here, there])
      expect(Object.values(hole.tables.questions ?? {})).toMatchObject([{ table, field, state: 'open' }]);
    expect(sameJson(here.tables, there.tables)).toBe(true);
  });

  it('that agree, or are of other metres, ask nothing', () => {
    const one = edited(START, 2, seen('a-1', 52, 54, { moisture: 'dry' }));
    const other = edited(
      START,
      3,
      seen('b-1', 53, 55, { moisture: 'dry' }),
      seen('b-2', 60, 61, { moisture: 'wet' }),
    );
    expect(asked(crossed(one, other)[0])).toEqual([]);
  });

  it('stand in the same order in both copies, whatever each recorded', () => {
    const record = fc.record({
      from: fc.nat({ max: 5 }),
      length: fc.integer({ min: 1, max: 3 }),
      moisture: fc.constantFrom('dry', 'moist', 'wet'),
      number: fc.nat({ max: 49 }),
    });
    const side = (
      name: string,
      records: readonly { from: number; length: number; moisture: string; number: number }[],
    ) =>
      records.reduce(
        (hole, { from, length, moisture, number }, index) =>
          edited(hole, number, seen(`${name}-${index}`, from, from + length, { moisture })),
        START,
      );
    const list = fc.array(record, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(list, list, (one, other) => {
        const [here, there] = crossed(side('a', one), side('b', other));
        expect(Object.keys(here.tables.stream ?? {})).toEqual(Object.keys(there.tables.stream ?? {}));
        for (let metre = 0; metre < 8; metre += 1)
          expect(moistureAt(here, metre)).toBe(moistureAt(there, metre));
        expect(asked(here)).toEqual(asked(there));
        expect(JSON.stringify(replay(here.history))).toBe(JSON.stringify(here.tables));
      }),
      { numRuns: runs(1000) },
    );
  });
});
