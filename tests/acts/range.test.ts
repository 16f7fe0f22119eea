import { describe, expect, it } from 'vitest';
import { planRange } from '../../src/acts/range.ts';
import type { RangeCommand } from '../../src/acts/range-plan.ts';
import { planSaid } from '../../src/acts/said-range.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { formatInterval } from '../../src/quantity/interval.ts';
import type { Document, Thing } from '../../src/record/document.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import type { Row } from '../../src/value/row.ts';
import { at, having, hole, makerAt } from '../shift/build.ts';
import { withEvents } from '../shorthand/events-schema.ts';
import { above, rowOf, schema } from '../shorthand/fixture-schema.ts';

const mm = depthFromMetres;
const row = (fromM: number, said: string): Row => ({
  ...rowOf(said, { above }).row,
  fromMm: mm(fromM),
  toMm: mm(fromM + 1),
});

/** Rows 0–4; 2 and 3 are alike. A reading and a contact stand in 1–2. */
const HOLE = hole('ZQRC004', {
  rows: [row(0, 'p3'), row(1, "p5ct magsus'12/sharp"), row(2, '.'), row(3, './wet')] as unknown as Thing[],
  bags: [0, 1, 2, 3].map(
    (metre): Thing => ({
      number: `ZQ00013${metre}`,
      kind: 'primary',
      fromMm: mm(metre),
      toMm: mm(metre + 1),
    }),
  ),
});

/** What a line behind ; would do: its preview, and the rows after it. */
function plan(line: string, of: Document = HOLE) {
  const read = parseLine(line, { schema });
  const maker = makerAt(at('08:00'));
  const planned =
    read.kind === 'range'
      ? planSaid(schema, of, read, maker)
      : planRange(schema, of, (read as { command: RangeCommand }).command, maker);
  if (!planned.ok) return { refused: planned.findings[0]?.problem };
  const { lines, made } = planned.value;
  return { lines, rows: rowsDown(having(of, made)) };
}

const shown = (rows: ReturnType<typeof rowsDown> = []) => rows.map(([, each]) => formatInterval(each));

describe('a range command is previewed in words, row by row, and says that bags keep their metres', () => {
  it.each([
    [
      ';clear 1-3',
      ['clear 1–3', '1–2 is taken out', '2–3 is taken out', 'bags keep their metres: ZQ000131 to ZQ000132'],
    ],
    [';shift 3-4 1', ['move 3–4 down by 1 m', '3–4 becomes 4–5', 'bags keep their metres: ZQ000133']],
    [
      ';insert 3-4',
      ['insert 3–4, rows below move down', '3–4 becomes 4–5', 'bags keep their metres: ZQ000133'],
    ],
    [
      ';split 0.5',
      ['split the row at 0.5 m', '0–1 becomes 0–0.5', 'new row 0.5–1', 'bags keep their metres: ZQ000130'],
    ],
    [
      ';merge 2-4',
      [
        'make one row of 2–4',
        '2–3 becomes 2–4',
        '3–4 is taken out',
        'bags keep their metres: ZQ000132 to ZQ000133',
      ],
    ],
    [';copy 0-2 10', ['copy 0–2', 'new row 10–11 as 0–1', 'new row 11–12 as 1–2']],
    [';0-2 p7', ['amend 0–2', '0–1: pyrite 3→7 % ▲', '1–2: pyrite 5→7 % ▲']],
  ])('%s', (line, lines) => {
    expect(plan(line).lines).toEqual(lines);
  });
});

describe('rows after it', () => {
  it('a copy repeats what is observed in chips, never a contact, a reading or a remark', () => {
    const copied = plan(';copy 1-2 10').rows?.at(-1)?.[1];
    expect(copied).toMatchObject({ repeat: true, cells: { sulphides: { percents: { pyr: 5 } } } });
    expect(copied).not.toHaveProperty('remark');
    expect(copied?.cells).toMatchObject({ contact: { absent: 'none' }, magsus: { absent: 'not observed' } });
  });

  it('a copy without a depth goes on where the log does', () => {
    expect(shown(plan(';copy 0-2').rows)).toEqual(['0–1', '1–2', '2–3', '3–4', '4–5', '5–6']);
  });

  it('a forgotten metre stands open, and what stood there is a metre deeper', () => {
    expect(shown(plan(';insert 1-2').rows)).toEqual(['0–1', '2–3', '3–4', '4–5']);
  });

  it('both halves of a split say the same; one row of several keeps every remark', () => {
    const halves = plan(';split 1.25')
      .rows?.map(([, each]) => each)
      .filter((each) => each.remark === 'sharp');
    expect(halves?.map(formatInterval)).toEqual(['1–1.25', '1.25–2']);
    expect(plan(';merge 2-4').rows?.at(-1)?.[1]).toMatchObject({ fromMm: mm(2), toMm: mm(4), remark: 'wet' });
  });
});

