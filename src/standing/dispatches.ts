import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Document } from '../record/document.ts';
import { inOrder } from '../sampling/dispatch/dispatch.ts';
import { type Dispatch, dispatchOf, sentNumbers } from '../sampling/dispatch/dispatch-noun.ts';
import type { BagOfHole } from '../sampling/dispatch/dispatch-sheet.ts';
import type { Sampling } from '../sampling/sampling.ts';

/** Dispatches of a project in the order they were made up. */
export function dispatchesOf(documents: Iterable<Document>): readonly Dispatch[] {
  return [...documents]
    .filter((document) => document.kind === 'dispatch')
    .map(dispatchOf)
    .sort((a, b) => (a.madeAt === b.madeAt ? (a.name < b.name ? -1 : 1) : a.madeAt < b.madeAt ? -1 : 1));
}

/** Every bag of a project with its hole. */
export function bagsOfHoles(documents: Iterable<Document>): readonly BagOfHole[] {
  return [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((hole) => holeNouns(hole, 'bags').map((bag) => ({ ...bag, hole: headerOf(hole).name })));
}

/** The dispatch that each number went in; the first where it stands in two. */
export function sentIn(documents: Iterable<Document>): ReadonlyMap<string, string> {
  const sent = new Map<string, string>();
  for (const dispatch of dispatchesOf(documents))
    for (const number of sentNumbers(dispatch)) if (!sent.has(number)) sent.set(number, dispatch.name);
  return sent;
}

/** Numbers that wait for a dispatch, in their order: issued, not spoiled, and in none yet. */
export function toSend(sampling: Sampling, documents: Iterable<Document>): readonly string[] {
  const all = [...documents];
  const sent = sentIn(all);
  const waiting = bagsOfHoles(all).filter((bag) => bag.kind !== 'spoiled' && !sent.has(bag.number));
  return inOrder(
    sampling,
    waiting.map((bag) => bag.number),
  );
}
