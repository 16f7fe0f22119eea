import { describe, expect, test } from 'vitest';
import {
  breaksCarry,
  cautionsIn,
  cautionsShown,
  cautionTexts,
  cautionTyped,
} from '../../src/schema/cautions.ts';
import { CAUTION_KINDS, type LoggingSchema } from '../../src/schema/logging-schema.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import { NOT_OBSERVED } from '../../src/value/cell.ts';
import { resolveStyle } from '../support/styles.ts';

const styles = Object.keys(STYLES).map((name) => [name, resolveStyle(name)!] as const);

/** Words of a style that someone reads at the sieve: labels and what to look for. */
function hintsOf(schema: LoggingSchema): readonly string[] {
  return [
    ...Object.values(schema.lists).flatMap((list) => list.codes.map((each) => `${each.label}: ${each.look}`)),
    ...Object.values(schema.scales).flatMap((scale) =>
      scale.levels.map((each) => `${each.label}: ${each.look}`),
    ),
  ];
}

describe.each(styles)('the style %s', (_, schema) => {
  const voids = Object.values(schema.lists).flatMap((list) =>
    list.codes.filter((code) => code.caution?.kind === 'void' && code.retiredSince === undefined),
  );

  test('has a code for a void, typed by a pair of its own', () => {
    expect(voids.length).toBeGreaterThan(0);
    for (const code of voids) {
      const parsed = parseLine(code.pair ?? '', { schema });
      expect(parsed).toMatchObject({ kind: 'row', asks: [] });
      expect(parsed.kind === 'row' && breaksCarry(schema, parsed.row)).toBe(true);
    }
  });

  test('logs a void below any row as nothing else observed, and carries nothing below it', () => {
    const [code] = voids;
    const parsed = parseLine(code?.pair ?? '', { schema });
    const cells = parsed.kind === 'row' ? Object.values(parsed.row.cells) : [];
    expect(cells.filter((cell) => 'code' in cell)).toHaveLength(1);
    expect(cells.filter((cell) => !('code' in cell)).every((cell) => cell === NOT_OBSERVED)).toBe(true);
  });

  test.each([
    ['tastes, chews or sniffs chips', /\b(tast|chew|teeth|tooth|tongue|lick|smell|sniff|garlic)/i],
    ['strikes or heats anything', /\b(struck|(?<!water )strike|hammer|burn|heat|spark)/i],
    ['looks into a lamp', /\b(lamps?\b|ultra-?violet|UV|short-?wave|glow)/i],
  ])('gives no hint that %s', (_what, word) => {
    expect(hintsOf(schema).filter((hint) => word.test(hint))).toEqual([]);
  });

  test('speaks of acid only with its caution', () => {
    const hints = hintsOf(schema).filter((hint) => /\b(acid|fizz|HCl)/i.test(hint));
    expect(hints.filter((hint) => !/goggles, gloves, its data sheet/.test(hint))).toEqual([]);
  });

  test('leaves the ruling of every caution to the site or the place', () => {
    const all = Object.values(schema.lists).flatMap((list) =>
      list.codes.flatMap((each) => each.caution ?? []),
    );
    for (const { words } of all) expect(words).toMatch(/site procedures|rules of the place/);
  });
});

describe('cautions', () => {
  const schema = resolveStyle('orogenic-gold')!;
  const cells = { rock: { code: 'CHE' }, alteration: { levels: { ACT: 1, CHL: 2 } } };

  test('of a row are all there, of every field', () => {
    expect(cautionsIn(schema, cells).map(({ about }) => about)).toEqual(['chert', 'actinolite']);
  });

  test('in words name what has the same words together, a void first', () => {
    const rows = {
      rock: { code: 'KOM', second: { code: 'VOI', percent: 30 } },
      alteration: { levels: { ACT: 1 } },
    };
    const [first, second, ...more] = cautionTexts(cautionsIn(schema, rows));
    expect(first).toMatch(/^void or old workings: /);
    expect(second).toMatch(/^komatiite, actinolite: /);
    expect(more).toEqual([]);
  });

  test('that the row above has too are named in short', () => {
    expect(cautionsShown(schema, cells, cells)).toEqual([
      'CAUTION as above: chert (silica dust), actinolite (fibre)',
    ]);
  });

  test('are typed by their kind, in words that leave the ruling to the site', () => {
    for (const kind of CAUTION_KINDS) {
      expect(cautionTyped(kind)?.kind).toBe(kind);
      expect(cautionTyped(kind)?.words).toMatch(/site procedures/);
    }
    expect(cautionTyped(' Silica ')?.kind).toBe('silica dust');
    expect(cautionTyped('gold')).toBeUndefined();
  });
});
