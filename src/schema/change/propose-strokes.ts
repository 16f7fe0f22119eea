import { amountBesidePair, keysOfPair } from '../check/check-key-runs.ts';
import { NO_RETURN_WORD } from '../check/check-strokes.ts';
import { isPair, MOST_KEYS_APART, slipsOf } from '../check/keyboard.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { couldBeEither, type Stroke, strokesOf } from '../strokes.ts';
import { distanceFromTerm } from './guessable.ts';
import { type ProposeWhat, type Slot, slotsOf } from './stroke-slots.ts';

/** A pair or key chosen for a code or a field, what it was before, and why it is this one. */
export type ProposedStroke = Pick<Stroke, 'is' | 'label' | 'part'> & {
  /** Undefined where what it had is taken away: nothing safe is left, or a key is not worth it. */
  readonly strokes: string | undefined;
  readonly was: string | undefined;
  readonly why: string;
};

/**
 * Set by the bench (`npm run bench -- guessing`): at 2 more pairs are guessed and 0.2 % more slips pass in silence, at 8 it is the other
 * way round.
 */
const APART = 4;
/**
 * The same where a few codes come into a schema that is in use: there a pair that check then warns of is worse than one that is guessed a little
 * later. Of 425 pairs taken out of four styles and proposed again the check warned of 176 at 4 and of 4 at 150; nine in ten keep their first letter.
 */
const APART_AMONG_OTHERS = 150;
/** So much that a slip reads as something else only where nothing else is free: the check then has nothing to warn of. */
export const APART_AT_ANY_PRICE = 1000;
/** Two things of one field that one slip apart read as each other: never. */
const NEVER = 1e6;
/** No pair at all: said by its field's name. */
const NO_PAIR = 200;
/** No key at all: what is seldom logged needs none. */
const NO_KEY = 12;
/** Candidates of a slot that are weighed; the rest only where none of these can stand. */
const MOST_TRIED = 60;
const MOST_PASSES = 12;
/** How much more often a key is typed than a pair. */
const KEY_TYPED = 20;

const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];
const ALL_PAIRS = LETTERS.flatMap((a) => LETTERS.map((b) => a + b)).filter(
  (pair) => isPair(pair) && pair !== NO_RETURN_WORD,
);

/**
 * Pairs and keys for a schema, chosen together: each as near as can be to what a person would guess, the common terms first, and far
 * enough from the others that a slip is seen. Gives only what changes. The same schema gives the same strokes.
 */
export function proposeStrokes(schema: LoggingSchema, what: ProposeWhat = {}): readonly ProposedStroke[] {
  const board = boardOf(schema, what);
  for (const slot of board.open) place(board, slot);
  for (let pass = 0; pass < MOST_PASSES && improved(board); pass += 1);
  return board.open.flatMap((slot): readonly ProposedStroke[] => {
    const strokes = board.of.get(slot);
    if (strokes === slot.was) return [];
    const { is, label, part, was } = slot;
    return [{ is, label, part, was, strokes, why: whyOf(board, slot, strokes) }];
  });
}

/** The free pair or key that a person would guess soonest for what has another one, apart from all that is there; undefined where none is. */
export function nearestFree(schema: LoggingSchema, of: Pick<Stroke, 'is' | 'part'>): string | undefined {
  const board = boardOf(schema, { only: of, again: true, keys: true });
  const [slot] = board.open;
  if (slot === undefined) return undefined;
  const { strokes, cost } = bestFree(board, slot);
  return cost < NEVER ? strokes : undefined;
}

/** Where strokes are put: who has which, and who may still move. */
type Board = {
  readonly schema: LoggingSchema;
  readonly apart: number;
  readonly open: readonly Slot[];
  readonly of: Map<Slot, string>;
  readonly at: Map<string, Slot>;
  /** Strokes of retired codes and of a legend: no one else's. */
  readonly blocked: ReadonlySet<string>;
  readonly candidates: Map<Slot, readonly string[]>;
};

