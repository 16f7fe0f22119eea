import type { MismatchKind } from '../mismatch.ts';
import { anotherBundle } from './another-bundle.ts';
import { bagsTooFew } from './bags-too-few.ts';
import { bagsTooMany } from './bags-too-many.ts';
import { closingBagsSwapped } from './closing-bags-swapped.ts';
import { controlEarly } from './control-early.ts';
import { controlForgotten } from './control-forgotten.ts';
import { countOff } from './count-off.ts';
import { depthMark } from './depth-mark.ts';
import { emptyDuplicate } from './empty-duplicate.ts';
import { foreign } from './foreign.ts';
import { keptNumberUsed } from './kept-number-used.ts';
import { lastButOneRead } from './last-but-one-read.ts';
import { lastHolesBags } from './last-holes-bags.ts';
import { oneAhead } from './one-ahead.ts';
import { oneBehind } from './one-behind.ts';
import { rodAboveRead } from './rod-above-read.ts';
import { several } from './several.ts';
import { skipped } from './skipped.ts';
import { spoiledUsed } from './spoiled-used.ts';
import { swapped } from './swapped.ts';
import { transposedDigits } from './transposed-digits.ts';
import { twoMetresInOneBag } from './two-metres-in-one-bag.ts';
import { usedTwice } from './used-twice.ts';
import { wrongRestart } from './wrong-restart.ts';

/** Every kind of mismatch that a rod check or a scan can name. */
export const MISMATCHES: readonly MismatchKind[] = [
  bagsTooFew,
  bagsTooMany,
  twoMetresInOneBag,
  lastHolesBags,
  skipped,
  usedTwice,
  transposedDigits,
  controlForgotten,
  controlEarly,
  swapped,
  emptyDuplicate,
  oneAhead,
  oneBehind,
  wrongRestart,
  depthMark,
  keptNumberUsed,
  lastButOneRead,
  rodAboveRead,
  countOff,
  closingBagsSwapped,
  anotherBundle,
  foreign,
  spoiledUsed,
  several,
];
