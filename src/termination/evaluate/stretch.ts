import type { StreamFact } from '../../hole/drilled.ts';
import { type Tri, triOf } from '../../quantity/tri.ts';
import type { Situation } from './situation.ts';

/** Part of the hole over which something holds, doesn't, or can't be told. */
export type Stretch = {
  readonly fromMm: number;
  readonly toMm: number;
  readonly state: Tri;
  /** It can't be told because nothing is logged here yet: the log may still say either. */
  readonly unlogged?: true;
};

/** What a piece of the hole says; a piece that no one logged can't be told either, but may be once it is logged. */
export type PieceState = Tri | 'not logged';

/**
 * Stretches from pieces that stand end to end below `topMm`, each given by its foot and its state: neighbours alike become one,
 * and a piece without length is left out.
 */
export function stretchesOf(
  topMm: number,
  feetMm: readonly number[],
  stateOf: (piece: number) => PieceState,
): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let [fromMm, toMm] = [topMm, topMm];
  let state: PieceState | undefined;
  for (let piece = 0; piece < feetMm.length; piece++) {
    const footMm = feetMm[piece]!;
    if (footMm <= toMm) continue;
    const next = stateOf(piece);
    if (next !== state) {
      if (state !== undefined) stretches.push(stretch(fromMm, toMm, state));
      fromMm = toMm;
      state = next;
    }
    toMm = footMm;
  }
  if (state !== undefined) stretches.push(stretch(fromMm, toMm, state));
  return stretches;
}

function stretch(fromMm: number, toMm: number, state: PieceState): Stretch {
  return state === 'not logged'
    ? { fromMm, toMm, state: 'cannot tell', unlogged: true }
    : { fromMm, toMm, state };
}

/** The stretches below a depth, cut there. */
export function within<Part extends Stretch>(stretches: readonly Part[], topMm: number): readonly Part[] {
  return stretches
    .filter((each) => each.toMm > topMm)
    .map((each) => (each.fromMm < topMm ? { ...each, fromMm: topMm } : each));
}

/** The length of those stretches that are wanted. */
export function lengthOf(stretches: readonly Stretch[], wanted: (each: Stretch) => boolean): number {
  return stretches.reduce((sum, each) => sum + (wanted(each) ? each.toMm - each.fromMm : 0), 0);
}

/**
 * The sample stream from the start of the log to the drilled head, end to end. `test` says undefined of a fact that doesn't speak
 * of the matter; where several speak the latest stands, where none does it can't be told.
 */
export function streamStretches(
  situation: Situation,
  test: (fact: StreamFact) => boolean | undefined,
): readonly Stretch[] {
  const top = situation.header.logFromMm;
  const foot = situation.drilledMm;
  const speaking = situation.stream.filter(
    (fact) => fact.fromMm < foot && fact.toMm > top && test(fact) !== undefined,
  );
  const edges: number[] = [foot];
  for (const { fromMm, toMm } of speaking) edges.push(Math.min(fromMm, foot), Math.min(toMm, foot));
  edges.sort((a, b) => a - b);
  // Each fact with its place in the order of making, so that the latest can be told once they are sorted by depth.
  const down = speaking.map((fact, made) => ({ made, fact })).sort((a, b) => a.fact.fromMm - b.fact.fromMm);
  let open: typeof down = [];
  let next = 0;
  let above: number = top;
  return stretchesOf(top, edges, (piece) => {
    while (next < down.length && down[next]!.fact.fromMm <= above) open.push(down[next++]!);
    open = open.filter(({ fact }) => fact.toMm > above);
    above = edges[piece]!;
    if (open.length === 0) return 'cannot tell';
    const latest = open.reduce((a, b) => (b.made > a.made ? b : a));
    return triOf(test(latest.fact) === true);
  });
}
