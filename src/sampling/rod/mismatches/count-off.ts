import type { MismatchKind } from '../mismatch.ts';

/** The last number is the one expected and the count is not: nearly always the count is wrong. */
export const countOff: MismatchKind = {
  code: 'count-off',
  name: 'a count that is off',
  happened: 'The last number is the one expected, and the count is not: the row was counted wrong.',
  claims: ['the row is right and its count is not'],
  ground:
    'Count the calicos of this rod again, controls and duplicates too. If the count stands, lay them out beside their piles.',
  nearSplitter: false,
  suppose: ({ endings, seen }) =>
    seen.digits === undefined || seen.count === undefined
      ? []
      : endings.flatMap((issue) => {
          const last = issue.at(-1)?.number;
          if (last === undefined) return [];
          return [
            {
              at: '',
              lying: 'anyhow' as const,
              read: { last },
              fix: { issue },
              deed: `count again: ${issue.length} are expected`,
              weight: 0.004,
            },
          ];
        }),
};
