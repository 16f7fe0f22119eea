import { ok, type Result, refused } from '../finding/finding.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { closedRefusal } from '../hole/commands/open-hole.ts';
import type { FeltByDriller } from '../hole/drilled.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval } from '../quantity/interval.ts';
import type { Change, Document, Thing } from '../record/document.ts';
import { feltWords } from '../standing/felt.ts';
import { headsOf } from '../standing/heads.ts';
import { rodsDown } from '../standing/hygiene.ts';

/** What was felt, where it is said over which metres, and who said it. */
type Felt = Pick<FeltByDriller, 'felt' | 'driller'> & { readonly over?: Interval };

/** The driller's word on drilled metres, as an observation of its own: the latest rod where no interval is said. Refused below the bit. */
export function recordFelt(hole: Document, { over, felt: what, driller }: Felt, maker: Maker): Result<Made> {
  const closed = closedRefusal(hole);
  if (closed) return refused(closed);
  const { name } = headerOf(hole);
  const metres = over ?? rodsDown(hole).at(-1);
  if (metres === undefined)
    return refused(
      REFUSALS.notThere.at(
        { hole: name },
        { problem: 'no rod is done yet', remedy: 'Say it when the first rod is done.' },
      ),
    );
  const { drilledMm, logFromMm } = headsOf(hole);
  if (metres.toMm > drilledMm || metres.fromMm < logFromMm)
    return refused(
      REFUSALS.badInterval.at(
        { hole: name, fromMm: metres.fromMm, toMm: metres.toMm },
        {
          problem: `${formatInterval(metres)} is not all drilled: the hole runs from ${formatDepth(logFromMm)} to ${formatDepth(drilledMm)} m`,
          remedy: 'Give metres that the driller has drilled, like ;solid 44-50.',
        },
      ),
    );
  const said = { felt: what, ...(driller === undefined ? {} : { driller }) };
  const { change, felt } = feltChange(said, metres, maker);
  return ok({ what: feltWords(felt), changes: [change] });
}

/** The same as a change, for a rod that is being recorded. */
export function feltChange(
  said: Pick<FeltByDriller, 'felt' | 'driller'>,
  { fromMm, toMm }: Interval,
  maker: Maker,
): { readonly felt: FeltByDriller; readonly change: Change } {
  const felt: FeltByDriller = { fromMm, toMm, ...said, at: maker.at, by: maker.by };
  return { felt, change: { put: ['feltByDriller', maker.newId()], thing: felt as Thing } };
}
