import { lastPlace } from '../../stream/stream.ts';
import type { MismatchKind } from '../mismatch.ts';

/** The last calico of the rod above was read once more: whoever read it stood at the wrong one, or nothing has been hung since. */
export const rodAboveRead: MismatchKind = {
  code: 'rod-above-read',
  name: 'the last calico of the rod above was read',
  happened:
    'The number read is the last one of the rod above: it was read once more, or no calico has been hung since.',
  claims: ['the last of the rod above was read'],
  ground: 'Read the very last calico of this rod. If none hangs there, find out what its metres went into.',
  nearSplitter: true,
  suppose: ({ sampling, state, line, endings }) => {
    const above = line.at(lastPlace(sampling, state, line));
    if (above === undefined) return [];
    return endings.map((issue) => ({
      at: above,
      read: { last: above, slip: true as const },
      lying: issue,
      fix: { issue },
      deed: `read the last calico again: ${issue.at(-1)?.number}`,
      weight: 0.8,
    }));
  },
};
