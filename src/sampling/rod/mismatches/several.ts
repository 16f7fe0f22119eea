import type { MismatchKind } from '../mismatch.ts';

/** Nothing single explains the numbers. It always fits: the last choice offered, and the name where no other kind fits. */
export const several: MismatchKind = {
  code: 'several',
  name: 'more than one thing',
  happened: 'None of the usual slips alone gives these numbers.',
  claims: ['no single slip'],
  ground:
    'Lay the bags of this rod out beside their piles, scan or type every one, and put each under its metre.',
  nearSplitter: false,
  suppose: ({ expected }) => [
    {
      at: '',
      lying: 'anyhow',
      fix: { issue: expected },
      deed: 'put each bag under its metre',
      weight: 0.001,
    },
  ],
};
