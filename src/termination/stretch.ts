import type { StreamFact } from '../hole/drilled.ts';
import type { Tri } from '../quantity/tri.ts';
import type { Situation } from './situation.ts';

/** Part of the hole over which something holds, doesn't, or can't be told. */
export type Stretch = { readonly fromMm: number; readonly toMm: number; readonly state: Tri };

/**
 * Stretches from pieces that stand end to end below `topMm`, each given by its foot and its state: neighbours alike become one,
 * and a piece without length is left out.
 */
export function stretchesOf(
  topMm: number,
  feetMm: readonly number[],
  stateOf: (piece: number) => Tri,
): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let [fromMm, toMm] = [topMm, topMm];
  let state: Tri | undefined;
  for (let piece = 0; piece < feetMm.length; piece++) {
    const footMm = feetMm[piece]!;
    if (footMm <= toMm) continue;
    const next = stateOf(piece);
    if (next !== state) {
      if (state !== undefined) stretches.push({ fromMm, toMm, state });
      fromMm = toMm;
      state = next;
    }
    toMm = footMm;
  }
  if (state !== undefined) stretches.push({ fromMm, toMm, state });
  return stretches;
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
  const facts = situation.stream
    .map((fact, made) => ({ made, fromMm: fact.fromMm, toMm: fact.toMm, says: test(fact) }))
    .filter((fact) => fact.says !== undefined && fact.fromMm < foot && fact.toMm > top);
  const edges = [foot, ...facts.flatMap((fact) => [fact.fromMm, fact.toMm])]
    .filter((edge) => edge > top && edge <= foot)
    .sort((a, b) => a - b);
  const down = [...facts].sort((a, b) => a.fromMm - b.fromMm);
  let open: typeof facts = [];
  let next = 0;
  return stretchesOf(top, edges, (piece) => {
    const fromMm = piece === 0 ? top : edges[piece - 1]!;
    while (next < down.length && down[next]!.fromMm <= fromMm) open.push(down[next++]!);
    open = open.filter((fact) => fact.toMm > fromMm);
    let latest = open[0];
    for (const fact of open) if (fact.made > latest!.made) latest = fact;
    return latest === undefined ? 'cannot tell' : latest.says ? 'yes' : 'no';
  });
}
