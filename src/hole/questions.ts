import { defineFinding } from '../finding/finding.ts';

/** What is found of questions that a merge left, in a document of any kind, and what settling one can refuse. */
export const QUESTION_FINDINGS = {
  open: defineFinding({
    code: 'question-open',
    severity: 'warning',
    title: 'Two copies changed the same cell differently, and nobody said yet which holds.',
    rationale:
      'Ours stands until it is settled. Passed on as it is, one of two observations is dropped without anybody having chosen.',
  }),
  changed: defineFinding({
    code: 'question-changed-since',
    severity: 'fault',
    title: 'Theirs is to be taken into a cell that was changed since the two copies were merged.',
    rationale: 'What was written there since was never compared with theirs: it would be overwritten unseen.',
  }),
  unfit: defineFinding({
    code: 'question-does-not-fit',
    severity: 'fault',
    title: 'What the other copy says no longer fits what stands around it.',
    rationale:
      'A row that its own schema refuses, or that overlaps another, is not made to settle a question.',
  }),
} as const;
