import type { Finding } from '../finding/finding.ts';
import { formatPlace } from '../finding/place.ts';
import { formatDepth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { type QUERY_ANSWERS, type ShiftNoun, shiftThings } from './shift.ts';

export type Answer = (typeof QUERY_ANSWERS)[number];

/** What a query is known by from one look to the next: its code and what it is about. */
export function queryKey({ code, place }: Finding): string {
  return `${code} ${place.thing ?? formatPlace(place)}`;
}

/**
 * What a person calls a query by: what it is about, `metres KP002`, or when it began, `15:05`. It stays the same while others come and go,
 * as a number in a list would not.
 */
export function queryName({ place }: Finding): string {
  const { thing, hole = '', fromMm } = place;
  if (thing === undefined) return `rods ${hole}${fromMm === undefined ? '' : ` ${formatDepth(fromMm)}`}`;
  const [, clock] = /^(\d{2}:\d{2})–\d{2}:\d{2}$/.exec(thing) ?? [];
  return clock ?? thing.replaceAll(',', '').replace(/ +/g, ' ');
}

/** The figures that a query gives, in order, or its words where it gives none: an answer is for these and for no others. */
export function queryFigures({ problem }: Finding): string {
  return (problem.match(/\d[\d.,:–]*/g) ?? [problem]).join(' ').slice(0, 500);
}

/** The query that a line begins with the name of, and what is left of the line; undefined where it begins with none. */
export function queryNamed(
  queries: readonly Finding[],
  text: string,
): { readonly query: Finding; readonly rest: string } | undefined {
  const given = text.trim();
  const low = given.toLowerCase();
  const found = queries
    .map((query) => ({ query, name: queryName(query) }))
    .toSorted((a, b) => b.name.length - a.name.length)
    .find(({ name }) => low === name.toLowerCase() || low.startsWith(`${name.toLowerCase()} `));
  return found === undefined
    ? undefined
    : { query: found.query, rest: given.slice(found.name.length).trim() };
}

/** What came of a query so far: the latest answer; undefined where no one gave one, or its figures have changed since. */
export function answerTo(shift: Document, query: Finding): ShiftNoun<'queryAnswers'> | undefined {
  const key = queryKey(query);
  const latest = shiftThings(shift, 'queryAnswers')
    .map(([, each]) => each)
    .findLast((each) => each.query === key);
  return latest?.figures === undefined || latest.figures === queryFigures(query) ? latest : undefined;
}

/** Queries that are not agreed and not corrected. */
export function openQueries(shift: Document, queries: readonly Finding[]): readonly Finding[] {
  return queries.filter((query) => (answerTo(shift, query)?.answer ?? 'open') === 'open');
}
