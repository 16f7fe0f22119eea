import { ok, type Result, refused } from '../finding/finding.ts';
import type { Maker } from '../hole/commands/made.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { identifierFault } from '../record/identifiers.ts';
import { resultsRefused } from '../sampling/findings.ts';
import { certificateOf, counting, type ReportedLine } from '../sampling/laboratory/results-noun.ts';
import type { ResultColumns } from '../sampling/laboratory/results-read.ts';
import type { MadeOn } from './shift.ts';

/** A certificate that arrived, read. */
export interface CertificateSaid {
  /** The laboratory's number of it. */
  readonly certificate: string;
  readonly file: string;
  readonly sha256: string;
  readonly lines: readonly ReportedLine[];
  /** Id of the certificate that it is issued again for; of the same number, if none is given. */
  readonly supersedes?: string | undefined;
}

/** What came of a certificate: an edit that takes it in, or the one that holds the same file already. */
export type Taking = { readonly madeOn: MadeOn; readonly supersedes?: string } | { readonly already: string };

/**
 * Takes a certificate in, beside those there are: none is written over. One of a number that is there already was issued again: it
 * supersedes that one, which stays. The same file twice changes nothing. Refused where what it is said to supersede is not there or is
 * superseded already, and where it holds no result.
 */
export function takeResults(
  documents: Iterable<Document>,
  columns: ResultColumns,
  said: CertificateSaid,
  maker: Maker,
): Result<Taking> {
  const there = [...documents].filter((document) => document.kind === 'results').map(certificateOf);
  const same = there.find((each) => each.sha256 === said.sha256);
  if (same !== undefined) return ok({ already: same.id });
  if (said.lines.length === 0)
    return refused(
      cannot(said.file, 'it holds no result', 'Give the CSV with the results. Nothing was changed.'),
    );
  const now = counting(there);
  const again =
    said.supersedes?.toUpperCase() ?? now.find((each) => each.certificate === said.certificate)?.id;
  if (again !== undefined && !now.some((each) => each.id === again)) {
    const names = now.map((each) => each.id).join(', ');
    return refused(
      cannot(
        said.file,
        `no certificate ${again} counts that it could supersede`,
        names === '' ? 'None is there yet.' : `There are ${names}.`,
      ),
    );
  }
  const id = freeId(said.certificate, new Set(there.map((each) => each.id)));
  const { certificate, file, sha256, lines } = said;
  const header: Thing = {
    certificate,
    file,
    sha256,
    takenInAt: maker.at,
    takenInBy: maker.by,
    columns: columns.analytes.map(({ column, analyte, unit }) => ({ column, analyte, unit })),
    ...(again === undefined ? {} : { supersedes: again }),
  };
  const put = (line: ReportedLine): Change => ({
    put: ['lines', maker.newId()],
    thing: { ...line } as Thing,
  });
  return ok({
    madeOn: {
      document: { kind: 'results', id },
      made: {
        what: `certificate ${certificate} taken in: ${lines.length} results${again === undefined ? '' : `, in place of ${again}`}`,
        changes: [{ put: ['certificate', 'certificate'], thing: header }, ...lines.map(put)],
      },
    },
    ...(again === undefined ? {} : { supersedes: again }),
  });
}

/** An id made of the laboratory's number, one that a file can have and no other certificate has. */
function freeId(certificate: string, taken: ReadonlySet<string>): string {
  const plain = certificate
    .toUpperCase()
    .replace(/[^A-Z0-9_-]+/g, '-')
    .replace(/^[^A-Z0-9]+/, '')
    .slice(0, 34);
  const base = identifierFault(plain) === undefined ? plain : `C-${plain}`;
  for (let count = 1; ; count += 1) {
    const id = count === 1 ? base : `${base}-${count}`;
    if (!taken.has(id)) return id;
  }
}

function cannot(file: string, problem: string, remedy: string) {
  return resultsRefused.at({ file }, { problem, remedy });
}
