import { createHash } from 'node:crypto';
import type { Finding } from '../finding/finding.ts';
import { chainFault, replay } from '../record/chain.ts';
import type { Document } from '../record/document.ts';
import { difference } from '../record/outside.ts';
import type { FileFacts } from './disk.ts';
import type { JournalPosition, StoredDocument } from './document-file.ts';
import { brokenHistory, copiesMerged, editedOutside, journalMisfit } from './findings.ts';
import { foldLines } from './fold.ts';
import type { WorkLine } from './journal-line.ts';

/** Why a document can't be written whose file is older, or another, than what the journal follows on from. */
export const MISFIT = 'the journal holds saved edits that do not fit its file';

/** A document with its journal folded in. */
export interface LoadedDocument {
  readonly document: Document;
  /** A copy to be taken in: the file as it was edited outside, or another copy that was laid over it. */
  readonly copy?: Document;
  readonly position: JournalPosition;
  /** The first sequence that its file does not hold; undefined where it holds everything. */
  readonly firstMissing?: number;
  /** Lines of the journal that its file did not hold yet; left out where that says nothing of how the last console ended. */
  readonly folded?: readonly WorkLine[];
  /** Its file as it was when it was read, to see whether someone else writes it meanwhile. */
  readonly facts?: FileFacts;
}

/** A document made of its file and its lines of the journal; `closed` says why no one may write to it. */
export function loadDocument(
  file: string,
  stored: StoredDocument,
  lines: readonly WorkLine[],
): { readonly loaded: LoadedDocument; readonly closed?: string; readonly findings: readonly Finding[] } {
  const { document: found, position } = stored;
  const truth = truthOf(found);
  if ('problem' in truth) {
    return {
      loaded: { document: found, position },
      closed: 'its history has been changed',
      findings: [historyFinding(file, found, truth.index, truth.problem)],
    };
  }
  const folded = foldLines(truth.made, lines);
  const { edited } = truth;
  const copy = edited || folded.copy !== undefined ? found : undefined;
  return {
    loaded: {
      document: folded.document,
      position,
      ...(copy === undefined ? {} : { copy }),
      ...(folded.firstMissing === undefined
        ? {}
        : { firstMissing: folded.firstMissing, folded: linesFrom(folded.firstMissing, lines) }),
    },
    ...(folded.misfit === undefined ? {} : { closed: MISFIT }),
    findings: [
      ...(edited ? [editedFinding(file)] : []),
      ...(folded.copy === undefined ? [] : [mergedFinding(file)]),
      ...(folded.misfit === undefined ? [] : [misfitFinding(file, folded.misfit)]),
    ],
  };
}

function linesFrom(first: number, lines: readonly WorkLine[]): readonly WorkLine[] {
  return lines.filter((line) => line.seq >= first);
}

/** A document with the tables that its history makes, and whether those in its file are others; or what is wrong with it. */
type Truth =
  | { readonly made: Document; readonly edited: boolean }
  | { readonly index: number; readonly problem: string };

/** Found once for a document: it is not changed, and the same one is read again where its file has the same bytes. */
const truths = new WeakMap<Document, Truth>();

function truthOf(document: Document): Truth {
  const found = truths.get(document) ?? findTruth(document);
  truths.set(document, found);
  return found;
}

function findTruth(document: Document): Truth {
  const fault = chainFault(document.history, digestOf);
  if (fault !== undefined) return fault;
  try {
    const tables = replay(document.history);
    return { made: { ...document, tables }, edited: difference(tables, document.tables).length > 0 };
  } catch (error) {
    return { index: -1, problem: error instanceof Error ? error.message : String(error) };
  }
}

function historyFinding(file: string, document: Document, index: number, problem: string): Finding {
  const entry = document.history[index];
  return brokenHistory.at(
    { file, field: index < 0 ? 'history' : `history.${index}` },
    {
      ...(entry === undefined ? {} : { excerpt: `${entry.at} ${entry.by}: ${entry.what}` }),
      problem: index < 0 ? problem : `entry ${index + 1} of the history: ${problem}`,
      remedy:
        'Put back a copy from before the change. The file can be read and not written; nothing was changed.',
    },
  );
}

function editedFinding(file: string): Finding {
  return editedOutside.at(
    { file },
    {
      problem: 'its tables are not what its history makes: it was edited outside offsider',
      remedy:
        'The change is taken in as "edited outside": look at it in the history; ;u takes it back in this sitting. The file as it was found is in journal/kept.',
    },
  );
}

function mergedFinding(file: string): Finding {
  return copiesMerged.at(
    { file },
    {
      problem: 'another copy was laid over this file while the journal still held edits of ours',
      remedy: 'Both are merged, nothing is lost. Look for open questions in the hole.',
    },
  );
}

function misfitFinding(file: string, misfit: { readonly seq: number; readonly problem: string }): Finding {
  return journalMisfit.at(
    { file },
    {
      excerpt: `edit ${misfit.seq} of the journal`,
      problem: `the journal holds a saved edit that does not fit this file: ${misfit.problem}`,
      remedy:
        'An older copy was put back over it: put the later copy back. It can be read and not written; nothing was changed.',
    },
  );
}

/** SHA-256 of bytes or of a text's UTF-8 bytes, in lower-case hex; the machine's own, which is ten times as fast as one in JavaScript. */
export function digestOf(data: Uint8Array | string): string {
  return createHash('sha256').update(data).digest('hex');
}
