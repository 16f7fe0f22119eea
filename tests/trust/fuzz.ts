import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect } from 'vitest';
import { readProgram } from '../../src/commands/program/read-program.ts';
import { decode, flush, nothingHeld } from '../../src/console/input/decode.ts';
import { namedKeys } from '../../src/console/input/keys.ts';
import { loadProject } from '../../src/desk/load-project.ts';
import type { Disk } from '../../src/files/disk.ts';
import { readDocumentFile } from '../../src/files/document-file.ts';
import { loadDocument } from '../../src/files/load-document.ts';
import { DOCUMENT_LIMITS, type JsonText, OTHER_LIMITS, readJsonText } from '../../src/files/read-json.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { formatPlace } from '../../src/finding/place.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import type { Change } from '../../src/record/document.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { resolveStyle } from '../../src/schema/resolve.ts';
import { checkRow } from '../../src/schema/row-checks.ts';
import { COMMANDS } from '../../src/shorthand/commands.ts';
import { type EntryContext, parseLine } from '../../src/shorthand/parse.ts';
import { gridByCode } from '../../src/survey/grids.ts';
import { SAMPLE } from '../commands/support/outside.ts';
import { HOLE, holeMade, rowLogged } from '../desk/support/values.ts';
import { type Spoiling, spoiling } from '../files/hostile.ts';
import { HOSTILE } from './vectors.ts';

/** How many cases are tried, from which seed on, and how long one may take. */
export interface Trial {
  readonly runs: number;
  readonly seed: number;
  readonly longestMs?: number;
}

/** Something that takes what may come from anywhere. */
export interface Target {
  readonly name: string;
  /** Rejects with the smallest input that was found to be taken badly. */
  readonly hold: (trial: Trial) => Promise<void>;
}

/** A target by its inputs and by what is wrong with how one was taken; undefined where nothing is. */
function target<T>(
  name: string,
  inputs: fc.Arbitrary<T>,
  fault: (input: T) => string | undefined | Promise<string | undefined>,
): Target {
  const hold = ({ runs, seed, longestMs }: Trial): Promise<void> =>
    fc.assert(
      fc.asyncProperty(inputs, async (input) => {
        const began = performance.now();
        expect(await fault(input)).toBeUndefined();
        if (longestMs !== undefined) expect(performance.now() - began).toBeLessThan(longestMs);
      }),
      { numRuns: runs, seed },
    );
  return { name, hold };
}

