import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { type Dispatch, sentNumbers } from '../dispatch/dispatch-noun.ts';
import { resultMissing, resultTwice, resultUnreadable } from '../findings.ts';
import type { Sampling } from '../sampling.ts';
import { checkOwnSamples, type OwnAssay, ownSampleOf } from './own-samples.ts';
import { checkResults } from './results-check.ts';
import { checkMapping } from './results-mapping.ts';
import { type Certificate, counting } from './results-noun.ts';
import { type Assay, assayOf, type ResultColumns } from './results-read.ts';

/** A result with the certificate that it is on. */
interface ReturnedAssay extends Assay {
  readonly certificate: string;
}

/** What came back: the certificates that count, every result on them in the laboratory's order, and the one that counts for each number. */
export interface Returned {
  readonly certificates: readonly Certificate[];
  readonly all: readonly ReturnedAssay[];
  readonly byNumber: ReadonlyMap<string, ReturnedAssay>;
  /** The laboratory's own samples, which are no bag's. */
  readonly own: readonly OwnAssay[];
  readonly findings: readonly Finding[];
}

/** Results of certificates as the project reads them today. Of two results of one number the first counts, and the other is found. */
export function returnedResults(sampling: Sampling, certificates: readonly Certificate[]): Returned {
  const now = counting(certificates);
  const all: ReturnedAssay[] = [];
  const byNumber = new Map<string, ReturnedAssay>();
  const own: OwnAssay[] = [];
  const findings: Finding[] = [];
  for (const certificate of now) {
    for (const line of certificate.lines) {
      const columns = columnsOf(sampling, certificate);
      const read = assayOf(columns, line);
      if (typeof read === 'string') {
        findings.push(noLongerRead(certificate, line.line, line.number, read));
        continue;
      }
      const assay = { ...read, certificate: certificate.id };
      const known = ownSampleOf(columns, line);
      if (known !== undefined) {
        own.push({ ...assay, ...known });
        continue;
      }
      const before = byNumber.get(assay.number);
      if (before === undefined) byNumber.set(assay.number, assay);
      else findings.push(twice(before, assay));
      all.push(assay);
    }
  }
  return { certificates: now, all, byNumber, own, findings };
}

const NO_MAPPING: ResultColumns = { sample: '', analytes: [], belowDetection: 'half the limit' };

/**
 * How a certificate is read: columns and units as they were mapped when it came, what they are counted in and all else by the project of
 * today.
 */
export function columnsOf(sampling: Sampling, certificate: Certificate): ResultColumns {
  return {
    ...(sampling.results ?? NO_MAPPING),
    analytes: certificate.columns.map((column) => {
      const today = sampling.results?.analytes.find((each) => each.analyte === column.analyte);
      const countedIn = today?.countedIn ?? today?.unit;
      return { ...column, ...(countedIn === undefined ? {} : { countedIn }) };
    }),
  };
}

function noLongerRead(certificate: Certificate, line: number, number: string, why: string): Finding {
  return resultUnreadable.at(
    { file: certificate.file, line, thing: `sample ${number}` },
    {
      problem: `This result can't be read as the project is set up now: ${why}.`,
      remedy: 'Correct the mapping in project.json, sampling.results: the certificate is kept as it came.',
    },
  );
}

function twice(before: ReturnedAssay, assay: ReturnedAssay): Finding {
  const where =
    before.certificate === assay.certificate
      ? `twice on ${assay.certificate}`
      : `on ${before.certificate} and on ${assay.certificate}`;
  return resultTwice.at(
    { thing: `sample ${assay.number}` },
    {
      problem: `${assay.number} is reported ${where}; the first counts.`,
      remedy:
        'Ask the laboratory whether two calicos bear it. A certificate that was issued again is taken in with --supersedes.',
    },
  );
}

/** Everything that is wrong with returned results: the mapping, their numbers, what the controls say. Nothing where none came. */
export function checkReturned(
  sampling: Sampling,
  bags: readonly Bag[],
  dispatches: readonly Dispatch[],
  certificates: readonly Certificate[],
): readonly Finding[] {
  if (certificates.length === 0) return checkMapping(sampling);
  const returned = returnedResults(sampling, certificates);
  return [
    ...checkMapping(sampling),
    ...returned.findings,
    ...returned.certificates.flatMap((each) => leftOut(each, dispatches, returned)),
    ...checkResults(sampling, bags, [...returned.byNumber.values()]),
    ...checkOwnSamples(returned.own, returned.byNumber),
  ];
}

/** Numbers that were sent between the first and the last that a certificate reports, and that no certificate has. */
function leftOut(
  certificate: Certificate,
  dispatches: readonly Dispatch[],
  returned: Returned,
): readonly Finding[] {
  const here = new Set(certificate.lines.map((line) => line.number));
  return dispatches.flatMap((dispatch) => {
    const sent = sentNumbers(dispatch);
    const reported = sent.flatMap((number, index) => (here.has(number) ? [index] : []));
    const between = sent.slice(reported[0] ?? 0, (reported.at(-1) ?? -1) + 1);
    const missing = between.filter((number) => !returned.byNumber.has(number));
    if (missing.length === 0) return [];
    return [
      resultMissing.at(
        { thing: `certificate ${certificate.id}` },
        {
          excerpt: missing.join(', '),
          problem: `${missing.length} of dispatch ${dispatch.name} ${missing.length === 1 ? 'is' : 'are'} left out between the numbers that it reports.`,
          remedy: 'Ask the laboratory for them before the batch is cleared away.',
        },
      ),
    ];
  });
}

/** Numbers of dispatches that have no result yet. */
export function notReturned(dispatches: readonly Dispatch[], returned: Returned): readonly string[] {
  return dispatches.flatMap(sentNumbers).filter((number) => !returned.byNumber.has(number));
}
