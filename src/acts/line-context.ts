import { rowsDown } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Document, Entry, Id } from '../record/document.ts';
import { bagNumberPattern } from '../sampling/numbers/bag-number.ts';
import { breaksCarry } from '../schema/cautions.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { EntryContext } from '../shorthand/parse.ts';
import { aboveDepth } from '../standing/above.ts';
import { nextInterval } from '../standing/heads.ts';
import { ownNames } from './own-names.ts';

/**
 * What an entry line is read against at a depth of a hole: the rows above it and what the project says of entry. `by` logs the next
 * row: after a handover it is said in full, because what another pair of eyes saw does not carry. Left out where an earlier row is open.
 */
export function lineContext(project: Project, hole: Document, fromMm: number, by?: string): EntryContext {
  const before = by === undefined ? undefined : loggedBefore(project.schema, hole, by);
  const { above, seen, previous, repeats } = aboveDepth(
    project.schema,
    before === undefined ? rowsDown(hole) : [],
    fromMm,
  );
  return {
    schema: project.schema,
    above,
    seen,
    previous: previous === above ? undefined : previous,
    repeats,
    gloves: project.settings.log.gloves,
    bagPattern: bagNumberPattern(project.sampling.numbers),
    loggedBefore: before,
    own: ownNames(project, [hole], { person: by, hole }),
    interval: intervalAt(hole, fromMm),
  };
}

/** The row that is logged at a depth, or the one that comes next there. */
function intervalAt(hole: Document, fromMm: number): Interval | undefined {
  const logged = rowsDown(hole).find(([, row]) => row.fromMm === fromMm)?.[1];
  const next = nextInterval(hole);
  return logged ?? (next.fromMm === fromMm ? next : undefined);
}

/** Who logged the last observed row above the logged head, where that was another person: amending it does not make it one's own. */
function loggedBefore(schema: LoggingSchema, hole: Document, by: string): string | undefined {
  const head = nextInterval(hole).fromMm;
  const last = rowsDown(hole).findLast(([, row]) => row.fromMm < head && !breaksCarry(schema, row));
  const first = last === undefined ? undefined : loggersOf(hole.history).get(last[0]);
  return first === by ? undefined : first;
}

/** Who put each row there first, and how much of a history that is of. */
interface Loggers {
  readonly by: Map<Id, string>;
  count: number;
  last: Entry | undefined;
}

/** By a history's first entry. A history only grows at its end, so a key on a long hole reads the new entries and not all of them. */
const loggers = new WeakMap<Entry, Loggers>();

function loggersOf(history: readonly Entry[]): ReadonlyMap<Id, string> {
  const [first] = history;
  if (first === undefined) return new Map();
  const known = loggers.get(first);
  // Who has the same last entry has the same ones before it: each holds the hash of the one above.
  const goesOn =
    known !== undefined && known.count <= history.length && history[known.count - 1] === known.last;
  const found: Loggers = goesOn ? known : { by: new Map(), count: 0, last: undefined };
  for (const entry of history.slice(found.count)) {
    for (const change of entry.changes)
      if ('put' in change && change.put[0] === 'rows' && !found.by.has(change.put[1]))
        found.by.set(change.put[1], entry.by);
  }
  found.count = history.length;
  found.last = history.at(-1);
  loggers.set(first, found);
  return found.by;
}
