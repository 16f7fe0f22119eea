import { holeNouns } from '../../hole/hole.ts';
import { metres } from '../../quantity/depth.ts';
import { resultsByMetre } from '../../sampling/laboratory/by-metre.ts';
import { ownSampleOf } from '../../sampling/laboratory/own-samples.ts';
import type { Certificate, ReportedLine } from '../../sampling/laboratory/results-noun.ts';
import {
  type AssayValue,
  assayOf,
  countedUnit,
  type ResultColumns,
} from '../../sampling/laboratory/results-read.ts';
import { columnsOf } from '../../sampling/laboratory/returned.ts';
import { certificatesOf, returnedOf } from '../../standing/returned.ts';
import {
  type Columns,
  depth,
  instant,
  integer,
  number,
  optional,
  text,
  type Value,
  yesNo,
} from './column.ts';
import { HOLE } from './holes.ts';
import { defineTable, holesOf, type Source, type Table, type WiderRow } from './table.ts';

const BELOW =
  'under the detection limit it is what the project counts such a result as (see the table project), and below_limit is the limit; over the range it is the upper limit';

/** Every reported value. */
export const RESULTS = defineTable({
  name: 'results',
  about:
    'What the laboratory reported: one row for each line of a certificate and each analyte, superseded ones too.',
  key: ['certificate', 'line', 'analyte'],
  rank: 'Of one sample and analyte the row with the status counts is the one that counts; there is one at most.',
  columns: {
    certificate: text('Id of the certificate'),
    line: integer('Line of the laboratory’s file, from 1'),
    analyte: text('What was measured'),
    sample: text('Number as the laboratory reports it'),
    hole: optional(HOLE, 'no bag of the project has this number, or it is the laboratory’s own'),
    status: text(
      'counts; superseded (the certificate was issued again); second report (the first one counts); laboratory repeat, duplicate, standard or blank; or not readable as the project is set up now',
    ),
    state: text('measured, below detection, over range, or not reported'),
    value: optional(
      { ...number('The value in the column unit'), belowDetection: BELOW },
      'not reported, or not readable',
    ),
    unit: text('Unit that the project counts in'),
    below_limit: optional(
      number('Detection limit that it is under, in the column unit'),
      'not under a limit',
    ),
    above_limit: optional(number('Upper limit that it is over, in the column unit'), 'not over a limit'),
    reported: optional(text('As the laboratory wrote it'), 'nothing is there'),
    reported_unit: text('Unit of the laboratory’s column'),
    repeats: optional(
      text('Number that the laboratory’s own repeat or duplicate repeats'),
      'it repeats none',
    ),
    file: text('Name of the laboratory’s file'),
    taken_in_at: instant('When it was taken in'),
  },
  rows: (source) => {
    const known = knownOf(source);
    return certificatesOf(source.documents).flatMap((certificate) =>
      certificate.lines.flatMap((line) => lineRows(source, certificate, line, known)),
    );
  },
});

/** What tells the status of a line: the hole of each number, the holes whose rows are written, the lines that count. */
interface Known {
  readonly holeOf: ReadonlyMap<string, string>;
  readonly wanted: (certificate: Certificate, number: string) => boolean;
  readonly counting: ReadonlySet<string>;
  readonly current: ReadonlySet<string>;
}

const lineKey = (certificate: Certificate, { line }: ReportedLine): string => `${certificate.id} ${line}`;

function knownOf({ project, documents, of }: Source): Known {
  const holeOf = new Map(
    holesOf({ of: documents }).flatMap((hole) =>
      holeNouns(hole, 'bags').map((bag) => [bag.number, hole.id] as const),
    ),
  );
  const written = new Set(holesOf({ of }).map((hole) => hole.id));
  const inHand = new Set(of.map((document) => document.id));
  const { certificates, byNumber } = returnedOf(project, documents);
  const left = new Map([...byNumber].map(([number, assay]) => [number, assay.certificate]));
  const counting = new Set<string>();
  for (const certificate of certificates)
    for (const line of certificate.lines) {
      const columns = columnsOf(project.sampling, certificate);
      const own = ownSampleOf(columns, line) !== undefined;
      if (own || left.get(line.number) !== certificate.id || typeof assayOf(columns, line) === 'string')
        continue;
      left.delete(line.number);
      counting.add(lineKey(certificate, line));
    }
  return {
    holeOf,
    counting,
    current: new Set(certificates.map((each) => each.id)),
    wanted: (certificate, number) => inHand.has(certificate.id) || written.has(holeOf.get(number) ?? ''),
  };
}

