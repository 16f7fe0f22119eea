import type { Finding } from '../finding/finding.ts';
import { STANDING_FINDINGS } from '../hole/findings.ts';
import { headerOf, rowsDown } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import { instantMs } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { gapsIn } from './heads.ts';
import { lineUpFindings } from './lined-up.ts';
import { rowsLoggedTwice } from './logged-twice.ts';
import { rodsDown, rodsRecordedTwice, rodWords } from './rods-twice.ts';

/** A line-up that is missing, rows that stand over the same metres, gaps between rows, and rods that stand twice or out of order, however they came. */
export function logFindings(hole: Document): readonly Finding[] {
  return [...lineUpFindings(hole), ...loggedTwiceFindings(hole), ...gapFindings(hole), ...rodFindings(hole)];
}

/** Rows that stand over the same metres, as findings. */
function loggedTwiceFindings(hole: Document): readonly Finding[] {
  return rowsLoggedTwice(hole).map(({ first: [, first], second: [, second], shared }) =>
    STANDING_FINDINGS.loggedTwice.at(
      { hole: headerOf(hole).name, fromMm: shared.fromMm, toMm: shared.toMm },
      {
        problem: `${formatInterval(shared)} is logged twice, in the rows ${formatInterval(first)} and ${formatInterval(second)}`,
        remedy: 'Keep one of them, or both by splitting the metre: ;questions, or offsider questions.',
      },
    ),
  );
}

/** Metres above the deepest row that no row covers, as findings. What lies below that row is not logged yet and is not a gap. */
function gapFindings(hole: Document): readonly Finding[] {
  const foot = Math.max(headerOf(hole).logFromMm, ...rowsDown(hole).map(([, row]) => row.toMm));
  return gapsIn(hole, foot).map((gap) =>
    STANDING_FINDINGS.gap.at(
      { hole: headerOf(hole).name, fromMm: gap.fromMm, toMm: gap.toMm },
      {
        problem: `no row covers ${formatInterval(gap)}, and there are rows below it`,
        remedy: 'Log it from the chip tray; where no chips came up, log it as no return.',
      },
    ),
  );
}

/** Rods done that stand twice, or at times that do not follow their depths: two copies recorded them, or a clock was wrong. */
function rodFindings(hole: Document): readonly Finding[] {
  const place = { hole: headerOf(hole).name };
  const twice = rodsRecordedTwice(hole);
  const down = rodsDown(hole);
  const doubled = twice.map(({ first: [, first], second: [, second] }) =>
    STANDING_FINDINGS.rodTwice.at(
      { ...place, thing: `rod ${second.rod}` },
      {
        problem: `it is recorded twice: ${rodWords(first)}, and ${rodWords(second)}`,
        remedy:
          'Relabel no bag for it: one record goes, with its bags. Ask the driller to count the rods, then keep one of the two: ;questions, or offsider questions.',
      },
    ),
  );
  const late = down.slice(1).flatMap(([id, rod], index): readonly Finding[] => {
    const [aboveId, above] = down[index] ?? [id, rod];
    const isTwice = twice.some((pair) =>
      [pair.first[0], pair.second[0]].every((each) => each === id || each === aboveId),
    );
    if (isTwice || instantMs(rod.at) >= instantMs(above.at)) return [];
    return [
      STANDING_FINDINGS.rodsOutOfOrder.at(
        { ...place, thing: `rod ${rod.rod}` },
        {
          problem: `it is recorded before the rod above it: ${rodWords(rod)}, but ${rodWords(above)}`,
          remedy:
            'Look at the clock of the laptop that recorded them; pace and plod metres hang on these times.',
        },
      ),
    ];
  });
  return [...doubled, ...late];
}