/** A finding that a person could do nothing with, in words. */
function unsound(findings: readonly Finding[]): string | undefined {
  for (const { code, place, problem, remedy } of findings) {
    if (formatPlace(place) === 'somewhere') return `${code} has no place: ${problem}`;
    if (problem.trim() === '' || remedy.trim() === '') return `${code} lacks problem or remedy`;
    if (/undefined|\[object|\bNaN\b|Invalid input/.test(`${problem}${remedy}`))
      return `${code}: ${problem} ${remedy}`;
  }
  return undefined;
}

const refusedBare = (findings: readonly Finding[]): string | undefined =>
  findings.length === 0 ? 'refused without a finding' : unsound(findings);

const STYLE = resolveStyle('orogenic-gold') as LoggingSchema;
const CONTEXT: EntryContext = {
  schema: STYLE,
  above: undefined,
  previous: undefined,
  repeats: 0,
  gloves: false,
  bagPattern: /^MB\d{6}$/,
};
const ROW_ABOVE = parseLine('bawx1ox1si1py2vn5', CONTEXT);
const CONTEXTS: readonly EntryContext[] = [
  CONTEXT,
  ...(ROW_ABOVE.kind === 'row'
    ? [false, true].map((gloves) => ({ ...CONTEXT, above: ROW_ABOVE.row, previous: ROW_ABOVE.row, gloves }))
    : []),
];

const strokes = STYLE.fields.flatMap((field) =>
  'pair' in field && field.pair !== undefined ? [field.pair, `${field.name}'`] : [`${field.name}'`],
);
const codes = Object.values(STYLE.lists).flatMap((list) =>
  list.codes.flatMap((code) => [code.pair ?? '', code.key ?? '', code.code]),
);
const words = COMMANDS.map((command) => command.form);
const piece = fc.oneof(
  fc.constantFrom(
    ...strokes,
    ...codes,
    ...words,
    'nr',
    '.',
    '=',
    ',',
    '/',
    ';',
    "'",
    "''",
    ' ',
    '-',
    '0',
    '1e9',
    '99999999999999999999',
    '.5.5',
  ),
  fc.nat(1200).map(String),
  fc.constantFrom(...HOSTILE),
  fc.string({ maxLength: 4 }),
);

const lines = target(
  'an entry line',
  fc.tuple(
    fc.array(piece, { maxLength: 9 }).map((pieces) => pieces.join('')),
    fc.nat(CONTEXTS.length - 1),
  ),
  ([text, at]) => {
    const parsed = parseLine(text, CONTEXTS[at] ?? CONTEXT);
    if (parsed.kind === 'refused') {
      if (parsed.problem.trim() === '' || parsed.remedy.trim() === '')
        return 'refused without problem or remedy';
      return parsed.position < 0 || parsed.position > text.length
        ? `refused at ${parsed.position}`
        : undefined;
    }
    if (parsed.kind !== 'row') return undefined;
    const row = { ...parsed.row, fromMm: depthFromMetres(0), toMm: depthFromMetres(1) };
    const faults = checkRow(STYLE, row, { hole: 'ZQRC004' }).filter(
      (finding) => finding.severity === 'fault',
    );
    return faults[0] === undefined ? undefined : `a row that its schema refuses: ${faults[0].problem}`;
  },
);

const CONTROL = /\p{Cc}/u;
const bytesOfKeys = fc
  .array(
    fc.oneof(
      fc.uint8Array({ maxLength: 6 }),
      fc
        .constantFrom(
          '\x1b',
          '\x1b[',
          '\x1bO',
          '\x1b[200~',
          '\x1b[201~',
          '\x1b[1;5P',
          '\x1b[<0;1;1M',
          '\x1b]52;c;',
          '\x1bP',
          '\r',
          '\n',
          '\t',
          '\x7f',
          'a',
          'é',
          '🪨',
        )
        .map((text) => new TextEncoder().encode(text)),
      fc.constantFrom(...HOSTILE).map((text) => new TextEncoder().encode(text)),
    ),
    { maxLength: 12 },
  )
  .map((parts) => new Uint8Array(Buffer.concat(parts)));

const keys = target('bytes of keys', fc.tuple(bytesOfKeys, fc.nat(40)), ([bytes, cut]) => {
  const whole = decode(nothingHeld, bytes);
  const first = decode(nothingHeld, bytes.subarray(0, cut));
  const second = decode(first.state, bytes.subarray(cut));
  const events = [...whole.events, ...flush(whole.state).events];
  const parted = [...first.events, ...second.events, ...flush(second.state).events];
  if (JSON.stringify(events) !== JSON.stringify(parted))
    return `read in two parts it is ${JSON.stringify(parted)}`;
  const odd = events.find((event) =>
    event.kind === 'text' ? CONTROL.test(event.text) : event.kind === 'key' && !known(event.name),
  );
  return odd === undefined ? undefined : `no key: ${JSON.stringify(odd)}`;
});

const known = (name: string): boolean =>
  (namedKeys as readonly string[]).includes(name) || [...name].length === 1;

const file = (path: string): string => readFileSync(join(SAMPLE, path), 'utf8');
const encoder = new TextEncoder();

/** Bytes of a file with some of it spoiled. */
function spoil(text: string, how: readonly Spoiling[]): Uint8Array {
  let bytes = encoder.encode(text);
  for (const { at, length, into } of how) {
    const start = at % (bytes.length + 1);
    bytes = new Uint8Array(Buffer.concat([bytes.subarray(0, start), into, bytes.subarray(start + length)]));
  }
  return bytes;
}

/** Values that do not belong where they are put; undefined takes the member out. */
const oddValue: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    undefined,
    null,
    true,
    '',
    0,
    -1,
    0.5,
    1e15,
    -1e300,
    [],
    {},
    [[]],
    ['MB'],
    { all: [] },
    '2026-02-30T25:61:00+99:00',
  ),
  fc.constantFrom(...HOSTILE),
  fc.constantFrom(
    'constructor',
    '__proto__',
    'toString',
    'CON',
    '../../x',
    'MBRC001',
    'RC7',
    'rock',
    'PYR',
    'grid',
    '05:30',
  ),
  fc.jsonValue({ maxDepth: 2 }),
);

