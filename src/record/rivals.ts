import type { Change, Document, Entry, Id, Thing } from './document.ts';
import { type Json, own, sameJson } from './json.ts';
import { writersOf } from './written.ts';

/**
 * What the record must know of tables in which records of one place (metres, a depth, a rod) have ids of their own, so that two copies can
 * each make one: the later one counts, and which is the later must be the same in both copies.
 */
export interface Records {
  /** The tables, by name. */
  readonly tables: ReadonlySet<string>;
  /** Fields in which two records of one place say different things; none where they are of two places or agree. */
  readonly contradict: (table: string, one: Thing, other: Thing) => readonly string[];
  /** Of them those in which only the last record of each copy can contradict the other's last. */
  readonly latestAlone: ReadonlySet<string>;
}

export const NO_RECORDS: Records = { tables: new Set(), contradict: () => [], latestAlone: new Set() };

/** A record that one copy made and the other has not, with the entry that wrote it last. */
interface Made {
  readonly id: Id;
  readonly thing: Thing;
  readonly isOurs: boolean;
  readonly entry: Entry | undefined;
}

/** Two records that contradict each other: the later one counts until someone settles it. */
export interface Rival {
  readonly table: string;
  readonly id: Id;
  readonly field: string;
  readonly later: Json;
  readonly earlier: Json;
}

/**
 * Puts what both copies recorded apart into one order, by time and then by id, so that the last word is the same one in both copies: ours that
 * come after one of theirs are taken out and put back behind it. Each copy's own order stays, however its clock ran. Also gives those that contradict each
 * other. `puts` are the changes that bring theirs.
 */
export function inOneOrder(
  ours: Document,
  theirs: Document,
  puts: readonly Change[],
  records: Records,
): { readonly changes: readonly Change[]; readonly rivals: readonly Rival[] } {
  const changes: Change[] = [];
  const rivals: Rival[] = [];
  const rest = puts.filter((change) => !('put' in change && records.tables.has(change.put[0])));
  for (const table of records.tables) {
    const brought = puts.flatMap((change) =>
      'put' in change && change.put[0] === table ? [change.put[1]] : [],
    );
    const known = own(theirs.tables, table);
    const mine = Object.keys(own(ours.tables, table) ?? {}).filter((id) => own(known, id) === undefined);
    const [a, b] = [madeIn(ours, table, mine, true), madeIn(theirs, table, brought, false)];
    const order = interleaved(a, b);
    const first = order.findIndex(({ isOurs }) => !isOurs);
    for (const [index, { id, thing, isOurs }] of order.entries()) {
      if (isOurs && (first < 0 || index < first)) continue;
      if (isOurs) changes.push({ remove: [table, id] });
      changes.push({ put: [table, id], thing });
    }
    const asked = records.latestAlone.has(table)
      ? order.filter((each) => each === a.at(-1) || each === b.at(-1))
      : order;
    for (const [index, later] of asked.entries())
      for (const earlier of asked.slice(0, index))
        if (earlier.isOurs !== later.isOurs)
          for (const field of records.contradict(table, earlier.thing, later.thing))
            rivals.push({
              ...{ table, id: later.id, field },
              later: own(later.thing, field) ?? null,
              earlier: own(earlier.thing, field) ?? null,
            });
  }
  return { changes: [...rest, ...changes], rivals: rivals.filter(isFirstOfItsKind) };
}

function isFirstOfItsKind(rival: Rival, index: number, all: readonly Rival[]): boolean {
  return all.findIndex((each) => sameJson(asJson(each), asJson(rival))) === index;
}

const asJson = ({ table, id, field, later, earlier }: Rival): Json => [table, id, field, later, earlier];

function madeIn(document: Document, table: string, ids: readonly Id[], isOurs: boolean): readonly Made[] {
  const inOrder = Object.keys(own(document.tables, table) ?? {}).filter((id) => ids.includes(id));
  const entries = writersOf(
    document,
    inOrder.map((id) => ({ table, id, value: {} })),
  );
  return inOrder.map((id, index) => ({
    id,
    thing: own(own(document.tables, table), id) as Thing,
    isOurs,
    entry: entries[index],
  }));
}

/** Two lists as one, by time and then by id; within each the order stays. The same whichever comes first. */
function interleaved(a: readonly Made[], b: readonly Made[]): readonly Made[] {
  const out: Made[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const [one, other] = [a[i], b[j]];
    if (one === undefined) return [...out, ...b.slice(j)];
    if (other === undefined) return [...out, ...a.slice(i)];
    if (comesFirst(one, other)) i += 1;
    else j += 1;
    out.push(comesFirst(one, other) ? one : other);
  }
}

function comesFirst(a: Made, b: Made): boolean {
  const [at, other] = [a, b].map(({ entry }) => Date.parse(entry?.at ?? '') || 0) as [number, number];
  return at === other ? a.id < b.id : at < other;
}
