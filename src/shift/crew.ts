import type { Finding } from '../finding/finding.ts';
import type { Document } from '../record/document.ts';
import { SHIFT_QUERIES } from './findings.ts';
import { shiftHeaderOf, shiftThings } from './shift.ts';

/** Who the sheets of a shift name and the record doesn't, and the other way round; nothing where either names no one. */
export function crewQueries(file: string, shift: Document): readonly Finding[] {
  const ours = shiftHeaderOf(shift).crew;
  const theirs = shiftThings(shift, 'plods').flatMap(([, { crew = [] }]) => crew);
  if (ours.length === 0 || theirs.length === 0) return [];
  const extra = theirs.filter((name) => !ours.some((each) => isSamePerson(each, name)));
  const lacking = ours.filter((name) => !theirs.some((each) => isSamePerson(each, name)));
  if (extra.length + lacking.length === 0) return [];
  const words = [
    ...(extra.length === 0 ? [] : [`the sheet names ${extra.join(', ')}, the record does not`]),
    ...(lacking.length === 0 ? [] : [`the record names ${lacking.join(', ')}, the sheet does not`]),
  ];
  return [
    SHIFT_QUERIES.crew.at(
      { file, thing: 'crew' },
      {
        problem: `crew: ${words.join('; ')}`,
        remedy: `Ask who was on the rig. Crew ${theirs.join(', ')} amends the record.`,
      },
    ),
  ];
}

/** True for `Bo` and `Bo Hale`, `bo hale` and `B. Hale`: a sheet seldom has the whole name. */
function isSamePerson(a: string, b: string): boolean {
  const [first, second] = [a, b].map((name) => name.toLowerCase().replaceAll('.', '').split(/ +/));
  if (first === undefined || second === undefined) return false;
  const [few, many] = first.length <= second.length ? [first, second] : [second, first];
  const meets = (word: string, other: string): boolean => other.startsWith(word) || word.startsWith(other);
  const isInOrder = few.length === many.length && few.every((word, index) => meets(word, many[index] ?? ''));
  return isInOrder || (few.length === 1 && many.some((word) => word === few[0]));
}
