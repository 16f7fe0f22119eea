import type { FindingKind } from '../finding/finding.ts';
import { azimuthOffCircle } from './findings/azimuth-off-circle.ts';
import { backBearingGiven } from './findings/back-bearing.ts';
import { collarOffPlan } from './findings/collar-off-plan.ts';
import { collarOffProgram } from './findings/collar-off-program.ts';
import { compassDistances, compassMagneticGround } from './findings/compass-no-check.ts';
import { declinationSlip } from './findings/declination-slip.ts';
import { dipFromVertical, dipUpwards } from './findings/dip-slip.ts';
import { expectedNotSeen, expectedOff } from './findings/expected-off.ts';
import { gridUnreadable } from './findings/grid-unreadable.ts';
import { jump } from './findings/jump.ts';
import { magneticFieldOff } from './findings/magnetic-field.ts';
import { magneticInSteel } from './findings/magnetic-in-steel.ts';
import { magneticModelOutOfDate } from './findings/magnetic-model-out-of-date.ts';
import { mastDip } from './findings/mast-dip.ts';
import { mineGridUnsound } from './findings/mine-grid-unsound.ts';
import { misclose } from './findings/misclose.ts';
import { northUnknown } from './findings/north-not-known.ts';
import { offScale } from './findings/off-scale.ts';
import { shotBelowDrilled } from './findings/shot-below-drilled.ts';
import { shotGap } from './findings/shot-gap.ts';
import { shotOrder } from './findings/shot-order.ts';
import { stationsUnusable } from './findings/stations-unusable.ts';
import { tableUnreadable } from './findings/table-unreadable.ts';
import { compassBlackout, compassCaution } from './findings/weak-horizontal-field.ts';

/** Every kind of finding this room can raise, for the registry and its catalogue. */
export const SURVEY_FINDING_KINDS: readonly FindingKind[] = [
  azimuthOffCircle,
  backBearingGiven,
  collarOffPlan,
  collarOffProgram,
  compassBlackout,
  compassCaution,
  compassDistances,
  compassMagneticGround,
  declinationSlip,
  dipFromVertical,
  dipUpwards,
  expectedNotSeen,
  expectedOff,
  gridUnreadable,
  jump,
  magneticFieldOff,
  magneticInSteel,
  magneticModelOutOfDate,
  mastDip,
  mineGridUnsound,
  misclose,
  northUnknown,
  offScale,
  shotBelowDrilled,
  shotGap,
  shotOrder,
  stationsUnusable,
  tableUnreadable,
];
