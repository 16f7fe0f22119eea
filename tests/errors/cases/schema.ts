import { planReadings } from '../../../src/acts/readings/plan-readings.ts';
import { importCodes } from '../../../src/schema/change/import-codes.ts';
import { importLibrary } from '../../../src/schema/change/import-library.ts';
import { additionsTo, changesUnder } from '../../../src/schema/change/schema-change.ts';
import { checkBagPrefixes } from '../../../src/schema/check/check-schema.ts';
import { meaningsOf } from '../../../src/schema/legend.ts';
import {
  type Code,
  fieldNamed,
  type LoggingSchema,
  type NumberField,
} from '../../../src/schema/logging-schema.ts';
import { hazardsUnloggable } from '../../../src/standing/hole-schema.ts';
import { findingsOf, overSmall, SMALL } from '../../schema/build.ts';
import { holeWith, row } from '../../standing/support/hole.ts';
import { resolveStyle } from '../../support/styles.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const STYLE = resolveStyle('orogenic-gold') as LoggingSchema;
const WITHOUT_VOID: LoggingSchema = { ...STYLE, fields: [], lists: {} };
const MAGSUS = fieldNamed(STYLE, 'magsus') as NumberField;
const code = (name: string, rest: object = {}) => ({
  code: name,
  label: name.toLowerCase(),
  look: 'so',
  ...rest,
});
const codes = (...entries: readonly object[]) => ({ lists: { rocks: { codes: entries } } });
const sulphides = (...entries: readonly object[]) => ({ lists: { sulphides: { codes: entries } } });
const fields = (...entries: readonly object[]) => ({ fields: entries });

/** A case of changes written over the small schema. */
const over = (kind: string, input: string, changes: object): ErrorCase =>
  given(kind, input, () => overSmall(changes));

/** A case of a file that is alone. */
const alone = (kind: string, input: string, file: unknown): ErrorCase =>
  given(kind, input, () => findingsOf(file));

const imported = (kind: string, input: string, text: string): ErrorCase =>
  given(kind, input, () =>
    findingsIn(importCodes({ file: 'codes.csv', text }, { code: 'Code', label: 'Description' })),
  );

