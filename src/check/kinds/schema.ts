import type { FindingKind } from '../../finding/finding.ts';
import { bagPrefix } from '../../schema/findings/bag-prefix.ts';
import { changeAdded } from '../../schema/findings/change-added.ts';
import { changeCodeGone } from '../../schema/findings/change-code-gone.ts';
import { changeCodeMeaning } from '../../schema/findings/change-code-meaning.ts';
import { changeField } from '../../schema/findings/change-field.ts';
import { changeFieldGone } from '../../schema/findings/change-field-gone.ts';
import { changeLevelMeaning } from '../../schema/findings/change-level-meaning.ts';
import { changeStrokesDropped } from '../../schema/findings/change-strokes-dropped.ts';
import { changeStrokesShifted } from '../../schema/findings/change-strokes-shifted.ts';
import { circular } from '../../schema/findings/circular.ts';
import { codeTwice } from '../../schema/findings/code-twice.ts';
import { codeUnsayable } from '../../schema/findings/code-unsayable.ts';
import { columnCarries } from '../../schema/findings/column-carries.ts';
import { entryTwice } from '../../schema/findings/entry-twice.ts';
import { importColumn } from '../../schema/findings/import-column.ts';
import { importCsv } from '../../schema/findings/import-csv.ts';
import { importRow } from '../../schema/findings/import-row.ts';
import { keyUseless } from '../../schema/findings/key-useless.ts';
import { keysReadAsPair } from '../../schema/findings/keys-read-as-pair.ts';
import { labelTwice } from '../../schema/findings/label-twice.ts';
import { ladder } from '../../schema/findings/ladder.ts';
import { listEmpty } from '../../schema/findings/list-empty.ts';
import { listMissing } from '../../schema/findings/list-missing.ts';
import { listShared } from '../../schema/findings/list-shared.ts';
import { memberTwice } from '../../schema/findings/member-twice.ts';
import { notJson } from '../../schema/findings/not-json.ts';
import { numberRange } from '../../schema/findings/number-range.ts';
import { onlyWhenLater } from '../../schema/findings/only-when-later.ts';
import { onlyWhenSenseless } from '../../schema/findings/only-when-senseless.ts';
import { onlyWhenUnknown } from '../../schema/findings/only-when-unknown.ts';
import { parentChanged } from '../../schema/findings/parent-changed.ts';
import { parentMissing } from '../../schema/findings/parent-missing.ts';
import { placeUnknown } from '../../schema/findings/place-unknown.ts';
import { provisional } from '../../schema/findings/provisional.ts';
import { readingNotTaken } from '../../schema/findings/reading-not-taken.ts';
import { reserved } from '../../schema/findings/reserved.ts';
import { retiredPairReused } from '../../schema/findings/retired-pair-reused.ts';
import { rowAmountOff } from '../../schema/findings/row-amount-off.ts';
import { rowCannotBeNone } from '../../schema/findings/row-cannot-be-none.ts';
import { rowCodeUnknown } from '../../schema/findings/row-code-unknown.ts';
import { rowDecimals } from '../../schema/findings/row-decimals.ts';
import { rowEmptyCell } from '../../schema/findings/row-empty-cell.ts';
import { rowFieldMissing } from '../../schema/findings/row-field-missing.ts';
import { rowFieldUnknown } from '../../schema/findings/row-field-unknown.ts';
import { rowInterval } from '../../schema/findings/row-interval.ts';
import { rowLevelOffScale } from '../../schema/findings/row-level-off-scale.ts';
import { rowNoReturnObserves } from '../../schema/findings/row-no-return-observes.ts';
import { rowNumberOutOfRange } from '../../schema/findings/row-number-out-of-range.ts';
import { rowOnlyWhen } from '../../schema/findings/row-only-when.ts';
import { rowSecondIsFirst } from '../../schema/findings/row-second-is-first.ts';
import { rowSumOverLimit } from '../../schema/findings/row-sum-over-limit.ts';
import { rowUnlikely } from '../../schema/findings/row-unlikely.ts';
import { rowWrongKind } from '../../schema/findings/row-wrong-kind.ts';
import { scaleBroken } from '../../schema/findings/scale-broken.ts';
import { scaleMissing } from '../../schema/findings/scale-missing.ts';
import { shape } from '../../schema/findings/shape.ts';
import { strokesClash } from '../../schema/findings/strokes-clash.ts';
import { strokesNear } from '../../schema/findings/strokes-near.ts';
import { strokesNearElsewhere } from '../../schema/findings/strokes-near-elsewhere.ts';
import { strokesUntypable } from '../../schema/findings/strokes-untypable.ts';
import { tooManyKeys } from '../../schema/findings/too-many-keys.ts';
import { unlikelyUntellable } from '../../schema/findings/unlikely-untellable.ts';
import { unsaidNone } from '../../schema/findings/unsaid-none.ts';

/** Every kind of finding that schema/ raises. */
export const SCHEMA_FINDING_KINDS: readonly FindingKind[] = [
  bagPrefix,
  changeAdded,
  changeCodeGone,
  changeCodeMeaning,
  changeFieldGone,
  changeField,
  changeLevelMeaning,
  changeStrokesDropped,
  changeStrokesShifted,
  circular,
  codeTwice,
  codeUnsayable,
  columnCarries,
  entryTwice,
  importColumn,
  importCsv,
  importRow,
  keysReadAsPair,
  keyUseless,
  labelTwice,
  ladder,
  listEmpty,
  listMissing,
  listShared,
  memberTwice,
  notJson,
  numberRange,
  onlyWhenLater,
  onlyWhenSenseless,
  onlyWhenUnknown,
  parentChanged,
  parentMissing,
  placeUnknown,
  provisional,
  readingNotTaken,
  reserved,
  retiredPairReused,
  rowAmountOff,
  rowCannotBeNone,
  rowCodeUnknown,
  rowDecimals,
  rowEmptyCell,
  rowFieldMissing,
  rowFieldUnknown,
  rowInterval,
  rowLevelOffScale,
  rowNoReturnObserves,
  rowNumberOutOfRange,
  rowOnlyWhen,
  rowSecondIsFirst,
  rowSumOverLimit,
  rowUnlikely,
  rowWrongKind,
  scaleBroken,
  scaleMissing,
  shape,
  strokesClash,
  strokesNearElsewhere,
  strokesNear,
  strokesUntypable,
  tooManyKeys,
  unlikelyUntellable,
  unsaidNone,
];