describe('refused, with nothing done', () => {
  it.each([
    [';shift 1-2 1', 'the row 2–3 covers it already'],
    [';shift 0-1 -1', 'rows would move above the start of logging'],
    [';copy 0-1 2', 'the row 2–3 covers it already'],
    [';merge 0-2', 'the row 1–2 says something else'],
    [';clear 0.5-2', 'the range cuts through the row 0–1'],
    [';clear 20-30', 'no row is logged there'],
    [';split 2', 'a row ends at 2 m already'],
    [';split 20', 'no row is logged there'],
    [';insert 2.5-3.5', 'the range cuts through the row 2–3'],
    [';0-2 h2', 'chalcopyrite is not in 0–1'],
  ])('%s', (line, problem) => {
    expect(plan(line).refused?.toLowerCase()).toContain(problem);
  });
});

describe('events at a point, where their rows change', () => {
  const said = (fromM: number, line: string, toM = fromM + 1): Row => {
    const interval = { fromMm: mm(fromM), toMm: mm(toM) };
    const read = parseLine(line, { schema: withEvents, above, interval });
    if (read.kind !== 'row') throw new Error(JSON.stringify(read));
    return { ...read.row, ...interval };
  };
  const STRUCK = hole('ZQRC005', {
    rows: [said(0, '.'), said(1, 'wk2@1.6'), said(2, 'fk@2.25')] as unknown as Thing[],
  });
  const eventsAfter = (line: string) => {
    const read = parseLine(line, { schema: withEvents });
    const maker = makerAt(at('08:00'));
    const planned =
      read.kind === 'range'
        ? planSaid(withEvents, STRUCK, read, makerAt(at('08:00')))
        : planRange(withEvents, STRUCK, (read as { command: RangeCommand }).command, maker);
    if (!planned.ok) return planned.findings.map(({ problem, remedy }) => `${problem}. ${remedy}`);
    return rowsDown(having(STRUCK, planned.value.made)).map(([, { fromMm, cells }]) => [
      fromMm,
      cells.events,
    ]);
  };

  it('they move with their row, and are not copied: a strike is struck once', () => {
    expect(eventsAfter(';shift 2-3 1')).toContainEqual([3_000, { events: { FLT: { atMm: 3_250 } } }]);
    expect(eventsAfter(';copy 1-2')).toContainEqual([3_000, { absent: 'none' }]);
  });

  it('one that waits for its metre is in it, whether that is copied, inserted or moved there', () => {
    const WAITING = {
      at1: { field: 'events', code: 'FLT', atMm: mm(3.4) },
    } as unknown as Readonly<Record<string, Thing>>;
    const holding = { ...STRUCK, tables: { ...STRUCK.tables, waitingEvents: WAITING } };
    const joined = (line: string) => {
      const read = parseLine(line, { schema: withEvents });
      const { command } = read as { command: RangeCommand };
      const planned = planRange(withEvents, holding, command, makerAt(at('08:00')));
      if (!planned.ok) return planned.findings.map(({ problem }) => problem);
      const made = having(holding, planned.value.made);
      const rows = rowsDown(made).map(([, { fromMm, cells }]) => [fromMm, cells.events]);
      return [rows.at(-1), Object.keys(made.tables.waitingEvents ?? {})];
    };
    const struck = [3_000, { events: { FLT: { atMm: 3_400 } } }];
    expect(joined(';copy 0-1 3')).toEqual([struck, []]);
    // The row that moves there has a fault of its own at another depth: a person settles which of the two it is.
    expect(joined(';shift 2-3 1')[1]).toEqual(['at1']);
    expect(joined(';insert 0-1')[1]).toEqual(['at1']);
  });

  it('they go with the half that they are in', () => {
    expect(eventsAfter(';split 1.5')).toEqual(
      expect.arrayContaining([
        [1_000, { absent: 'none' }],
        [1_500, { events: { WST: { atMm: 1_600, number: 2 } } }],
      ]),
    );
  });

  it('rows that differ only in them become one that has them all', () => {
    expect(eventsAfter(';merge 0-3')).toEqual([
      [0, { events: { WST: { atMm: 1_600, number: 2 }, FLT: { atMm: 2_250 } } }],
    ]);
  });

  it('one is put into a logged row by its depth; where none is logged it waits, and the rows stay as they are', () => {
    expect(eventsAfter(';at 2.8 wk1')).toContainEqual([
      2_000,
      { events: { FLT: { atMm: 2_250 }, WST: { atMm: 2_800, number: 1 } } },
    ]);
    expect(eventsAfter(';at 1.6 wk0')).toContainEqual([1_000, { absent: 'none' }]);
    expect(eventsAfter(';at 7.5 wk1').map((each) => each[0])).toEqual([0, 1_000, 2_000]);
    expect(eventsAfter(';at 20 wk1')).toEqual([
      '20 m is more than a rod below the bit: the hole is at 3 m. Look at the depth again; a rod done is recorded with F2.',
    ]);
  });
});
