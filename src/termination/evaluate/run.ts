import { intervalOf } from '../rules/seen-in-row.ts';
import { enough, historyOf, type Leg, ofNeeded } from './amount.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import type { Situation } from './situation.ts';
import { aheadOf, from } from './span.ts';
import { type Stretch, within } from './stretch.ts';
import { mayHold, splitAtLog, toLogged, unloggedBelow } from './unlogged.ts';

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
  /** What is there where it doesn't hold. */
  readonly there: (stretch: Stretch) => string;
  /** Why stretches can't be told, all of them that are not only waiting to be logged. */
  readonly doubts: (stretches: readonly Stretch[]) => string;
  /** What has to be done before they can be told, beside logging them. */
  readonly needs?: (stretches: readonly Stretch[]) => readonly string[];
};

/** "So many metres in a row, counted back from the foot of the stretches". `headMm` is that foot; what is told is counted back from the log. */
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
  const { logged, tail } = splitAtLog(stretches);
  const haveMm = inARowMm(logged, ({ state }) => state === 'yes');
  const progress = `${words.what} for ${ofNeeded(haveMm, needMm)} in a row${toLogged(tail)}`;
  const decided = deciding(stretches, state, headMm - needMm);
  const unlogged = state === 'cannot tell' ? unloggedBelow(stretches, headMm - needMm) : [];
  const why = whyNot(decided, state, words);
  const needs = state === 'cannot tell' ? words.needs?.(decided) : undefined;
  return outcomeOf(situation, historyOf(legs, needMm), {
    amount: { haveMm, needMm },
    progress,
    reason: why === '' ? progress : `${progress}: ${why}`,
    ...(needs === undefined ? {} : { needs }),
    deciding: decided.map((each) => intervalOf(each.fromMm, each.toMm)),
    unlogged,
    ahead: aheadOf(
      from(headMm + Math.max(0, needMm - inARowMm(stretches, mayHold))),
      from(possible >= needMm && unlogged.length === 0 ? headMm + situation.header.intervalMm : headMm),
    ),
    foreseen: haveMm > 0,
    proviso: words.what,
  });
}

/** What cuts the run off, or why its metres can't be told; empty where it holds or only has to be logged. */
function whyNot(decided: readonly Stretch[], state: Outcome['state'], words: RunWords): string {
  if (state === 'yes') return '';
  if (state === 'cannot tell') return words.doubts(decided);
  const against = decided.at(-1);
  return against === undefined ? '' : words.there(against);
}

/** The length of the stretches at the foot that are all wanted. */
function inARowMm(stretches: readonly Stretch[], wanted: (each: Stretch) => boolean): number {
  const topMm = stretches.findLast((each) => !wanted(each))?.toMm ?? stretches[0]?.fromMm ?? 0;
  return (stretches.at(-1)?.toMm ?? topMm) - topMm;
}

/** The run itself where it is long enough, the metres in doubt below `topMm` where it may be, else the stretch that cuts it off. */
function deciding(stretches: readonly Stretch[], state: Outcome['state'], topMm: number): readonly Stretch[] {
  if (state === 'yes') return stretches.slice(-1);
  if (state === 'no') return stretches.filter((each) => each.state === 'no').slice(-1);
  return within(stretches, topMm).filter((each) => each.state === 'cannot tell');
}
