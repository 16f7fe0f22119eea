import { headerOf } from '../hole/hole.ts';
import type { Document } from '../record/document.ts';
import { holdsSample, inOrder } from '../sampling/dispatch/dispatch.ts';
import { type Dispatch, dispatchOf, sentNumbers } from '../sampling/dispatch/dispatch-noun.ts';
import type { BagOfHole } from '../sampling/dispatch/dispatch-sheet.ts';
import type { Sampling } from '../sampling/sampling.ts';
import { bagsOnGround } from './stream.ts';

/** Dispatches of a project in the order they were made up. */
export function dispatchesOf(documents: Iterable<Document>): readonly Dispatch[] {
  return [...documents]
    .filter((document) => document.kind === 'dispatch')
    .map(dispatchOf)
    .sort((a, b) => (a.madeAt === b.madeAt ? (a.name < b.name ? -1 : 1) : a.madeAt < b.madeAt ? -1 : 1));
}

/** Every bag of a project with its hole, as it is on the ground: one of a metre without return is no sample. */
export function bagsOfHoles(documents: Iterable<Document>): readonly BagOfHole[] {
  return [...documents]
    .filter((document) => document.kind === 'hole')
    .flatMap((hole) => bagsOnGround(hole).map((bag) => ({ ...bag, hole: headerOf(hole).name })));
}

/** The dispatch that each number went in; the first where it is in two. */
export function sentIn(documents: Iterable<Document>): ReadonlyMap<string, string> {
  const sent = new Map<string, string>();
  for (const dispatch of dispatchesOf(documents))
    for (const number of sentNumbers(dispatch)) if (!sent.has(number)) sent.set(number, dispatch.name);
  return sent;
}

/** Numbers that wait for a dispatch, in their order: issued, with a sample in them, and in none yet. */
export function toSend(sampling: Sampling, documents: Iterable<Document>): readonly string[] {
  const all = [...documents];
  const sent = sentIn(all);
  const waiting = bagsOfHoles(all).filter((bag) => holdsSample(bag) && !sent.has(bag.number));
  return inOrder(
    sampling,
    waiting.map((bag) => bag.number),
  );
}