function lineRows({ project }: Source, certificate: Certificate, line: ReportedLine, known: Known) {
  const columns = columnsOf(project.sampling, certificate);
  if (!known.wanted(certificate, line.number)) return [];
  const own = ownSampleOf(columns, line);
  const assay = assayOf(columns, line);
  const status = statusOf(
    certificate,
    line,
    known,
    own === undefined ? undefined : own.rule.is,
    typeof assay === 'string',
  );
  return columns.analytes.map(({ column, analyte, unit, countedIn }) => {
    const value = typeof assay === 'string' ? undefined : assay.values[analyte];
    return {
      certificate: certificate.id,
      line: line.line,
      analyte,
      sample: line.number,
      hole: own === undefined ? known.holeOf.get(line.number) : undefined,
      status,
      state: stateOf(value),
      value: value?.value,
      unit: countedIn ?? unit,
      below_limit: value?.belowLimit,
      above_limit: value?.aboveLimit,
      reported: line.reported[column],
      reported_unit: unit,
      repeats: own?.of,
      file: certificate.file,
      taken_in_at: certificate.takenInAt,
    };
  });
}

function statusOf(
  certificate: Certificate,
  line: ReportedLine,
  { counting, current }: Known,
  own: string | undefined,
  unreadable: boolean,
): string {
  if (!current.has(certificate.id)) return 'superseded';
  if (unreadable) return 'not readable';
  if (own !== undefined) return `laboratory ${own}`;
  return counting.has(lineKey(certificate, line)) ? 'counts' : 'second report';
}

function stateOf(value: AssayValue | undefined): string {
  if (value === undefined) return 'not reported';
  if (value.belowLimit !== undefined) return 'below detection';
  return value.aboveLimit === undefined ? 'measured' : 'over range';
}

/** Results by interval. */
export const ASSAYS: Table = {
  name: 'assays',
  about:
    'Results that count over the metres of their samples: one row a sample, the columns of an analyte beside each other. Single metres and composites both stand.',
  key: ['hole', 'from_m', 'to_m', 'sample'],
  rank: 'A single metre counts before a composite; a composite counts until each metre of it has a result of its own. What counts is marked in the column best.',
  columns: {
    hole: HOLE,
    from_m: depth('Top of the sample'),
    to_m: depth('Bottom of the sample'),
    sample: text('Number on the calico'),
    rank: text('metre or composite'),
    best: yesNo('It is the best there is over its metres'),
  },
  wider: {
    about:
      'three for each analyte that the project reads: its value with the unit in the name, its state, its detection limit',
    columns: (source) => Object.assign({}, ...analytesOf(source).map((each) => analyteColumns(source, each))),
  },
  rows: (source) => {
    const { byNumber } = returnedOf(source.project, source.documents);
    return holesOf(source).flatMap((hole) =>
      resultsByMetre(holeNouns(hole, 'bags'), byNumber, source.project.sampling.rank).map(
        ({ fromMm, toMm, number: sample, rank, best, values }): WiderRow => ({
          hole: hole.id,
          from_m: metres(fromMm),
          to_m: metres(toMm),
          sample,
          rank,
          best,
          ...Object.assign(
            {},
            ...analytesOf(source).map((each) => analyteValues(source, each, values[each])),
          ),
        }),
      ),
    );
  },
};

function analytesOf({ project, documents }: Source): readonly string[] {
  const now = (project.sampling.results?.analytes ?? []).map((each) => each.analyte);
  const then = returnedOf(project, documents).certificates.flatMap((each) =>
    each.columns.map((column) => column.analyte),
  );
  return [...new Set([...now, ...then])];
}

/** A unit as part of a name: `g/t` is `g_per_t`, `%` is `percent`. */
function unitName(columns: ResultColumns | undefined, analyte: string): string {
  const unit = countedUnit(columns, analyte)
    .replaceAll('/', '_per_')
    .replaceAll('%', 'percent')
    .replaceAll('μ', 'u');
  return unit === '' ? 'value' : unit;
}

function analyteColumns({ project }: Source, analyte: string): Columns {
  const { results } = project.sampling;
  const unit = countedUnit(results, analyte);
  const none = 'not reported';
  return {
    [`${analyte}_${unitName(results, analyte)}`]: optional(
      { ...number(`${analyte}: the value`, unit === '' ? undefined : unit), belowDetection: BELOW },
      none,
    ),
    [`${analyte}_state`]: text(`${analyte}: measured, below detection, over range, or not reported`),
    [`${analyte}_limit`]: optional(
      number(`${analyte}: the limit that it is under or over`, unit === '' ? undefined : unit),
      'measured, or not reported',
    ),
  };
}

function analyteValues(
  { project }: Source,
  analyte: string,
  value: AssayValue | undefined,
): Record<string, Value> {
  return {
    [`${analyte}_${unitName(project.sampling.results, analyte)}`]: value?.value,
    [`${analyte}_state`]: stateOf(value),
    [`${analyte}_limit`]: value?.belowLimit ?? value?.aboveLimit,
  };
}
