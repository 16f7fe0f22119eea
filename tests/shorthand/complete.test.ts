import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { complete } from '../../src/shorthand/complete.ts';
import type { EntryContext } from '../../src/shorthand/parse.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { runs } from '../support/long-run.ts';
import { above, schema } from './fixture-schema.ts';

function options(text: string, context: Partial<EntryContext> = { above }): readonly string[] {
  return complete(text, { schema, ...context }).options.map((option) => option.text);
}

describe('Tab', () => {
  test('completes a pair from its letters, from a word of its label and from its code', () => {
    expect(options('chl')).toEqual(['cl']);
    expect(options('doler')).toEqual(['do']);
    expect(options('ccp')).toEqual(['hl']);
    expect(options('s')).toEqual(['sh', 'sp', 'se', 'si', "sulphides'"]);
  });

  test('finds what has no pair by its field, where a field can stand', () => {
    expect(options('ban')).toEqual(["rock'bif"]);
    expect(complete('p3 ban', { schema, above })).toMatchObject({ from: 3, options: [{ text: "rock'bif" }] });
    expect(options('p3ban')).toEqual([]);
  });

  test("lists what a field can be behind its name: codes that aren't retired, levels, none, not observed", () => {
    expect(options("rock'")).toEqual(["rock'bst", "rock'shl", "rock'dol", "rock'bif", "rock'nr"]);
    expect(options("weathering's")).toEqual(["weathering'2"]);
    expect(options("alteration'chl")).toEqual(["alteration'chl'"]);
    expect(options("veins'")).toEqual(["veins'0", "veins'nr"]);
  });

  test('reads the last of glued pairs', () => {
    expect(complete('bsp', { schema })).toMatchObject({
      from: 2,
      options: [{ text: 'py', label: 'pyrite' }],
    });
    expect(complete('bspy', { schema }).amounts[0]).toEqual({ text: ',', label: 'trace' });
  });

  test('shows the amounts that can follow and takes none: they are observed', () => {
    const { options: taken, amounts } = complete('cl', { schema });
    expect(taken).toEqual([]);
    expect(amounts.map(({ text }) => text)).toEqual(['1', '2', '3', '4', '0']);
    expect(complete('we', { schema }).amounts.map(({ text }) => text)).toEqual(['1', '2', '3', '4', '5']);
    expect(complete('bs', { schema }).amounts).toEqual([]);
  });

  test('offers on an empty place the keys of what is above, then pairs, then fields; no keys in gloves mode', () => {
    expect(options('').slice(0, 5)).toEqual(['c', 's', 'p', 'v', 'bs']);
    expect(options('', { above, gloves: true })[0]).toBe('bs');
    expect(options('', {})[0]).toBe('bs');
    expect(options('').at(-1)).toBe("note'");
  });

  test('knows the words behind ;', () => {
    expect(options(';cl')).toEqual([';clear']);
    expect(options(';')).toContain(';u');
    expect(complete(';su', { schema }, [{ text: 'survey', label: 'Survey' }]).options).toEqual([
      { text: ';survey', label: 'Survey' },
    ]);
  });

  test('shows the form of a command behind its word', () => {
    expect(complete(';split ', { schema }).amounts.map(({ label }) => label)).toEqual([
      ';split 46.5: Make two rows of the one that holds this depth',
    ]);
  });

  test('completes what is said of a range, and offers no single key there', () => {
    expect(complete(';44-49 pyri', { schema, above })).toMatchObject({ from: 7, options: [{ text: 'py' }] });
    expect(options(';44-49 ')[0]).toBe('bs');
  });

  test('has nothing to add to a remark or a quoted text', () => {
    expect(options('p3/py')).toEqual([]);
    expect(options("note''py")).not.toContain('py');
  });
});

test('what Tab takes is never refused as unknown', () => {
  const letters = fc.stringMatching(/^[a-z]{0,3}$/);
  fc.assert(
    fc.property(letters, (begun) => {
      const { from, options: all } = complete(begun, { schema, above });
      for (const option of all) {
        const parsed = parseLine(`${begun.slice(0, from)}${option.text}`, { schema, above });
        if (parsed.kind === 'refused') expect(parsed.problem).not.toMatch(/unknown|not in the list|No field/);
      }
    }),
    { numRuns: runs(300) },
  );
});
