import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import { hashJson } from '../../record/hash.ts';
import { circular, parentChanged, parentMissing } from '../findings.ts';
import { styleFile } from '../styles/index.ts';
import { type LoggingFile, loggingFile } from './file-schema.ts';
import { type ReadFile, readBuiltIn, readJsonFile } from './json-source.ts';
import { excerptAt, placeInFile, type TextFile } from './places.ts';

/** Gives the file that another extends, or undefined where there is none: `reference` as written, `from` the file it is in. */
export type LoadParent = (reference: string, from: string) => TextFile | undefined;

/** The hash that `extendsHash` records: of what a file says, comments and spacing aside. */
export function hashOfFile(value: LoggingFile): string {
  return hashJson(value);
}

/** The hash of a built-in style, for a new file to record what it starts from; undefined where there is none of that name. */
export function styleHash(name: string): string | undefined {
  const file = styleFile(name);
  const chain = file === undefined ? undefined : readChain(file, () => undefined);
  return chain?.ok === true ? hashOfParent(chain.value) : undefined;
}

/**
 * The hash of the first file of a chain, as what extends it records it. A style is hashed together with the parts that it starts from:
 * they come with the program as it does. A file of the project's own records the hash of its parent itself.
 */
function hashOfParent([parent, ...parts]: readonly ReadFile<LoggingFile>[]): string {
  if (parent === undefined) throw new Error('a chain without a file');
  if (parent.source.builtIn !== true || parts.length === 0) return hashOfFile(parent.value);
  return hashJson([parent, ...parts].map(({ value }) => value));
}

/** The file and all that it extends, itself first. */
export function readChain(file: TextFile, loadParent: LoadParent): Result<readonly ReadFile<LoggingFile>[]> {
  const chain: ReadFile<LoggingFile>[] = [];
  let next: TextFile | undefined = file;
  while (next !== undefined) {
    const read: Result<ReadFile<LoggingFile>> = next.builtIn
      ? ok(readBuiltIn(next))
      : readJsonFile(next, loggingFile);
    if (!read.ok) return read;
    chain.push(read.value);
    const reference: string | undefined = read.value.value.extends;
    if (reference === undefined) return ok(chain);
    const parent: TextFile | undefined = styleFile(reference) ?? loadParent(reference, next.file);
    const at = placeInFile(read.value.source, ['extends']);
    const excerpt = excerptAt(read.value.source, ['extends']);
    if (parent === undefined)
      return refused(
        parentMissing.at(at, {
          problem: `it extends ${reference}, which is not there`,
          remedy: 'Name a style that comes with offsider, or put the file beside this one.',
          ...excerpt,
        }),
      );
    if (chain.some((each) => each.source.file === parent.file))
      return refused(
        circular.at(at, {
          problem: `${[...chain.map((each) => each.source.file), parent.file].join(' extends ')}`,
          remedy: 'Take one "extends" out of the ring.',
          ...excerpt,
        }),
      );
    next = parent;
  }
  return ok(chain);
}

/** A warning for each file whose recorded hash is not that of what it extends. */
export function changedUnderneath(chain: readonly ReadFile<LoggingFile>[]): readonly Finding[] {
  return chain.flatMap(({ value, source }, index) => {
    const parent = chain[index + 1];
    if (parent === undefined || value.extendsHash === undefined) return [];
    const hash = hashOfParent(chain.slice(index + 1));
    if (hash === value.extendsHash) return [];
    return [
      parentChanged.at(placeInFile(source, ['extendsHash']), {
        problem: `${parent.source.file} is not as it was when this file was last agreed with it`,
        remedy: `Look what has changed in it. If you agree, put "extendsHash": "${hash}" here.`,
        ...excerptAt(source, ['extendsHash']),
      }),
    ];
  });
}
