import { rowsDown } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import { type Document, documentKey, type Tables } from '../record/document.ts';
import { target } from '../record/draft.ts';
import { difference } from '../record/outside.ts';
import type { WasDecided } from '../record/written.ts';
import { breaksCarry, dangersLost } from '../schema/cautions.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { nameWords } from './history-words.ts';

/** What taking a copy in does to one table: things that are new, changed and gone. */
export interface TableChange {
  readonly table: string;
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
}

/** Tables that the program keeps for itself: no person counts what is in them. */
const KEPT_FOR_ITSELF = new Set(['legendFields', 'legendScales', 'legendCodes', 'questions']);

/** What leads from one state of a document to another, table by table; a removal that `uncounted` is true of is left out. */
export function tableChanges(
  before: Tables,
  after: Tables,
  uncounted: WasDecided = () => false,
): readonly TableChange[] {
  const found = new Map<string, { added: number; changed: number; removed: number }>();
  for (const change of difference(before, after)) {
    const [table, id] = target(change);
    if ('remove' in change && uncounted(table, id)) continue;
    const count = found.get(table) ?? { added: 0, changed: 0, removed: 0 };
    count['put' in change ? 'added' : 'patch' in change ? 'changed' : 'removed'] += 1;
    if (!KEPT_FOR_ITSELF.has(table)) found.set(table, count);
  }
  return [...found].map(([table, count]) => ({ table, ...count }));
}

/** The changes in words, what is gone first: `cleared 46 rows, changed 1 bag, added 2 shots`. */
export function changeWords(changes: readonly TableChange[]): string {
  const said = (verb: string, count: (change: TableChange) => number) =>
    changes.flatMap((change) => {
      const number = count(change);
      const word = verb === 'took out' && change.table === 'rows' ? 'cleared' : verb;
      return number === 0
        ? []
        : [`${word} ${SINGLE[change.table] ?? `${number} ${noun(change.table, number)}`}`];
    });
  return [
    ...said('took out', ({ removed }) => removed),
    ...said('changed', ({ changed }) => changed),
    ...said('added', ({ added }) => added),
  ].join(', ');
}

/** Names of tables that are no plural of what is in them. */
const NOUNS: Readonly<Record<string, readonly [one: string, more: string]>> = {
  drilling: ['drilled interval', 'drilled intervals'],
  stream: ['record of the sample stream', 'records of the sample stream'],
  feltByDriller: ['word of the driller', 'words of the driller'],
  waitingEvents: ['event that waits for its row', 'events that wait for their row'],
  hygiene: ['hygiene check', 'hygiene checks'],
  putOff: ['control put off', 'controls put off'],
};

/** Tables that hold one thing, named as it. */
const SINGLE: Readonly<Record<string, string>> = {
  hole: 'the header',
  plan: 'the plan',
  shift: 'the header',
  dispatch: 'the header',
  certificate: 'the header',
};

function noun(table: string, count: number): string {
  const [one, more] = NOUNS[table] ?? [];
  const plural = more ?? nameWords(table);
  return count === 1 ? (one ?? plural.replace(/ies$/, 'y').replace(/s$/, '')) : plural;
}

/** So many things gone at once are more than a slip mended: someone says yes to that. */
const MUCH = 5;

/** True where a copy takes much away: whoever takes it in has to say that it may. */
export function takesMuchAway(changes: readonly TableChange[]): boolean {
  return changes.reduce((sum, { removed }) => sum + removed, 0) >= MUCH;
}

/**
 * Rows of ours that say a danger and would no longer say it, in words, down the hole. Of a void or a loss of return someone is asked
 * (`asks`); the others are named.
 */
export function dangersTaken(
  schema: LoggingSchema,
  before: Document,
  after: Document,
): { readonly asks: boolean; readonly rows: readonly string[] } {
  if (before.kind !== 'hole') return { asks: false, rows: [] };
  const is = new Map(rowsDown(after));
  const rows = rowsDown(before).flatMap(([id, row]) => {
    const after = is.get(id);
    const lost = dangersLost(schema, row, after);
    const asks = breaksCarry(schema, row) && !(after !== undefined && breaksCarry(schema, after));
    return lost.length === 0 ? [] : [{ asks, words: `${formatInterval(row)} ${lost.join(', ')}` }];
  });
  return { asks: rows.some(({ asks }) => asks), rows: rows.map(({ words }) => words) };
}

const MOST_NAMED = 3;

/** Who took things out, or changed rows, in the entries that a copy has and we lack, in words, latest first. */
export function whoTookOut(ours: Document | undefined, theirs: Document): string {
  const known = new Set((ours?.history ?? []).map(({ hash }) => hash));
  const found = theirs.history
    .filter(
      (entry) =>
        !known.has(entry.hash) &&
        entry.changes.some((change) => 'remove' in change || target(change)[0] === 'rows'),
    )
    .reverse();
  const named = found
    .slice(0, MOST_NAMED)
    .map(({ by, at, what }) => `${by} ${at.slice(0, 16).replace('T', ' ')}: ${what}`);
  if (named.length === 0) return `the history of ${documentKey(theirs)} says by no one of offsider`;
  return `${named.join('; ')}${found.length > MOST_NAMED ? `; and ${found.length - MOST_NAMED} more` : ''}`;
}
