import { describe, expect, it } from 'vitest';
import { formatFinding } from '../../../src/finding/finding.ts';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';
import { hashOfFile, type LoadParent, styleHash } from '../../../src/schema/read/chain.ts';
import { resolveSchema } from '../../../src/schema/read/resolve.ts';
import { styleFile } from '../../../src/schema/styles/index.ts';
import { resolveStyle } from '../../support/styles.ts';
import { findingsOf, SMALL } from '../build.ts';

const load: LoadParent = (reference) =>
  reference === './small.json' ? { file: 'small.json', text: JSON.stringify(SMALL) } : undefined;

function resolved(changes: object) {
  const file = { format: 1, name: 'over', extends: './small.json', ...changes };
  const result = resolveSchema({ file: 'logging.json', text: JSON.stringify(file) }, load);
  if (!result.ok) throw new Error(result.findings.map(formatFinding).join('\n'));
  return result.value;
}

function names(changes: object): readonly string[] {
  return resolved(changes).schema.fields.map((field) => field.name);
}

const rocks = (...codes: readonly object[]) => ({ lists: { rocks: { codes } } });
const rocksOf = (changes: object) => resolved(changes).schema.lists.rocks?.codes ?? [];

describe('a logging schema over another', () => {
  it('is the other under its own name where it changes nothing', () => {
    const { schema } = resolved({});
    expect(schema.name).toBe('over');
    expect(schema.fields.map((field) => field.name)).toEqual(['rock', 'wear', 'sulphide', 'habit', 'magsus']);
    expect(Object.keys(schema.scales)).toEqual(['wear']);
  });

  it('changes members of a field and keeps the others', () => {
    const [rock] = resolved({ fields: [{ name: 'rock', required: false }] }).schema.fields;
    expect(rock).toMatchObject({ name: 'rock', label: 'rock', required: false, list: 'rocks' });
  });

  it('takes a member away with null', () => {
    const habit = resolved({ fields: [{ name: 'habit', onlyWhen: null }] }).schema.fields[3];
    expect(habit).not.toHaveProperty('onlyWhen');
    expect(rocksOf(rocks({ code: 'BAS', pair: null }))[0]).not.toHaveProperty('pair');
  });

  it('adds a field last, or where it says', () => {
    const water = { ...SMALL.fields[3], onlyWhen: undefined, name: 'water' };
    expect(names({ fields: [water] }).at(-1)).toBe('water');
    expect(names({ fields: [{ ...water, after: 'rock' }] })[1]).toBe('water');
    expect(names({ fields: [{ ...water, before: 'rock' }] })[0]).toBe('water');
  });

  it('moves a field that is there', () => {
    expect(names({ fields: [{ name: 'wear', before: 'rock' }] })).toEqual([
      'wear',
      'rock',
      'sulphide',
      'habit',
      'magsus',
    ]);
  });

  it('takes a field off the log sheet', () => {
    expect(names({ fields: [{ name: 'habit', retired: true }] })).not.toContain('habit');
  });

  it('takes a field off by the word that retires a code, and back where null takes that away', () => {
    const since = { name: 'habit', retiredSince: '2026-03-01' };
    expect(names({ fields: [since] })).not.toContain('habit');
    expect(names({ fields: [{ name: 'habit', retiredSince: null }] })).toContain('habit');
  });

  it('adds, moves, changes and retires codes of a list', () => {
    const codes = rocksOf(
      rocks(
        { code: 'SLT', label: 'siltstone', look: 'gritty', before: 'SHA' },
        { code: 'BAS', retiredSince: '2026-03-01', after: 'SHA' },
      ),
    );
    expect(codes.map((code) => code.code)).toEqual(['SLT', 'SHA', 'BAS']);
    expect(codes[2]).toMatchObject({ label: 'basalt', retiredSince: '2026-03-01' });
  });

  it('replaces a scale as a whole', () => {
    const levels = [{ level: 1, label: 'any', look: '' }];
    const { schema } = resolved({ scales: { wear: { label: 'wear', levels } } });
    expect(schema.scales.wear?.levels).toEqual(levels);
  });

  it('starts from a style that is built in, by its name', () => {
    const result = resolveSchema({
      file: 'logging.json',
      text: '// ours\n{ "format": 1, "name": "ours", "extends": "orogenic-gold" }',
    });
    expect(result.ok && result.value.schema.fields).toEqual(resolveStyle('orogenic-gold')?.fields);
  });

  it('is unknown where no style has its name', () => {
    expect(resolveStyle('no-such-style')).toBeUndefined();
    expect(resolveStyle('toString')).toBeUndefined();
  });

  it('goes through several files, each over the next', () => {
    const files: Record<string, object> = {
      './a.json': { format: 1, name: 'a', extends: './small.json', ...rocks({ code: 'BAS', label: 'lava' }) },
      './small.json': SMALL,
    };
    const result = resolveSchema(
      {
        file: 'logging.json',
        text: JSON.stringify({
          format: 1,
          name: 'b',
          extends: './a.json',
          ...rocks({ code: 'BAS', pair: 'lv' }),
        }),
      },
      (reference) => ({ file: reference, text: JSON.stringify(files[reference]) }),
    );
    expect(result.ok && result.value.schema.lists.rocks?.codes[0]).toMatchObject({
      label: 'lava',
      pair: 'lv',
    });
  });
});

