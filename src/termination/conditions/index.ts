import { boundaryNear } from './boundary-near.ts';
import { budgetSpent } from './budget-spent.ts';
import { delegatedLimit } from './delegated-limit.ts';
import { held } from './held.ts';
import { hoursSpent } from './hours-spent.ts';
import { inARow } from './in-a-row.ts';
import { instrumentBelow } from './instrument-below.ts';
import { maximumReached } from './maximum-reached.ts';
import { minimumReached } from './minimum-reached.ts';
import { noReturnInARow } from './no-return-in-a-row.ts';
import { ofLast } from './of-last.ts';
import { offPlan } from './off-plan.ts';
import { paceBelow } from './pace-below.ts';
import { pastContact } from './past-contact.ts';
import { pastExpected } from './past-expected.ts';
import { pastTarget } from './past-target.ts';
import { plannedDepthReached } from './planned-depth-reached.ts';
import { projectedMiss } from './projected-miss.ts';
import { recoveryInARow } from './recovery-in-a-row.ts';
import { rodFinished } from './rod-finished.ts';
import { seen } from './seen.ts';
import { share } from './share.ts';
import { shortOfPlan } from './short-of-plan.ts';
import { sinceLastSeen } from './since-last-seen.ts';
import { targetUnreachable } from './target-unreachable.ts';
import { voidNear } from './void-near.ts';
import { wetInARow } from './wet-in-a-row.ts';

/** Every kind of condition that a rule can ask, in the order of the page about them. */
export const CONDITIONS = [
  plannedDepthReached,
  pastTarget,
  pastExpected,
  minimumReached,
  maximumReached,
  boundaryNear,
  rodFinished,
  budgetSpent,
  inARow,
  ofLast,
  seen,
  sinceLastSeen,
  pastContact,
  share,
  wetInARow,
  recoveryInARow,
  noReturnInARow,
  instrumentBelow,
  offPlan,
  projectedMiss,
  targetUnreachable,
  paceBelow,
  hoursSpent,
  delegatedLimit,
  shortOfPlan,
  voidNear,
  held,
] as const;
