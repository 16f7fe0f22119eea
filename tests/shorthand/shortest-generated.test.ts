import fc from 'fast-check';
import { expect, test } from 'vitest';
import { breaksCarry } from '../../src/schema/cautions.ts';
import { type Field, type LoggingSchema, listOf } from '../../src/schema/logging-schema.ts';
import { type EntryContext, parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { schemaWithRows } from '../support/arbitrary-schema.ts';
import { LONG_RUN, runs } from '../support/long-run.ts';

const AMOUNTS = ['', '0', '1', '2', '3', '10', ',', ';', '.5'];
/** Lines tried against one row above: enough that every way to say a field is among them. */
const MOST_LINES = 4_000;

/** Ways to type a field or one of its codes: pair, key, name; each with every amount. */
function itemsOf(schema: LoggingSchema, field: Field): readonly string[] {
  const codes = listOf(schema, field)?.codes;
  const strokes = (codes ?? [field as { readonly pair?: string; readonly key?: string }]).flatMap(
    ({ pair, key }) => [pair, key].filter((each) => each !== undefined),
  );
  const named = (codes ?? []).map(({ code }) => `${field.name}'${code.toLowerCase()}`);
  return [
    ...strokes.flatMap((each) => AMOUNTS.map((amount) => each + amount)),
    ...named.flatMap((each) => AMOUNTS.map((amount) => (amount === '' ? each : `${each}'${amount}`))),
    ...['0', 'nr', '1', '2', '3'].map((value) => `${field.name}'${value}`),
  ];
}

/** Lines of one item, and of two of different fields, glued and with a space; each with and without `=`. */
function linesOf(schema: LoggingSchema): readonly string[] {
  const fields = schema.fields.slice(0, 4).map((field) => itemsOf(schema, field).slice(0, 40));
  const pairs = fields.flatMap((first, index) =>
    fields
      .slice(index + 1)
      .flatMap((second) =>
        first.flatMap((a) => second.flatMap((b) => [`${a}${b}`, `${a} ${b}`, `${b} ${a}`, `${a}=${b}`])),
      ),
  );
  return ['.', ...fields.flat(), ...pairs].slice(0, MOST_LINES / 2).flatMap((line) => [line, `${line}=`]);
}

test('with generated schemas no line that can be typed is shorter than the one that is written', () => {
  let tried = 0;
  fc.assert(
    fc.property(schemaWithRows(1), fc.boolean(), fc.boolean(), ({ schema, rows }, below, gloves) => {
      const above = below ? rows.find((row) => !breaksCarry(schema, row)) : undefined;
      const context: EntryContext = { schema, above, gloves, repeats: schema.repeatsBeforeLook };
      for (const line of linesOf(schema)) {
        const parsed = parseLine(line, context);
        if (parsed.kind !== 'row' || parsed.asks.length > 0) continue;
        tried += 1;
        const written = writeLine(parsed.row, context);
        if (written.length > line.length) expect.fail(`${line} says what ${written} says`);
      }
    }),
    { numRuns: runs(60, 12) },
  );
  expect(tried).toBeGreaterThan(LONG_RUN ? 1_000 : 300);
});
