import { withCare } from '../../desk/acts/hygiene.ts';
import { checkRod, type RodAt, rodAsExpected, rodNoted } from '../../desk/acts/rod.ts';
import { readRod } from '../../desk/acts/rod-read.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { nextRod } from '../../standing/rods.ts';
import { type LinesAt, makerOf, submitMade, type Taken } from './submit-made.ts';

/** Records a rod done. Bags that do not agree refuse it with the mismatch named, unless mismatches are to be noted. */
export async function takeRod(at: LinesAt, hole: Document, text: string): Promise<Taken> {
  const read = readRod(text);
  if (read === undefined)
    return {
      kind: 'refused',
      problem: `;rod ${text} can't be read`,
      remedy: 'Give the last digits of the bag, x6 for six bags, @54.5 for another depth.',
    };
  const { depthMm, care, ...seen } = read;
  const next = nextRod(hole);
  const rod: RodAt = { rod: next.rod, depthMm: depthMm ?? next.depthMm };
  const maker = makerOf(at.desk);
  const check = checkRod(at.project, at.desk.documents().values(), hole, rod, seen, maker.at);
  if (check.agrees)
    return submitMade(at, withCare(hole, rodAsExpected(hole, rod, check.expected, maker), care, maker));
  const named = check.named[0];
  const expected = check.expected.at(-1)?.number ?? 'no bag';
  const mismatch = `the bags do not agree: ${expected} is expected last, ${check.expected.length} in the rod${named === undefined ? '' : `; likely ${named.name}: ${named.happened}`}`;
  if (!at.noteMismatches)
    return {
      kind: 'refused',
      problem: `rod ${rod.rod} to ${formatDepth(rod.depthMm)} m: ${mismatch}`,
      remedy: `${named?.ground ?? 'Read the last calico again.'} Mend it in the console, or give the rod without its digits.`,
    };
  const done = rodNoted(hole, rod, check, seen.digits ?? 'not read', maker);
  const noted = await submitMade(at, withCare(hole, done, care, maker));
  return noted.kind === 'done' ? { kind: 'asked', said: noted.said, reasons: [mismatch] } : noted;
}