/** One value of a file, by its place in the order of the text, and what is put there. */
interface Exchange {
  readonly at: number;
  readonly put: unknown;
}

function exchanged(text: string, { at, put }: Exchange): Uint8Array {
  const values = text.match(/[[{,:]/g)?.length ?? 1;
  let count = -1;
  const json = JSON.stringify(JSON.parse(text), (_name, value: unknown) => {
    count += 1;
    return count === at % values ? put : value;
  });
  return encoder.encode(json ?? '');
}

/** A target that is a file: some of its bytes spoiled or one value exchanged; then read as JSON, and taken as what it is. */
function spoiledFile(
  name: string,
  path: string,
  text: string,
  take: (json: JsonText) => string | undefined | Promise<string | undefined>,
): Target {
  const limits = path.includes('/') ? DOCUMENT_LIMITS : OTHER_LIMITS;
  const bytes = fc.oneof(
    fc.array(spoiling, { minLength: 1, maxLength: 3 }).map((how) => spoil(text, how)),
    fc.record({ at: fc.nat(100_000), put: oddValue }).map((how) => exchanged(text, how)),
  );
  return target(name, bytes, (given) => {
    const json = readJsonText(given, path, limits);
    return json.ok ? take(json.value) : refusedBare(json.findings);
  });
}

const asJson = (path: string): JsonText => ({ file: path, text: file(path), value: JSON.parse(file(path)) });
const NO_DISK = {} as Disk;

const takeProject = async (given: {
  readonly project: JsonText;
  readonly logging: JsonText;
}): Promise<string | undefined> => {
  const loaded = await loadProject({ folder: '/project', ...given }, NO_DISK);
  return loaded.ok ? unsound(loaded.value.warnings) : refusedBare(loaded.findings);
};

const takeDocument =
  (kind: string, id: string) =>
  (json: JsonText): string | undefined => {
    const stored = readDocumentFile(json, { kind, id });
    return stored.ok
      ? unsound(loadDocument(json.file, stored.value, []).findings)
      : refusedBare(stored.findings);
  };

function thingOf(change: Change | undefined): unknown {
  return change !== undefined && 'put' in change ? change.thing : undefined;
}

const SMALL_HOLE = JSON.stringify(
  {
    $schema: '../schemas/hole.schema.json',
    format: 1,
    kind: HOLE.kind,
    id: HOLE.id,
    journal: { generation: 1, sequence: 2 },
    tables: {
      hole: { hole: thingOf(holeMade()[0]) },
      rows: Object.fromEntries(
        [0, 1].map((metre) => [`k2-${metre}`, thingOf(rowLogged(`k2-${metre}`, metre))]),
      ),
    },
    history: [],
  },
  null,
  2,
);
const SHIFT_ID = 'RC7_2026-03-14_DAY';

const program = target('a program CSV', fc.array(spoiling, { minLength: 1, maxLength: 4 }), (how) => {
  const text = new TextDecoder().decode(spoil(file('program.csv'), how));
  const context = {
    file: 'program.csv',
    grid: gridByCode(7851),
    settings: { programReachM: 20_000 },
    taken: new Set<string>(),
  };
  return unsound(readProgram(text, context).findings);
});

/** Everything that takes what may come from anywhere, with how many of 100,000 cases it is worth. */
export const TARGETS: readonly (readonly [target: Target, cases: number])[] = [
  [lines, 30_000],
  [keys, 30_000],
  [
    spoiledFile('project.json', 'project.json', file('project.json'), (project) =>
      takeProject({ project, logging: asJson('logging.json') }),
    ),
    8000,
  ],
  [
    spoiledFile('logging.json', 'logging.json', file('logging.json'), (logging) =>
      takeProject({ project: asJson('project.json'), logging }),
    ),
    8000,
  ],
  [spoiledFile('a hole', `holes/${HOLE.id}.json`, SMALL_HOLE, takeDocument(HOLE.kind, HOLE.id)), 8000],
  [
    spoiledFile(
      'a shift',
      `shifts/${SHIFT_ID}.json`,
      file(`shifts/${SHIFT_ID}.json`),
      takeDocument('shift', SHIFT_ID),
    ),
    8000,
  ],
  [program, 8000],
];
