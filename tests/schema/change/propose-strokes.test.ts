import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceFromTerm, guessOf } from '../../../src/schema/change/guessable.ts';
import { APART_AT_ANY_PRICE, proposeStrokes } from '../../../src/schema/change/propose-strokes.ts';
import { frozenBy, type ProposeWhat } from '../../../src/schema/change/stroke-slots.ts';
import { withStrokes } from '../../../src/schema/change/with-strokes.ts';
import { writeStrokes } from '../../../src/schema/change/write-strokes.ts';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import { MOST_KEYS_APART } from '../../../src/schema/check/keyboard.ts';
import { allMeanings } from '../../../src/schema/legend.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { resolveSchema } from '../../../src/schema/read/resolve.ts';
import { strokesOf } from '../../../src/schema/strokes.ts';
import { schemas } from '../../support/arbitrary-schema.ts';
import { resolveStyle } from '../../support/styles.ts';
import { SMALL } from '../build.ts';

const style = resolveStyle('orogenic-gold')!;

/** A style without a stroke. */
const withoutStrokes = (schema: LoggingSchema): LoggingSchema => ({
  ...schema,
  fields: schema.fields.map((field) => {
    const { pair: _, key: __, ...rest } = field as typeof field & { pair?: string; key?: string };
    return rest as typeof field;
  }),
  lists: Object.fromEntries(
    Object.entries(schema.lists).map(([name, list]) => [
      name,
      { ...list, codes: list.codes.map(({ pair: _, key: __, ...code }) => code) },
    ]),
  ),
});
const bare = withoutStrokes(style);

const faults = (schema: LoggingSchema) => checkSchema(schema).filter(({ severity }) => severity === 'fault');
const chosenFor = (schema: LoggingSchema, what: ProposeWhat = {}) => {
  const chosen = proposeStrokes(schema, what);
  return { chosen, made: withStrokes(schema, chosen) };
};

describe('a guess at strokes', () => {
  it('is the first letter of the term, then one that sounds, then any of it', () => {
    const order = ['qv', 'qr', 'qa', 'qx', 'rz', 'xx'];
    const distances = order.map((pair) => distanceFromTerm('quartz vein', pair));
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
    expect(new Set(distances).size).toBe(order.length);
  });

  it('is told by whether it begins with the term’s letter, and whether both letters stand in it in order', () => {
    expect(guessOf('basalt', 'bs')).toEqual({ first: true, inOrder: true });
    expect(guessOf('basalt', 'sb')).toEqual({ first: false, inOrder: false });
    expect(guessOf('vein quartz', 'vq')).toEqual({ first: true, inOrder: true });
    expect(guessOf('dacite', 'it')).toEqual({ first: false, inOrder: true });
  });
});

describe('strokes for a schema with qualifiers', () => {
  const porphyry = withoutStrokes(resolveStyle('porphyry-copper-gold')!);

  it('give no key to what takes no amount', () => {
    const keys = strokesOf(chosenFor(porphyry, { keys: true }).made).filter(({ is }) => is === 'key');
    expect(keys.length).toBeGreaterThan(3);
    expect(keys.filter(({ takes }) => takes === 'no amount')).toEqual([]);
  });

  it('leave the check nothing to warn of where they are to be apart at any price', () => {
    const { made } = chosenFor(porphyry, { apart: APART_AT_ANY_PRICE });
    expect(checkSchema(made)).toEqual([]);
    expect(checkSchema(chosenFor(porphyry).made).length).toBeGreaterThan(10);
  });
});

describe('strokes for a whole schema', () => {
  const { chosen, made } = chosenFor(bare, { keys: true });

  it('are guessed: 95 of 100 begin with the term’s letter, of 85 both letters stand in it in order', () => {
    const pairs = strokesOf(made).filter(({ is }) => is === 'pair');
    expect(pairs.length).toBeGreaterThan(100);
    const share = (holds: (guess: ReturnType<typeof guessOf>) => boolean) =>
      pairs.filter(({ label, strokes }) => holds(guessOf(label, strokes))).length / pairs.length;
    expect(share(({ first }) => first)).toBeGreaterThanOrEqual(0.95);
    expect(share(({ inOrder }) => inOrder)).toBeGreaterThanOrEqual(0.85);
  });

  it('stand apart: the check finds no fault in them, and few that are one slip from another field’s', () => {
    expect(faults(made)).toEqual([]);
    const near = checkSchema(made).filter(({ code }) => code === 'schema-strokes-near-elsewhere');
    expect(near.length).toBeLessThanOrEqual(0.25 * chosen.length);
  });

  it('have no more keys than can stand apart, none beside another', () => {
    const keys = strokesOf(made).filter(({ is }) => is === 'key');
    expect(keys.length).toBeGreaterThanOrEqual(5);
    expect(keys.length).toBeLessThanOrEqual(MOST_KEYS_APART);
    expect(checkSchema(made).map(({ code }) => code)).not.toContain('schema-too-many-keys');
  });

  it('say each why it is that one', () => {
    for (const { why } of chosen) expect(why).not.toBe('');
    expect(chosen).toContainEqual({
      is: 'pair',
      label: 'soil',
      part: expect.anything(),
      was: undefined,
      strokes: 'sl',
      why: 'what a person would guess first',
    });
    expect(chosen.some(({ why }) => / is one slip from /.test(why))).toBe(true);
    expect(chosen.some(({ why }) => / types /.test(why))).toBe(true);
  });

  it('are the same each time', () => {
    expect(proposeStrokes(bare, { keys: true })).toEqual(chosen);
  });
});

