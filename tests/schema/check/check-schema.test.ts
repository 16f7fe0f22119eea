import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatFinding } from '../../../src/finding/finding.ts';
import { checkBagPrefixes, checkSchema } from '../../../src/schema/check/check-schema.ts';
import { checkLoggingFile } from '../../../src/schema/read/check-file.ts';
import { parseLine } from '../../../src/shorthand/parse.ts';
import { schemas } from '../../support/arbitrary-schema.ts';
import { runs } from '../../support/long-run.ts';
import { findingsOf, overSmall, SMALL } from '../build.ts';

const codes = (...entries: readonly object[]) => ({ lists: { rocks: { codes: entries } } });
const sulphides = (...entries: readonly object[]) => ({ lists: { sulphides: { codes: entries } } });
const pairAndKey = (pair: string, key: string) => ({
  lists: { rocks: { codes: [{ code: 'SHA', pair }] }, sulphides: { codes: [{ code: 'ARS', key }] } },
});
const fields = (...entries: readonly object[]) => ({ fields: entries });
const scale = (...levels: readonly object[]) => ({ scales: { wear: { label: 'wear', levels } } });
const code = (name: string, rest: object = {}) => ({
  code: name,
  label: name.toLowerCase(),
  look: 'so',
  ...rest,
});
/** A list that can say more of a sulphide, with pairs of its own. */
const HABITS = {
  lists: { habits: { label: 'habits', codes: [code('CUB', { pair: 'cu' }), code('DIS', { pair: 'di' })] } },
};
/** A field of events that says so of carrying and being required. */
const EVENTS = (changes: object) => ({
  fields: [
    {
      name: 'point',
      label: 'events',
      kind: 'events',
      list: 'point',
      required: false,
      unsaid: 'none',
      canBeNone: true,
      ...changes,
    },
  ],
  lists: { point: { label: 'events', codes: [code('WST', { pair: 'wk' })] } },
});
const nine = [...'cspqknrgu'].map((key, index) => code(`S${index}`, { key }));

