import { describe, expect, it } from 'vitest';
import { type CodeChange, changeCode } from '../../../src/schema/change/edit-code.ts';
import { importLibrary } from '../../../src/schema/change/import-library.ts';
import { newlyFound, withCode } from '../../../src/schema/change/preview-change.ts';
import { resolveSchema } from '../../../src/schema/read/resolve.ts';
import { part } from '../../support/long-run.ts';

const TEXT = `{
  "format": 1,
  "name": "ours",
  "extends": "orogenic-gold",
  "lists": {
    "rocks": {
      "codes": [
        // agreed in March
        { "code": "DUN", "label": "dunite", "look": "green, sugary", "provisional": true } // ask
      ]
    }
  }
}
`;
const file = { file: 'logging.json', text: TEXT };
function changed(code: string, change: CodeChange): string {
  const result = changeCode(file, 'rocks', code, change);
  if (!result.ok) throw new Error(result.findings[0]?.problem);
  return result.value.text;
}

describe('a code changed in logging.json', () => {
  it('is changed in the file’s own entry, with comments and the rest as they were', () => {
    expect(changed('DUN', { look: 'olive' })).toBe(TEXT.replace('green, sugary', 'olive'));
    expect(changed('DUN', { provisional: null })).toContain('"provisional": null } // ask');
  });

  it('is changed by a new entry that says nothing else where a style has it', () => {
    const text = changed('BAS', { look: 'dark' });
    expect(JSON.parse(text.replace(/\/\/.*/g, '')).lists.rocks.codes).toEqual([
      { code: 'DUN', label: 'dunite', look: 'green, sugary', provisional: true },
      { code: 'BAS', look: 'dark' },
    ]);
  });

  it('is refused where the check finds a new fault in it', () => {
    const result = changeCode(file, 'rocks', 'DUN', { pair: 'ba' });
    expect(result.ok ? [] : result.findings.map(({ code, place }) => [code, place.line])).toEqual([
      ['schema-strokes-clash', 9],
    ]);
  });

  it('comes to the schema that the preview shows, whatever is changed of it', () => {
    const before = resolveSchema(file);
    if (!before.ok) throw new Error('the file is sound');
    const changes: readonly CodeChange[] = [
      { label: 'dunite, fresh' },
      { pair: 'xr' },
      { retiredSince: '2026-03-14' },
      { provisional: null },
    ];
    for (const change of changes) {
      const result = changeCode(file, 'rocks', 'DUN', change);
      expect(result.ok && result.value.schema).toEqual(withCode(before.value.schema, 'rocks', 'DUN', change));
    }
  });
});

describe('what a change would let the check find', () => {
  it('is only what it does not find now, worst first', () => {
    const before = resolveSchema(file);
    if (!before.ok) throw new Error('the file is sound');
    const { schema } = before.value;
    expect(newlyFound(schema, withCode(schema, 'rocks', 'DUN', { look: 'olive' }))).toEqual([]);
    const added = withCode(schema, 'rocks', 'XYZ', { label: 'dunite', pair: 'ba', provisional: true });
    expect(newlyFound(schema, added).map(({ severity, code }) => `${severity} ${code}`)).toEqual([
      'fault schema-strokes-clash',
      'warning schema-label-twice',
      'note schema-provisional',
    ]);
  });
});

describe('an imposed code library', () => {
  /** These are about pairs: what happens to cautions stands in its own tests. */
  const INTO = { list: 'library', field: 'rock', dropCautions: true };
  const entries = [
    { code: 'Mb', label: 'mafic basalt', look: '' },
    { code: '3x', label: 'fault rock', look: '', pair: 'fx' },
  ];

  it('goes into a list of its own that a field takes from, with pairs for the codes that have none', () => {
    const taken = importLibrary(file, INTO, entries);
    if (!taken.ok) throw new Error(taken.findings[0]?.problem);
    const { schema, proposed, withoutPair } = taken.value;
    expect(schema.fields.find(({ name }) => name === 'rock')).toMatchObject({ list: 'library' });
    expect(schema.lists.library?.codes).toMatchObject([
      { code: 'Mb', pair: proposed[0]?.pair },
      { code: '3x', pair: 'fx' },
    ]);
    expect([proposed.map(({ code }) => code), withoutPair]).toEqual([['Mb'], []]);
  });

  it('is refused as a whole where one of its own pairs is taken', () => {
    const clash = [...entries, { code: 'Q', label: 'quartzite', look: '', pair: 'fx' }];
    const taken = importLibrary(file, INTO, clash);
    expect(taken.ok ? [] : taken.findings.map(({ code }) => code)).toEqual(['schema-strokes-clash']);
  });

  it('proposes pairs for a library of hundreds of codes that the check finds no fault in', () => {
    const words = [
      'basalt',
      'gabbro',
      'granite',
      'schist',
      'shale',
      'chert',
      'dolerite',
      'tuff',
      'breccia',
      'gneiss',
    ];
    const kinds = [
      'red',
      'green',
      'black',
      'grey',
      'banded',
      'massive',
      'sheared',
      'fine',
      'coarse',
      'porphyritic',
    ];
    const library = words.flatMap((word) =>
      kinds.flatMap((kind, index) =>
        part([1, 2, 3], 3).map((grade) => ({
          code: `${word}${index}.${grade}`,
          label: `${kind} ${word} ${grade}`,
          look: '',
        })),
      ),
    );
    const taken = importLibrary(file, INTO, library);
    if (!taken.ok) throw new Error(taken.findings[0]?.problem);
    expect(taken.value.schema.lists.library?.codes).toHaveLength(library.length);
    expect(taken.value.proposed.length + taken.value.withoutPair.length).toBe(library.length);
    expect(taken.value.proposed.length).toBeGreaterThan(20);
  });
});
