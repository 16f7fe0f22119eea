import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { readProgram } from '../../../src/commands/program/read-program.ts';
import { loadProject } from '../../../src/desk/load-project.ts';
import type { Disk } from '../../../src/files/disk.ts';
import { readDocumentFile } from '../../../src/files/document-file.ts';
import { loadDocument } from '../../../src/files/load-document.ts';
import { DOCUMENT_LIMITS, type JsonText, OTHER_LIMITS, readJsonText } from '../../../src/files/read-json.ts';
import { readReceipt } from '../../../src/sampling/dispatch/receipt-read.ts';
import { type ResultColumns, readResults } from '../../../src/sampling/laboratory/results-read.ts';
import { gridByCode } from '../../../src/survey/norths/grids.ts';
import { SAMPLE } from '../../commands/support/outside.ts';
import { HOLE } from '../../desk/support/values.ts';
import { spoiling } from '../../files/hostile.ts';
import { HOSTILE } from '../vectors.ts';
import { SMALL_HOLE } from './small-hole.ts';
import { spoil } from './spoil.ts';
import { refusedBare, type Target, target, unsound } from './target.ts';

const file = (path: string): string => readFileSync(join(SAMPLE, path), 'utf8');
const encoder = new TextEncoder();

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
    fc.array(spoiling, { minLength: 1, maxLength: 3 }).map((how) => spoil(encoder.encode(text), how)),
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

const SHIFT_ID = 'RC7_2026-03-14_DAY';

const program = target('a program CSV', fc.array(spoiling, { minLength: 1, maxLength: 4 }), (how) => {
  const text = new TextDecoder().decode(spoil(encoder.encode(file('program.csv')), how));
  const context = {
    file: 'program.csv',
    grid: gridByCode(7851),
    settings: { programReachM: 20_000 },
    taken: new Set<string>(),
  };
  return unsound(readProgram(text, context).findings);
});

const NUMBERS = { prefixes: ['MB'], digits: 6 };
const RESULTS: ResultColumns = {
  sample: 'Sample',
  analytes: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }],
  belowDetection: 'half the limit',
};
const DISPATCH_ID = 'D2026-03-14-NOK';

/** A paper of the laboratory with characters spoiled and cells exchanged. */
const paper = (name: string): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.array(spoiling, { maxLength: 4 }),
      fc.array(fc.tuple(fc.nat(), fc.constantFrom(...HOSTILE)), { maxLength: 4 }),
    )
    .map(([how, cells]) => {
      const lines = file(`laboratory/${name}`).split('\r\n').slice(0, 40);
      for (const [at, text] of cells) lines[at % lines.length] = `MB000121,${text},${text}`;
      return new TextDecoder().decode(spoil(encoder.encode(lines.join('\n')), how));
    });
const recordsOf = (text: string): readonly (readonly string[])[] =>
  text.split('\n').map((each) => each.split(','));

const certificate = target('a certificate of results', paper('WA26-0417.csv'), (text) => {
  const { lines, assays, findings } = readResults(RESULTS, recordsOf(text), 'WA26-0417.csv');
  const values = assays.flatMap((assay) => Object.values(assay.values).map((each) => each.value));
  if (values.some((each) => !Number.isFinite(each) || each < 0)) return 'a value that is not a mass fraction';
  return lines.length === assays.length ? unsound(findings) : 'a line without its values';
});

const receipt = target('a receipt of the laboratory', paper('receipt.csv'), (text) => {
  const read = readReceipt(NUMBERS, recordsOf(text), 'receipt.csv');
  if (!read.ok) return refusedBare(read.findings);
  return read.value.length === 0 ? 'a receipt of nothing' : undefined;
});

/** Every file that a person or another program may write. */
export const fileTargets: readonly Target[] = [
  spoiledFile('project.json', 'project.json', file('project.json'), (project) =>
    takeProject({ project, logging: asJson('logging.json') }),
  ),
  spoiledFile('logging.json', 'logging.json', file('logging.json'), (logging) =>
    takeProject({ project: asJson('project.json'), logging }),
  ),
  spoiledFile('a hole', `holes/${HOLE.id}.json`, SMALL_HOLE, takeDocument(HOLE.kind, HOLE.id)),
  spoiledFile(
    'a shift',
    `shifts/${SHIFT_ID}.json`,
    file(`shifts/${SHIFT_ID}.json`),
    takeDocument('shift', SHIFT_ID),
  ),
  spoiledFile(
    'a dispatch',
    `dispatches/${DISPATCH_ID}.json`,
    file(`dispatches/${DISPATCH_ID}.json`),
    takeDocument('dispatch', DISPATCH_ID),
  ),
  program,
  certificate,
  receipt,
];
