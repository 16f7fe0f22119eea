import { headerOf, holeNouns, rowsDown } from '../hole/hole.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { dangersLost } from '../schema/cautions.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';

/** What each kind of danger is told by in its words, the gravest first; anything else comes after. */
const GRAVEST_FIRST = ['CAVITY', '(void)', '(no chips)', 'no return', '(fibre)', '(radiation)'];

/**
 * The dangers that a hole met, of its log and by the driller's word, each with its metres, the gravest first: for whoever drills, samples or
 * walks there next, also once the hole is over. `old stope (void) 14–16`.
 */
export function dangersMet(schema: LoggingSchema, hole: Document): readonly string[] {
  const met = new Map<string, Interval[]>();
  const add = (words: string, { fromMm, toMm }: Interval): void => {
    const ranges = met.get(words) ?? [];
    const last = ranges.at(-1);
    if (last?.toMm === fromMm) ranges[ranges.length - 1] = { fromMm: last.fromMm, toMm };
    else ranges.push({ fromMm, toMm });
    met.set(words, ranges);
  };
  for (const felt of holeNouns(hole, 'feltByDriller'))
    if (felt.felt === 'cavity') add('CAVITY felt by the driller', felt);
  for (const [, row] of rowsDown(hole)) {
    if (row.noReturn === true) add('no return', row);
    for (const words of dangersLost(schema, row, undefined)) add(words, row);
  }
  return [...met]
    .sort(([a], [b]) => rankOf(a) - rankOf(b))
    .map(([words, ranges]) => `${words} ${ranges.map(formatInterval).join(', ')}`);
}

function rankOf(words: string): number {
  const rank = GRAVEST_FIRST.findIndex((each) => words.includes(each));
  return rank < 0 ? GRAVEST_FIRST.length : rank;
}

/** The dangers of several holes, a line a hole; none for one that met none. */
export function dangerLines(schema: LoggingSchema, holes: readonly Document[]): readonly string[] {
  return holes.flatMap((hole) => {
    const met = dangersMet(schema, hole);
    return met.length === 0 ? [] : [`${headerOf(hole).name}: ${met.join('; ')}`];
  });
}
