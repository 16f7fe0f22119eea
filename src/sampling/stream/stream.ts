import type { Bag, BagRun, PutOff } from '../../hole/bags.ts';
import { type Depth, depthFromMm } from '../../quantity/depth.ts';
import { type Interval, within } from '../../quantity/interval.ts';
import { type NumberLine, numberLine } from '../numbers/number-line.ts';
import type { Sampling } from '../sampling.ts';
import { materialFor } from '../scheme/rotation.ts';
import { type Chosen, choicesByNumber, type Reserved, reservedFor, serialOf } from '../scheme/scheme.ts';
import type { ControlKind } from '../settings.ts';

/** What the sample stream of a hole is worked out from: its tables, where sampling starts, and the drilled head. */
export interface StreamState {
  readonly bags: readonly Bag[];
  readonly bagRuns: readonly BagRun[];
  readonly putOffs: readonly PutOff[];
  readonly choices: readonly Chosen[];
  /** Metres that no sample was taken of (stream facts `unsampled`): no bag is wanted for them. */
  readonly unsampled: readonly Interval[];
  /** Where sampling starts, millimetres: the top of the hole or the bottom of a pre-collar. */
  readonly startMm: number;
  /** The drilled head, millimetres. The logged head plays no part. */
  readonly drilledMm: number;
  /** Down to here the bags were read and agreed, millimetres; left out where no one kept record of it. */
  readonly readMm?: number;
  /** Down to here rods are done, millimetres: metres above went through the splitter, and a duplicate of one can only be speared. */
  readonly throughMm?: number;
  /** Metres of which nothing came up: their numbers are kept as no sample. */
  readonly noReturn?: readonly Interval[];
}

/** A bag that comes up, with everything resolved that its number settles. */
export interface Upcoming {
  readonly number: string;
  readonly kind: 'primary' | ControlKind;
  /** What is in it; none for a standard or blank. */
  readonly fromMm?: Depth;
  readonly toMm?: Depth;
  /** The primary that a duplicate repeats. */
  readonly of?: string;
  /** Lot or blank: for the one who puts the sachet in, never for the laboratory's sheet. */
  readonly material?: string;
  /** Kinds that can still be chosen for this number. */
  readonly oneOf: readonly ControlKind[];
  /** Someone chose this kind here. */
  readonly chosen: boolean;
  /** Drilled depth at which the bag is done: the foot of its metre; a standard or blank follows the bag before it at once. */
  readonly dueMm: number;
  /** A duplicate of a metre that went through the splitter before it had a number: speared from its pile, the second chute is past. */
  readonly speared?: true;
  /** Millimetres to drill until hands are wanted: to the top of its metre; a standard or blank to when it is due. Never negative. */
  readonly inMm: number;
}

/** The last primary of the stream's rank and where the sampled metres end. */
export interface StreamFoot {
  readonly number?: string;
  readonly top?: Interval;
  readonly mm: number;
}

/** Bags that take a metre up: its sample, its sample lost, or its number kept though nothing came up. */
const OF_A_METRE: readonly Bag['kind'][] = ['primary', 'spoiled', 'no sample'];

/** True of a bag that stands for a metre of the stream's rank. */
function isOfMetre(sampling: Sampling, bag: Bag): bag is Bag & Interval {
  return (
    OF_A_METRE.includes(bag.kind) &&
    bag.fromMm !== undefined &&
    bag.toMm !== undefined &&
    (bag.rank ?? sampling.rank) === sampling.rank
  );
}

/**
 * Where the metres end that the stream has given bags to, and the bag that ends there. A metre whose bag is spoiled counts: that is on
 * record. Bags placed by hand don't: the metres above them still have their numbers to come.
 */
export function streamFoot(sampling: Sampling, state: StreamState): StreamFoot {
  let foot: StreamFoot = { mm: state.startMm };
  for (const bag of state.bags) {
    if (bag.byHand === true || !isOfMetre(sampling, bag) || bag.toMm <= foot.mm) continue;
    foot = { mm: bag.toMm, ...heldBy(state, bag) };
  }
  return foot;
}

