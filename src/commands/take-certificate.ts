import { extname } from 'node:path';
import { takeResults } from '../acts/results.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import type { Finding } from '../finding/finding.ts';
import { resultsRefused } from '../sampling/findings.ts';
import { checkMapping } from '../sampling/laboratory/results-mapping.ts';
import { readResults } from '../sampling/laboratory/results-read.ts';
import type { AtProject } from './at-project.ts';
import { readCsvFile } from './csv-file.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { sayAside, sayTrouble } from './say.ts';

/** A certificate to take in. */
export interface CertificateAsked {
  readonly file: string;
  readonly certificate?: string | undefined;
  readonly supersedes?: string | undefined;
  readonly keepGoing: boolean;
}

/**
 * Takes a certificate in from its CSV, in one edit, and says so on stderr, so that what follows on stdout is the results alone. Gives the
 * reasons where it is refused, with nothing changed; undefined where it is in, or was before.
 */
export async function takeCertificate(
  at: AtProject,
  asked: CertificateAsked,
): Promise<readonly Finding[] | undefined> {
  const { desk, project, outside } = at;
  const columns = project.sampling.results;
  if (columns === undefined) return [noMapping(asked.file)];
  const mapping = checkMapping(project.sampling).filter((each) => each.severity === 'fault');
  if (mapping.length > 0) return mapping;
  const csv = await readCsvFile(asked.file);
  if (!csv.ok) return csv.findings;
  const { file, sha256, records } = csv.value;
  const read = readResults(columns, records, file);
  const spoiled = read.findings.some((each) => each.code !== 'result-unreadable');
  if (read.findings.length > 0 && (spoiled || !asked.keepGoing))
    return spoiled ? read.findings : [...read.findings, keepGoing(file, read.findings.length)];
  const certificate = asked.certificate ?? file.slice(0, file.length - extname(file).length);
  const said = { certificate, file, sha256, lines: read.lines, supersedes: asked.supersedes };
  const taken = takeResults(desk.documents().values(), columns, said, makerOf(desk));
  if (!taken.ok) return taken.findings;
  if (read.findings.length > 0) sayTrouble(outside, { findings: read.findings });
  if ('already' in taken.value) {
    sayAside(outside, `This file is taken in already, as ${taken.value.already}. Nothing was changed.`);
    return undefined;
  }
  const { document, made } = taken.value.madeOn;
  const submitted = desk.submit({ what: made.what, parts: [{ document, changes: made.changes }] });
  const saved = await untilSaved(desk, submitted);
  if (saved.ok) return undefined;
  return [wrongUse.at({ file }, { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') })];
}

function noMapping(file: string): Finding {
  return resultsRefused.at(
    { file },
    {
      problem: 'project.json does not say how the columns of a certificate are read',
      remedy:
        'Write sampling.results: the heading of the sample numbers, and for each analyte its column and unit. Nothing was changed.',
    },
  );
}

function keepGoing(file: string, lines: number): Finding {
  return resultsRefused.at(
    { file },
    {
      problem: `${lines} ${lines === 1 ? 'line' : 'lines'} can't be read, so nothing was taken in`,
      remedy: 'Fix them, or give --keep-going to leave them out.',
    },
  );
}
