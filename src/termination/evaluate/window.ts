import { enough, type Leg } from './amount.ts';
import { topLeg } from './run.ts';
import { deepestMm, type Situation } from './situation.ts';
import { type Ahead, aheadOf, from, type Span } from './span.ts';
import { lengthOf, type Stretch, within } from './stretch.ts';
import { mayHold } from './unlogged.ts';

/**
 * How much of the last `ofMm` holds, at each depth: what comes in at the foot of the window less what leaves at its top. A leg ends
 * where either of them changes.
 */
export function windowLegs(stretches: readonly Stretch[], ofMm: number): readonly Leg[] {
  const legs = topLeg(stretches);
  const topMm = stretches[0]?.fromMm ?? 0;
  let [fromMm, sure, possible, leaving] = [topMm, 0, 0, 0];
  for (const coming of stretches) {
    while (fromMm < coming.toMm) {
      const grows = fromMm < topMm + ofMm;
      const leaves = grows ? undefined : stretches[leaving]!;
      const changesMm = leaves === undefined ? topMm + ofMm : leaves.toMm + ofMm;
      const toMm = Math.min(coming.toMm, changesMm);
      const sureSlope = counts(coming, 'yes') - (leaves === undefined ? 0 : counts(leaves, 'yes'));
      const possibleSlope = 1 - counts(coming, 'no') - (leaves === undefined ? 0 : 1 - counts(leaves, 'no'));
      sure += sureSlope * (toMm - fromMm);
      possible += possibleSlope * (toMm - fromMm);
      legs.push({ toMm, sure, sureSlope, possible, possibleSlope });
      if (!grows && toMm === changesMm) leaving++;
      fromMm = toMm;
    }
  }
  return legs;
}

function counts(stretch: Stretch, state: Stretch['state']): 0 | 1 {
  return stretch.state === state ? 1 : 0;
}

/** Where a window can come to hold `needMm`, and where it can come to hold less. */
export function windowAhead(
  situation: Situation,
  stretches: readonly Stretch[],
  needMm: number,
  ofMm: number,
): Ahead {
  const headMm = deepestMm(situation);
  const last = within(stretches, headMm - ofMm);
  const state = enough(
    lengthOf(last, (each) => each.state === 'yes'),
    lengthOf(last, (each) => each.state !== 'no'),
    needMm,
  );
  const mayFail = state === 'no' || (state === 'cannot tell' && last.some(({ unlogged }) => unlogged));
  const fails = from(mayFail ? headMm : headMm + situation.header.intervalMm);
  return aheadOf(windowHolds(last, headMm, needMm, ofMm), fails);
}

/** Metres that hold come in at the foot; the window gives up its oldest, those that hold with the others. What is not logged may hold. */
function windowHolds(
  last: readonly Stretch[],
  headMm: number,
  needMm: number,
  ofMm: number,
): Span | undefined {
  if (needMm > ofMm) return undefined;
  const cuts = last.flatMap((each) => [each.fromMm + ofMm, each.toMm + ofMm]);
  let atMm = headMm;
  let sure = lengthOf(last, mayHold);
  for (const cut of [...new Set(cuts)].filter((cut) => cut > headMm).sort((a, b) => a - b)) {
    if (sure >= needMm) break;
    const leaving = last.find((each) => each.fromMm + ofMm < cut && each.toMm + ofMm >= cut);
    const gains = leaving !== undefined && mayHold(leaving) ? 0 : 1;
    const wanted = needMm - sure;
    if (gains === 1 && atMm + wanted <= cut) return from(atMm + wanted);
    sure += gains * (cut - atMm);
    atMm = cut;
  }
  return from(sure >= needMm ? atMm : atMm + needMm - sure);
}
