import { instantMs, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { rigAt } from './own-record.ts';
import { shiftHeaderOf } from './shift.ts';

/**
 * The geologists of a shift by initials: whoever began its record, then everyone who recorded anything in it, or on a hole of its rig in its
 * hours. A shift has one name in its header, and two people where one hands over at noon.
 */
export function geologistsOf(
  shift: Document,
  documents: readonly Document[],
  people: readonly { readonly initials: string; readonly name: string }[],
  now: Stamp,
): readonly string[] {
  const { rig, startsAt, endedAt, geologist } = shiftHeaderOf(shift);
  const end = endedAt === undefined ? instantMs(now) + 1 : instantMs(endedAt);
  const isIn = (at: string): boolean => Date.parse(at) >= instantMs(startsAt) && Date.parse(at) < end;
  const ofHoles = documents
    .filter((each) => each.kind === 'hole')
    .flatMap((hole) => hole.history.filter(({ at }) => isIn(at) && rigAt(hole, at as Stamp) === rig));
  const ofShift = shift.history.filter(({ at }) => isIn(at));
  const inOrder = [...ofShift, ...ofHoles].toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const begun = people.find(({ name }) => name === geologist)?.initials ?? geologist;
  return [...new Set([begun, ...inOrder.map(({ by }) => by)])];
}
