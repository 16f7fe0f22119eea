import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { planReadings } from '../../../src/acts/readings/plan-readings.ts';
import { takeIn } from '../../../src/desk/take-in.ts';
import { documentFault, readDocumentFile } from '../../../src/files/document-file.ts';
import { DOCUMENT_LIMITS, readJsonText } from '../../../src/files/read-json.ts';
import { chainFault, replay } from '../../../src/record/chain.ts';
import type { Document } from '../../../src/record/document.ts';
import { sameJson } from '../../../src/record/json.ts';
import { importCodes } from '../../../src/schema/change/import-codes.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { readCollarTable } from '../../../src/survey/collar/collar-table.ts';
import { nmeaChecksum, readNmea } from '../../../src/survey/collar/nmea.ts';
import { readShotTable } from '../../../src/survey/shots/shot-table.ts';
import { SAMPLE } from '../../commands/support/outside.ts';
import { resolveStyle } from '../../support/styles.ts';
import { HOSTILE } from '../vectors.ts';
import { refusedBare, type Target, target, unsound } from './target.ts';

const oddCell = fc.oneof(
  fc.constantFrom(...HOSTILE),
  fc.constantFrom(
    '',
    ' ',
    '-0',
    '1e9',
    '1e999',
    '0x10',
    '1,5',
    '٣',
    '<0.5',
    'nan',
    '-60°',
    '270g',
    '=1+1',
    '"',
    '\r',
    'BAS',
  ),
  fc.double({ noNaN: true }).map(String),
  fc.integer({ min: -400, max: 6000 }).map(String),
);

/** A CSV of a heading and lines of numbers, some of its cells exchanged and one character of it spoiled. */
function csv(headings: string, line: (row: number) => string): fc.Arbitrary<string> {
  const exchange = fc.record({ row: fc.nat(6), column: fc.nat(4), cell: oddCell });
  const spoil = fc.option(
    fc.record({ at: fc.nat(300), put: fc.constantFrom('', '"', ',', '\n', '\0', '\ufeff', '💎', '\ud800') }),
  );
  return fc.tuple(fc.array(exchange, { maxLength: 4 }), spoil).map(([exchanges, spoiled]) => {
    const table = [headings, ...Array.from({ length: 6 }, (_, row) => line(row))].map((each) =>
      each.split(','),
    );
    for (const { row, column, cell } of exchanges) {
      const record = table[row];
      if (record !== undefined) record[column] = cell;
    }
    const text = table.map((record) => record.join(',')).join('\n');
    return spoiled === null ? text : text.slice(0, spoiled.at) + spoiled.put + text.slice(spoiled.at + 1);
  });
}

/** Cells as the commands split them; none where they refuse the file. */
function recordsOf(text: string): string[][] | undefined {
  try {
    return parse(text, { bom: true, relax_column_count: true }) as string[][];
  } catch (error) {
    if (error instanceof CsvError) return undefined;
    throw error;
  }
}

const shots = target(
  'a CSV of shots',
  csv('hole,depth,dip,azimuth', (row) => `MBRC003,${row * 30},-60,${270 - row}`),
  (text) => {
    const records = recordsOf(text);
    if (records === undefined) return undefined;
    const columns = { hole: 'hole', depth: 'depth', dip: 'dip', azimuth: 'azimuth' };
    const read = readShotTable(
      records,
      { columns, depthOf: 'bit', toolOffsetMm: 3000, angleAs: 'dip', expectedDipDeg: -60, hole: 'MBRC003' },
      { file: 'shots.csv' },
    );
    const numbers = read.shots.flatMap(({ depthMm, dipDeg }) => [Number(depthMm), dipDeg]);
    return numbers.every(Number.isFinite) ? unsound(read.findings) : 'a shot that is not a number';
  },
);

const collars = target(
  'a CSV of collars',
  csv('hole,easting,northing,elevation', (row) => `MBRC00${row},${412_500 + row},6002240,431.2`),
  (text) => {
    const records = recordsOf(text);
    if (records === undefined) return undefined;
    const columns = { hole: 'hole', easting: 'easting', northing: 'northing', elevation: 'elevation' };
    const read = readCollarTable(records, columns, { file: 'collars.csv' });
    const whole = read.collars.every((each) =>
      Number.isSafeInteger(each.eastingMm + each.northingMm + each.elevationMm),
    );
    return whole ? unsound(read.findings) : 'a collar that is not a whole number of millimetres';
  },
);

