import { endsWithDigits } from '../../numbers/bag-number.ts';
import { numberLine } from '../../numbers/number-line.ts';
import { type MismatchKind, type Situation, writeOnLast } from '../mismatch.ts';
import { notLabelled } from './another-bundle.ts';

/** A number that belongs to no hole of the project. */
export const foreign: MismatchKind = {
  code: 'foreign',
  name: 'a foreign bag',
  happened: 'The number on the last bag belongs to no hole and to no block of this project.',
  claims: ['the number is of no hole and no block'],
  ground:
    'Read the number again. If it is right, write the right number on the calico and cross the foreign one out.',
  nearSplitter: false,
  suppose: (situation) => {
    const { digits } = situation.seen;
    if (digits === undefined || isOurs(situation, digits)) return [];
    return situation.endings.map((issue) => ({
      at: digits,
      read: { last: digits },
      fix: { issue },
      ...writeOnLast(issue),
      weight: 5,
    }));
  },
};

/** True of digits that end a number of any hole or block of the project: then no one may call it foreign. */
function isOurs(situation: Situation, digits: string): boolean {
  const { sampling, state, others } = situation;
  const labelled = [state, ...others].some(({ bagRuns, bags }) => {
    const line = numberLine(sampling.numbers, bagRuns);
    const places = Array.from({ length: line.length }, (_, place) => line.at(place) ?? '');
    return [...places, ...bags.map((bag) => bag.number)].some((number) => endsWithDigits(number, digits));
  });
  return labelled || notLabelled(situation, digits).length > 0;
}
