import type { Document } from '../../record/document.ts';
import type { Json } from '../../record/json.ts';

/** A path from the root of a disk, a drive, a share or a home folder, or one that leads up: it names folders of a computer, and often a person. */
const PATH = /^(?:[A-Za-z]:[\\/]|\\\\[^\\]+\\|~[\\/]|\.{1,2}[\\/]|\/[^/\s][^/]*\/)/;

/** A path of a computer in a document, and where it is. */
export interface MachinePath {
  readonly document: Document;
  readonly path: string;
}

/**
 * The first path of a computer in each document, in its tables or anywhere in its history. Projects made by earlier versions hold that of the
 * program's CSV, and photographs typed with their path. A history is hashed and shared: nothing can be taken out of it afterwards.
 */
export function machinePathsIn(documents: readonly Document[]): readonly MachinePath[] {
  return documents.flatMap((document) => {
    const path = firstPath(document.tables) ?? firstPath(document.history as unknown as Json);
    return path === undefined ? [] : [{ document, path }];
  });
}

function firstPath(value: Json): string | undefined {
  if (typeof value === 'string') return PATH.test(value) ? value : undefined;
  if (value === null || typeof value !== 'object') return undefined;
  for (const inner of Object.values(value)) {
    const path = firstPath(inner as Json);
    if (path !== undefined) return path;
  }
  return undefined;
}
