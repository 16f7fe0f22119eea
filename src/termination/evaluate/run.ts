import { formatDepth } from '../../quantity/depth.ts';
import { intervalOf } from '../rules/seen-in-row.ts';
import { enough, historyOf, type Leg } from './amount.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import type { Situation } from './situation.ts';
import { aheadOf, from } from './span.ts';
import type { Stretch } from './stretch.ts';

/** The length in a row over which something holds, counted back from each depth. */
function runLegs(stretches: readonly Stretch[]): readonly Leg[] {
  let sure = 0;
  let possible = 0;
  const legs: Leg[] = topLeg(stretches);
  for (const { fromMm, toMm, state } of stretches) {
    sure = state === 'yes' ? sure + toMm - fromMm : 0;
    possible = state === 'no' ? 0 : possible + toMm - fromMm;
    legs.push({
      toMm,
      sure,
      sureSlope: state === 'yes' ? 1 : 0,
      possible,
      possibleSlope: state === 'no' ? 0 : 1,
    });
  }
  return legs;
}

/** The hole above the first stretch, where there is nothing of any amount. */
export function topLeg(stretches: readonly Stretch[]): Leg[] {
  const toMm = stretches[0]?.fromMm ?? 0;
  return toMm > 0 ? [{ toMm, sure: 0, sureSlope: 0, possible: 0, possibleSlope: 0 }] : [];
}

/** What a run is about, in words. */
export type RunWords = {
  /** What holds: `pyrite < 1 %`. */
  readonly what: string;
  /** What is there where it doesn't hold or can't be told. */
  readonly there: (stretch: Stretch) => string;
};

/** "So many metres in a row, counted back from the foot of the stretches". `headMm` is that foot. */
export function inARow(
  situation: Situation,
  stretches: readonly Stretch[],
  headMm: number,
  needMm: number,
  words: RunWords,
): Outcome {
  const legs = runLegs(stretches);
  const { sure, possible } = legs.at(-1) ?? { sure: 0, possible: 0 };
  const state = enough(sure, possible, needMm);
  const progress = `${words.what} for ${formatDepth(sure)} of ${formatDepth(needMm)} m in a row`;
  const decided = deciding(stretches, state);
  const against = state === 'yes' ? undefined : decided.at(-1);
  return outcomeOf(situation, historyOf(legs, needMm), {
    amount: { haveMm: sure, needMm },
    progress,
    reason: against === undefined ? progress : `${progress}: ${words.there(against)}`,
    deciding: decided.map((each) => intervalOf(each.fromMm, each.toMm)),
    ahead: aheadOf(
      from(headMm + Math.max(0, needMm - sure)),
      from(state === 'yes' || possible >= needMm ? headMm + situation.header.intervalMm : headMm),
    ),
    foreseen: sure > 0,
    proviso: words.what,
  });
}

/** The run itself where it is long enough, the metres in doubt where it may be, else the stretch that cuts it off. */
function deciding(stretches: readonly Stretch[], state: Outcome['state']): readonly Stretch[] {
  if (state === 'yes') return stretches.slice(-1);
  if (state === 'no') return stretches.filter((each) => each.state !== 'yes').slice(-1);
  const top = stretches.findLastIndex((each) => each.state === 'no') + 1;
  return stretches.slice(top).filter((each) => each.state === 'cannot tell');
}