function boardOf(schema: LoggingSchema, what: ProposeWhat): Board {
  const slots = slotsOf(schema, what);
  const retired = strokesOf(schema).filter(({ code }) => code?.retiredSince !== undefined);
  const blocked = new Set([...retired, ...(what.frozen ?? [])].map(({ strokes }) => strokes));
  const board: Board = {
    schema,
    apart: what.apart ?? (isAmongOthers(slots) ? APART_AMONG_OTHERS : APART),
    open: slots.filter(({ fixed }) => fixed === undefined).toSorted((a, b) => b.weight - a.weight),
    of: new Map(),
    at: new Map(),
    blocked,
    candidates: new Map(),
  };
  for (const slot of slots) if (slot.fixed !== undefined) put(board, slot, slot.fixed);
  for (const slot of board.open) board.candidates.set(slot, candidatesOf(slot, blocked));
  return board;
}

/** True where most that can be typed has its strokes already: a few codes that come in, not a schema that is made. */
function isAmongOthers(slots: readonly Slot[]): boolean {
  return slots.filter(({ fixed }) => fixed !== undefined).length > slots.length / 2;
}

function candidatesOf(slot: Slot, blocked: ReadonlySet<string>): readonly string[] {
  return (slot.is === 'pair' ? ALL_PAIRS : LETTERS)
    .filter((strokes) => !blocked.has(strokes))
    .map((strokes) => ({ strokes, distance: distanceFromTerm(slot.label, strokes) }))
    .toSorted((a, b) => a.distance - b.distance)
    .map(({ strokes }) => strokes);
}

function put(board: Board, slot: Slot, strokes: string): void {
  board.of.set(slot, strokes);
  if (!board.at.has(strokes)) board.at.set(strokes, slot);
}

function lift(board: Board, slot: Slot): string | undefined {
  const strokes = board.of.get(slot);
  board.of.delete(slot);
  if (strokes !== undefined && board.at.get(strokes) === slot) board.at.delete(strokes);
  return strokes;
}

/** Puts a slot where it costs least among what is free. */
function place(board: Board, slot: Slot): void {
  const best = bestFree(board, slot);
  if (best.strokes !== undefined) put(board, slot, best.strokes);
}

type Choice = { readonly strokes: string | undefined; readonly cost: number };

function bestFree(board: Board, slot: Slot): Choice {
  const all = board.candidates.get(slot) ?? [];
  const near = bestOf(board, slot, all.slice(0, MOST_TRIED));
  return near.strokes === undefined && slot.is === 'pair' ? bestOf(board, slot, all) : near;
}

function bestOf(board: Board, slot: Slot, candidates: readonly string[]): Choice {
  let best: Choice = { strokes: undefined, cost: without(slot) };
  for (const strokes of candidates) {
    if (board.at.has(strokes)) continue;
    const cost = costOf(board, slot, strokes);
    if (cost < best.cost - 1e-9) best = { strokes, cost };
  }
  return best;
}

function without(slot: Slot): number {
  return slot.is === 'pair' ? NO_PAIR * slot.weight : NO_KEY * slot.weight;
}

/** One pass over all that may move: each takes what costs less, also from another one that then moves too. True where something got better. */
function improved(board: Board): boolean {
  let better = false;
  for (const slot of board.open) {
    const was = board.of.get(slot);
    const now = was === undefined ? without(slot) : costOf(board, slot, was);
    lift(board, slot);
    const best = bestMove(board, slot, was);
    if (best.cost < now - 1e-9) better = true;
    const strokes = best.cost < now - 1e-9 ? best.strokes : was;
    if (best.cost < now - 1e-9) best.moves?.();
    if (strokes !== undefined) put(board, slot, strokes);
  }
  return better;
}

type Move = Choice & { readonly moves?: () => void };

/** The cheapest place of a lifted slot: a free one, or one whose holder moves away. Costs are of the slot and what its move adds. */
function bestMove(board: Board, slot: Slot, was: string | undefined): Move {
  let best: Move = bestFree(board, slot);
  for (const strokes of (board.candidates.get(slot) ?? []).slice(0, MOST_TRIED)) {
    const holder = board.at.get(strokes);
    if (holder === undefined || holder.fixed !== undefined || strokes === was) continue;
    const before = costOf(board, holder, strokes);
    lift(board, holder);
    const own = costOf(board, slot, strokes);
    if (own < best.cost) {
      put(board, slot, strokes);
      const away = bestFree(board, holder);
      lift(board, slot);
      const cost = own + away.cost - before;
      if (cost < best.cost - 1e-9)
        best = {
          strokes,
          cost,
          moves: () => {
            lift(board, holder);
            if (away.strokes !== undefined) put(board, holder, away.strokes);
          },
        };
    }
    put(board, holder, strokes);
  }
  return best;
}

