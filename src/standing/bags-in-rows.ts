import type { Bag } from '../hole/bags.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { holdsSample, inOrder } from '../sampling/dispatch/dispatch.ts';
import { pilePlace } from '../sampling/laboratory/resplit.ts';
import { bagsOnGround } from './stream.ts';

/** Bags of a hole that no dispatch has taken, by row and place where the project says how they are laid out. */
export function bagsInRows(
  { sampling }: Project,
  hole: Document,
  sent: ReadonlyMap<string, string>,
): readonly string[] {
  const bags = bagsOnGround(hole).filter((bag) => holdsSample(bag) && !sent.has(bag.number));
  const { name, logFromMm } = headerOf(hole);
  if (bags.length === 0) return [];
  const { perRow } = sampling;
  if (perRow === undefined) return [`${name}: ${bags.length} bags, ${fromTo(sampling, bags)}`];
  const rows = new Map<number, Bag[]>();
  let row = 1;
  // A control has no metre: it lies behind the bag before it.
  for (const bag of inNumbers(sampling, bags)) {
    row = bag.fromMm === undefined ? row : (pilePlace(logFromMm, perRow, bag.fromMm)?.row ?? row);
    rows.set(row, [...(rows.get(row) ?? []), bag]);
  }
  return [...rows].map(([number, here]) => {
    const places = here.flatMap(({ fromMm }) =>
      fromMm === undefined ? [] : [pilePlace(logFromMm, perRow, fromMm)?.place ?? 0],
    );
    const [first, last] = [Math.min(...places), Math.max(...places)];
    const empty = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index).filter(
      (place) => !places.includes(place),
    );
    const where = places.length === 0 ? '' : `, places ${first}–${last}`;
    const none = empty.length === 0 ? '' : `; no bag at place ${empty.join(', ')}`;
    return `${name} row ${number}${where}: ${here.length} bags, ${fromTo(sampling, here)}${none}`;
  });
}

function inNumbers(sampling: Project['sampling'], bags: readonly Bag[]): readonly Bag[] {
  const order = inOrder(
    sampling,
    bags.map((bag) => bag.number),
  );
  return order.flatMap((number) => bags.filter((bag) => bag.number === number));
}

function fromTo(sampling: Project['sampling'], bags: readonly Bag[]): string {
  const numbers = inNumbers(sampling, bags).map((bag) => bag.number);
  return `${numbers[0]} to ${numbers.at(-1)}`;
}