/** Errors of a logging schema as someone writes it. */
export const SCHEMA_CASES: readonly ErrorCase[] = [
  over('schema-strokes-clash', 'one pair for two rocks', codes({ code: 'SHA', pair: 'ba' })),
  over('schema-strokes-untypable', 'a pair of one letter twice', codes({ code: 'SHA', pair: 'ss' })),
  over('schema-strokes-near', 'two pairs a slip apart', codes({ code: 'SHA', pair: 'bs' })),
  over(
    'schema-strokes-near-elsewhere',
    'a pair a slip from one of another field',
    codes({ code: 'SHA', pair: 'pt' }),
  ),
  over('schema-keys-read-as-pair', 'two keys that are a pair', {
    lists: {
      rocks: { codes: [{ code: 'SHA', pair: 'pk' }] },
      sulphides: { codes: [{ code: 'ARS', key: 'k' }] },
    },
  }),
  over(
    'schema-too-many-keys',
    'ten single keys',
    sulphides(
      code('EXTRA', { key: 'f' }),
      ...[...'cspqknrgu'].map((key, index) => code(`S${index}`, { key })),
    ),
  ),
  over('schema-key-useless', 'a key where no amount is said', {
    ...codes({ code: 'BAS', key: 'b' }),
    ...fields({ name: 'rock', second: false }),
  }),
  over('schema-reserved-word', 'the pair nr', codes({ code: 'SHA', pair: 'nr' })),
  over('schema-code-unsayable', 'a code that starts with a space', codes(code(' AB'))),
  over('schema-code-twice', 'a code that differs in its capitals only', codes(code('bas'))),
  over('schema-label-twice', 'two codes of one label', codes(code('BST', { label: 'Basalt' }))),
  over('schema-list-missing', 'a list that is not there', fields({ name: 'rock', list: 'stones' })),
  over('schema-list-empty', 'a list of retired codes', {
    ...fields({ name: 'rock', list: 'stones' }),
    lists: { stones: { codes: [code('X', { retiredSince: '2026-01-01' })] } },
  }),
  over('schema-list-shared', 'two fields of one list', fields({ ...SMALL.fields[0], name: 'host' })),
  over('schema-scale-missing', 'a scale that is not there', fields({ name: 'wear', scale: 'tear' })),
  over('schema-density-level', 'densities by the level of a list of codes', {
    lists: { rocks: { densityShares: { sulphides: { '4': 0.8 } } } },
  }),
  over('schema-scale-broken', 'a scale that starts at 2', {
    scales: { wear: { label: 'wear', levels: [{ level: 2, label: 'b', look: '' }] } },
  }),
  over('schema-ladder', 'a step of the ladder twice', fields({ name: 'sulphide', ladder: [1, 5, 5] })),
  over('schema-number-range', 'a least number that is the most', fields({ name: 'magsus', min: 100 })),
  over(
    'schema-column-carries',
    'an instrument reading that carries',
    fields({ name: 'magsus', carry: true }),
  ),
  over(
    'schema-barrier-unknown',
    'does not carry across a change of a misspelt field',
    fields({ name: 'wear', notAcross: ['rocks'] }),
  ),
  over(
    'schema-barrier-later',
    'does not carry across a change of a field below',
    fields({ name: 'wear', notAcross: ['sulphide'] }),
  ),
  over(
    'schema-barrier-idle',
    'a barrier on a field that never carries',
    fields({ name: 'wear', notAcross: ['rock'], carry: false }),
  ),
  over('schema-qualifier-of-unknown', 'a habit of a mineral that the list has not', {
    ...fields({ name: 'sulphide', qualifiers: [{ list: 'habits', of: ['PYX'] }] }),
    lists: { habits: { label: 'habits', codes: [code('CUB', { pair: 'cu' })] } },
  }),
  over(
    'schema-qualifier-list',
    'a sulphide that is qualified by the rocks',
    fields({ name: 'sulphide', qualifiers: [{ list: 'rocks' }] }),
  ),
  over('schema-event-carries', 'events that carry', {
    fields: [
      {
        name: 'point',
        label: 'events',
        kind: 'events',
        list: 'point',
        required: false,
        carry: true,
        unsaid: 'none',
        canBeNone: true,
      },
    ],
    lists: { point: { label: 'events', codes: [code('WST', { pair: 'wk' })] } },
  }),
  over(
    'schema-third-without-second',
    'a third rock without a second',
    fields({ name: 'rock', second: false, third: true }),
  ),
  over(
    'schema-unsaid-none',
    'unsaid is none where none can not be',
    fields({ name: 'wear', unsaid: 'none' }),
  ),
  over(
    'schema-only-when-unknown',
    'a misspelt field',
    fields({ name: 'habit', onlyWhen: { field: 'sulfide', seen: true } }),
  ),
  over(
    'schema-only-when-later',
    'a field that is asked later',
    fields({ name: 'wear', onlyWhen: { field: 'sulphide', seen: true } }),
  ),
  over(
    'schema-only-when-senseless',
    'at least 2 of a rock',
    fields({ name: 'habit', onlyWhen: { field: 'rock', atLeast: 2 } }),
  ),
  over(
    'schema-retired-pair-reused',
    'the pair of a retired code',
    codes({ code: 'SHA', retiredSince: '2026-02-01' }, code('SLT', { pair: 'sh' })),
  ),
  over('schema-provisional', 'a code made at the rig', codes(code('NEW', { provisional: true }))),
  over('schema-unlikely-untellable', 'a misspelt field in what is seldom', {
    unlikely: [{ name: 'odd', words: 'odd', when: { field: 'rocks', seen: true } }],
  }),
  over('schema-place-unknown', 'behind a field that is not there', fields({ name: 'rock', after: 'stone' })),
  over('schema-entry-twice', 'one code changed twice', codes({ code: 'BAS' }, { code: 'BAS' })),
  over('schema-parent-changed', 'another hash than that of the file below', { extendsHash: 'a'.repeat(64) }),
  over('schema-shape', 'a misspelt member', { filds: [] }),
  over('schema-column-unknown', 'a column that is not a field', { columns: ['rock', 'rok'] }),
  over('schema-list-not-taken', 'a list of a style that no one knows', {
    lists: { rocks: { from: 'no-such-style' } },
  }),
  alone('schema-parent-missing', 'a style that no one knows', {
    format: 1,
    name: 'ours',
    extends: 'no-such-style',
  }),
  given('schema-circular', 'a file that extends itself', () =>
    findingsOf({ format: 1, name: 'a', extends: './a.json' }, (file) => ({
      file,
      text: '{ "format": 1, "name": "a", "extends": "./a.json" }',
    })),
  ),
  alone('schema-member-twice', 'a name given twice', '{ "format": 1,\n  "name": "a",\n  "name": "b" }'),
  alone('schema-not-json', 'a comma left out', '{ "format": 1\n  "name": "a" }'),
  given('schema-bag-number-reads-as-line', 'bag numbers in small letters', () =>
    checkBagPrefixes(['zq'], { file: 'project.json', field: 'sampling.numbers.prefixes' }),
  ),
  over(
    'schema-caution-missing',
    'an old stope without a caution',
    codes(code('OST', { label: 'old stope' })),
  ),
  given('schema-hazard-unloggable', 'a stope in the plan, and no code for a void', () =>
    hazardsUnloggable(
      WITHOUT_VOID,
      holeWith({
        plan: [{ depthMm: 60_000, expects: [{ name: 'old stope', fromMm: 14_000, hazard: 'void' }] }],
      }),
    ),
  ),
  given('codes-caution-lost', 'rocks of a library without a void', () =>
    findingsIn(
      importLibrary(
        { file: 'logging.json', text: '{ "format": 1, "name": "ours", "extends": "lithium-pegmatite" }' },
        { list: 'ktRocks', field: 'rock' },
        [{ code: 'STP', label: 'old stope', look: '' }],
      ),
    ),
  ),
  imported('codes-column-missing', 'another heading', 'Kode,Description\nA,b\n'),
  imported('codes-not-csv', 'a quotation mark left open', 'Code,Description\nA,"open\nB,b\n'),
  imported('codes-line-unusable', 'a line without a code', 'Code,Description\n,second\n'),
  given('reading-not-taken', 'a reading of a metre that is not logged', () =>
    findingsIn(
      planReadings(STYLE, holeWith({ rows: [row(0, 1)] }), MAGSUS, {
        file: 'ms.csv',
        records: [
          ['From', 'To', 'K'],
          ['1', '2', '0.31'],
        ],
        columns: { from: 'From', to: 'To', reading: 'K', unit: '1e-3 SI' },
        choices: {},
      }),
    ),
  ),
  ...changeCases(),
];

