import { formatInterval, type Interval } from '../../../quantity/interval.ts';
import { isCovered } from '../../stream/no-sample.ts';
import { layWith, type MismatchKind } from '../mismatch.ts';

/** A metre gave nothing, and its calico went on to the next metre: the commonest slip behind a metre without return (common practice). */
export const keptNumberUsed: MismatchKind = {
  code: 'kept-number-used',
  name: 'the number of an empty metre on the next one',
  happened: 'The calico kept for a metre that gave nothing hangs on the next metre, and the others follow.',
  claims: ['a metre has no bag', 'no number was passed over'],
  ground:
    'Look at the calicos below the empty metre: each is one number early. They keep their numbers; the empty metre has no sample.',
  nearSplitter: false,
  suppose: (situation) => {
    const { samples, state } = situation;
    const empty = samples.filter((each) => isCovered(each, state.noReturn ?? []));
    const choices: readonly (readonly Interval[])[] =
      empty.length > 1 ? [empty, ...empty.map((each) => [each])] : [empty];
    return choices
      .filter((gone) => gone.length > 0)
      .map((gone) => ({
        at: gone.map(formatInterval).join(', '),
        ...(gone.length === 1 && gone[0] !== undefined ? { place: gone[0] } : {}),
        fix: {
          issue: layWith(
            situation,
            {},
            samples.filter((each) => !gone.includes(each)),
          ),
          unsampled: gone.map((each) => ({ ...each, reason: 'nothing came up' })),
        },
        weight: gone.length === empty.length ? 12 : 3,
      }));
  },
};
