import type { FindingKind } from '../../finding/finding.ts';
import { bagElsewhere } from '../../sampling/findings/bag-not-of-this-hole.ts';
import { runBackwards } from '../../sampling/findings/bag-run-backwards.ts';
import { runOutside } from '../../sampling/findings/bag-run-outside.ts';
import { runOverlap } from '../../sampling/findings/bag-run-overlap.ts';
import { blankHigh } from '../../sampling/findings/blank-high.ts';
import { controlAsMetre } from '../../sampling/findings/control-number-as-metre.ts';
import { controlStock } from '../../sampling/findings/control-stock.ts';
import { withoutMaterial } from '../../sampling/findings/control-without-material.ts';
import { custodyBroken } from '../../sampling/findings/custody-broken.ts';
import { dispatchDouble } from '../../sampling/findings/dispatch-double.ts';
import { dispatchGap } from '../../sampling/findings/dispatch-gap.ts';
import { dispatchNotIssued } from '../../sampling/findings/dispatch-not-issued.ts';
import { dispatchRefused } from '../../sampling/findings/dispatch-refused.ts';
import { duplicateApart } from '../../sampling/findings/duplicate-apart.ts';
import { duplicateTwin } from '../../sampling/findings/duplicate-not-its-twin.ts';
import { duplicateWithoutPrimary } from '../../sampling/findings/duplicate-without-primary.ts';
import { hygieneNotLooked } from '../../sampling/findings/hygiene-not-looked.ts';
import { hygieneUnclean } from '../../sampling/findings/hygiene-unclean.ts';
import { massInGrams } from '../../sampling/findings/mass-in-grams.ts';
import { massUnreadable } from '../../sampling/findings/mass-unreadable.ts';
import { metreTwice } from '../../sampling/findings/metre-bagged-twice.ts';
import { metresContaminated } from '../../sampling/findings/metres-contaminated.ts';
import { metresWet } from '../../sampling/findings/metres-wet.ts';
import { mismatchUnmended } from '../../sampling/findings/mismatch-unmended.ts';
import { numberBlock } from '../../sampling/findings/number-block.ts';
import { numberNotOurs } from '../../sampling/findings/number-not-ours.ts';
import { numberPrefixes } from '../../sampling/findings/number-prefixes.ts';
import { usedTwice } from '../../sampling/findings/number-used-twice.ts';
import { rateBehind } from '../../sampling/findings/rate-behind.ts';
import { receiptDiffers } from '../../sampling/findings/receipt-differs.ts';
import { receiptUnreadable } from '../../sampling/findings/receipt-unreadable.ts';
import { recoveryHigh } from '../../sampling/findings/recovery-high.ts';
import { recoveryLow } from '../../sampling/findings/recovery-low.ts';
import { recoveryTrendFound } from '../../sampling/findings/recovery-trend.ts';
import { resplitRefused } from '../../sampling/findings/resplit-refused.ts';
import { resultColumn } from '../../sampling/findings/result-column-missing.ts';
import { resultMissing } from '../../sampling/findings/result-missing.ts';
import { resultOfNoBag } from '../../sampling/findings/result-of-no-bag.ts';
import { resultTwice } from '../../sampling/findings/result-twice.ts';
import { resultUnit } from '../../sampling/findings/result-unit.ts';
import { resultUnreadable } from '../../sampling/findings/result-unreadable.ts';
import { resultsRefused } from '../../sampling/findings/results-refused.ts';
import { rowsMoved } from '../../sampling/findings/rows-moved.ts';
import { rateShort } from '../../sampling/findings/scheme-rate-short.ts';
import { rateUnusual } from '../../sampling/findings/scheme-rate-unusual.ts';
import { reservedTwice } from '../../sampling/findings/scheme-reserved-twice.ts';
import { slotNever } from '../../sampling/findings/scheme-slot-never.ts';
import { slotUsual } from '../../sampling/findings/scheme-slot-usual.ts';
import { splitOffTarget } from '../../sampling/findings/split-off-target.ts';
import { standardOff } from '../../sampling/findings/standard-off.ts';
import { standardRun } from '../../sampling/findings/standard-run.ts';
import { transferCount } from '../../sampling/findings/transfer-count.ts';
import { trayMetres } from '../../sampling/findings/tray-metres-differ.ts';
import { trayWithoutPhoto } from '../../sampling/findings/tray-without-photo.ts';
import { wetRun } from '../../sampling/findings/wet-run.ts';

/** Every kind of finding that sampling/ raises. */
export const SAMPLING_FINDING_KINDS: readonly FindingKind[] = [
  bagElsewhere,
  runBackwards,
  runOutside,
  runOverlap,
  blankHigh,
  controlAsMetre,
  controlStock,
  withoutMaterial,
  custodyBroken,
  dispatchDouble,
  dispatchGap,
  dispatchNotIssued,
  dispatchRefused,
  duplicateApart,
  duplicateTwin,
  duplicateWithoutPrimary,
  hygieneNotLooked,
  hygieneUnclean,
  massInGrams,
  massUnreadable,
  metresContaminated,
  metresWet,
  metreTwice,
  mismatchUnmended,
  numberBlock,
  numberNotOurs,
  numberPrefixes,
  usedTwice,
  rateBehind,
  receiptDiffers,
  receiptUnreadable,
  recoveryHigh,
  recoveryLow,
  recoveryTrendFound,
  resplitRefused,
  resultColumn,
  resultMissing,
  resultOfNoBag,
  resultTwice,
  resultUnit,
  resultUnreadable,
  resultsRefused,
  rowsMoved,
  rateShort,
  rateUnusual,
  reservedTwice,
  slotNever,
  slotUsual,
  splitOffTarget,
  standardOff,
  standardRun,
  transferCount,
  trayMetres,
  trayWithoutPhoto,
  wetRun,
];
