import { enough, type Leg } from './amount.ts';
import { topLeg } from './run.ts';
import type { Situation } from './situation.ts';
import { type Ahead, aheadOf, from, type Span } from './span.ts';
import type { Stretch } from './stretch.ts';

/** How much of the last `ofMm` holds, at each depth. */
export function windowLegs(stretches: readonly Stretch[], ofMm: number): readonly Leg[] {
  const topMm = stretches[0]?.fromMm ?? 0;
  const footMm = stretches.at(-1)?.toMm ?? 0;
  const edges = stretches.flatMap((each) => [each.toMm, each.toMm + ofMm]);
  const cuts = [...new Set([...edges, topMm + ofMm])].filter((cut) => cut <= footMm).sort((a, b) => a - b);
  const legs = topLeg(stretches);
  const at = { fromMm: topMm, entering: 0, leaving: 0, sure: 0, possible: 0 };
  for (const toMm of cuts) {
    while (stretches[at.entering]!.toMm < toMm) at.entering++;
    const enters = stretches[at.entering]!.state;
    const leaves = leavingState(stretches, at, toMm - ofMm);
    const sureSlope = Number(enters === 'yes') - Number(leaves === 'yes');
    const possibleSlope = Number(enters !== 'no') - Number(leaves !== undefined && leaves !== 'no');
    at.sure += sureSlope * (toMm - at.fromMm);
    at.possible += possibleSlope * (toMm - at.fromMm);
    at.fromMm = toMm;
    legs.push({ toMm, sure: at.sure, sureSlope, possible: at.possible, possibleSlope });
  }
  return legs;
}

/** What leaves the top of the window while its foot comes down to a cut; undefined while the window still grows. */
function leavingState(stretches: readonly Stretch[], at: { leaving: number }, topMm: number) {
  if (topMm <= stretches[0]!.fromMm) return undefined;
  while (stretches[at.leaving]!.toMm < topMm) at.leaving++;
  return stretches[at.leaving]!.state;
}

/** The stretches below a depth, cut there. */
export function within(stretches: readonly Stretch[], topMm: number): readonly Stretch[] {
  return stretches
    .filter((each) => each.toMm > topMm)
    .map((each) => (each.fromMm < topMm ? { ...each, fromMm: topMm } : each));
}

/** Where a window can come to hold `needMm`, and where it can come to hold less. */
export function windowAhead(
  situation: Situation,
  stretches: readonly Stretch[],
  needMm: number,
  ofMm: number,
): Ahead {
  const headMm = situation.loggedMm;
  const last = within(stretches, headMm - ofMm);
  const length = (wanted: (each: Stretch) => boolean): number =>
    last.filter(wanted).reduce((sum, each) => sum + each.toMm - each.fromMm, 0);
  const state = enough(
    length((each) => each.state === 'yes'),
    length((each) => each.state !== 'no'),
    needMm,
  );
  const fails = from(state === 'no' ? headMm : headMm + situation.header.intervalMm);
  return aheadOf(windowHolds(last, headMm, needMm, ofMm), fails);
}

/** Metres that hold come in at the foot; the window gives up its oldest, those that hold with the others. */
function windowHolds(
  last: readonly Stretch[],
  headMm: number,
  needMm: number,
  ofMm: number,
): Span | undefined {
  if (needMm > ofMm) return undefined;
  const cuts = last.flatMap((each) => [each.fromMm + ofMm, each.toMm + ofMm]);
  let atMm = headMm;
  let sure = last.reduce((sum, each) => sum + (each.state === 'yes' ? each.toMm - each.fromMm : 0), 0);
  for (const cut of [...new Set(cuts)].filter((cut) => cut > headMm).sort((a, b) => a - b)) {
    if (sure >= needMm) break;
    const leaving = last.find((each) => each.fromMm + ofMm < cut && each.toMm + ofMm >= cut);
    const gains = leaving?.state === 'yes' ? 0 : 1;
    const wanted = needMm - sure;
    if (gains === 1 && atMm + wanted <= cut) return from(atMm + wanted);
    sure += gains * (cut - atMm);
    atMm = cut;
  }
  return from(sure >= needMm ? atMm : atMm + needMm - sure);
}
