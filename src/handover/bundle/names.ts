import { localDate, localTime, type Stamp } from '../../quantity/stamp.ts';

/** The name of the file in a bundle that says what else is in it. It comes first. */
export const MANIFEST = 'manifest.json';

/**
 * Files that a bundle may hold beside its tables: its manifest, the two files written by hand, those that logging.json starts from, and
 * documents in the folder of their kind, whole or as an increment.
 */
const NAME =
  /^(?:manifest|project|logging|schema\/[1-9]|[a-z]{1,20}\/[A-Z0-9][A-Z0-9_-]{0,39}(?:\.since)?)\.json$/;

/** The folder of a bundle with the files that logging.json starts from, by number: in the project they may be called anything. */
export const SCHEMA_FOLDER = 'schema';

/** The place of an increment in a bundle, by that of its document. */
export function incrementPath(documentPath: string): string {
  return documentPath.replace(/\.json$/, '.since.json');
}

/** The folder of a bundle with flat tables of what is in it: for people and their programs, never read by offsider. */
export const TABLES_FOLDER = 'tables';
const TABLE_NAME = /^tables\/(?:[a-z][a-z_]{0,39}\.csv|TABLES\.md)$/;

/** True for a file of a bundle's tables. */
export function isTableName(name: string): boolean {
  return TABLE_NAME.test(name);
}

/** Why no file in a bundle may have this name, in words; undefined where one may. No name that it lets through leads anywhere else. */
export function bundleNameFault(name: string): string | undefined {
  return NAME.test(name) || isTableName(name) ? undefined : 'no file that offsider packs has such a name';
}

/** Letters and digits of a text as capitals, all else as single hyphens; at most so many characters, `PROJECT` where none is left. */
function inCapitals(text: string, most: number): string {
  const plain = text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toUpperCase()
    .replaceAll(/[^A-Z0-9]+/g, '-')
    .slice(0, most)
    .replaceAll(/^-+|-+$/g, '');
  return plain === '' ? 'PROJECT' : plain;
}

/**
 * The name of a bundle without its ending: project, wall clock, and the start of its SHA-256, so that two bundles never share one.
 * Capitals, digits, `_` and `-` only, whatever the project is called: it is a file's name and stands in a mail's headers.
 */
export function bundleName(project: string, at: Stamp, sha256: string): string {
  const clock = `${localDate(at)}_${localTime(at).replace(':', '')}`;
  return `${inCapitals(project, 30)}_${clock}_${sha256.slice(0, 8).toUpperCase()}`;
}

/**
 * True of a path within a project where a person may have put a file that logging.json starts from. It leads nowhere else, and into no
 * folder that the program writes in.
 */
export function isWrittenPath(path: string): boolean {
  return (
    path.length <= 200 &&
    /^[\p{L}\p{N}_][\p{L}\p{N} ._-]*(?:\/[\p{L}\p{N}_][\p{L}\p{N} ._-]*){0,5}\.json$/u.test(path) &&
    !/[. ](?:\/|$)/.test(path) &&
    !/^(?:journal|outbox|inbox|holes|shifts|dispatches|results)\//i.test(path)
  );
}
