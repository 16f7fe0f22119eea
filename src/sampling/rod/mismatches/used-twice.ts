import { freeOfKind, layWith, type MismatchKind } from '../mismatch.ts';

/** One number on two calicos, by a misprint or a bag numbered by hand. */
export const usedTwice: MismatchKind = {
  code: 'used-twice',
  name: 'a number used twice',
  happened: 'Two bags carry the same number, and the metres after them are a number short.',
  claims: ['a number is on two bags'],
  ground:
    'Find the two calicos with one number. Keep it on the upper metre; write the new number, given in the mending, on the lower one.',
  nearSplitter: false,
  asks: 'Which number is on two calicos?',
  suppose: (situation) => {
    const { samples } = situation;
    return samples.slice(1).flatMap((lower, index) => {
      const laid = layWith(situation, {}, [...samples.slice(0, index + 1), ...samples.slice(index + 2)]);
      const place = laid.findIndex((bag) => bag.kind === 'primary' && bag.toMm === lower.fromMm);
      const first = laid[place];
      const used = new Set(laid.map((bag) => bag.number));
      const spare = freeOfKind(situation, (kind) => kind === 'primary').find((number) => !used.has(number));
      if (first === undefined || spare === undefined) return [];
      const twin = { ...first, fromMm: lower.fromMm, toMm: lower.toMm };
      // A control behind the first of the two lies there before the next metre comes, or goes in behind it.
      const next = laid.findIndex((bag, at) => at > place && bag.kind === 'primary');
      const behind = [...new Set([place + 1, next < 0 ? laid.length : next])];
      const reason = `its bag carried ${first.number}, used already`;
      const relabelled = { ...twin, number: spare, reason, byHand: true as const };
      const issue = [...laid.slice(0, place + 1), relabelled, ...laid.slice(place + 1)];
      return behind.map((at) => ({
        at: first.number,
        place: first.number,
        lying: [...laid.slice(0, at), twin, ...laid.slice(at)],
        fix: { issue },
        deed: `write ${spare} on the lower one of the two with ${first.number}`,
        weight: 1 / samples.length,
      }));
    });
  },
};
