import type { Outside } from '../desk/outside.ts';
import { type Finding, formatFinding } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { qualityLines } from '../sampling/laboratory/charts-text.ts';
import { type OwnAssay, ownSampleWords } from '../sampling/laboratory/own-samples.ts';
import { type Quality, qualityOf } from '../sampling/laboratory/quality.ts';
import { qualityPage } from '../sampling/laboratory/quality-page.ts';
import type { Certificate } from '../sampling/laboratory/results-noun.ts';
import { notReturned } from '../sampling/laboratory/returned.ts';
import { conversionWords } from '../sampling/laboratory/units.ts';
import { bagsOfHoles, dispatchesOf } from '../standing/dispatches.ts';
import { certificatesOf, returnedFindings, returnedOf } from '../standing/returned.ts';
import { type AtProject, atProject, type Shared } from './at-project.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';
import { takeCertificate } from './take-certificate.ts';

/** What `offsider results` is given. */
export interface ResultsAsked extends Shared {
  /** A CSV of the laboratory to take in first. */
  readonly file?: string | undefined;
  /** The laboratory's number of it; the file's name without its ending if none is given. */
  readonly certificate?: string | undefined;
  readonly supersedes?: string | undefined;
  /** Take the lines in that can be read, though others can't. */
  readonly keepGoing: boolean;
  readonly as: 'text' | 'html' | 'json';
}

/** Takes a certificate in where one is given; then says what came back and what the controls say of it. 1 where something is found. */
export function results(outside: Outside, asked: ResultsAsked): Promise<number> {
  const { file } = asked;
  return atProject(outside, { ...asked, write: file !== undefined }, async (at) => {
    if (file !== undefined) {
      const refusals = await takeCertificate(at, { ...asked, file });
      if (refusals !== undefined) return refuse(outside, ...refusals);
    }
    return tell(at, asked.as);
  });
}

/** What came back, its controls and what was found, as read from the documents. */
interface View {
  readonly head: readonly string[];
  readonly quality: Quality;
  readonly findings: readonly Finding[];
}

function tell({ outside, desk, project }: AtProject, as: ResultsAsked['as']): number {
  const documents = [...desk.documents().values()];
  const view = viewOf(project, documents);
  if (as === 'html') {
    const title = `Returned results of ${project.settings.name}`;
    sayFile(outside, qualityPage({ title, lines: view.head }, view.quality, view.findings));
  } else if (as === 'json') sayJson(outside, { certificates: certificatesOf(documents), ...view });
  else say(outside, textOf(view));
  return view.findings.some((each) => each.severity !== 'note') ? EXIT.findings : EXIT.fine;
}

function viewOf(project: AtProject['project'], documents: readonly Document[]): View {
  const returned = returnedOf(project, documents);
  const bags = bagsOfHoles(documents);
  const dispatches = dispatchesOf(documents);
  const missing = notReturned(dispatches, returned);
  const counts = new Set(returned.certificates.map((each) => each.id));
  const certificates = certificatesOf(documents).flatMap((each) =>
    certificateLines(
      each,
      counts.has(each.id),
      returned.own.filter(({ certificate }) => certificate === each.id),
    ),
  );
  const sent = dispatches.reduce(
    (sum, each) => sum + each.sacks.reduce((bagged, sack) => bagged + sack.bags.length, 0),
    0,
  );
  const units = (project.sampling.results?.analytes ?? []).map(
    ({ column, unit, countedIn }) => `${column} in ${conversionWords(unit, countedIn ?? unit)}`,
  );
  return {
    head: [
      ...(certificates.length === 0
        ? ['No results came back yet: offsider results <file.csv>']
        : certificates),
      ...(sent === 0 ? [] : [`${sent - missing.length} of ${sent} bags sent have a result.`]),
      ...(certificates.length === 0 || units.length === 0
        ? []
        : [`${units.join('; ')}. Under detection counts as ${project.sampling.results?.belowDetection}.`]),
    ],
    quality: qualityOf(project.sampling, bags, [...returned.byNumber.values()]),
    findings: returnedFindings(project, documents),
  };
}

function certificateLines(each: Certificate, counts: boolean, own: readonly OwnAssay[]): readonly string[] {
  const { id, lines, takenInAt, takenInBy, file, supersedes, sha256 } = each;
  const place = supersedes === undefined ? '' : `, in place of ${supersedes}`;
  const standing = counts ? '' : ' (superseded: kept, does not count)';
  return [
    `${id}: ${lines.length - own.length} samples${own.length === 0 ? '' : `; ${ownSampleWords(own)}`}, taken in ${takenInAt.slice(0, 10)} by ${takenInBy}${place}${standing}`,
    `  from ${file}, SHA-256 ${sha256.slice(0, 16)}…`,
  ];
}

function textOf({ head, quality, findings }: View): string {
  const controls = qualityLines(quality);
  return [
    ...head,
    ...(controls.length === 0 ? [] : ['', ...controls]),
    ...(findings.length === 0
      ? []
      : ['', 'Found:', ...findings.map((each) => `${each.severity}: ${formatFinding(each)}`)]),
  ].join('\n');
}