/** A metre with the number that its sample is under: of a bag that is spoiled the one placed for it by hand, if there is one. */
function heldBy(state: StreamState, { number, kind, fromMm, toMm }: Bag & Interval): Omit<StreamFoot, 'mm'> {
  const spare =
    kind === 'spoiled'
      ? state.bags.find((each) => each.kind === 'primary' && each.fromMm === fromMm && each.toMm === toMm)
      : undefined;
  return { number: spare?.number ?? number, top: { fromMm, toMm } };
}

/**
 * The samples that follow the last bag, without end: whole lengths counted from where sampling starts. Metres left unsampled, and those
 * that someone bagged by hand, are left out.
 */
export function* samplesAhead(sampling: Sampling, state: StreamState): Generator<Interval> {
  const byHand = state.bags.filter((bag) => bag.byHand === true).filter((bag) => isOfMetre(sampling, bag));
  for (let fromMm = streamFoot(sampling, state).mm; ; ) {
    const passed = Math.floor((fromMm - state.startMm) / sampling.lengthMm);
    const toMm = state.startMm + (passed + 1) * sampling.lengthMm;
    const sample = { fromMm: depthFromMm(fromMm), toMm: depthFromMm(toMm) };
    if (![...state.unsampled, ...byHand].some((each) => within(sample, each))) yield sample;
    fromMm = toMm;
  }
}

/** The place on the number line of the last bag that the stream gave, -1 before the first. Spoiled bags, those placed by hand and controls placed late don't move it. */
export function lastPlace(sampling: Sampling, state: StreamState, line: NumberLine): number {
  const putOff = new Set(state.putOffs.map((each) => each.number));
  return state.bags.reduce((last, bag) => {
    if (bag.kind === 'spoiled' || bag.byHand === true || putOff.has(bag.number)) return last;
    if ((bag.rank ?? sampling.rank) !== sampling.rank) return last;
    return Math.max(last, line.placeOf(bag.number) ?? -1);
  }, -1);
}

/** Numbers beyond the last one issued that can still be used, in order. Those of spoiled bags, of bags placed by hand and of controls put off are left out. */
export function* freeNumbers(sampling: Sampling, state: StreamState): Generator<string> {
  const taken = new Set([...state.bags, ...state.putOffs].map((each) => each.number));
  for (const number of numbersAhead(sampling, state)) if (!taken.has(number)) yield number;
}

/** Every number labelled beyond the last one issued, in order, used or not. */
function* numbersAhead(sampling: Sampling, state: StreamState): Generator<string> {
  const line = numberLine(sampling.numbers, state.bagRuns);
  for (let place = lastPlace(sampling, state, line) + 1; place < line.length; place++) {
    const number = line.at(place);
    if (number !== undefined) yield number;
  }
}

/**
 * The bags that follow the last one issued, in the order of their numbers, until the numbered bags run out. `samples` says
 * what comes off the rig; where it ends, the controls that its last bag brings with it are still given.
 */
export function* stream(
  sampling: Sampling,
  state: StreamState,
  samples: Iterable<Interval> = samplesAhead(sampling, state),
): Generator<Upcoming> {
  const choices = choicesByNumber(state.choices);
  const waiting = samples[Symbol.iterator]();
  const taken = new Map([...state.putOffs, ...state.bags].map((each) => [each.number, each]));
  let foot = streamFoot(sampling, state);
  let sample = waiting.next();
  for (const number of numbersAhead(sampling, state)) {
    const used = taken.get(number);
    if (used !== undefined) {
      // The number of a torn calico whose metre a spare took: what comes behind it follows that metre.
      if (used.kind === 'spoiled' && 'fromMm' in used && isOfMetre(sampling, used))
        foot = { mm: Math.max(foot.mm, used.toMm), ...heldBy(state, used) };
      continue;
    }
    const reserved = reservedFor(sampling, number, choices);
    const is = { number, reserved, drilledMm: state.drilledMm };
    if (reserved.kind === 'primary') {
      if (sample.done === true) return;
      yield upcomingOf(is, sample.value, sample.value.toMm);
      foot = { number, top: sample.value, mm: sample.value.toMm };
      sample = waiting.next();
    } else if (reserved.kind === 'field duplicate') {
      const of = foot.top === undefined ? firstPrimary(sampling, state, choices) : foot.number;
      const repeated = foot.top ?? (sample.done === true ? undefined : sample.value);
      if (repeated === undefined || of === undefined) return;
      const speared = repeated.toMm <= (state.throughMm ?? Number.NEGATIVE_INFINITY);
      yield { ...upcomingOf(is, repeated, repeated.toMm), of, ...(speared ? { speared } : {}) };
    } else {
      const material = materialFor(sampling, reserved.kind, serialOf(sampling.numbers, number));
      yield { ...upcomingOf(is, undefined, foot.mm), ...(material === undefined ? {} : { material }) };
    }
  }
}

