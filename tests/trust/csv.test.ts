import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../src/finding/sheet-text.ts';
import type { Dispatch } from '../../src/sampling/dispatch/dispatch-noun.ts';
import { campTable, laboratoryTable, sheetCsv } from '../../src/sampling/dispatch/dispatch-sheet.ts';
import { bagRunCsv, bagRunLines } from '../../src/sampling/numbers/bag-run.ts';
import { atCollar, NOON, sampling } from '../sampling/build.ts';
import { runs } from '../support/long-run.ts';

/** Cells that a spreadsheet would run, or that would run out of their cell. */
const RUN = [
  ...[
    '=1+1',
    '=HYPERLINK("http://example.invalid","look")',
    "=cmd|' /C calc'!A0",
    '=IMPORTXML("x";"y")',
    '=WEBSERVICE("x")',
    '==1',
  ],
  ...['+1+1', "+cmd|' /C calc'!A0", '-1+1', '-cmd', '@SUM(1)', '@A1', "@'x'!A1", '-', '=', '+', '@'],
  ...['\t=1+1', '\r=1+1', '\n=1+1', '\r\n=1+1', '\t', '\r'],
  ...['＝1+1', '＋1', '－1', '＠SUM(1)'],
  ...['a"=1', '"=1"', 'a,=1', 'a\n=1', 'a\r\n=1,2', '",=1', "'=1", '\u0000=1', '\ufeff=1'],
];

/** What makes a spreadsheet take a cell for a formula, as the first character of it: also in its full width. */
const STARTS = /^[=+\-@\t\r\n＝＋－＠]/;

/** The cells of a CSV, as an independent reader finds them. */
const cells = (text: string): readonly string[][] => parse(text, { relax_column_count: true });

describe('a text that a spreadsheet would run', () => {
  it.each(RUN)('is one cell, and starts with nothing that is run: %j', (text) => {
    const [row = []] = cells(csvText([['before', text, 'after']]));
    expect(row).toHaveLength(3);
    expect(row[1]).not.toMatch(STARTS);
    expect(row[1]?.endsWith(text)).toBe(true);
  });

  it('is told from a number, which stays one', () => {
    expect(csvText([[-1.5, 0, 1e21]])).toBe('-1.5,0,1e+21\r\n');
  });

  it('comes back whole from any table of texts, led by an apostrophe where it would be run', () => {
    const cell = fc.oneof(
      fc.constantFrom(...RUN),
      fc.string({ unit: 'binary', maxLength: 8 }).filter((text) => !text.includes('\ufeff')),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
        (table) => {
          // A row of one empty cell and a lone half of a character are nothing that CSV can carry.
          const sound = table.map((row) => row.map((text) => text.replace(/\p{Cs}/gu, '')));
          const back = parse(csvText(sound), { relax_column_count: true, bom: false }) as string[][];
          expect(back).toEqual(
            sound.map((row) =>
              row.map((text) => (/^'*[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text)),
            ),
          );
        },
      ),
      { numRuns: runs(300) },
    );
  });

  it('is run in no sheet that goes to the laboratory, to camp or to the bag table', () => {
    for (const text of RUN) {
      const bag = { number: text, kind: 'standard', material: text, hole: text, of: text } as const;
      const dispatch: Dispatch = {
        name: text,
        laboratory: text,
        madeAt: NOON,
        madeBy: text,
        sacks: [{ sack: 1, bags: [text], seal: text }],
        transfers: [],
        receipts: [],
      };
      const lines = bagRunLines(sampling(), { name: text, state: atCollar('ZQ000121', 'ZQ000130') }, 5000);
      for (const sheet of [
        sheetCsv(laboratoryTable(dispatch)),
        sheetCsv(campTable(dispatch, [bag])),
        bagRunCsv(lines),
      ])
        for (const cell of cells(sheet).slice(1).flat()) expect(cell).not.toMatch(STARTS);
    }
  });
});
