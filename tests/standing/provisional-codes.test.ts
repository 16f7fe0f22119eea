import { describe, expect, it } from 'vitest';
import { formatFinding } from '../../src/finding/finding.ts';
import type { Code, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { provisionalCodes, provisionalInHole } from '../../src/standing/provisional-codes.ts';
import type { Cells } from '../../src/value/row.ts';
import { resolveStyle } from '../support/styles.ts';
import { holeWith, row } from './support/hole.ts';

const style = resolveStyle('orogenic-gold')!;
const rocks = style.lists.rocks!;
const talc: Code = { code: 'TLC', label: 'talc schist', look: 'soapy', pair: 'tk', provisional: true };
const schemaWith = (code: Code): LoggingSchema => ({
  ...style,
  lists: { ...style.lists, rocks: { ...rocks, codes: [...rocks.codes, code] } },
});
const logged = (fromM: number, cells: Cells) => ({ ...row(fromM, fromM + 1), cells });

describe('codes that wait for camp', () => {
  it('are those that the schema marks, with the rows that hold them, as first or second', () => {
    const hole = holeWith({
      rows: [
        logged(3, { rock: { code: 'TLC' } }),
        logged(2, { rock: { code: 'BAS', second: { code: 'TLC', percent: 20 } } }),
        logged(1, { rock: { code: 'BAS' } }),
      ],
    });
    expect(provisionalCodes(schemaWith(talc), [hole])).toEqual([
      {
        list: 'rocks',
        code: 'TLC',
        label: 'talc schist',
        look: 'soapy',
        pair: 'tk',
        uses: [{ hole: 'MBRC900', rows: 2, first: { fromMm: 2000, toMm: 3000 } }],
      },
    ]);
  });

  it('are a note of the check of their hole', () => {
    const hole = holeWith({
      rows: [logged(2, { rock: { code: 'TLC' } }), logged(3, { rock: { code: 'TLC' } })],
    });
    expect(provisionalInHole(schemaWith(talc), hole).map(formatFinding)).toEqual([
      'MBRC900, 2–3, list rocks, code TLC: TLC (talc schist) was added on the rig, and 2 rows hold it from here down\n' +
        '  Ask camp: take "provisional" out of it in logging.json, or amend the rows and retire it.',
    ]);
    expect(provisionalInHole(style, hole)).toEqual([]);
  });

  it('are listed before a row uses them, and not once camp has settled them', () => {
    expect(provisionalCodes(schemaWith(talc), [])).toMatchObject([{ code: 'TLC', uses: [] }]);
    const { provisional: _settled, ...agreed } = talc;
    expect(provisionalCodes(schemaWith(agreed), [holeWith({})])).toEqual([]);
  });

  it('are read off the legend of a hole where the schema ready has never had them', () => {
    const hole = holeWith({
      rows: [logged(0, { rock: { code: 'TLC' } })],
      legendCodes: [{ list: 'rocks', code: 'TLC', label: 'talc schist', provisional: true }],
    });
    expect(provisionalCodes(style, [hole])).toMatchObject([
      { list: 'rocks', code: 'TLC', look: '', uses: [{ rows: 1 }] },
    ]);
  });

  it('hold to their own list: the same letters in another list are another code', () => {
    const hole = holeWith({ rows: [logged(0, { colour: { code: 'TLC' } })] });
    expect(provisionalCodes(schemaWith(talc), [hole])).toMatchObject([{ uses: [] }]);
  });
});
