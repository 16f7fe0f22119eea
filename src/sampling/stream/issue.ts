import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { Bag, PutOff } from '../../hole/bags.ts';
import { depthFromMm } from '../../quantity/depth.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import { duplicateWithoutPrimary, metresUnbagged } from '../findings.ts';
import type { Sampling } from '../sampling.ts';
import { materialFor } from '../scheme/rotation.ts';
import { serialOf } from '../scheme/scheme.ts';
import { type StreamState, samplesAhead, stream, streamFoot, type Upcoming } from './stream.ts';

/** An upcoming bag as the fact that it becomes once it is filled: every result resolved, so that nothing is worked out again later. */
export function bagOf(sampling: Sampling, upcoming: Upcoming): Bag {
  const { number, kind, fromMm, toMm, of, material, speared } = upcoming;
  const rank = fromMm === undefined ? {} : { rank: sampling.rank };
  return {
    number,
    kind,
    ...(fromMm === undefined || toMm === undefined ? {} : { fromMm, toMm }),
    ...rank,
    ...(of === undefined ? {} : { of }),
    ...(kind === 'field duplicate'
      ? { method: speared === true ? ('spear' as const) : sampling.duplicates }
      : {}),
    ...(material === undefined ? {} : { material }),
  };
}

/**
 * The bags that a rod done at `state.drilledMm` issues: every sample down to there that has none yet, with the controls that
 * their numbers bring, in the order of the numbers. With `final` the rest that is shorter than a sample gets a bag too: the
 * foot of the hole. Where the numbered bags run out the list ends early ({@link unbagged}).
 */
export function issue(
  sampling: Sampling,
  state: StreamState,
  asked: { readonly final?: boolean } = {},
): readonly Bag[] {
  const samples = samplesDownTo(sampling, state, asked.final === true);
  return [...stream(sampling, state, samples)].map((upcoming) => bagOf(sampling, upcoming));
}

/** The samples from the last bag down to the drilled head. */
export function samplesDownTo(sampling: Sampling, state: StreamState, final: boolean): readonly Interval[] {
  const found: Interval[] = [];
  for (const sample of samplesAhead(sampling, state)) {
    if (sample.toMm <= state.drilledMm) found.push(sample);
    else {
      if (final && sample.fromMm < state.drilledMm)
        found.push({ fromMm: sample.fromMm, toMm: depthFromMm(state.drilledMm) });
      return found;
    }
  }
  return found;
}

/** Drilled metres that whole samples should cover and no numbered bag is left for. */
export function unbagged(sampling: Sampling, state: StreamState): Interval | undefined {
  const wanted = samplesDownTo(sampling, state, false).at(-1)?.toMm;
  const bagged = issue(sampling, state).reduce(
    (mm, bag) => (bag.kind === 'primary' ? Math.max(mm, bag.toMm ?? 0) : mm),
    streamFoot(sampling, state).mm,
  );
  return wanted === undefined || wanted <= bagged ? undefined : { fromMm: depthFromMm(bagged), toMm: wanted };
}

/** Drilled metres of a hole that no numbered bag was left for. A hole that never had a number may be one that is not sampled. */
export function checkUnbagged(sampling: Sampling, hole: string, state: StreamState): readonly Finding[] {
  const metres = state.bagRuns.length === 0 ? undefined : unbagged(sampling, state);
  if (metres === undefined) return [];
  return [
    metresUnbagged.at(
      { hole, ...metres },
      {
        problem: `${formatInterval(metres)} is drilled and has no bag: the numbers ran out.`,
        remedy: 'Number more for this hole (;numbered), then bag these metres from their piles.',
      },
    ),
  ];
}

/** What is said of drilled metres without a numbered bag. Once more are numbered, the next rod done issues theirs too. */
export function unbaggedWords(metres: Interval): string {
  return `${formatInterval(metres)} has no bag: no numbered one is left. Number more (;numbered): a further rod then gives it bags; without one ;bag by hand`;
}

/**
 * The bag of a control that was put off, now that it is placed under the number kept for it. A duplicate repeats the primary
 * `of` and is speared from its pile, for its second chute is long past; without that primary it is refused.
 */
export function placedBag(sampling: Sampling, putOff: PutOff, of?: Bag): Result<Bag> {
  const reason = `put off: ${putOff.reason}`;
  if (putOff.kind !== 'field duplicate') {
    const material = materialFor(sampling, putOff.kind, serialOf(sampling.numbers, putOff.number));
    const made = material === undefined ? {} : { material };
    return ok({ number: putOff.number, kind: putOff.kind, ...made, byHand: true, reason });
  }
  if (of?.kind !== 'primary' || of.fromMm === undefined || of.toMm === undefined)
    return refused(duplicateWithoutPrimary.at({ thing: putOff.number }, WHICH_PRIMARY));
  const rank = of.rank ?? sampling.rank;
  const held = { fromMm: of.fromMm, toMm: of.toMm, rank, of: of.number };
  return ok({
    number: putOff.number,
    kind: 'field duplicate',
    ...held,
    method: 'spear',
    byHand: true,
    reason,
  });
}

const WHICH_PRIMARY = {
  problem: 'This duplicate has no primary sample to repeat.',
  remedy: 'Say the number of the primary whose pile you spear.',
};
