import type { MismatchKind } from '../mismatch.ts';

/** Primary and duplicate on each other's chute. Numbers and counts are as they should be: only a scan at the chute shows it. */
export const swapped: MismatchKind = {
  code: 'duplicate-and-primary-swapped',
  name: 'duplicate and primary swapped',
  happened: 'The bag of the duplicate is on the first chute and the primary’s on the second.',
  claims: ['duplicate and primary hang on each other’s chute'],
  ground:
    'Nothing on the ground changes: the two numbers change their parts (;swap and the last digits of one), and both stay in the metre.',
  nearSplitter: false,
  suppose: () => [],
};
