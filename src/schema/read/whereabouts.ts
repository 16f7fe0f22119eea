import { findNodeAtLocation } from 'jsonc-parser';
import type { Finding, FindingKind } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import type { Draft } from './draft.ts';
import type { Origin } from './inherit.ts';
import { excerptAt, type JsonPath, placeInFile } from './places.ts';

/** A part of a schema that a finding is about: a field, a list, a code, a scale, an unlikely pair, in it a member, and in that a path. */
export type Part =
  | { readonly field: string; readonly member?: string; readonly within?: JsonPath }
  | { readonly list: string; readonly code?: string; readonly member?: string }
  | { readonly scale: string }
  | { readonly column: string }
  | { readonly unlikely: string; readonly member?: string; readonly within?: JsonPath };

/**
 * Raises a finding about a part of a schema at the place where that part was written; about two parts, at the one that was
 * written in the file farther down (what a project changes, not the style under it), and otherwise at the first named.
 */
export type Raise = (
  kind: FindingKind,
  part: Part | readonly [Part, Part],
  said: { readonly problem: string; readonly remedy: string },
) => Finding;

/** Where the parts of a schema were written. */
export type Origins = Omit<Draft, 'repeatsBeforeLook' | 'columns' | 'accepted'>;

/** A raiser of findings over a schema's origins; without origins a place is only the part's name. */
export function raiserOf(origins: Origins | undefined): Raise {
  return (kind, about, said) => {
    const part = isTwo(about) ? lastWritten(origins, about) : about;
    const origin = origins === undefined ? undefined : originOf(origins, part);
    if (origin === undefined) return kind.at(partPlace(part), said);
    const { source, path } = origin;
    return kind.at(
      { ...placeInFile(source, path), ...partPlace(part) },
      { ...said, ...excerptAt(source, path) },
    );
  };
}

function isTwo(about: Part | readonly [Part, Part]): about is readonly [Part, Part] {
  return Array.isArray(about);
}

function lastWritten(origins: Origins | undefined, [first, second]: readonly [Part, Part]): Part {
  if (origins === undefined) return first;
  const depth = (part: Part): number => {
    const origin = originOf(origins, part);
    return origin === undefined ? -1 : origins.sources.indexOf(origin.source);
  };
  return depth(second) > depth(first) ? second : first;
}

function partPlace(part: Part): Place {
  if ('field' in part) return { field: part.field };
  if ('scale' in part) return { thing: `scale ${part.scale}` };
  if ('column' in part) return { field: 'columns' };
  if ('unlikely' in part) return { thing: `unlikely ${part.unlikely}` };
  return { thing: part.code === undefined ? `list ${part.list}` : `list ${part.list}, code ${part.code}` };
}

function originOf(origins: Origins, part: Part): Origin | undefined {
  const written = entryOrigins(origins, part);
  const last = written.at(-1);
  const member = 'member' in part ? part.member : undefined;
  if (member === undefined) return last;
  const holding = written.filter(({ source, path }) => holds(source.root, [...path, member])).at(-1);
  const within = 'within' in part ? (part.within ?? []) : [];
  return holding === undefined
    ? last
    : { source: holding.source, path: [...holding.path, member, ...within] };
}

function entryOrigins(origins: Origins, part: Part): readonly Origin[] {
  if ('field' in part) return origins.fields.find((each) => each.entry.name === part.field)?.origins ?? [];
  if ('scale' in part) return origins.scales.get(part.scale)?.origins ?? [];
  if ('column' in part)
    return origins.sources
      .filter((source) => holds(source.root, ['columns']))
      .map((source) => ({ source, path: ['columns'] }));
  if ('unlikely' in part)
    return origins.unlikely.find((each) => each.entry.name === part.unlikely)?.origins ?? [];
  if (part.code === undefined && part.member !== undefined)
    return origins.sources
      .filter((source) => holds(source.root, ['lists', part.list]))
      .map((source) => ({ source, path: ['lists', part.list] }));
  const codes = origins.lists.get(part.list)?.codes ?? [];
  const code = part.code === undefined ? codes[0] : codes.find((each) => each.entry.code === part.code);
  return code?.origins ?? [];
}

function holds(root: Origin['source']['root'], path: JsonPath): boolean {
  return findNodeAtLocation(root, [...path]) !== undefined;
}