/** For each kind of finding: changes that raise it, and changes like them that don't. */
const cases: readonly (readonly [kind: string, fires: object, quiet: object])[] = [
  ['schema-strokes-clash', codes({ code: 'SHA', pair: 'ba' }), codes({ code: 'SHA', pair: 'st' })],
  ['schema-strokes-untypable', codes({ code: 'SHA', pair: 'ss' }), codes({ code: 'SHA', pair: 'sv' })],
  ['schema-strokes-untypable', codes({ code: 'SHA', pair: 'Sh' }), codes({ code: 'SHA', pair: null })],
  ['schema-strokes-untypable', sulphides({ code: 'ARS', key: 'ar' }), sulphides({ code: 'ARS', key: 'r' })],
  ['schema-strokes-near', codes({ code: 'SHA', pair: 'bs' }), codes({ code: 'SHA', pair: 'bd' })],
  ['schema-strokes-near', codes({ code: 'SHA', pair: 'ab' }), codes({ code: 'SHA', pair: 'am' })],
  ['schema-strokes-near', sulphides({ code: 'ARS', key: 'o' }), sulphides({ code: 'ARS', key: 'i' })],
  ['schema-strokes-near-elsewhere', codes({ code: 'SHA', pair: 'pt' }), codes({ code: 'SHA', pair: 'pd' })],
  ['schema-strokes-near-elsewhere', codes({ code: 'SHA', pair: 'ne' }), codes({ code: 'SHA', pair: 'nu' })],
  ['schema-strokes-near-elsewhere', codes({ code: 'SHA', pair: 'pr' }), codes({ code: 'SHA', pair: 'pi' })],
  ['schema-strokes-near-elsewhere', codes({ code: 'SHA', pair: 'po' }), codes({ code: 'SHA', pair: 'pi' })],
  [
    'schema-strokes-near',
    codes({ code: 'BAS', key: 'b' }, { code: 'SHA', pair: 'bi' }),
    codes({ code: 'BAS', key: 'b' }, { code: 'SHA', pair: 'bm' }),
  ],
  ['schema-keys-read-as-pair', pairAndKey('pk', 'k'), pairAndKey('pk', 'i')],
  [
    'schema-too-many-keys',
    sulphides(code('EXTRA', { key: 'f' }), ...nine),
    sulphides({ code: 'PYR', key: null }, ...nine),
  ],
  [
    'schema-key-useless',
    { ...codes({ code: 'BAS', key: 'b' }), ...fields({ name: 'rock', second: false }) },
    codes({ code: 'BAS', key: 'b' }),
  ],
  ['schema-reserved-word', codes({ code: 'SHA', pair: 'nr' }), codes({ code: 'SHA', pair: 'nj' })],
  [
    'schema-reserved-word',
    fields({ ...SMALL.fields[1], name: 'remark', pair: null }),
    fields({ ...SMALL.fields[1], name: 'remarks', pair: null }),
  ],
  ['schema-code-unsayable', codes(code('A\u0007B')), codes(code("A'B /="))],
  ['schema-code-unsayable', codes(code(' AB')), codes(code('A B'))],
  ['schema-code-twice', codes(code('bas')), codes(code('baz'))],
  [
    'schema-label-twice',
    codes(code('BST', { label: 'Basalt' })),
    codes(code('BST', { label: 'other basalt' })),
  ],
  [
    'schema-list-missing',
    fields({ name: 'rock', list: 'stones' }),
    { ...fields({ name: 'rock', list: 'stones' }), lists: { stones: { codes: [code('X')] } } },
  ],
  [
    'schema-list-empty',
    {
      ...fields({ name: 'rock', list: 'stones' }),
      lists: { stones: { codes: [code('X', { retiredSince: '2026-01-01' })] } },
    },
    { ...fields({ name: 'rock', list: 'stones' }), lists: { stones: { codes: [code('X')] } } },
  ],
  [
    'schema-list-shared',
    fields({ ...SMALL.fields[0], name: 'host' }),
    {
      ...fields({ ...SMALL.fields[0], name: 'host', list: 'hosts' }),
      lists: { hosts: { codes: [code('X')] } },
    },
  ],
  ['schema-scale-missing', fields({ name: 'wear', scale: 'tear' }), fields({ name: 'wear', scale: 'wear' })],
  [
    'schema-density-level',
    { lists: { rocks: { densityShares: { rock: { '1': 0.8 } } } } },
    { lists: { rocks: { densityShares: {} } } },
  ],
  [
    'schema-scale-broken',
    scale({ level: 2, label: 'b', look: '' }),
    scale({ level: 1, label: 'a', look: '' }),
  ],
  [
    'schema-scale-broken',
    scale({ level: 1, code: 'A', label: 'a', look: '' }, { level: 2, code: 'a', label: 'b', look: '' }),
    scale({ level: 1, code: 'A', label: 'a', look: '' }, { level: 2, code: 'B', label: 'b', look: '' }),
  ],
  [
    'schema-scale-broken',
    scale({ level: 1, code: '2', label: 'a', look: '' }),
    scale({ level: 1, code: 'II', label: 'a', look: '' }),
  ],
  [
    'schema-ladder',
    fields({ name: 'sulphide', ladder: [1, 5, 5] }),
    fields({ name: 'sulphide', ladder: [1, 5, 6] }),
  ],
  [
    'schema-ladder',
    fields({ name: 'sulphide', ladder: [0, 1] }),
    fields({ name: 'sulphide', ladder: [0.1, 1] }),
  ],
  [
    'schema-ladder',
    fields({ name: 'sulphide', ladder: [1, 101] }),
    fields({ name: 'sulphide', ladder: [1, 100] }),
  ],
  ['schema-number-range', fields({ name: 'magsus', min: 100 }), fields({ name: 'magsus', min: 99 })],
  [
    'schema-column-carries',
    fields({ name: 'magsus', carry: true }),
    fields({ name: 'magsus', carry: true, column: false }),
  ],
  [
    'schema-column-carries',
    fields({ name: 'magsus', required: true }),
    fields({ name: 'magsus', required: false }),
  ],
  [
    'schema-barrier-unknown',
    fields({ name: 'wear', notAcross: ['rocks'] }),
    fields({ name: 'wear', notAcross: ['rock'] }),
  ],
  [
    'schema-barrier-later',
    fields({ name: 'wear', notAcross: ['sulphide'] }),
    fields({ name: 'wear', notAcross: ['sulphide'], after: 'sulphide' }),
  ],
  [
    'schema-barrier-later',
    fields({ name: 'wear', notAcross: ['wear'] }),
    fields({ name: 'wear', notAcross: ['rock'] }),
  ],
  [
    'schema-barrier-idle',
    fields({ name: 'wear', notAcross: ['rock'], carry: false }),
    fields({ name: 'wear', carry: false }),
  ],
  [
    'schema-third-without-second',
    fields({ name: 'rock', second: false, third: true }),
    fields({ name: 'rock', third: true }),
  ],
  [
    'schema-list-missing',
    fields({ name: 'sulphide', qualifiers: [{ list: 'habits' }] }),
    { ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits' }] }), ...HABITS },
  ],
  [
    'schema-qualifier-of-unknown',
    { ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits', of: ['PYX'] }] }), ...HABITS },
    { ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits', of: ['PYR'] }] }), ...HABITS },
  ],
  [
    'schema-qualifier-list',
    fields({ name: 'sulphide', qualifiers: [{ list: 'rocks' }] }),
    { ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits' }] }), ...HABITS },
  ],
  [
    'schema-qualifier-list',
    fields({ name: 'rock', qualifiers: [{ list: 'rocks' }] }),
    fields({ name: 'rock', second: false, qualifiers: [{ list: 'rocks' }] }),
  ],
  [
    'schema-qualifier-list',
    {
      ...fields(
        { name: 'rock', qualifiers: [{ list: 'habits' }] },
        { name: 'sulphide', qualifiers: [{ list: 'habits' }] },
      ),
      ...HABITS,
    },
    { ...fields({ name: 'rock', qualifiers: [{ list: 'habits' }] }), ...HABITS },
  ],
  [
    'schema-qualifier-list',
    {
      ...fields({ name: 'sulphide', qualifiers: [{ list: 'magsus' }] }),
      lists: { magsus: HABITS.lists.habits },
    },
    { ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits' }] }), ...HABITS },
  ],
  ['schema-event-carries', EVENTS({ carry: true }), EVENTS({ carry: false })],
  ['schema-event-carries', EVENTS({ carry: false, required: true }), EVENTS({ carry: false })],
  [
    'schema-unsaid-none',
    fields({ name: 'wear', unsaid: 'none' }),
    fields({ name: 'wear', unsaid: 'none', canBeNone: true }),
  ],
  [
    'schema-only-when-unknown',
    fields({ name: 'habit', onlyWhen: { field: 'sulfide', seen: true } }),
    fields({ name: 'habit', onlyWhen: { not: { field: 'sulphide', seen: false } } }),
  ],
  [
    'schema-only-when-unknown',
    fields({ name: 'habit', onlyWhen: { all: [{ field: 'rock', is: 'BST' }] } }),
    fields({ name: 'habit', onlyWhen: { all: [{ field: 'rock', is: 'BAS' }] } }),
  ],
  [
    'schema-only-when-unknown',
    fields({ name: 'habit', onlyWhen: { field: 'sulphide', of: 'GAL', atLeast: 1 } }),
    fields({ name: 'habit', onlyWhen: { field: 'sulphide', of: 'PYR', atLeast: 1 } }),
  ],
  [
    'schema-only-when-later',
    fields({ name: 'wear', onlyWhen: { field: 'sulphide', seen: true } }),
    fields({ name: 'wear', onlyWhen: { field: 'sulphide', seen: true }, after: 'sulphide' }),
  ],
  [
    'schema-only-when-later',
    fields({ name: 'wear', onlyWhen: { field: 'wear', atLeast: 1 } }),
    fields({ name: 'wear', onlyWhen: { field: 'rock', isOneOf: ['BAS'] } }),
  ],
  [
    'schema-only-when-senseless',
    fields({ name: 'habit', onlyWhen: { field: 'rock', atLeast: 2 } }),
    fields({ name: 'habit', onlyWhen: { field: 'rock', of: 'BAS', atLeast: 2 } }),
  ],
  [
    'schema-only-when-senseless',
    fields({ name: 'habit', onlyWhen: { field: 'wear', of: 'FRE', atLeast: 2 } }),
    fields({ name: 'habit', onlyWhen: { field: 'wear', atLeast: 2 } }),
  ],
  [
    'schema-only-when-senseless',
    fields({ name: 'habit', onlyWhen: { field: 'sulphide', of: 'PYR', is: 'PYR' } }),
    fields({ name: 'habit', onlyWhen: { field: 'sulphide', is: 'PYR' } }),
  ],
  [
    'schema-retired-pair-reused',
    codes({ code: 'SHA', retiredSince: '2026-02-01' }, code('SLT', { pair: 'sh' })),
    codes({ code: 'SHA', retiredSince: '2026-02-01' }, code('SLT', { pair: 'sl' })),
  ],
  ['schema-provisional', codes(code('NEW', { provisional: true })), codes(code('NEW'))],
];

describe('columns of the log on screen', () => {
  it('schema-column-unknown: one that is not a field, or twice, is named where it is written', () => {
    const found = overSmall({ columns: ['rock', 'rok', 'bag number', 'bag number'] }).filter(
      ({ code }) => code === 'schema-column-unknown',
    );
    expect(found.map(({ problem }) => problem)).toEqual([
      'no field is called rok',
      'bag number is a column twice',
    ]);
    expect(found[0]?.place).toMatchObject({ field: 'columns', line: expect.any(Number) });
  });
});

describe('the schema check', () => {
  it('finds nothing in a sound schema', () => {
    expect(findingsOf(SMALL)).toEqual([]);
  });

  for (const [kind, fires, quiet] of cases) {
    it(`${kind}: ${JSON.stringify(fires).slice(0, 90)}`, () => {
      const found = overSmall(fires).filter((finding) => finding.code === kind);
      expect(found.length).toBeGreaterThan(0);
      for (const finding of found) {
        expect(finding.place.file).toBe('logging.json');
        expect(finding.place.line).toBeGreaterThan(1);
        expect(finding.excerpt).toBeTruthy();
        expect(finding.remedy).toMatch(/\.$/);
      }
      expect(overSmall(quiet).filter((finding) => finding.code === kind)).toEqual([]);
    });
  }

  it('offers with each pair or key that is wrong a free one, which mends it', () => {
    const wrong = [
      codes({ code: 'SHA', pair: 'ba' }),
      codes({ code: 'SHA', pair: 'ss' }),
      codes({ code: 'SHA', pair: 'bs' }),
      codes({ code: 'SHA', pair: 'nr' }),
      codes({ code: 'SHA', pair: 'pt' }),
      codes({ code: 'SHA', pair: 'po' }),
    ];
    for (const changes of wrong) {
      const [finding] = overSmall(changes);
      const free = /(?:: |pair )(\w\w) is free/.exec(finding?.remedy ?? '')?.[1];
      expect(free, finding?.remedy).toBeDefined();
      expect(overSmall(codes({ code: 'SHA', pair: free })), free).toEqual([]);
    }
  });

  it('reports a slip once, at the later of the two, in words', () => {
    const [finding, ...more] = overSmall(codes({ code: 'SHA', pair: 'bs' }));
    expect(more).toEqual([]);
    expect(formatFinding(finding!)).toBe(
      'logging.json:10:11, list rocks, code SHA: bs (shale) and ba (basalt) are one slip apart, in the same field\n' +
        '  | "pair": "bs"\n' +
        '  Give one of the two another pair, with letters that are not neighbours on the keyboard: sh is free for shale.',
    );
  });

  it('says which amount is a slip from a pair, once for each pair', () => {
    const near = overSmall(codes({ code: 'SHA', pair: 'po' })).map(({ problem }) => problem);
    expect(near).toEqual(['p0 (pyrite) and po (shale) are one slip apart (sulphides, rock)']);
  });

  it('leaves a pair beside an amount that the key can’t take: the slip has nothing to slip from', () => {
    // The ladder of the small schema has 1 and 5 of one digit, and no trace.
    for (const pair of ['pe', 'pm', 'pk', 'pi'])
      expect(overSmall(codes({ code: 'SHA', pair })).map(({ code: kind }) => kind)).toEqual([]);
  });

  it('finds a scale that is not there under a field with a key, where the key’s amounts can’t be told', () => {
    const found = overSmall(fields({ name: 'wear', scale: 'tear', key: 'w' }));
    expect(found.map(({ code: kind }) => kind)).toEqual(['schema-scale-missing']);
  });

  it('leaves a slip between strokes that take an amount and strokes that take none: it is refused as it is typed', () => {
    const second = { name: 'rock', second: false };
    expect(overSmall({ ...codes({ code: 'SHA', pair: 'pu' }), ...fields(second) })).toEqual([]);
  });

  it('refuses bag numbers that begin like a line of the log', () => {
    expect(checkBagPrefixes(['ZQ', '', '7'], { file: 'project.json' })).toEqual([]);
    const [finding] = checkBagPrefixes(['zq'], { file: 'project.json' });
    expect(finding?.code).toBe('schema-bag-number-reads-as-line');
    expect(checkBagPrefixes([';A', '.', '='], {})).toHaveLength(3);
  });

  it('finds no fault in any generated schema, so that other tests run on sound ones', () => {
    fc.assert(
      fc.property(schemas, (schema) => {
        expect(checkSchema(schema).filter((finding) => finding.severity === 'fault')).toEqual([]);
      }),
      { numRuns: runs(300) },
    );
  });
});

describe('a file that is being written', () => {
  const field = { ...SMALL.fields[0], name: 'host', label: 'host', list: 'hosts' };

  it('may have a field before its list, a list before its field, and a list without codes: said, and no fault', () => {
    const severities = (changes: object) =>
      overSmall(changes).map(({ code, severity }) => `${severity} ${code}`);
    expect(severities(fields(field))).toEqual(['warning schema-list-missing']);
    expect(severities({ lists: { hosts: { label: 'hosts', codes: [code('X')] } } })).toEqual([]);
    expect(severities({ ...fields(field), lists: { hosts: { label: 'hosts' } } })).toEqual([
      'warning schema-list-empty',
    ]);
  });

  it('logs what is there, and says of the rest that it can’t be said yet', () => {
    const read = checkLoggingFile({
      file: 'logging.json',
      text: JSON.stringify({ ...SMALL, fields: [...SMALL.fields, { ...field, required: false }] }),
    });
    const { schema } = read;
    if (schema === undefined) throw new Error(JSON.stringify(read.findings));
    expect(parseLine('bawe1', { schema })).toMatchObject({
      kind: 'row',
      row: { cells: { host: { absent: 'not observed' } } },
    });
    expect(parseLine("bawe1 host'bas", { schema })).toMatchObject({ problem: 'bas is not in the list' });
  });
});

describe('a warning that the author has accepted', () => {
  const changes = codes({ code: 'SHA', pair: 'pt' });
  const [warning] = overSmall(changes);
  const accepted = overSmall(changes).map(({ code: finding, problem }) => ({ finding, problem }));

  it('is not said again, until its words change', () => {
    expect(warning).toMatchObject({ code: 'schema-strokes-near-elsewhere', severity: 'warning' });
    expect(overSmall({ ...changes, accepted })).toEqual([]);
    const other = overSmall({ ...codes({ code: 'SHA', pair: 'po' }), accepted });
    expect(other.map(({ code: kind }) => kind)).toContain('schema-strokes-near-elsewhere');
  });

  it('is never a fault', () => {
    const clash = codes({ code: 'SHA', pair: 'ba' });
    const [fault] = overSmall(clash);
    const tried = [{ finding: fault?.code ?? '', problem: fault?.problem ?? '' }];
    expect(overSmall({ ...clash, accepted: tried })).toMatchObject([{ code: 'schema-strokes-clash' }]);
  });
});
