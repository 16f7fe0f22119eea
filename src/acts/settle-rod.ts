import type { Bag } from '../hole/bags.ts';
import type { Made } from '../hole/commands/made.ts';
import { holeNouns, holeThings } from '../hole/hole.ts';
import type { Change, Document, Id, Thing } from '../record/document.ts';
import { keptBySettling } from '../record/questions.ts';
import { sentIn } from '../standing/dispatches.ts';
import { rodTwiceInWords, sidesOf } from '../standing/questions.ts';
import type { RodTwice } from '../standing/rods-twice.ts';

/**
 * One of two records of a rod taken out, with the bags and the look at the cyclone that it brought. A bag that the other record has under the
 * same number was one calico. One that only this record has, and that someone ticked or sent, or that has a duplicate,
 * is a real calico: it stays, placed by hand at the rod that is kept.
 */
export function settledRodTwice(
  hole: Document,
  pair: RodTwice,
  chosen: 'first' | 'second',
  documents: Iterable<Document>,
): Made {
  const [kept, out] = chosen === 'first' ? [pair.first, pair.second] : [pair.second, pair.first];
  const words = rodTwiceInWords(hole, pair);
  const [keptWords, outWords] = chosen === 'first' ? sidesOf(words) : sidesOf(words).toReversed();
  const bags = bagsOfRod(hole, out[0], kept[0], documents);
  const stay = bags.staying.length;
  const and =
    stay === 0
      ? ''
      : `; ${stay} bag${stay === 1 ? ' that was' : 's that were'} ticked, sent or doubled ${stay === 1 ? 'stays' : 'stay'}, placed by hand: ${bags.staying.join(', ')}`;
  return {
    what: `settled ${words.cell}: kept ${keptWords}; taken out ${outWords}${and}`,
    changes: [
      { remove: ['rods', out[0]] },
      ...bags.changes,
      ...hygieneFollows(hole, out[0], kept[0]),
      ...keptBySettling(hole.tables, rodAndWhatItBrought(hole, kept[0])),
    ],
  };
}

function rodAndWhatItBrought(hole: Document, rod: Id): readonly (readonly [table: string, id: Id])[] {
  return [
    ['rods', rod],
    ...holeThings(hole, 'bags').flatMap(([id, bag]) => (bag.rod === rod ? [['bags', id] as const] : [])),
    ...holeThings(hole, 'hygiene').flatMap(([id, seen]) =>
      seen.rod === rod ? [['hygiene', id] as const] : [],
    ),
  ];
}

function bagsOfRod(hole: Document, out: Id, kept: Id, documents: Iterable<Document>) {
  const bags = holeThings(hole, 'bags');
  const held = numbersHeld(hole, out, documents);
  const others = new Set(bags.filter(([, bag]) => bag.rod !== out).map(([, bag]) => bag.number));
  const staying: string[] = [];
  const changes = bags
    .filter(([, bag]) => bag.rod === out)
    .map(([id, bag]): Change => {
      if (bag.byHand === true) return { patch: ['bags', id], set: { rod: kept } };
      if (others.has(bag.number) || !held.has(bag.number)) return { remove: ['bags', id] };
      staying.push(bag.number);
      return { patch: ['bags', id], set: { rod: kept, byHand: true, reason: REASON } };
    });
  return { staying, changes };
}

const REASON = 'its rod was recorded twice, and the record that issued it was taken out';

/** Numbers that someone had in hand: ticked off, in a dispatch, or the primary of a duplicate that stays. */
function numbersHeld(hole: Document, out: Id, documents: Iterable<Document>): ReadonlySet<string> {
  const stays = (bag: Bag): boolean => bag.rod !== out || bag.byHand === true;
  const bags = holeNouns(hole, 'bags');
  return new Set([
    ...holeNouns(hole, 'ticks').map(({ number }) => number),
    ...sentIn(documents).keys(),
    ...bags.flatMap((bag) => (bag.of !== undefined && stays(bag) ? [bag.of] : [])),
  ]);
}

/**
 * What was seen of the cyclone and the splitter at the record taken out goes to the one kept: all of it where that has none, else what nobody looked
 * at there. Where both looked and saw different things, the record that was chosen says which.
 */
function hygieneFollows(hole: Document, out: Id, kept: Id): readonly Change[] {
  const all = holeThings(hole, 'hygiene');
  const there = all.findLast(([, each]) => each.rod === kept);
  const leaving = all.filter(([, each]) => each.rod === out);
  const seen: Thing = Object.assign({}, ...leaving.map(([, each]) => each));
  const fresh = Object.entries(seen).filter(([field]) => !Object.hasOwn(there?.[1] ?? {}, field));
  if (there === undefined)
    return leaving.map(
      ([id], index): Change =>
        index > 0 ? { remove: ['hygiene', id] } : { patch: ['hygiene', id], set: { ...seen, rod: kept } },
    );
  return [
    ...leaving.map(([id]): Change => ({ remove: ['hygiene', id] })),
    ...(fresh.length === 0
      ? []
      : [{ patch: ['hygiene', there[0]] as const, set: Object.fromEntries(fresh) }]),
  ];
}
