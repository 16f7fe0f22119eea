import { describe, expect, it } from 'vitest';
import { settleQuestion } from '../../src/acts/settle.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import type { Project } from '../../src/project/project.ts';
import { inverse } from '../../src/record/apply.ts';
import { type Change, type Document, emptyDocument, type Thing } from '../../src/record/document.ts';
import { sameJson } from '../../src/record/json.ts';
import { merge } from '../../src/record/merge.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { logFindings } from '../../src/standing/log-findings.ts';
import { countOpen, questionWords } from '../../src/standing/questions.ts';
import { holeMade } from '../desk/support/values.ts';
import { deed, edited } from '../record/build.ts';
import { resolveStyle } from '../support/styles.ts';

const SCHEMA: LoggingSchema = { ...(resolveStyle('orogenic-gold') as LoggingSchema), fields: [] };
const PROJECT = { schema: SCHEMA } as Project;
const START = edited(emptyDocument({ kind: 'hole', id: 'ZQRC001' }), 1, ...holeMade());

const rod = (side: string, minute: number, more: Thing = {}): Change => ({
  put: ['rods', side],
  thing: { at: `2026-03-14T07:0${minute}:00+08:00`, rod: 1, depthMm: 6000, ...more },
});
const bag = (side: string, number: string, more: Thing = {}): Change => ({
  put: ['bags', `${side}-${number}`],
  thing: { number, kind: 'primary', fromMm: 0, toMm: 2000, rod: side, ...more },
});
const numbers = (hole: Document) =>
  holeNouns(hole, 'bags')
    .map((each) => each.number)
    .sort();

/** Both copies recorded rod 1: the bag ZQ000131 in both, ours ZQ000132 and theirs ZQ000133 beside it. */
function bothRecorded(...more: readonly Change[]): Document {
  const ours = edited(START, 2, rod('a-1', 2), bag('a-1', 'ZQ000131'), bag('a-1', 'ZQ000132'));
  const theirs = edited(START, 3, rod('b-1', 4), bag('b-1', 'ZQ000131'), bag('b-1', 'ZQ000133'));
  const both = merge(ours, theirs, deed(4)).document;
  return more.length === 0 ? both : edited(both, 5, ...more);
}

function settled(hole: Document, chosen: 'first' | 'second', others: readonly Document[] = []) {
  const [question] = questionWords(SCHEMA, hole);
  const done = settleQuestion(PROJECT, hole, question?.id ?? '', chosen, () => 's-1', [hole, ...others]);
  if (!done.ok) throw new Error(done.findings[0]?.problem);
  return { what: done.value.what, hole: edited(hole, 9, ...done.value.changes) };
}

