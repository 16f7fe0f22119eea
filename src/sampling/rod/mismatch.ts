import type { Bag, BagRun } from '../../hole/bags.ts';
import type { Interval } from '../../quantity/interval.ts';
import type { NumberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { choicesByNumber, reservedFor } from '../scheme/scheme.ts';
import { bagOf, issue, samplesDownTo } from '../stream/issue.ts';
import { freeNumbers, type StreamState, stream } from '../stream/stream.ts';

/** What was read off the bags at a rod done. Whatever is left out was not looked at. */
export interface RodSeen {
  /** The last digits on the last calico, or the whole number: always the whole where its prefix is not the project's. */
  readonly digits?: string;
  /** Calicos counted in this rod, controls and duplicates included. */
  readonly count?: number;
  /** Depth by the rod count, millimetres: rods × length + first rod offset. */
  readonly depthByRodsMm?: number;
  /** There was a break, a crew change or a move since the rod before. */
  readonly afterBreak?: boolean;
  /** The last digits on the first calico of this rod. */
  readonly first?: string;
  /** One calico is about twice as heavy as the others. */
  readonly double?: boolean;
  /** Standards, blanks and duplicates that lie in this rod. */
  readonly controls?: number;
  /** The last digits on the last two calicos of the row, read once more in their order: the very last one second. */
  readonly lastTwo?: readonly [beforeLast: string, last: string];
}

/** Another hole of the project: its numbers are not this hole's. */
export interface OtherHole {
  readonly hole: string;
  readonly bagRuns: readonly BagRun[];
  readonly bags: readonly Bag[];
}

/** What lies in a row beside the bags that the stream gives: everything that a rod check has to allow for before it calls a rod wrong. */
export interface Beside {
  /** Bags of this rod's metres that were placed by hand. */
  readonly placed: readonly Bag[];
  /** Controls placed by hand since the rod before: they may lie anywhere in this row, at its end too. */
  readonly controls: readonly Bag[];
  /** Sachets that closed a rod which no one read: they may lie in this row or in that one. */
  readonly tail: number;
}

/** What a rod check knows. */
export interface Situation {
  readonly sampling: Sampling;
  /** The record before this rod's bags are issued, with the new drilled head. */
  readonly state: StreamState;
  readonly seen: RodSeen;
  readonly others: readonly OtherHole[];
  readonly line: NumberLine;
  /** The bags that this rod should have given. */
  readonly expected: readonly Bag[];
  /** The same, and where sachets close the rod also without them: they are put in at once or when the next rod begins. */
  readonly endings: readonly (readonly Bag[])[];
  /** What else lies in the row. */
  readonly beside: Beside;
  /** The samples that came off the rig in this rod, as the depth has it. */
  readonly samples: readonly Interval[];
}

/** The mending of a mismatch as data: what to write in the place of the expected bags. No number of an issued bag changes. */
export interface Fix {
  /** Bags to issue with this rod. */
  readonly issue: readonly Bag[];
  /** Bags issued before whose contents were written down wrong. */
  readonly amend?: readonly { readonly number: string; readonly bag: Bag }[];
  /** Controls that still wait; their numbers stay theirs. */
  readonly putOff?: readonly {
    readonly number: string;
    readonly kind: Bag['kind'];
    readonly of?: string;
    readonly reason: string;
  }[];
  /** What numbers are to be, over the scheme. */
  readonly choices?: readonly {
    readonly number: string;
    readonly kind: 'primary' | 'field duplicate' | 'standard' | 'blank';
    readonly reason: string;
  }[];
  /** Metres that have no sample. */
  readonly unsampled?: readonly (Interval & { readonly reason: string })[];
  /** The drilled depth put right, millimetres. */
  readonly depthMm?: number;
}

/** What would be read off the bags; a part that could be anything is left out. */
export interface Trace {
  /** What someone reads who looks at the last calico for the first time. */
  readonly last?: string;
  readonly count?: number;
  readonly first?: string;
  readonly double?: boolean;
  readonly controls?: number;
  readonly lastTwo?: readonly [beforeLast: string | undefined, last: string | undefined];
}

/** One way in which a kind of mismatch could have gone: where, what would be read, and its mending. */
export interface Supposition {
  /** Where it happened, in words (`163`, `54–55`). */
  readonly at: string;
  /** The same as a person can see it on the ground: a metre, or a number that is on a calico. */
  readonly place?: Interval | string;
  /** The bags as they lie in the row; those of the mending where left out. Undefined: they may lie in any way. */
  readonly lying?: readonly Bag[] | 'anyhow';
  /** The number read, where it is not the one on the last calico of the row; `slip`: it was the reader who slipped. */
  readonly read?: { readonly last: string; readonly slip?: true };
  readonly fix: Fix;
  /** What hands do on the ground so that the record as fixed is true, where it takes any: an order, without a full stop. */
  readonly deed?: string;
  /** How often it happens beside other ways, common practice; only the proportions count. */
  readonly weight: number;
}

/**
 * What a kind's sentence claims of the bags, so that it can be compared with what really lies there. A claim about the number in hand is one that
 * the record can't get wrong; the others are likely, never sure.
 */
export type Claim =
  | 'the number is of no hole and no block'
  | 'the number is of a block, and labelled for no hole'
  | 'the number is of another hole'
  | 'the number was put out of use'
  | 'two digits of the last number are the wrong way round'
  | 'the last but one was read, and the row is right'
  | 'the last two lie in each other’s place'
  | 'a metre has no bag'
  | 'a metre is in two bags'
  | 'a bag holds two metres'
  | 'a number was passed over'
  | 'no number was passed over'
  | 'a number is on two bags'
  | 'a control due is not there'
  | 'a control lies under a metre’s number'
  | 'a duplicate was not caught'
  | 'duplicate and primary hang on each other’s chute'
  | 'the row began a number ahead'
  | 'the row began a number behind'
  | 'the row went on from another number'
  | 'the last of the rod above was read'
  | 'the row is right and its count is not'
  | 'the depth is not the one marked'
  | 'no single slip';

/** A kind of mismatch: its name, what to do about the bags on the ground, and every way in which it could have gone. */
export interface MismatchKind {
  readonly code: string;
  readonly name: string;
  /** What happened, in a sentence. */
  readonly happened: string;
  /** What that sentence claims, each to be true where it is. */
  readonly claims: readonly Claim[];
  /** What to do about the bags on the ground. */
  readonly ground: string;
  /** The remedy takes hands near cyclone or splitter: said only under the driller's word. */
  readonly nearSplitter: boolean;
  /** The one fact that settles where it happened, asked of whoever is at the row; none where its place needs no asking. */
  readonly asks?: string;
  readonly suppose: (situation: Situation) => readonly Supposition[];
}

/** Said with every remedy that takes hands near the machine; no remedy may suggest less. */
export const NEAR_SPLITTER =
  'Go near the cyclone or splitter only when the driller confirms that rotation is stopped, air is off and bled, and site isolation is done.';

/** Most numbers in a row that count as skipped; more is another bundle, a wrong restart. */
export const MOST_SKIPPED = 3;

/** What becomes of calicos filled under numbers that are not this hole's. */
export const WRITE_OWN = 'write this hole’s numbers on the calicos';
/** What becomes of the calico of a number that was passed over. */
export const CUT_UP = 'cut the empty calico up';

/** The bags of a rod, and the same without the sachets that close it: they are put in at once or when the next rod begins. */
export function withAndWithoutTail(bags: readonly Bag[]): readonly (readonly Bag[])[] {
  const end = bags.findLastIndex((bag) => bag.kind !== 'standard' && bag.kind !== 'blank') + 1;
  return end === bags.length || end === 0 ? [bags] : [bags, bags.slice(0, end)];
}

/** The bags as the stream would give them, had the record or the samples been otherwise. */
export function layWith(
  situation: Situation,
  otherwise: Partial<StreamState>,
  samples: readonly Interval[] = situation.samples,
): readonly Bag[] {
  const { sampling, state } = situation;
  return [...stream(sampling, { ...state, ...otherwise }, samples)].map((each) => bagOf(sampling, each));
}

/** The bags and samples down to another drilled depth. */
export function layDownTo(situation: Situation, drilledMm: number): readonly Bag[] {
  return issue(situation.sampling, { ...situation.state, drilledMm });
}

/** The samples down to the drilled head. */
export function samplesOf(sampling: Sampling, state: StreamState): readonly Interval[] {
  return samplesDownTo(sampling, state, false);
}

/** Said where the row is right but for the number on its last calico. */
export function writeOnLast(issue: readonly Bag[]): { readonly deed?: string } {
  const last = issue.at(-1)?.number;
  return last === undefined ? {} : { deed: `write ${last} on the last calico` };
}

/** A number that is never used again. */
export function spoiled(number: string, reason: string): Bag {
  return { number, kind: 'spoiled', reason };
}

/** The record with some numbers taken out of use. */
export function without(situation: Situation, numbers: readonly string[]): Partial<StreamState> {
  return { bags: [...situation.state.bags, ...numbers.map((number) => spoiled(number, 'not used'))] };
}

/** The record with kinds chosen for some numbers. */
export function choosing(situation: Situation, choices: NonNullable<Fix['choices']>): Partial<StreamState> {
  return { choices: [...situation.state.choices, ...choices] };
}

/** Free numbers of a kind behind the last one issued, in order: as many as a few rods can use, unless more are asked for. */
export function freeOfKind(
  situation: Situation,
  wanted: (kind: string) => boolean,
  most = 40,
): readonly string[] {
  const { sampling, state } = situation;
  const choices = choicesByNumber(state.choices);
  const found: string[] = [];
  for (const number of freeNumbers(sampling, state)) {
    if (found.length >= most) break;
    if (wanted(reservedFor(sampling, number, choices).kind)) found.push(number);
  }
  return found;
}