describe('what is there already', () => {
  it('stays where no one asks for better ones', () => {
    expect(proposeStrokes(style).filter(({ was }) => was !== undefined)).toEqual([]);
  });

  it('stays where rows were logged with it, and types nothing else', () => {
    const legend = allMeanings(style);
    const rocks = Object.entries(legend.codes).filter(([name]) => name.startsWith('rocks '));
    const frozen = frozenBy({ fields: legend.fields, codes: Object.fromEntries(rocks) });
    const { chosen, made } = chosenFor(style, { again: true, keys: true, frozen });
    const moved = chosen.filter(({ part }) => 'list' in part && part.list === 'rocks');
    expect(moved).toEqual([]);
    for (const { strokes, is, part } of frozen) {
      const now = strokesOf(made).find((each) => each.is === is && each.strokes === strokes);
      expect(now?.part).toEqual({ ...part, member: is });
    }
    expect(faults(made)).toEqual([]);
  });

  it('is not taken by another where a legend has it and the schema no longer does', () => {
    const frozen = [{ is: 'pair' as const, strokes: 'sl', part: { list: 'gone', code: 'OLD' } }];
    const { chosen } = chosenFor(bare, { frozen });
    expect(chosen.map(({ strokes }) => strokes)).not.toContain('sl');
  });

  it('changes in the lists that are asked for and nowhere else', () => {
    const { chosen } = chosenFor(bare, { lists: ['colours'] });
    expect(new Set(chosen.map(({ part }) => ('list' in part ? part.list : '')))).toEqual(
      new Set(['colours']),
    );
  });

  it('gets no new fault, whatever the schema', () => {
    fc.assert(
      fc.property(schemas, (schema) => {
        const { made } = chosenFor(schema, { again: true, keys: true });
        expect(faults(made)).toEqual(faults(schema).filter(({ code }) => !code.startsWith('schema-strokes')));
      }),
      { numRuns: 25 },
    );
  });
});

describe('proposed strokes in a file', () => {
  const file = {
    file: 'logging.json',
    text: `{
  "format": 1, "name": "over", "extends": "./small.json",
  // the rocks of this project
  "lists": { "rocks": { "codes": [
    { "code": "DOL", "label": "dolerite", "look": "dark" } // medium grains
  ] } }
}
`,
  };
  const parent = (reference: string) =>
    reference === './small.json' ? { file: 'small.json', text: JSON.stringify(SMALL) } : undefined;

  it('go into its own entries, else into new ones that say nothing else; comments stay', () => {
    const resolved = resolveSchema(file, parent);
    if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
    const chosen = proposeStrokes(resolved.value.schema, { again: true });
    const written = writeStrokes(file, chosen, parent);
    if (!written.ok) throw new Error(JSON.stringify(written.findings));
    expect(written.value.text).toContain('// the rocks of this project');
    expect(written.value.text).toMatch(/"code": "DOL", "label": "dolerite", "look": "dark", "pair": "dl" }/);
    const strokes = (schema: LoggingSchema) =>
      strokesOf(schema).map((each) => `${each.strokes} ${each.label}`);
    expect(strokes(written.value.schema)).toEqual(strokes(withStrokes(resolved.value.schema, chosen)));
  });
});

describe('a few codes that come into a schema in use', () => {
  it.each(['lithium-pegmatite', 'orogenic-gold'])(
    'get pairs that the check has nothing to say of: %s',
    (style) => {
      const whole = resolveStyle(style) as LoggingSchema;
      const opened = new Set<string>();
      const lists = Object.fromEntries(
        Object.entries(whole.lists).map(([name, list]) => {
          const codes = list.codes.map((code, index) => {
            if (index % 4 !== 1 || code.pair === undefined || code.retiredSince !== undefined) return code;
            opened.add(`${name} ${code.code}`);
            const { pair: _pair, ...bare } = code;
            return bare;
          });
          return [name, { ...list, codes }];
        }),
      );
      const bare: LoggingSchema = { ...whole, lists };
      const chosen = proposeStrokes(bare);
      expect(chosen.filter(({ strokes }) => strokes !== undefined)).toHaveLength(opened.size);
      const filled = Object.fromEntries(
        Object.entries(lists).map(([name, list]) => [
          name,
          {
            ...list,
            codes: list.codes.map((code) => {
              const found = chosen.find(
                ({ part }) => 'list' in part && part.list === name && part.code === code.code,
              );
              return found?.strokes === undefined ? code : { ...code, pair: found.strokes };
            }),
          },
        ]),
      );
      const words = (schema: LoggingSchema) => checkSchema(schema).map(({ problem }) => problem);
      const before = new Set(words(bare));
      expect(words({ ...bare, lists: filled }).filter((each) => !before.has(each))).toEqual([]);
    },
  );
});