/** What it costs that a slot is typed by strokes, with all others where they are. */
function costOf(board: Board, slot: Slot, strokes: string): number {
  return slot.weight * distanceFromTerm(slot.label, strokes) + nearCost(board, slot, strokes);
}

/** What it costs that slips of strokes read as something else. */
function nearCost(board: Board, slot: Slot, strokes: string): number {
  let cost = 0;
  for (const slip of slipsOf(strokes)) {
    const other = board.at.get(slip);
    if (slip === NO_RETURN_WORD && slot.takes !== 'amount') cost += 2 * board.apart;
    if (other === undefined || other === slot || !couldBeEither(slot, other)) continue;
    cost += other.field === slot.field ? NEVER : board.apart * often(slot, other);
  }
  return cost + (slot.is === 'pair' ? pairRuns(board, slot, strokes) : keyRuns(board, slot, strokes));
}

/** How often a slip between two can happen: what is logged more is mistyped more. Keys are typed most of all. */
function often(a: Slot, b: Slot): number {
  return ((a.typed + b.typed) / 2) * (a.is === 'key' ? KEY_TYPED : 1);
}

/** What a pair costs beside the keys: an amount left out or hit beside makes a pair of them. */
function pairRuns(board: Board, slot: Slot, strokes: string): number {
  const like = { strokes, takes: slot.takes };
  const [first = '', second = ''] = strokes;
  const keys = [board.at.get(first), board.at.get(second)].filter((each) => each !== undefined);
  const [key] = keys;
  const beside =
    key !== undefined &&
    key.is === 'key' &&
    amountBesidePair(board.schema, asStroke(key, first), like) !== undefined
      ? key.field === slot.field
        ? NEVER
        : board.apart * often(slot, key)
      : 0;
  const run = keys.length === 2 ? keysOfPair(keysNow(board), like) : undefined;
  return beside + (run === undefined ? 0 : board.apart / 2);
}

/** What a key costs beside the pairs that begin with it. */
function keyRuns(board: Board, slot: Slot, strokes: string): number {
  let cost = keysNow(board).length >= MOST_KEYS_APART && board.of.get(slot) === undefined ? NEVER : 0;
  for (const letter of LETTERS) {
    const pair = `${strokes}${letter}`;
    const other = board.at.get(pair);
    if (other === undefined) continue;
    const like = { strokes: pair, takes: other.takes };
    if (amountBesidePair(board.schema, asStroke(slot, strokes), like) !== undefined)
      cost += other.field === slot.field ? NEVER : board.apart * often(other, slot);
    if (board.at.get(letter)?.is === 'key' && other.takes !== 'no amount') cost += board.apart / 2;
  }
  return cost;
}

function asStroke(slot: Slot, strokes: string): Stroke {
  const { is, field, takes, label, part } = slot;
  return { strokes, is, field, takes, label, part };
}

function keysNow(board: Board): readonly Stroke[] {
  return LETTERS.flatMap((letter) => {
    const slot = board.at.get(letter);
    return slot === undefined ? [] : [asStroke(slot, letter)];
  });
}

/** Why strokes are these and not what would be guessed sooner. */
function whyOf(board: Board, slot: Slot, strokes: string | undefined): string {
  if (strokes === undefined)
    return slot.is === 'key' ? 'others need a key more' : 'nothing safe is left: say it by its field';
  const sooner = (board.candidates.get(slot) ?? []).slice(0, MOST_TRIED);
  const first = sooner[0];
  if (first === undefined || first === strokes) return 'what a person would guess first';
  const holder = board.at.get(first);
  if (holder !== undefined) return `${first} types ${holder.label}`;
  const near = slipsOf(first).flatMap((slip) => {
    const other = board.at.get(slip);
    return other === undefined || other === slot || !couldBeEither(slot, other)
      ? []
      : [`${slip} (${other.label})`];
  });
  if (near.length > 0) return `${first} is one slip from ${near.join(', ')}`;
  return slipsOf(first).includes(NO_RETURN_WORD)
    ? `${first} is one slip from ${NO_RETURN_WORD}, no return`
    : `${first} would read as two keys, or as a key and its amount`;
}
