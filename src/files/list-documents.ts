import { join } from 'node:path';
import type { Finding } from '../finding/finding.ts';
import { type DocumentName, documentKey } from '../record/document.ts';
import { identifierFault } from '../record/identifiers.ts';
import { type Disk, isMissing } from './disk.ts';
import { DOCUMENT_KINDS, documentKind } from './document-file.ts';
import { foreignFile } from './findings.ts';
import { isTemporaryName } from './write-durably.ts';

/** A document's file in its folder. */
export interface FoundFile {
  readonly name: DocumentName;
  readonly key: string;
  /** From the top of the project: `holes/ZQRC004.json`. */
  readonly file: string;
}

/** Every document's file of a project, the temporary files that an interrupted write left, and what is foreign. */
export async function listDocumentFiles(
  disk: Disk,
  folder: string,
): Promise<{
  readonly files: readonly FoundFile[];
  readonly leftovers: readonly string[];
  readonly findings: readonly Finding[];
}> {
  const files: FoundFile[] = [];
  const leftovers: string[] = [];
  const findings: Finding[] = [];
  for (const [kind, { folder: room }] of Object.entries(DOCUMENT_KINDS)) {
    for (const entry of await namesIn(disk, join(folder, room))) {
      const file = `${room}/${entry}`;
      const id = entry.endsWith('.json') ? entry.slice(0, -'.json'.length) : undefined;
      const fault = id === undefined ? 'its name does not end in .json' : identifierFault(id);
      if (isTemporaryName(entry)) leftovers.push(file);
      else if (id === undefined || fault !== undefined) findings.push(foreign(file, fault ?? ''));
      else {
        const name = { kind, id };
        files.push({ name, key: documentKey(name), file });
      }
    }
  }
  return { files, leftovers, findings };
}

async function namesIn(disk: Disk, folder: string): Promise<readonly string[]> {
  try {
    return await disk.list(folder);
  } catch (error) {
    if (isMissing(error)) return [];
    throw error;
  }
}

/** The name that a document's key stands for; undefined where it is none of a kind that we keep. */
export function nameFromKey(key: string): DocumentName | undefined {
  const slash = key.indexOf('/');
  const name = { kind: key.slice(0, slash), id: key.slice(slash + 1) };
  return documentKind(name.kind) !== undefined && identifierFault(name.id) === undefined ? name : undefined;
}

/** The document that a file of the project is of, by its path from the top (`holes/ZQRC004.json`); undefined for any other. */
export function documentNameOf(file: string): DocumentName | undefined {
  const [, folder, id = ''] = /^([^/]+)\/([^/]+)\.json$/.exec(file) ?? [];
  const kind = Object.entries(DOCUMENT_KINDS).find(([, each]) => each.folder === folder)?.[0];
  return kind === undefined ? undefined : nameFromKey(`${kind}/${id}`);
}

function foreign(file: string, fault: string): Finding {
  return foreignFile.at(
    { file },
    {
      excerpt: file,
      problem: `it is none of the project's files: ${fault}`,
      remedy: 'Move it elsewhere, or take it in with receive. It was left unchanged.',
    },
  );
}
