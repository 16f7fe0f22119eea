import type { Finding } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { headerOf, holeThings, rowsDown } from '../hole/hole.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import { instantMs, localDate, localTime, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { gapsIn } from './heads.ts';
import { rowsLoggedTwice } from './logged-twice.ts';

/** Rows that stand over the same metres, gaps between rows, and rods that stand twice or out of order, however they came. */
export function logFindings(hole: Document): readonly Finding[] {
  return [...loggedTwiceFindings(hole), ...gapFindings(hole), ...rodFindings(hole)];
}

/** Rows that stand over the same metres, as findings. */
function loggedTwiceFindings(hole: Document): readonly Finding[] {
  return rowsLoggedTwice(hole).map(({ ours: [, ours], theirs: [, theirs], shared }) =>
    STANDING_FINDINGS.loggedTwice.at(
      { hole: headerOf(hole).name, fromMm: shared.fromMm, toMm: shared.toMm },
      {
        problem: `${formatInterval(shared)} is logged twice, in the rows ${formatInterval(ours)} and ${formatInterval(theirs)}`,
        remedy: 'Keep one of them, or both by splitting the metre: ;questions, or offsider questions.',
      },
    ),
  );
}

/** Metres above the deepest row that no row covers, as findings. What lies below that row is not logged yet and is no gap. */
function gapFindings(hole: Document): readonly Finding[] {
  const foot = Math.max(headerOf(hole).logFromMm, ...rowsDown(hole).map(([, row]) => row.toMm));
  return gapsIn(hole, foot).map((gap) =>
    STANDING_FINDINGS.gap.at(
      { hole: headerOf(hole).name, fromMm: gap.fromMm, toMm: gap.toMm },
      {
        problem: `no row covers ${formatInterval(gap)}, and rows stand below it`,
        remedy: 'Log it from the chip tray; where no chips came up, log it as no return.',
      },
    ),
  );
}

/** Rods done that stand twice, or at times that do not follow their depths: two copies recorded them, or a clock was wrong. */
function rodFindings(hole: Document): readonly Finding[] {
  const down = holeThings(hole, 'rods')
    .map(([, rod]) => rod)
    .sort((a, b) => a.depthMm - b.depthMm || instantMs(a.at) - instantMs(b.at));
  const place = { hole: headerOf(hole).name };
  return down.slice(1).flatMap((rod, index): readonly Finding[] => {
    const above = down[index];
    if (above === undefined) return [];
    const said = (each: typeof rod) =>
      `rod ${each.rod} to ${formatDepth(each.depthMm)} m at ${timeOf(each.at)}`;
    if (above.depthMm === rod.depthMm || above.rod === rod.rod)
      return [
        STANDING_FINDINGS.rodTwice.at(
          { ...place, thing: `rod ${rod.rod}` },
          {
            problem: `it is recorded twice: ${said(above)}, and ${said(rod)}`,
            remedy:
              'Ask the driller to count the rods. Look in the history who recorded each. Until one is taken back, bags and pace may be counted twice.',
          },
        ),
      ];
    if (instantMs(rod.at) >= instantMs(above.at)) return [];
    return [
      STANDING_FINDINGS.rodsOutOfOrder.at(
        { ...place, thing: `rod ${rod.rod}` },
        {
          problem: `it is recorded before the rod above it: ${said(rod)}, but ${said(above)}`,
          remedy:
            'Look at the clock of the laptop that recorded them; pace and plod metres hang on these times.',
        },
      ),
    ];
  });
}

const timeOf = (at: Stamp): string => `${localDate(at)} ${localTime(at, true)}`;
