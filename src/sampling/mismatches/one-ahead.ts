import { freeOfKind, layWith, type MismatchKind, traceOf, voided, without } from '../mismatch.ts';
import { holding, primariesBefore, withDuplicates } from './shift.ts';

/** The stream was a number ahead before this rod began: a number of the rod before was passed over and nobody saw it. */
export const oneAhead: MismatchKind = {
  code: 'one-ahead',
  name: 'the stream is one ahead',
  happened: 'The bags were a number ahead before this rod began: the rod before passed one over.',
  ground:
    'Look through the bags of the rod before for the number left out. Cut the empty calico up: that number is void.',
  nearSplitter: false,
  suppose: (situation) => {
    const before = primariesBefore(situation);
    const last = before.at(-1);
    const extra = freeOfKind(situation, (kind) => kind === 'primary')[0];
    if (last === undefined || extra === undefined) return [];
    const laid = layWith(situation, without(situation, [extra]));
    const added = {
      ...holding({ ...last, number: extra }, last),
      reason: 'the rod before passed a number over',
    };
    return before.map((left, index) => {
      const moved = before.slice(index + 1).map((bag, step) => holding(bag, before[index + step] ?? bag));
      const amend = withDuplicates(situation, moved);
      const gone = { number: left.number, bag: voided(left.number, 'skipped') };
      return {
        at: left.number,
        trace: traceOf(situation.sampling, laid),
        fix: { issue: [added, ...laid], amend: [gone, ...amend] },
        weight: 0.6 / before.length,
      };
    });
  },
};
