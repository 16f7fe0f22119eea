import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settleQuestion } from '../../src/acts/settle.ts';
import { signedOff } from '../../src/hole/acceptance.ts';
import { lastCollarState } from '../../src/hole/commands/states.ts';
import { wordAt } from '../../src/hole/drilled.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { HOLE_RECORDS } from '../../src/hole/records.ts';
import type { Project } from '../../src/project/project.ts';
import { depthFromMm } from '../../src/quantity/depth.ts';
import { chainFault, replay } from '../../src/record/chain.ts';
import { type Change, type Document, emptyDocument, type Thing } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { dangersMet } from '../../src/standing/dangers.ts';
import { questionWords } from '../../src/standing/questions.ts';
import { streamFactAt } from '../../src/standing/stream.ts';
import { traysOf } from '../../src/standing/trays.ts';
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
const decision = (kind: string, more: Thing = {}): Thing => ({
  ...{ kind, depthMm: 120_000, loggedMm: 120_000, verdict: 'may end', rules: [] },
  ...{ rulesHash: 'r', schemaHash: 's', at: '2026-03-14T07:00:00+08:00', by: 'Ada' },
  ...more,
});
/** The first question of a hole settled. */
function settle(hole: Document, chosen: 'ours' | 'theirs'): Document {
  let made = 0;
  const id = questionWords(SCHEMA, hole)[0]?.id ?? '';
  const done = settleQuestion(PROJECT, hole, id, chosen, () => `s-${++made}`);
  if (!done.ok) throw new Error(done.findings[0]?.problem);
  return edited(hole, 9, ...done.value.changes);
}
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
    [
      'why no sample was taken',
      'stream',
      { fromMm: 0, toMm: 1000, unsampled: 'cyclone blocked' },
      { fromMm: 0, toMm: 2000, unsampled: 'sample lost' },
      'unsampled',
    ],
    [
      'no sample and a calico weighed',
      'stream',
      { fromMm: 0, toMm: 1000, unsampled: 'cyclone blocked' },
      { fromMm: 0, toMm: 1000, splitG: 3100 },
      'unsampled',
    ],
    [
      'a photograph of one tray',
      'trays',
      { tray: 1, fromMm: 0, toMm: 20_000, photo: 'IMG_0412.JPG' },
      { tray: 1, fromMm: 0, toMm: 20_000, photo: 'IMG_0007.JPG' },
      'photo',
    ],
    ['the hole’s end', 'decisions', decision('held'), decision('ended'), 'kind'],
    [
      'how far to go on',
      'decisions',
      decision('extended', { toMm: 132_000 }),
      decision('extended', { toMm: 138_000 }),
      'toMm',
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

  it('of a decision that its own laptop went past ask nothing; the one chosen is the last one', () => {
    const one = edited(
      START,
      3,
      put('decisions', 'a-1', decision('held')),
      put('decisions', 'a-2', decision('ended')),
    );
    expect(asked(crossed(one, edited(START, 2, put('decisions', 'b-1', decision('ended'))))[0])).toEqual([]);
    const other = edited(START, 2, put('decisions', 'b-1', decision('extended', { toMm: 132_000 })));
    for (const hole of crossed(one, other)) {
      expect(Object.values(hole.tables.questions ?? {})).toHaveLength(1);
      expect(holeNouns(settle(hole, 'theirs'), 'decisions').at(-1)).toMatchObject({ kind: 'ended' });
      expect(holeNouns(settle(hole, 'ours'), 'decisions').at(-1)).toEqual(
        decision('extended', { toMm: 132_000 }),
      );
    }
  });

  it('of the collar: open counts in both copies until it is settled, then the one chosen', () => {
    const collar = (state: string): Thing => ({ state, at: '2026-03-14T09:00:00+08:00', by: 'NOK' });
    const one = edited(START, 3, put('collarStates', 'a-1', collar('open')));
    const other = edited(START, 2, put('collarStates', 'b-1', collar('capped')));
    for (const copies of [crossed(one, other), crossed(other, one)])
      for (const hole of copies) {
        expect(Object.values(hole.tables.questions ?? {})).toMatchObject([
          { table: 'collarStates', field: 'state', state: 'open' },
        ]);
        expect(lastCollarState(hole)?.state).toBe('open');
        const states = (['ours', 'theirs'] as const).map((way) => lastCollarState(settle(hole, way))?.state);
        expect([...states].sort()).toEqual(['capped', 'open']);
      }
  });

  it('of a sign-off: none holds in either copy until it is settled, then the one chosen', () => {
    const said = (state: string): Thing => ({
      state,
      at: '2026-03-14T09:00:00+08:00',
      by: 'IFA',
      reason: 'r',
    });
    const signed = edited(START, 4, put('signOffs', 'k-8', said('signed off')));
    const one = edited(signed, 3, put('signOffs', 'a-1', said('opened again')));
    const other = edited(
      edited(signed, 2, put('signOffs', 'b-1', said('opened again'))),
      5,
      put('signOffs', 'b-2', said('signed off')),
    );
    for (const copies of [crossed(one, other), crossed(other, one)])
      for (const hole of copies) {
        expect(Object.values(hole.tables.questions ?? {})).toMatchObject([
          { table: 'signOffs', field: 'state', state: 'open' },
        ]);
        expect(signedOff(hole)).toBeUndefined();
        const states = (['ours', 'theirs'] as const).map((way) => signedOff(settle(hole, way))?.state);
        expect(states.filter((each) => each === 'signed off')).toHaveLength(1);
      }
  });

  it('of a tray: the later photograph is listed until it is settled, then the one chosen', () => {
    const tray = (photo: string): Thing => ({ tray: 1, fromMm: 0, toMm: 20_000, photo });
    const one = edited(START, 3, put('trays', 'a-1', tray('IMG_0412.JPG')));
    const other = edited(START, 2, put('trays', 'b-1', tray('IMG_0007.JPG')));
    const listed = (hole: Document) => {
      const project = { sampling: { tray: { compartments: 20, compartmentMm: 1000 } } } as Project;
      const down = [put('rods', 'k-9', { rod: 4, depthMm: 20_000, at: '2026-03-14T07:00:00+08:00' })];
      return traysOf(project, edited(hole, 10, ...down))[0]?.photo;
    };
    for (const hole of crossed(one, other)) {
      expect(listed(hole)).toBe('IMG_0007.JPG');
      expect(listed(settle(hole, 'theirs'))).toBe('IMG_0412.JPG');
    }
  });

  it('of a cavity leave the danger until it is settled as solid, then for the metres of both alone', () => {
    const felt = (id: string, from: number, to: number, word: string) =>
      put('feltByDriller', id, {
        ...{ fromMm: from * 1000, toMm: to * 1000, felt: word },
        ...{ at: '2026-03-14T07:00:00+08:00', by: 'Ada' },
      });
    const words = (hole: Document) =>
      [44, 46, 49].map((from) => {
        const metre = { fromMm: depthFromMm(from * 1000), toMm: depthFromMm(from * 1000 + 1000) };
        return wordAt(holeNouns(hole, 'feltByDriller'), metre)?.felt;
      });
    for (const [solidAt, cavityAt] of [
      [2, 3],
      [3, 2],
    ] as const) {
      const solid = edited(START, solidAt, felt('a-1', 46, 50, 'solid'));
      const cavity = edited(START, cavityAt, felt('b-1', 44, 47, 'cavity'));
      for (const hole of crossed(solid, cavity)) {
        expect(words(hole)).toEqual(['cavity', 'cavity', 'solid']);
        expect(dangersMet(SCHEMA, hole).join()).toContain('CAVITY');
        const [question] = questionWords(SCHEMA, hole);
        const asSolid = question?.ours.includes('solid') === true ? 'ours' : 'theirs';
        const after = settle(hole, asSolid);
        expect(words(after)).toEqual(['cavity', 'solid', 'solid']);
        expect(questionWords(SCHEMA, after)).toEqual([]);
        expect(words(settle(hole, asSolid === 'ours' ? 'theirs' : 'ours'))).toEqual([
          'cavity',
          'cavity',
          'solid',
        ]);
      }
    }
  });

  it('of metres without a sample give way where a calico was weighed and that is kept, else stand', () => {
    const none = edited(START, 3, seen('a-1', 52, 54, { unsampled: 'cyclone blocked' }));
    const weighed = edited(START, 2, seen('b-1', 53, 54, { splitG: 3100 }));
    for (const hole of crossed(none, weighed)) {
      const without = (each: Document) =>
        holeNouns(each, 'stream').flatMap(({ unsampled, fromMm, toMm }) =>
          unsampled === undefined ? [] : [[fromMm, toMm]],
        );
      expect(without(hole)).toEqual([[52_000, 54_000]]);
      const [question] = questionWords(SCHEMA, hole);
      const sampled = question?.ours === 'nothing' ? 'ours' : 'theirs';
      expect(without(settle(hole, sampled))).toEqual([[52_000, 53_000]]);
      expect(without(settle(hole, sampled === 'ours' ? 'theirs' : 'ours'))).toContainEqual([52_000, 54_000]);
    }
  });

  it('of contamination contradict nothing: one laptop’s word for it stands in both copies', () => {
    const bad = edited(START, 3, seen('a-1', 52, 54, { contaminated: true }));
    const dry = edited(START, 2, seen('b-1', 52, 54, { moisture: 'dry' }));
    for (const hole of crossed(bad, dry)) {
      expect(asked(hole)).toEqual([]);
      const metre = { fromMm: depthFromMm(53_000), toMm: depthFromMm(54_000) };
      expect(streamFactAt(hole, metre)).toMatchObject({ contaminated: true, moisture: 'dry' });
    }
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
