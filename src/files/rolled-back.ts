import type { Finding } from '../finding/finding.ts';
import type { Migration } from '../formats/upgrade.ts';
import type { Document } from '../record/document.ts';
import type { Disk } from './disk.ts';
import { broughtForward, rolledBack } from './findings.ts';
import { linesByDocument, linesInOrder } from './fold.ts';
import { type Generation, readPast } from './journal.ts';
import { workWords } from './journal-findings.ts';
import { holdsHead, type WorkLine } from './journal-line.ts';
import type { FoundFile } from './list-documents.ts';
import { MISFIT } from './load-document.ts';
import { type FoundDocument, readFound } from './read-found.ts';

/** What is read again where a file was rolled back. */
export interface RolledBackNeeds {
  readonly disk: Disk;
  readonly folder: string;
  readonly generations: readonly Generation[];
  readonly migrations: readonly Migration[];
  /** The end of each document's history as the journal saw it last, by key. */
  readonly heads: Readonly<Record<string, string>>;
}

/** Documents as found, with those whose files were rolled back brought up to date where what is kept of the journal reaches back so far. */
export async function bringForward(
  needs: RolledBackNeeds,
  found: readonly { readonly file: FoundFile; readonly found: FoundDocument }[],
): Promise<{
  readonly found: readonly { readonly file: FoundFile; readonly found: FoundDocument }[];
  /** The ends of histories that are in no file and in no journal, by key. */
  readonly lacking: ReadonlyMap<string, string>;
}> {
  const isBehind = ({ file, found: each }: (typeof found)[number]): boolean =>
    each.closed === MISFIT || lacksHead(each, needs.heads[file.key]);
  const lacking = new Map<string, string>();
  if (!found.some(isBehind)) return { found, lacking };
  const past = await readPast(needs.disk, needs.folder);
  const lines = linesByDocument(linesInOrder([...past, ...needs.generations]).lines);
  const all: { readonly file: FoundFile; readonly found: FoundDocument }[] = [];
  for (const each of found) {
    if (!isBehind(each)) all.push(each);
    else {
      const { file } = each;
      const again = await fromPast(needs, file, lines.get(file.key) ?? []);
      const head = needs.heads[file.key];
      if (again === undefined && head !== undefined && each.found.closed === undefined)
        lacking.set(file.key, head);
      all.push({
        file,
        found: again ?? withFinding(each.found, lacking.has(file.key) ? [olderFinding(file)] : []),
      });
    }
  }
  return { found: all, lacking };
}

/** The document with all that the journal ever held of it; undefined where that does not reach from the file to its last known end. */
async function fromPast(
  { disk, folder, migrations, heads }: RolledBackNeeds,
  file: FoundFile,
  lines: readonly WorkLine[],
): Promise<FoundDocument | undefined> {
  const again = await readFound(disk, folder, file, lines, migrations);
  const { loaded, closed } = again;
  if (loaded === undefined || closed !== undefined || lacksHead(again, heads[file.key])) return undefined;
  // What the journal was ahead with is said here, and not once more as what a killed console left.
  const { folded = [], ...rest } = loaded;
  return withFinding({ ...again, loaded: rest }, [forwardFinding(file, folded)]);
}

function lacksHead({ loaded }: FoundDocument, head: string | undefined): boolean {
  if (loaded === undefined || head === undefined) return false;
  const has = (document: Document | undefined) => document !== undefined && holdsHead(document.history, head);
  return !has(loaded.document) && !has(loaded.copy);
}

function withFinding(found: FoundDocument, findings: readonly Finding[]): FoundDocument {
  return { ...found, findings: [...found.findings, ...findings] };
}

function olderFinding({ file }: FoundFile): Finding {
  return rolledBack.at(
    { file },
    {
      problem: 'it is older than when it was last written: edits that were shown as saved are not in it',
      remedy:
        'Something laid an older copy over it. Put the later one back, or take one in with receive: a bundle from the outbox, another laptop’s copy. You can log on: both are merged then. If the older one is right: Enter on the screen of what was found (Ctrl-F), or offsider recover, with the reason.',
    },
  );
}

/** As many edits are named, the latest of them. */
const MOST_NAMED = 20;

function forwardFinding({ file }: FoundFile, lines: readonly WorkLine[]): Finding {
  const { length } = lines;
  return broughtForward.at(
    { file },
    {
      ...(length === 0 ? {} : { excerpt: lines.slice(-MOST_NAMED).map(workWords).join('; ').slice(0, 400) }),
      problem: `an older copy was laid over this file while no console was open; ${length === 1 ? 'the edit' : `the ${length} edits`} that it lacked ${length === 1 ? 'is' : 'are'} put back from the journal`,
      remedy:
        'Nothing is lost. Look for what lays old copies over files: a sync program, a backup, a colleague.',
    },
  );
}