describe('a logging schema that can’t be resolved', () => {
  const over = (changes: object, parent: LoadParent = load) =>
    findingsOf({ format: 1, name: 'over', extends: './small.json', ...changes }, parent);

  it('names the parent that is missing, and where it is named', () => {
    const [finding] = over({}, () => undefined);
    expect(finding).toMatchObject({
      code: 'schema-parent-missing',
      place: { file: 'logging.json', line: 4, column: 3 },
    });
    expect(over({})).toEqual([]);
  });

  it('names the ring in which files extend one another', () => {
    const ring: LoadParent = (reference) => ({
      file: reference,
      text: JSON.stringify({
        format: 1,
        name: 'x',
        extends: reference === './a.json' ? './b.json' : './a.json',
      }),
    });
    const [finding] = over({ extends: './a.json' }, ring);
    expect(finding?.code).toBe('schema-circular');
    expect(finding?.problem).toBe('logging.json extends ./a.json extends ./b.json extends ./a.json');
  });

  it('names the neighbour that an entry is placed beside and that is not there', () => {
    expect(over({ fields: [{ name: 'rock', after: 'stone' }] })[0]?.code).toBe('schema-place-unknown');
    expect(over({ fields: [{ name: 'rock', after: 'wear' }] })).toEqual([]);
  });

  it('names an entry that is written twice in one file', () => {
    expect(over(rocks({ code: 'BAS' }, { code: 'BAS' }))[0]?.code).toBe('schema-entry-twice');
    expect(over(rocks({ code: 'BAS' }, { code: 'SHA' }))).toEqual([]);
  });

  it('names each member that a new entry misses and each that its kind does not have', () => {
    const found = over({ fields: [{ name: 'veins', kind: 'percent', label: 'veins', list: 'rocks' }] });
    expect(found.map((finding) => finding.problem)).toEqual([
      '"required" is missing',
      '"carry" is missing',
      '"unsaid" is missing',
      '"canBeNone" is missing',
      '"ladder" is missing',
      '"list" is not known here',
    ]);
  });

  it('refuses names that every object answers to', () => {
    const found = [
      ...over({ fields: [{ name: 'constructor' }] }),
      ...over({ lists: { toString: { codes: [] } } }),
      ...over({ fields: [{ name: 'rock', list: 'valueOf' }] }),
    ];
    expect(found.map((finding) => finding.problem)).toEqual([
      '"name" is a word that JavaScript keeps for itself',
      '"toString" is a word that JavaScript keeps for itself',
      '"list" is a word that JavaScript keeps for itself',
    ]);
    expect(over({ scales: { Hard: {} } })[0]?.problem).toBe(
      '"Hard" should be 1 to 30 letters and digits, a small letter first',
    );
  });

  it('says nothing where the style underneath is the one that a new file recorded', () => {
    const file = {
      format: 1,
      name: 'ours',
      extends: 'orogenic-gold',
      extendsHash: styleHash('orogenic-gold'),
    };
    expect(findingsOf(file)).toEqual([]);
    expect(styleHash('no-such-style')).toBeUndefined();
  });

  it('takes a list from another style, with changes of its own, in place of the one it inherits', () => {
    const resolved = resolveSchema({
      file: 'logging.json',
      text: JSON.stringify({
        format: 1,
        name: 'own',
        extends: 'porphyry-copper-gold',
        lists: {
          sulphides: { from: 'orogenic-gold', codes: [{ code: 'BOR', label: 'bornite', look: 'bronze' }] },
        },
      }),
    });
    const lists = resolved.ok ? resolved.value.schema.lists : {};
    const gold = resolveStyle('orogenic-gold')?.lists.sulphides?.codes.map(({ code }) => code) ?? [];
    expect(lists.sulphides?.codes.map(({ code }) => code)).toEqual([...gold, 'BOR']);
    expect(lists.veinGenerations).toEqual(resolveStyle('porphyry-copper-gold')?.lists.veinGenerations);
    const regolith = resolveSchema({
      file: 'logging.json',
      text: JSON.stringify({
        format: 1,
        name: 'own',
        extends: 'orogenic-gold',
        lists: { hues: { from: 'iron-formation' } },
      }),
    });
    expect(regolith.ok && regolith.value.schema.lists.hues?.codes.length).toBe(12);
  });

  it('names a list that the style it is taken from does not have', () => {
    const [finding] = over({ lists: { ores: { from: 'orogenic-gold' } } });
    expect(finding?.code).toBe('schema-list-not-taken');
    expect(finding?.problem).toBe('the style orogenic-gold has no list called ores');
  });

  it('names strokes that clash where lists of two styles meet, and what is free', () => {
    const text = JSON.stringify({
      format: 1,
      name: 'own',
      extends: 'porphyry-copper-gold',
      lists: { sulphides: { from: 'orogenic-gold' } },
    });
    const resolved = resolveSchema({ file: 'logging.json', text });
    const found = resolved.ok ? checkSchema(resolved.value.schema, resolved.value.origins) : [];
    const clash = found.find(({ code }) => code === 'schema-strokes-clash');
    expect(clash?.problem).toMatch(/ types .*, and .* too/);
    expect(clash?.remedy).toMatch(/^Let offsider schema propose/);
  });

  it('says when a part that its style starts from is not as it was: the style is hashed with its parts', () => {
    const extendsHash = styleHash('porphyry-copper-gold');
    const alone = hashOfFile(JSON.parse(styleFile('porphyry-copper-gold')?.text ?? ''));
    const under = (hash: string | undefined) =>
      resolveSchema({
        file: 'logging.json',
        text: JSON.stringify({ format: 1, name: 'own', extends: 'porphyry-copper-gold', extendsHash: hash }),
      });
    expect(under(extendsHash)).toMatchObject({ ok: true, value: { warnings: [] } });
    expect(under(alone)).toMatchObject({
      ok: true,
      value: { warnings: [{ code: 'schema-parent-changed' }] },
    });
  });

  it('warns where the style underneath is not the one that was agreed with, and says the hash to agree with', () => {
    const extendsHash = hashOfFile(JSON.parse(JSON.stringify(SMALL)));
    expect(over({ extendsHash })).toEqual([]);
    const [finding] = over({ extendsHash: 'a'.repeat(64) });
    expect(finding).toMatchObject({ code: 'schema-parent-changed', severity: 'warning' });
    expect(finding?.remedy).toContain(extendsHash);
  });
});
