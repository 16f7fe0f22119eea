import { describe, expect, it } from 'vitest';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import { checkRow } from '../../../src/schema/check/row-checks.ts';
import { newlyUnlikely, unlikelyIn } from '../../../src/schema/check/unlikely.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../../src/value/cell.ts';
import { asked } from '../../support/arbitrary-schema.ts';
import { resolveStyle } from '../../support/styles.ts';
import { overSmall } from '../build.ts';

const style = resolveStyle('orogenic-gold')!;
const cells = (weathering: Cell, oxidation: Cell, sulphides: Cell = NONE) =>
  asked(style, { rock: { code: 'BAS' }, weathering, oxidation, sulphides });
const fresh: Cell = { level: 1 };
const oxidised: Cell = { level: 3 };
const pyrite: Cell = { percents: { PYR: 1 } };

function words(each: readonly { readonly words: string }[]): readonly string[] {
  return each.map((one) => one.words);
}

describe('what is seldom seen together', () => {
  it('is said in the words of the schema, all that holds', () => {
    expect(words(unlikelyIn(style, cells(fresh, oxidised, pyrite)))).toEqual([
      'fresh rock, and completely oxidised',
      'sulphides, and completely oxidised',
    ]);
    expect(unlikelyIn(style, cells(fresh, { level: 1 }, pyrite))).toEqual([]);
  });

  it('is not said of what can’t be told', () => {
    expect(unlikelyIn(style, cells(NOT_OBSERVED, oxidised, NOT_OBSERVED))).toEqual([]);
  });

  it('is new only where the row above did not hold it', () => {
    const odd = cells({ level: 4 }, oxidised, pyrite);
    expect(words(newlyUnlikely(style, undefined, odd))).toEqual(['sulphides, and completely oxidised']);
    expect(words(newlyUnlikely(style, cells({ level: 4 }, oxidised), odd))).toHaveLength(1);
    expect(newlyUnlikely(style, odd, odd)).toEqual([]);
  });

  it('is a warning when a hole is checked, never a fault', () => {
    const row = { fromMm: depthFromMm(0), toMm: depthFromMm(1000), cells: cells(fresh, oxidised) };
    expect(checkRow(style, row).map(({ code, severity, problem }) => [code, severity, problem])).toEqual([
      ['row-unlikely', 'warning', 'fresh rock, and completely oxidised'],
    ]);
  });
});

describe('an unlikely pair in a file', () => {
  const pair = (when: object, rest: object = {}) => ({
    unlikely: [{ name: 'odd', words: 'odd', when, ...rest }],
  });

  it('is refused where it asks what can never be told, at its place', () => {
    const [unknown] = overSmall(pair({ field: 'rocks', seen: true }));
    expect(unknown).toMatchObject({
      code: 'schema-unlikely-untellable',
      place: { file: 'logging.json', line: 9 },
    });
    expect(overSmall(pair({ field: 'rock', atLeast: 2 }))[0]?.code).toBe('schema-unlikely-untellable');
    expect(overSmall(pair({ field: 'rock', is: 'BAS' }))).toEqual([]);
  });

  it('can be taken away again', () => {
    expect(overSmall(pair({ field: 'rocks', seen: true }, { retired: true }))).toEqual([]);
  });

  it('names what it misses', () => {
    const [finding] = overSmall({ unlikely: [{ name: 'odd', words: 'odd' }] });
    expect(finding?.problem).toContain('missing');
  });
});
