import type { Finding } from '../../finding/finding.ts';
import { entryTwice, placeUnknown } from '../findings.ts';
import { excerptAt, type JsonPath, type JsonSource, placeInFile } from './places.ts';

/** Where an entry was written. */
export type Origin = { readonly source: JsonSource; readonly path: JsonPath };

/** An entry with all that it inherited, and every place that it was written in, the farthest ancestor first. */
export type Inherited<T> = { readonly entry: T; readonly origins: readonly Origin[] };

/** What an entry can say about its place among the others. */
type Placed = { readonly after?: string | undefined; readonly before?: string | undefined };

type Merged<T> = { readonly entries: readonly Inherited<T>[]; readonly findings: readonly Finding[] };

/**
 * Entries of a file over those it inherits: one with a known name changes it (null takes a member away), another is new.
 * `after` and `before` say where it is; without them a changed one stays and a new one comes last.
 */
export function inherit<T extends Placed>(
  inherited: readonly Inherited<T>[],
  written: readonly T[],
  nameOf: (entry: T) => string,
  origin: Origin,
): Merged<T> {
  let entries = inherited;
  const findings: Finding[] = [];
  const seen = new Set<string>();
  written.forEach((entry, index) => {
    const own = { source: origin.source, path: [...origin.path, index] };
    const name = nameOf(entry);
    if (seen.has(name)) findings.push(twice(own, name));
    seen.add(name);
    const change = changed(entries, entry, nameOf, own);
    if (change === undefined) findings.push(placeless(own, entry.after ?? entry.before ?? ''));
    else entries = change;
  });
  return { entries, findings };
}

/** The entries with one written over them, or undefined where it is to stand beside one that is not there. */
function changed<T extends Placed>(
  entries: readonly Inherited<T>[],
  written: T,
  nameOf: (entry: T) => string,
  own: Origin,
): readonly Inherited<T>[] | undefined {
  const { after, before, ...said } = written;
  const at = entries.findIndex((each) => nameOf(each.entry) === nameOf(written));
  const old = entries[at];
  const merged: Inherited<T> = {
    entry: withoutNulls({ ...(old?.entry ?? {}), ...said }) as T,
    origins: [...(old?.origins ?? []), own],
  };
  const beside = after ?? before;
  if (beside === undefined)
    return old === undefined ? [...entries, merged] : entries.map((each, i) => (i === at ? merged : each));
  const others = entries.filter((_, index) => index !== at);
  const neighbour = others.findIndex((each) => nameOf(each.entry) === beside);
  if (neighbour === -1) return undefined;
  const place = after === undefined ? neighbour : neighbour + 1;
  return [...others.slice(0, place), merged, ...others.slice(place)];
}

function withoutNulls(entry: object): object {
  return Object.fromEntries(
    Object.entries(entry).filter(([, value]) => value !== null && value !== undefined),
  );
}

function twice(own: Origin, name: string): Finding {
  return entryTwice.at(placeInFile(own.source, own.path), {
    problem: `${name} is written twice in this file`,
    remedy: 'Put the two together, or give one of them another name.',
    ...excerptAt(own.source, own.path),
  });
}

function placeless(own: Origin, beside: string): Finding {
  return placeUnknown.at(placeInFile(own.source, own.path), {
    problem: `it is placed beside ${beside}, which is not there`,
    remedy: 'Name one that is there, or take the placing out.',
    ...excerptAt(own.source, own.path),
  });
}