function changeCases(): readonly ErrorCase[] {
  const legend = meaningsOf(STYLE, [
    { cells: { rock: { code: 'BAS' }, weathering: { level: 1 }, magsus: { number: 0.4 } } },
  ]);
  const changed = (kind: string, input: string, to: LoggingSchema): ErrorCase =>
    given(kind, input, () => changesUnder(legend, to, { hole: 'ZQRC004' }));
  const rocks = (change: (each: Code) => readonly Code[]): LoggingSchema => {
    const list = STYLE.lists.rocks;
    if (list === undefined) throw new Error('the style has rocks');
    return { ...STYLE, lists: { ...STYLE.lists, rocks: { ...list, codes: list.codes.flatMap(change) } } };
  };
  const basalt = (change: (each: Code) => readonly Code[]): LoggingSchema =>
    rocks((each) => (each.code === 'BAS' ? change(each) : [each]));
  const scale = STYLE.scales.weathering;
  const levels = scale?.levels.map((each) => (each.level === 1 ? { ...each, label: 'soft' } : each)) ?? [];
  return [
    changed(
      'change-code-meaning',
      'a code given another label',
      basalt((each) => [{ ...each, label: 'andesite' }]),
    ),
    changed(
      'change-code-gone',
      'a code taken out',
      basalt(() => []),
    ),
    changed(
      'change-strokes-shifted',
      'a pair given to another rock',
      rocks((each) => [
        each.code === 'BAS' ? { ...each, pair: 'bz' } : each.code === 'SHA' ? { ...each, pair: 'ba' } : each,
      ]),
    ),
    changed(
      'change-strokes-dropped',
      'a pair taken away',
      basalt(({ pair: _pair, ...each }) => [each]),
    ),
    changed('change-level-meaning', 'a level given another label', {
      ...STYLE,
      scales: { ...STYLE.scales, ...(scale === undefined ? {} : { weathering: { ...scale, levels } }) },
    }),
    changed('change-field', 'another unit', {
      ...STYLE,
      fields: STYLE.fields.map((each) => (each.kind === 'number' ? { ...each, unit: '1e-5 SI' } : each)),
    }),
    changed('change-field-gone', 'a field taken off', {
      ...STYLE,
      fields: STYLE.fields.filter((each) => each.name !== 'magsus'),
    }),
    given('change-added', 'a new code', () =>
      additionsTo(
        STYLE,
        basalt((each) => [each, { ...each, code: 'NEW', label: 'dunite' }]),
        { file: 'logging.json' },
      ),
    ),
  ];
}
