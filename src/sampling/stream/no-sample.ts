import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { formatInterval, type Interval, overlaps } from '../../quantity/interval.ts';
import { filledLine } from '../dispatch/dispatch.ts';
import { metresWithoutSample } from '../findings.ts';

/**
 * True of a numbered bag with nothing in it for the laboratory: its metre gave no return, and no one said that there is a bag all the
 * same. Its number is kept and never used again.
 */
export function isNoSample(
  bag: Pick<Bag, 'kind' | 'fromMm' | 'toMm' | 'filled' | 'byHand'>,
  noReturn: readonly Interval[],
): boolean {
  if (bag.kind === 'no sample') return true;
  if (bag.kind !== 'primary' && bag.kind !== 'field duplicate') return false;
  const { fromMm, toMm } = bag;
  if (bag.filled === true || bag.byHand === true || fromMm === undefined || toMm === undefined) return false;
  return isCovered({ fromMm, toMm }, noReturn);
}

/** The bags as they are on the ground: those of metres without return are no sample. */
export function withNoSamples<Held extends Bag>(
  bags: readonly Held[],
  noReturn: readonly Interval[],
): readonly Held[] {
  if (noReturn.length === 0) return bags;
  return bags.map((bag) =>
    isNoSample(bag, noReturn) ? { ...bag, kind: 'no sample', reason: 'no return' } : bag,
  );
}

/** Numbers of a hole that are kept as no sample, each with the line that says otherwise. */
export function checkNoSamples(hole: string, onGround: readonly Bag[]): readonly Finding[] {
  return onGround.flatMap((bag) => {
    const { number, kind, fromMm, toMm } = bag;
    if (kind !== 'no sample' || fromMm === undefined || toMm === undefined) return [];
    return [
      metresWithoutSample.at(
        { hole, fromMm, toMm, thing: `bag ${number}` },
        {
          problem: `${formatInterval({ fromMm, toMm })} gave no return: ${number} is kept as no sample and does not go to the laboratory.`,
          remedy: `Nothing to do. If there is something in the calico, record it in the log of the hole: ${filledLine(bag)}.`,
        },
      ),
    ];
  });
}

/** True where intervals, which may overlap, leave nothing of another one out. */
export function isCovered(whole: Interval, parts: readonly Interval[]): boolean {
  let fromMm: number = whole.fromMm;
  for (const part of parts.filter((each) => overlaps(each, whole)).sort((a, b) => a.fromMm - b.fromMm)) {
    if (part.fromMm > fromMm) return false;
    fromMm = Math.max(fromMm, part.toMm);
  }
  return fromMm >= whole.toMm;
}
