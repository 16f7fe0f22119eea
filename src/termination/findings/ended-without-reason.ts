import { defineFinding } from '../../finding/finding.ts';

/** Raised by decision.ts, on recording and on checking a hole. */
export const endedWithoutReason = defineFinding({
  code: 'termination-ended-without-reason',
  severity: 'fault',
  title: 'A decision on the hole’s end goes against the advice and gives no reason.',
  rationale:
    'The advice is there to be overruled by a person, but whoever reads the hole later has to see why: a hole that ended early can’t be lengthened from the office.',
});
