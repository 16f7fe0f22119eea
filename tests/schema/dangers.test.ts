import { describe, expect, it } from 'vitest';
import { cautionsIn, cautionTexts, dangerNamed, dangerTyped } from '../../src/schema/cautions.ts';
import { importLibrary } from '../../src/schema/change/import-library.ts';
import { lostCautions } from '../../src/schema/change/lost-cautions.ts';
import { checkSchema } from '../../src/schema/check/check-schema.ts';
import type { Code, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { hazardsUnloggable } from '../../src/standing/hole-schema.ts';
import { holeWith } from '../standing/support/hole.ts';
import { resolveStyle } from '../support/styles.ts';

const STYLE = resolveStyle('lithium-pegmatite') as LoggingSchema;
const FILE = {
  file: 'logging.json',
  text: '{ "format": 1, "name": "ours", "extends": "lithium-pegmatite" }',
};

/** The style with its rocks changed one by one. */
function rocks(change: (code: Code) => Code): LoggingSchema {
  const list = STYLE.lists.rocks;
  if (list === undefined) throw new Error('the style has rocks');
  return { ...STYLE, lists: { ...STYLE.lists, rocks: { ...list, codes: list.codes.map(change) } } };
}

describe('dangers that a changed schema can no longer say', () => {
  it('are none where nothing changed, and none where a caution got other words', () => {
    expect(lostCautions(STYLE, STYLE)).toEqual([]);
    const reworded = rocks((code) =>
      code.caution === undefined ? code : { ...code, caution: { ...code.caution, words: 'Keep back.' } },
    );
    expect(lostCautions(STYLE, reworded)).toEqual([]);
  });

  it('are named by field, kind and codes where the last code of a kind is gone', () => {
    const retired = rocks((code) => (code.code === 'VOI' ? { ...code, retiredSince: '2026-03-01' } : code));
    expect(lostCautions(STYLE, retired)).toEqual([
      'rock would have no code for void (it has VOI void or old workings)',
    ]);
  });

  it('are named where a code stays and its caution goes, though others of the kind stay', () => {
    const bare = rocks(({ caution, ...code }) =>
      code.code === 'AMP' || caution === undefined ? code : { ...code, caution },
    );
    expect(lostCautions(STYLE, bare)).toEqual(['rock: AMP amphibolite would lose its caution (fibre)']);
  });

  it('refuse a library (codes-caution-lost) until they are meant to go', () => {
    const entries = [{ code: 'GNE', label: 'gneiss', look: '' }];
    const refused = importLibrary(FILE, { list: 'ours', field: 'rock' }, entries);
    expect(refused.ok ? [] : refused.findings.map(({ code }) => code)).toContain('codes-caution-lost');
    expect(importLibrary(FILE, { list: 'ours', field: 'rock', dropCautions: true }, entries).ok).toBe(true);
  });
});

describe('words of a code that name a danger', () => {
  it.each([
    ['old stope or void', 'void'],
    ['fibrous amphibolite', 'fibre'],
    ['Serpentinite, sheared', 'fibre'],
    ['banded chert', 'silica dust'],
    ['avoided ground', undefined],
    ['basalt', undefined],
  ])('%s: %s', (label, kind) => expect(dangerNamed(label)).toBe(kind));

  it('without a caution are warned of (schema-caution-missing), and in no style of ours', () => {
    const bare = rocks(({ caution: _caution, ...code }) => code);
    expect(
      checkSchema(bare).flatMap(({ code, problem }) => (code === 'schema-caution-missing' ? [problem] : [])),
    ).toContain('VOI is called void or old workings and has no caution (void)');
    for (const name of Object.keys(STYLES)) {
      const codes = checkSchema(resolveStyle(name) as LoggingSchema).map(({ code }) => code);
      expect([name, codes.includes('schema-caution-missing')]).toEqual([name, false]);
    }
  });
});

describe('cautions of one row', () => {
  it('say a void first, then lost return, and dust after both', () => {
    const both = cautionTexts([
      ...cautionsIn(STYLE, { rock: { code: 'PEG' } }),
      ...cautionsIn(STYLE, { rock: { code: 'LOR' } }),
      ...cautionsIn(STYLE, { rock: { code: 'VOI' } }),
    ]);
    expect(both.map((each) => each.split(':')[0])).toEqual([
      'void or old workings',
      'loss of return',
      'pegmatite',
    ]);
  });
});

describe('a danger in the cell of a library', () => {
  it('is its kind in the usual words, or in its own behind a colon', () => {
    expect(dangerTyped('Void')?.caution).toMatchObject({
      kind: 'void',
      words: expect.stringContaining('Tell the driller'),
    });
    expect(dangerTyped('fibre: Masks on: ask Ines.')?.caution).toEqual({
      kind: 'fibre',
      words: 'Masks on: ask Ines.',
    });
    expect(dangerTyped('loss of return')).toMatchObject({ noChips: true, caution: { kind: 'other' } });
    expect(dangerTyped('hole')).toBeUndefined();
  });
});

describe('a danger of the plan that no code stands for', () => {
  const hole = holeWith({
    plan: [{ depthMm: 60_000, expects: [{ name: 'old stope', fromMm: 14_000, hazard: 'void' }] }],
  });

  it('is said (schema-hazard-unloggable), and not where a code does', () => {
    const without = rocks(({ caution, ...code }) =>
      caution === undefined || caution.kind === 'void' ? code : { ...code, caution },
    );
    expect(hazardsUnloggable(without, hole).map(({ code }) => code)).toEqual(['schema-hazard-unloggable']);
    expect(hazardsUnloggable(STYLE, hole)).toEqual([]);
  });
});
