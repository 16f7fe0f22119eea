import { documentPath } from '../files/document-file.ts';
import { journalAhead as ahead, copyRefused } from '../files/findings.ts';
import { workWords } from '../files/journal-findings.ts';
import type { LoadedDocument } from '../files/load-document.ts';
import type { Finding } from '../finding/finding.ts';

/** As many edits are named, the latest of them; the rest is counted. */
const MOST_NAMED = 20;

/** Of every document of which the journal held more than the file: which edits, so that a person can look at each. */
export function journalAhead(documents: ReadonlyMap<string, LoadedDocument>): readonly Finding[] {
  return [...documents.values()].flatMap(({ document, folded }) => {
    if (folded === undefined || folded.length === 0) return [];
    const { length } = folded;
    const named = folded.slice(-MOST_NAMED).map(workWords);
    const more = length > named.length ? `${length - named.length} before; ` : '';
    return [
      ahead.at(
        { file: documentPath(document) },
        {
          excerpt: `${more}${named.join('; ')}`,
          problem: `${length === 1 ? 'one edit was' : `${length} edits were`} saved in the journal and not yet in this file`,
          remedy: 'Nothing to do: they are in the log, and the file is written at the next pause.',
        },
      ),
    ];
  });
}

/** A copy found in the place of a file that can't be taken in. */
export function notTakenIn(file: string, problem: string): Finding {
  return copyRefused.at(
    { file },
    {
      problem: `another copy lay in the place of this file and could not be taken in: ${problem}`,
      remedy: 'Ours is kept. The copy as found is in journal/kept: find out where it came from.',
    },
  );
}
