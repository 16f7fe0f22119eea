import type { RodDone } from '../hole/drilled.ts';
import { holeNouns, holeThings } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { instantMs, localDate, localTime } from '../quantity/stamp.ts';
import type { Document, Id, Table, Thing } from '../record/document.ts';

/** Two records of one rod, as when both copies of a merge recorded it. The first is the one of the earlier time, in every copy. */
export interface RodTwice {
  /** Names the pair for as long as both are there. */
  readonly id: Id;
  readonly first: readonly [Id, RodDone];
  readonly second: readonly [Id, RodDone];
}

/** The rods of a hole from the top down, those to one depth in the order of their times. */
export function rodsDown(hole: Document): readonly (readonly [Id, RodDone])[] {
  return [...holeThings(hole, 'rods')].sort(
    ([, a], [, b]) => a.depthMm - b.depthMm || instantMs(a.at) - instantMs(b.at),
  );
}

/** Records next to each other that have one count or one depth, from the top down: a rod is done once. */
export function rodsRecordedTwice(hole: Document): readonly RodTwice[] {
  const down = rodsDown(hole);
  const pairs = down.slice(1).flatMap((lower, index) => {
    const upper = down[index] as (typeof down)[number];
    return isSameRod(upper[1], lower[1]) ? [[upper, lower] as const] : [];
  });
  return pairs.map((pair) => {
    const [first, second] = [...pair].sort(
      ([a, one], [b, other]) => instantMs(one.at) - instantMs(other.at) || (a < b ? -1 : 1),
    ) as [readonly [Id, RodDone], readonly [Id, RodDone]];
    return { id: `rod twice ${first[0]} ${second[0]}`, first, second };
  });
}

/**
 * A hole as if each rod were recorded once, for checks of what hangs on rods: one record of each pair is left out, with the bags and the look at the
 * cyclone that it brought. Else one cause is said as a dozen faults, and a single calico as two that hold one metre. The deeper record stays, of one depth the first.
 */
export function rodsOnce(hole: Document): Document {
  const pairs = rodsRecordedTwice(hole);
  if (pairs.length === 0) return hole;
  const out = new Set(
    pairs.map(({ first, second }) => (first[1].depthMm < second[1].depthMm ? first[0] : second[0])),
  );
  const { rods = {}, bags = {}, hygiene = {} } = hole.tables;
  const kept = (table: Table, isOut: (id: Id, thing: Thing) => boolean): Table =>
    Object.fromEntries(Object.entries(table).filter(([id, thing]) => !isOut(id, thing)));
  return {
    ...hole,
    tables: {
      ...hole.tables,
      rods: kept(rods, (id) => out.has(id)),
      bags: kept(bags, (_id, bag) => bag.byHand !== true && out.has(String(bag.rod))),
      hygiene: kept(hygiene, (_id, seen) => out.has(String(seen.rod))),
    },
  };
}

function isSameRod(a: RodDone, b: RodDone): boolean {
  return a.depthMm === b.depthMm || a.rod === b.rod;
}

/** A record of a rod in words: its count, depth and time. */
export function rodWords({ rod, depthMm, at }: RodDone): string {
  return `rod ${rod} to ${formatDepth(depthMm)} m at ${localDate(at)} ${localTime(at, true)}`;
}

/** A record of a rod in words, with the bags that it issued. */
export function rodWithBags(hole: Document, [id, rod]: readonly [Id, RodDone]): string {
  const numbers = holeNouns(hole, 'bags')
    .filter((bag) => bag.rod === id && bag.byHand !== true)
    .map((bag) => bag.number);
  if (numbers.length === 0) return `${rodWords(rod)}, no bags`;
  if (numbers.length === 1) return `${rodWords(rod)}, bag ${numbers[0]}`;
  return `${rodWords(rod)}, ${numbers.length} bags ${numbers[0]} to ${numbers.at(-1)}`;
}

/** Two records of a rod in words, each with its bags and with what the other one says differently. */
export function rodsBesideEachOther(
  hole: Document,
  first: readonly [Id, RodDone],
  second: readonly [Id, RodDone],
): readonly [string, string] {
  const one = seenAt(hole, first);
  const other = seenAt(hole, second);
  const differ = Object.keys(one).filter((each) => one[each] !== other[each]);
  const said = (rod: readonly [Id, RodDone], seen: Readonly<Record<string, string>>): string =>
    [rodWithBags(hole, rod), ...differ.map((each) => seen[each])].filter((part) => part !== '').join(', ');
  return [said(first, one), said(second, other)];
}

/** What was counted, read and looked at when a rod was recorded, in words; empty where nothing was. */
function seenAt(hole: Document, [id, rod]: readonly [Id, RodDone]): Readonly<Record<string, string>> {
  const look = holeNouns(hole, 'hygiene').findLast((each) => each.rod === id);
  const was = (what: string, value: boolean | undefined): string =>
    value === undefined ? 'not looked at' : `${value ? '' : 'NOT '}${what}`;
  return {
    bags: rod.bags === undefined ? 'bags not counted' : `${rod.bags} bags counted`,
    lastBag: rod.lastBag === undefined ? '' : `last bag read ${rod.lastBag}`,
    mismatch: rod.unmended === true ? 'bags don\u2019t match, not settled yet' : '',
    cyclone: `cyclone ${was('clean', look?.cycloneClean)}`,
    splitter: `splitter ${was('clean', look?.splitterClean)}`,
    level: `splitter ${was('level', look?.splitterLevel)}`,
    blown: `hole blown ${was('clean', look?.holeBlownClean)}`,
  };
}