describe('a rod that two copies recorded', () => {
  it('is a question with both records and their bags', () => {
    expect(questionWords(SCHEMA, bothRecorded())).toMatchObject([
      {
        cell: 'rod 1, recorded twice',
        labels: ['first', 'second'],
        ours: 'rod 1 to 6 m at 2026-03-14 07:02:00, 2 bags ZQ000131 to ZQ000132',
        theirs: 'rod 1 to 6 m at 2026-03-14 07:04:00, 2 bags ZQ000131 to ZQ000133',
        writers: ['Ada 2026-03-14 07:57', 'Ada 2026-03-14 07:56'],
        twice: 'rod',
      },
    ]);
    expect(countOpen(bothRecorded())).toBe(1);
  });

  it('keeps one record with its bags; the other goes with its own, and one edit takes that back', () => {
    const both = bothRecorded();
    for (const [chosen, kept, stay] of [
      ['first', 'a-1', ['ZQ000131', 'ZQ000132']],
      ['second', 'b-1', ['ZQ000131', 'ZQ000133']],
    ] as const) {
      const after = settled(both, chosen).hole;
      expect(Object.keys(after.tables.rods ?? {})).toEqual([kept]);
      expect(numbers(after)).toEqual(stay);
      expect(holeNouns(after, 'bags').every((each) => each.rod === kept)).toBe(true);
      expect(logFindings(after)).toEqual([]);
      expect(countOpen(after)).toBe(0);
      const back = edited(after, 10, ...inverse(after.history.at(-1)?.changes ?? []));
      expect(sameJson(back.tables, both.tables)).toBe(true);
    }
  });

  it('keeps a bag that someone ticked, sent, or holds a duplicate against, and names it', () => {
    const tick: Change = {
      put: ['ticks', 't-1'],
      thing: { number: 'ZQ000133', at: '2026-03-14T08:00:00+08:00', by: 'NOK' },
    };
    const duplicate = bag('b-1', 'ZQ000140', {
      kind: 'field duplicate',
      of: 'ZQ000133',
      byHand: true,
    } as unknown as Thing);
    for (const more of [[tick], [duplicate]]) {
      const { hole, what } = settled(bothRecorded(...more), 'first');
      expect(numbers(hole)).toContain('ZQ000133');
      const stayed = holeNouns(hole, 'bags').find(({ number }) => number === 'ZQ000133');
      expect(stayed).toMatchObject({ rod: 'a-1', byHand: true });
      expect(what).toContain('1 bag that was ticked, sent or doubled stays, placed by hand: ZQ000133');
      expect(holeNouns(hole, 'bags').every((each) => each.rod === 'a-1')).toBe(true);
    }
  });

  it('keeps a bag placed by hand, and what was seen of the cyclone where the kept record has nothing', () => {
    const seen = (id: string, at: string): Change => ({
      put: ['hygiene', id],
      thing: { rod: at, cycloneClean: true },
    });
    const byHand = bag('b-1', 'ZQ000150', { byHand: true } as unknown as Thing);
    const one = settled(bothRecorded(seen('h-1', 'b-1'), byHand), 'first').hole;
    expect(one.tables.hygiene).toEqual({ 'h-1': { rod: 'a-1', cycloneClean: true } });
    expect(one.tables.bags?.['b-1-ZQ000150']).toMatchObject({ rod: 'a-1', byHand: true });
    const other = settled(bothRecorded(seen('h-1', 'b-1'), seen('h-2', 'a-1')), 'first').hole;
    expect(Object.keys(other.tables.hygiene ?? {})).toEqual(['h-2']);
  });

  it('leaves the kept record what only the other one looked at, and its own word where both looked', () => {
    const seen = (id: string, at: string, look: Thing): Change => ({
      put: ['hygiene', id],
      thing: { rod: at, ...look },
    });
    const both = bothRecorded(
      seen('h-1', 'a-1', { splitterLevel: true }),
      seen('h-2', 'b-1', { splitterLevel: false, cycloneClean: false }),
    );
    expect(settled(both, 'first').hole.tables.hygiene).toEqual({
      'h-1': { rod: 'a-1', splitterLevel: true, cycloneClean: false },
    });
    expect(settled(both, 'second').hole.tables.hygiene).toEqual({
      'h-2': { rod: 'b-1', splitterLevel: false, cycloneClean: false },
    });
  });

  it('is refused as both: one rod is done once', () => {
    const both = bothRecorded();
    const done = settleQuestion(PROJECT, both, questionWords(SCHEMA, both)[0]?.id ?? '', 'both', () => 's-1');
    expect(done.ok ? undefined : done.findings[0]?.problem).toBe(
      'only two rows over the same metres can both be kept',
    );
  });

  it('of one count to two depths leaves the drilled depth of the record kept', () => {
    const deeper = edited(START, 3, rod('b-1', 4, { depthMm: 12_000 }));
    const both = merge(edited(START, 2, rod('a-1', 2)), deeper, deed(4)).document;
    expect(Object.values(settled(both, 'first').hole.tables.rods ?? {})).toMatchObject([{ depthMm: 6000 }]);
  });

  it('is the same question in the same order on both laptops, with what one record says and the other does not', () => {
    const look = (at: string, level: boolean): Change => ({
      put: ['hygiene', `h-${at}`],
      thing: { rod: at, splitterLevel: level, cycloneClean: true },
    });
    const one = edited(
      START,
      2,
      rod('a-1', 2, { bags: 6, unmended: true, mismatch: 'count' }),
      look('a-1', false),
    );
    const two = edited(START, 3, rod('b-1', 4), look('b-1', true));
    const said = [merge(one, two, deed(4)).document, merge(two, one, deed(5)).document].map((hole) =>
      questionWords(SCHEMA, hole).map(({ id, ours, theirs }) => ({ id, ours, theirs })),
    );
    expect(said[0]).toEqual(said[1]);
    expect(said[0]?.[0]?.ours).toContain(
      'no bags, 6 bags counted, bags don\u2019t match, not settled yet, splitter NOT level',
    );
    expect(said[0]?.[0]?.theirs).toContain('no bags, bags not counted, splitter level');
    expect(said[0]?.[0]?.ours).not.toContain('cyclone');
  });

  it('is refused as ours or theirs: both are in the hole', () => {
    const both = bothRecorded();
    const id = questionWords(SCHEMA, both)[0]?.id ?? '';
    for (const chosen of ['ours', 'theirs'] as const) {
      const done = settleQuestion(PROJECT, both, id, chosen, () => 's-1');
      expect(done.ok ? undefined : done.findings[0]?.remedy).toContain('Keep the first or the second');
    }
  });

  it('settled opposite ways by two copies is there twice again with its bags and hygiene, on both: never neither', () => {
    const seen = (at: string): Change => ({
      put: ['hygiene', `h-${at}`],
      thing: { rod: at, cycloneClean: true },
    });
    const one = edited(START, 2, rod('a-1', 2), seen('a-1'), bag('a-1', 'ZQ000131'), bag('a-1', 'ZQ000132'));
    const two = edited(START, 3, rod('b-1', 4), seen('b-1'), bag('b-1', 'ZQ000131'), bag('b-1', 'ZQ000133'));
    // Both copies list them in one order, and each keeps its own.
    const here = settled(merge(one, two, deed(4)).document, 'first').hole;
    const there = settled(merge(two, one, deed(5)).document, 'second').hole;
    expect(Object.keys(here.tables.rods ?? {})).toEqual(['a-1']);
    expect(Object.keys(there.tables.rods ?? {})).toEqual(['b-1']);
    const hereAfter = merge(here, there, deed(6)).document;
    const thereAfter = merge(there, here, deed(7)).document;
    expect(sameJson(hereAfter.tables, thereAfter.tables)).toBe(true);
    expect(Object.keys(hereAfter.tables.rods ?? {}).sort()).toEqual(['a-1', 'b-1']);
    expect(numbers(hereAfter)).toEqual(['ZQ000131', 'ZQ000131', 'ZQ000132', 'ZQ000133']);
    expect(Object.keys(hereAfter.tables.hygiene ?? {}).sort()).toEqual(['h-a-1', 'h-b-1']);
    expect(countOpen(hereAfter)).toBe(1);
    // Settled once more, by one of them, it is settled.
    const last = settled(hereAfter, 'second').hole;
    expect(sameJson(merge(thereAfter, last, deed(8)).document.tables, last.tables)).toBe(true);
    expect(countOpen(last)).toBe(0);
  });
});
