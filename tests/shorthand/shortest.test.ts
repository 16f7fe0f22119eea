import { describe, expect, test } from 'vitest';
import type { Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { type EntryContext, parseLine } from '../../src/shorthand/parse.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import type { Cells } from '../../src/value/row.ts';
import { LONG_RUN } from '../support/long-run.ts';

const base = { required: false, carry: true, unsaid: 'none', canBeNone: true } as const;
const look = '';

/** As small as can be with every way to say a thing: pair, key, name; first and second; what isn't carried. */
function tiny(fields: readonly Field[]): LoggingSchema {
  return {
    name: 'tiny',
    fields,
    lists: {
      r: {
        name: 'r',
        label: 'r',
        codes: [
          { code: 'A', label: 'a', look, pair: 'ab' },
          { code: 'B', label: 'b', look, pair: 'ba', key: 'b' },
          { code: 'v', label: 'v', look },
        ],
      },
      m: {
        name: 'm',
        label: 'm',
        codes: [
          { code: 'c', label: 'c', look, pair: 'ca', key: 'c' },
          { code: 'v', label: 'd', look, pair: 'va' },
        ],
      },
    },
    scales: {
      s: { name: 's', label: 's', levels: [1, 2, 3].map((level) => ({ level, label: `${level}`, look })) },
    },
    repeatsBeforeLook: 2,
  };
}

const rock: Field = {
  ...base,
  name: 'r',
  label: 'rock',
  kind: 'code',
  list: 'r',
  second: true,
  canBeNone: false,
  unsaid: 'not observed',
};
const minerals: Field = { ...base, name: 'm', label: 'minerals', kind: 'levels', list: 'm', scale: 's' };
const veins: Field = {
  ...base,
  name: 'v',
  label: 'veins',
  kind: 'percent',
  ladder: [1, 2, 3],
  traceCountsAsPercent: 0.1,
};
const flag: Field = { ...base, name: 'f', label: 'flag', kind: 'flag', carry: false };

const withRock = tiny([rock, minerals, flag]);
const withVeins = tiny([minerals, veins]);

const inBoth: Cells = {
  r: { code: 'A', second: { code: 'B', percent: 3 } },
  m: { levels: { c: 3, v: 1 } },
  f: { absent: 'none' },
};

const CASES: readonly {
  readonly name: string;
  readonly context: EntryContext;
  readonly alphabet: string;
  readonly longest: number;
}[] = [
  { name: 'below nothing', context: { schema: withRock }, alphabet: "abcvr013= '", longest: 5 },
  {
    name: 'below a row with two rocks and two minerals',
    context: { schema: withRock, above: { cells: inBoth } },
    alphabet: "abcmv013='",
    longest: 5,
  },
  {
    name: 'in gloves mode',
    context: { schema: withRock, above: { cells: inBoth }, gloves: true },
    alphabet: "abcm013='",
    longest: 5,
  },
  {
    name: 'below rows alike, one repeat too many',
    context: { schema: withRock, above: { cells: inBoth }, repeats: 2 },
    alphabet: 'abc03.=fnr',
    longest: 5,
  },
  {
    name: 'where a percent has no strokes and one more mineral is a jump',
    context: { schema: withVeins, above: { cells: { m: { levels: { c: 1 } }, v: { percent: 3 } } } },
    alphabet: "acmv03=', ",
    longest: 5,
  },
  {
    name: 'below what was not observed',
    context: {
      schema: withVeins,
      above: { cells: { m: { absent: 'not observed' }, v: { absent: 'not observed' } } },
    },
    alphabet: "acmvnr01', ",
    longest: 5,
  },
];

/** Every line of these characters up to a length. */
function* linesUpTo(alphabet: string, longest: number, start = ''): Generator<string> {
  if (longest === 0) return;
  for (const character of alphabet) {
    yield start + character;
    yield* linesUpTo(alphabet, longest - 1, start + character);
  }
}

describe('no line that can be typed is shorter than the one that is written', () => {
  test.each(CASES)('$name', ({ context, alphabet, longest }) => {
    let rows = 0;
    for (const line of linesUpTo(alphabet, LONG_RUN ? longest : longest - 1)) {
      const parsed = parseLine(line, context);
      if (parsed.kind !== 'row' || parsed.asks.length > 0) continue;
      rows += 1;
      const written = writeLine(parsed.row, context);
      if (written.length > line.trim().length) expect.fail(`${line} says what ${written} says`);
    }
    expect(rows).toBeGreaterThan(10);
  });
});