const codes = target(
  'a CSV of codes',
  csv('code,label,look,pair', (row) => `C${row},rock ${row},dark,c${row}`),
  (text) => {
    const columns = { code: 'code', label: 'label', look: 'look', pair: 'pair' };
    const read = importCodes({ file: 'codes.csv', text }, columns);
    return read.ok ? undefined : refusedBare(read.findings);
  },
);

const STYLE = resolveStyle('orogenic-gold') as LoggingSchema;
const FIELD = STYLE.fields.find((field) => field.kind === 'number');
const sample = (): Document =>
  JSON.parse(readFileSync(join(SAMPLE, 'holes/MBRC003.json'), 'utf8')) as Document;
const LOGGED = sample();

const readings = target(
  "a CSV of an instrument's readings",
  csv('from,to,reading', (row) => `${row},${row + 1},${row}.5`),
  (text) => {
    const records = recordsOf(text);
    if (records === undefined || FIELD?.kind !== 'number') return undefined;
    const columns = { from: 'from', to: 'to', reading: 'reading' };
    const plan = planReadings(STYLE, LOGGED, FIELD, {
      file: 'readings.csv',
      records,
      columns,
      choices: { below: 'half' },
    });
    if (!plan.ok) return refusedBare(plan.findings);
    const wild = plan.value.taken.find(({ now }) => 'number' in now && !Number.isFinite(now.number));
    return wild === undefined ? undefined : 'a reading that is not a number';
  },
);

const SENTENCE = 'GPGGA,123519,2807.038,S,11631.000,E,1,08,0.9,431.4,M,46.9,M,,';
const gps = target(
  'a line of a GPS',
  fc.tuple(fc.nat(70), fc.nat(6), fc.oneof(oddCell, fc.string({ maxLength: 6 }))),
  ([at, length, put]) => {
    const between = SENTENCE.slice(0, at) + put + SENTENCE.slice(at + length);
    const line = readNmea(`$${between}*${nmeaChecksum(between)}`);
    if (line.kind !== 'fix') return line.reason.trim() === '' ? 'refused without a reason' : undefined;
    const { latDeg, lonDeg } = line.fix;
    return Number.isFinite(latDeg) && Number.isFinite(lonDeg) ? undefined : 'a fix that is nowhere';
  },
);

/** A small hole with a history, of which one value anywhere is exchanged: what a file that was edited at camp may be. */
const SHORT: Document = (() => {
  const history = LOGGED.history.slice(0, 8);
  return { ...LOGGED, history, tables: replay(history) };
})();
const copies = target(
  'a copy of a hole taken in',
  fc.record({ at: fc.nat(5000), put: fc.oneof(oddCell, fc.jsonValue({ maxDepth: 1 })), cut: fc.nat(8) }),
  ({ at, put, cut }) => {
    let count = -1;
    const whole = { ...sample(), history: SHORT.history, tables: SHORT.tables };
    const values = JSON.stringify(whole).match(/[[{,:]/g)?.length ?? 1;
    const text = JSON.stringify(whole, (_name, value: unknown) => {
      count += 1;
      return count === at % values ? put : value;
    });
    const json = readJsonText(new TextEncoder().encode(text ?? ''), 'copy.json', DOCUMENT_LIMITS);
    if (!json.ok) return refusedBare(json.findings);
    const stored = readDocumentFile(json.value, { kind: SHORT.kind, id: SHORT.id });
    if (!stored.ok) return refusedBare(stored.findings);
    const history = SHORT.history.slice(0, cut);
    const ours = cut === 0 ? undefined : { ...SHORT, history, tables: replay(history) };
    let made = 0;
    const newId = (): string => {
      made += 1;
      return `here-${made}`;
    };
    const deed = (what: string) => ({ edit: newId(), at: '2026-03-14T08:00:00+08:00', by: 'NOK', what });
    const taken = takeIn(ours, stored.value.document, deed);
    if (!taken.ok) return taken.problem.trim() === '' ? 'refused without a word' : undefined;
    const { document } = taken;
    const broken = chainFault(document.history);
    if (broken !== undefined) return `its chain is broken: ${broken.problem}`;
    if (!sameJson(replay(document.history), document.tables))
      return 'its tables are not what its history makes';
    const things = Object.entries(document.tables).flatMap(([table, each]) =>
      Object.keys(each).map((id) => [table, id] as const),
    );
    return documentFault(document, things);
  },
);

/** Every table that a person or an instrument hands over, and copies of holes. */
export const tableTargets: readonly Target[] = [shots, collars, codes, readings, gps, copies];