function upcomingOf(
  is: { readonly number: string; readonly reserved: Reserved; readonly drilledMm: number },
  sample: Interval | undefined,
  dueMm: number,
): Upcoming {
  return {
    number: is.number,
    ...is.reserved,
    ...(sample === undefined ? {} : { fromMm: sample.fromMm, toMm: sample.toMm }),
    dueMm,
    inMm: Math.max(0, (sample?.fromMm ?? dueMm) - is.drilledMm),
  };
}

/** What a duplicate in front of the first primary of a hole repeats: the primary behind it. */
function firstPrimary(
  sampling: Sampling,
  state: StreamState,
  choices: ReadonlyMap<string, Chosen>,
): string | undefined {
  for (const number of freeNumbers(sampling, state))
    if (reservedFor(sampling, number, choices).kind === 'primary') return number;
  return undefined;
}

/** The stream ahead of the drilled head, for the panel. */
export interface StreamAhead {
  readonly upcoming: readonly Upcoming[];
  /** Controls and duplicates that come within the next rod. */
  readonly announced: readonly Upcoming[];
  /** Controls put off and not placed yet; their numbers stay theirs. */
  readonly putOff: readonly PutOff[];
  /** Numbered bags left behind the last one issued. */
  readonly numberedLeft: number;
  /** Depth down to which the numbered bags last, millimetres. */
  readonly lastsToMm: number;
  /** They run out within the next rod. */
  readonly runsOut: boolean;
}

/** What comes up: the next `count` bags, controls a rod ahead in drilled metres, what is put off, and how long the numbered bags last. */
export function streamAhead(
  sampling: Sampling,
  state: StreamState,
  asked: { readonly count: number; readonly rodMm: number },
): StreamAhead {
  const { all, controls, left, lastsToMm } = toTheEnd(sampling, state);
  return {
    upcoming: all.slice(0, asked.count),
    announced: controls.filter((each) => each.inMm <= asked.rodMm),
    putOff: state.putOffs.filter((each) => each.placedAt === undefined),
    numberedLeft: left,
    lastsToMm,
    runsOut: lastsToMm - state.drilledMm < asked.rodMm,
  };
}

/** Every bag of the numbered ones that is to come, the controls and duplicates among them, how many numbers are free, and how far they last. */
interface ToTheEnd {
  readonly all: readonly Upcoming[];
  readonly controls: readonly Upcoming[];
  readonly left: number;
  readonly lastsToMm: number;
}

let latest:
  | { readonly sampling: Sampling; readonly state: StreamState; readonly found: ToTheEnd }
  | undefined;

/** What was found last is given again while nothing has come into its state: rows are logged between two rods, and thousands of bags may be numbered. */
function toTheEnd(sampling: Sampling, state: StreamState): ToTheEnd {
  if (latest?.sampling === sampling && isAlike(latest.state, state)) return latest.found;
  const all = [...stream(sampling, state)];
  const found = {
    all,
    controls: all.filter((each) => each.kind !== 'primary'),
    left: [...freeNumbers(sampling, state)].length,
    lastsToMm: all.reduce((mm, each) => Math.max(mm, each.toMm ?? 0), streamFoot(sampling, state).mm),
  };
  latest = { sampling, state, found };
  return found;
}

/** True of states that hold the very same things: none is changed in place. */
function isAlike(one: StreamState, other: StreamState): boolean {
  const names = Object.keys({ ...one, ...other }) as readonly (keyof StreamState)[];
  return names.every((name) => {
    const [a, b] = [one[name], other[name]];
    if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
    return a.length === b.length && a.every((thing, index) => thing === b[index]);
  });
}
