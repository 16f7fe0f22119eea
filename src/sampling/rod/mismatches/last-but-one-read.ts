import { isNoSample } from '../../stream/no-sample.ts';
import type { MismatchKind } from '../mismatch.ts';

/** Whoever read the row read the calico before the last one: the bags are right, and the reading is not. */
export const lastButOneRead: MismatchKind = {
  code: 'last-but-one-read',
  name: 'the last calico but one was read',
  happened: 'The number read is on the calico before the last one, and the bags are as they should be.',
  claims: ['the last but one was read, and the row is right'],
  ground: 'Read the very last calico of the row again. If it is the one expected, nothing needs fixing.',
  nearSplitter: false,
  suppose: ({ endings, beside, state }) =>
    endings.flatMap((issue) => {
      // A calico of a metre that gave nothing is empty, and seldom laid out.
      const filled = [...issue, ...beside.placed].filter((bag) => !isNoSample(bag, state.noReturn ?? []));
      const beforeLast = filled.at(-2)?.number;
      if (beforeLast === undefined) return [];
      return [
        {
          at: beforeLast,
          read: { last: beforeLast, slip: true as const },
          lying: issue,
          fix: { issue },
          deed: `read the last calico again: ${issue.at(-1)?.number}`,
          weight: 1.2,
        },
      ];
    }),
};
