import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breaksCarry } from '../../src/schema/cautions.ts';
import { type EntryContext, parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { type RowSaid, sameObservation } from '../../src/value/row.ts';
import { schemaWithRows } from '../support/arbitrary-schema.ts';
import { runs } from '../support/long-run.ts';
import { above, rowOf, schema } from './fixture-schema.ts';

/** The line of a row that a line says: what would have done the same. */
function again(line: string, context: Partial<EntryContext> = { above }): string {
  return writeLine(rowOf(line, context).row, { schema, ...context });
}

describe('the shortest line of a row', () => {
  test('says only what changed, by single keys where they stand above', () => {
    expect(again('py3vn2')).toBe('p3v2');
    expect(again('we2 cl2= p2=')).toBe('we2');
    expect(again('do')).toBe('do');
  });

  test('is a point where nothing changed', () => {
    expect(again('p2=')).toBe('.');
    expect(again('./dust')).toBe('./dust');
  });

  test('uses no single keys in gloves mode', () => {
    expect(again('py3vn2', { above, gloves: true })).toBe('py3vn2');
  });

  test('insists on each item that is asked, or on the whole row where that is shorter or the row is', () => {
    expect(again('p20=')).toBe('p20=');
    expect(again('p20= c4=')).toBe('c4=p20=');
    expect(again('p20= c4= v15=')).toBe('c4p20v15 =');
    expect(again('.', { above, repeats: 3 })).toBe('.=');
    expect(again('ct', { above: rowOf('ct', { above }).row, repeats: 3 })).toBe('ct =');
  });

  test('says by its field what has no strokes, in lower case, with spaces only where they are needed', () => {
    expect(again("p3 rock'BIF")).toBe("p3 rock'bif");
    expect(again("note''it''s wet' magsus'-0.5")).toBe("magsus'-.5 note''it''s wet'");
  });

  test('lets an asked item said by its field stand first, where its = does for the space', () => {
    const veinsByName = schema.fields.map((field) =>
      field.kind === 'percent' ? { ...field, pair: undefined, key: undefined } : field,
    ) as typeof schema.fields;
    const unstroked = { ...schema, fields: veinsByName };
    const row: RowSaid = { cells: { ...above.cells, veins: { percent: 30 }, contact: { flag: true } } };
    expect(writeLine(row, { schema: unstroked, above })).toBe("veins'30=ct");
  });

  test('takes a second rock out the shorter way', () => {
    expect(again('bs', { above: rowOf('sh30', { above }).row })).toBe('bs');
  });

  test('is a full line below nothing, even where there is nothing to say', () => {
    const bare = { ...schema, fields: schema.fields.filter((field) => field.name === 'sulphides') };
    expect(writeLine({ cells: { sulphides: { absent: 'none' } } }, { schema: bare })).toBe('py0');
  });

  test('takes out the mineral with the fewest strokes where any of them would leave none', () => {
    const sulphides = schema.fields.filter((field) => field.name === 'sulphides');
    const bare = {
      ...schema,
      fields: sulphides.map((field) => ({ ...field, carry: false, required: true })),
    };
    const over = { cells: { sulphides: { percents: { ccp: 2 } } } } satisfies RowSaid;
    expect(writeLine({ cells: { sulphides: { absent: 'none' } } }, { schema: bare, above: over })).toBe('h0');
  });

  test('is nr for a row without return, with its remark', () => {
    expect(again('nr/bag lost')).toBe('nr/bag lost');
  });

  test('names a code that was retired since, and is refused with the reason when typed', () => {
    const old: RowSaid = { cells: { ...above.cells, rock: { code: 'OLD' } } };
    const line = writeLine(old, { schema, above });
    expect(line).toBe("rock'old");
    expect(parseLine(line, { schema, above })).toMatchObject({
      kind: 'refused',
      problem: 'old basalt was retired on 2026-01-01 and can’t be used any more',
    });
  });
});

/** Rows below one another, each with what is above it. */
function contexts(
  schemaOf: EntryContext['schema'],
  rows: readonly RowSaid[],
  gloves: boolean,
): readonly { readonly row: RowSaid; readonly context: EntryContext }[] {
  return rows.map((row, index) => ({
    row,
    context: {
      schema: schemaOf,
      above: rows.slice(0, index).findLast((each) => !breaksCarry(schemaOf, each)),
      previous: rows[index - 1],
      repeats: index,
      gloves,
    },
  }));
}

describe('for every row that can be observed', () => {
  let checked = 0;

  test('the line reads as the row again, and nothing in it is asked', () => {
    fc.assert(
      fc.property(schemaWithRows(6), fc.boolean(), (generated, gloves) => {
        for (const { row, context } of contexts(generated.schema, generated.rows, gloves)) {
          const line = writeLine(row, context);
          const parsed = parseLine(line, context);
          if (parsed.kind !== 'row') throw new Error(`${line}: ${JSON.stringify(parsed)}`);
          expect(sameObservation(parsed.row, row), line).toBe(true);
          expect(parsed.row.remark).toBe(row.remark);
          expect(parsed.asks).toEqual([]);
          checked += 1;
        }
      }),
      { numRuns: runs(2_000) },
    );
  });

  test('that held for thousands of rows in the long run, hundreds in the default one', () => {
    expect(checked).toBeGreaterThanOrEqual(4 * runs(2_000));
  });

  test('no Shift is needed where a code can be told in lower case and nothing is remarked', () => {
    fc.assert(
      fc.property(schemaWithRows(2), ({ schema: generated, rows }) => {
        for (const { row, context } of contexts(generated, rows, false)) {
          const texts = Object.values(row.cells).some((cell) => 'text' in cell);
          if (!texts && row.remark === undefined) expect(writeLine(row, context)).not.toMatch(/[A-Z]/);
        }
      }),
      { numRuns: runs(500) },
    );
  });
});
