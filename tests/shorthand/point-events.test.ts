import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/condition/evaluate.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import { cautionsIn } from '../../src/schema/cautions.ts';
import { meaningsOf } from '../../src/schema/legend.ts';
import { readerOf } from '../../src/schema/read-cell.ts';
import { complete } from '../../src/shorthand/complete.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import type { RowSaid } from '../../src/value/row.ts';
import { LOST, withEvents as schema } from './events-schema.ts';

const metres = (from: number, to: number) => ({ fromMm: depthFromMetres(from), toMm: depthFromMetres(to) });
const AT_44 = metres(44, 45);

function read(line: string, above?: RowSaid, interval = AT_44) {
  return parseLine(line, { schema, above, interval });
}
function row(line: string, above?: RowSaid, interval = AT_44): RowSaid {
  const parsed = read(line, above, interval);
  if (parsed.kind !== 'row') throw new Error(`${line}: ${JSON.stringify(parsed)}`);
  return parsed.row;
}
const events = (line: string, interval = AT_44): Cell | undefined =>
  row(line, undefined, interval).cells.events;
const refused = (line: string, interval = AT_44): string => {
  const parsed = read(line, undefined, interval);
  return parsed.kind === 'refused' ? `${parsed.problem}. ${parsed.remedy}` : `not refused: ${parsed.kind}`;
};

describe('an event at a point', () => {
  test('has a measure behind its pair and its depth behind @, or neither', () => {
    expect(events('bswe1wk2@44.6')).toEqual({ events: { WST: { atMm: 44_600, number: 2 } } });
    expect(events('bswe1wk;')).toEqual({ events: { WST: { number: 0.5 } } });
    expect(events('bswe1fk@44.3ty')).toEqual({ events: { FLT: { atMm: 44_300 }, TFR: {} } });
    expect(events("bswe1 events'tfr@44.1 events'wst'2@44.6")).toEqual({
      events: { TFR: { atMm: 44_100 }, WST: { atMm: 44_600, number: 2 } },
    });
  });

  test('needs only what comes after the point where that is one place in the row', () => {
    expect(events('bswe1fk@.6')).toEqual({ events: { FLT: { atMm: 44_600 } } });
    expect(events('bswe1fk@.25', metres(44.5, 45.5))).toEqual({ events: { FLT: { atMm: 45_250 } } });
    expect(refused('bswe1fk@.6', metres(44, 46))).toBe(
      'fault: 0.6 of a metre is not one place inside the row 44–46. Type a depth from 44 to under 46 m; elsewhere ;at and its depth: ;at 44.6 ws2',
    );
    expect(events('bswe1fk@45.6', metres(44, 46))).toEqual({ events: { FLT: { atMm: 45_600 } } });
  });

  test('is refused outside of its row, without a depth behind @, and with a figure that it does not have', () => {
    expect(refused('bswe1fk@54.6')).toBe(
      'fault: 54.6 m is not one place inside the row 44–45. Type a depth from 44 to under 45 m; elsewhere ;at and its depth: ;at 44.6 ws2',
    );
    expect(refused('bswe1fk@45')).toContain('is not one place inside the row');
    expect(refused('bswe1fk@x')).toBe(
      'No depth comes after @. Type it in metres, @44.6, or what comes after the point: @.6',
    );
    expect(refused('bswe1fk2')).toBe('fault takes no amount, and has 2. Its depth comes after @: fk@.6');
    expect(refused('bswe1wk200')).toBe(
      'water strike is 200 L/s; it goes from 0 to 60. Type it in L/s, its depth after @: wk60@.6',
    );
    expect(refused('bswe1fk@.3fk@.6')).toBe(
      'fault is given twice. Give it once: a second one in the same row goes into the remark',
    );
  });

  test('never carries: the row below has none unless it is said there', () => {
    const above = row('bswe1wk2@.6');
    expect(row('.', above).cells.events).toEqual(NONE);
    expect(row("events'nr", above).cells.events).toEqual(NOT_OBSERVED);
    // Said of the same row again, it takes the place of what was said before.
    expect(row('wk0', above).cells.events).toEqual(NONE);
  });

  test('is in the echo with its measure and depth', () => {
    const above = row('bswe1');
    expect(explain(row('wk2@.6', above), { schema, above })).toContainEqual({
      text: 'water strike 2 L/s at 44.6 m',
      kind: 'new',
    });
  });

  test('can hurt, and can be that nothing came up', () => {
    const lost = row("lk@.2 rock'nr we1");
    expect(cautionsIn(schema, lost.cells)).toMatchObject([{ about: 'lost circulation', caution: LOST }]);
    // No chips: all that is not said was not observed, and needs no saying.
    expect(row('lk@.2', row('bswe1py2')).cells.sulphides).toEqual(NOT_OBSERVED);
  });

  test('is asked by conditions: whether it was seen, and how much of it', () => {
    const seen = readerOf(schema, row('bswe1wk2@.6').cells);
    expect(evaluate({ field: 'events', is: 'WST' }, seen)).toBe('yes');
    expect(evaluate({ field: 'events', of: 'WST', atLeast: 2 }, seen)).toBe('yes');
    expect(evaluate({ field: 'events', of: 'WST', moreThan: 2 }, seen)).toBe('no');
    expect(evaluate({ field: 'events', of: 'FLT', seen: true }, seen)).toBe('no');
    const unmeasured = readerOf(schema, row('bswe1wk@.6').cells);
    expect(evaluate({ field: 'events', of: 'WST', atLeast: 2 }, unmeasured)).toBe('cannot tell');
  });

  test('is in the legend with its unit, so that the hole decodes alone', () => {
    expect(meaningsOf(schema, [row('bswe1wk2@.6')]).codes['events WST']).toEqual({
      list: 'events',
      code: 'WST',
      label: 'water strike',
      pair: 'wk',
      unit: 'L/s',
    });
  });

  test('is written with the fewest keys, its depth cut to what tells it in the row', () => {
    const said = row('bswe1wk2@44.6ty@44');
    expect(writeLine(said, { schema, interval: AT_44 })).toBe('bswe1wk2@.6ty@44');
    expect(writeLine(said, { schema })).toBe('bswe1wk2@44.6ty@44');
  });

  test('is offered by Tab with what can come after it', () => {
    expect(complete('wk', { schema }).amounts).toEqual([
      { text: '2', label: 'in L/s' },
      { text: '@.6', label: 'its depth, in metres' },
      { text: '0', label: 'none: takes it out' },
    ]);
  });

  test('behind ; it is put into the row that holds its depth', () => {
    expect(parseLine(';at 44.6 wk2', { schema })).toMatchObject({
      kind: 'range',
      at: 44_600,
      items: [{ says: { event: 'WST', number: 2, at: { mm: 44_600, isTail: false } } }],
    });
    const problem = (line: string) => parseLine(line, { schema });
    expect(problem(';at wk2')).toMatchObject({ problem: ';at: Needs a depth, then what is there' });
    expect(problem(';at 44.6')).toMatchObject({ problem: ';at: Needs a depth, then what is there' });
    expect(problem(';at 44.6 py2')).toMatchObject({ problem: 'Only events are at a depth of their own' });
    expect(problem(';at 44.6 wk2/sudden')).toMatchObject({ problem: 'An event takes no remark' });
  });
});
