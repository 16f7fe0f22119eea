import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { headerOf, holeNouns, rowsDown } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval, type Interval, overlaps } from '../../quantity/interval.ts';
import type { Document, Id } from '../../record/document.ts';
import { rowsMoved } from '../findings.ts';

/** An interval of the log that stands elsewhere now, or not at all. */
type Moved = { readonly was: Interval; readonly is: Interval | undefined };

/** A bag with the metres in it: not a standard, a blank or a spoiled bag. */
type BagOfMetres = Bag & Interval;

/**
 * What became of rows over issued bags since they were logged: moved, cut, joined, cleared. Bags keep their numbers and metres, so each
 * run of them is named once with its bags. Nothing once the rows stand again where they were logged.
 */
export function checkMovedRows(hole: Document): readonly Finding[] {
  const bags = bagsOfMetres(holeNouns(hole, 'bags'));
  return runsOf(movedRows(hole)).flatMap((run) => {
    const over = bagsOver(bags, run);
    return over.length === 0 ? [] : [findingOf(headerOf(hole).name, run, over)];
  });
}

/** Bags that hold metres of any of these intervals, where one was or where it is. */
export function issuedBagsOver(hole: Document, intervals: readonly Interval[]): readonly Bag[] {
  return bagsOfMetres(holeNouns(hole, 'bags')).filter((bag) => intervals.some((each) => overlaps(each, bag)));
}

/** `MB000492`, or `MB000492 to MB000494`. */
export function bagsWords(bags: readonly Bag[]): string {
  const [first, last] = [bags[0]?.number ?? '', bags.at(-1)?.number ?? ''];
  return bags.length < 2 ? first : `${first} to ${last}`;
}

function bagsOfMetres(bags: readonly Bag[]): readonly BagOfMetres[] {
  return bags
    .filter((bag): bag is BagOfMetres => bag.fromMm !== undefined && bag.toMm !== undefined)
    .sort((a, b) => a.fromMm - b.fromMm);
}

/** Rows by where they were first logged: an edit and its undoing leave no trace. */
function movedRows(hole: Document): readonly Moved[] {
  const first = new Map<Id, Interval>();
  for (const change of hole.history.flatMap((entry) => entry.changes)) {
    if (!('put' in change) || change.put[0] !== 'rows' || first.has(change.put[1])) continue;
    first.set(change.put[1], change.thing as unknown as Interval);
  }
  const rows = new Map(rowsDown(hole));
  const standing = [...rows.values()];
  return [...first]
    .map(([id, was]): Moved => ({ was, is: rows.get(id) }))
    .filter(({ was, is }) =>
      is === undefined
        ? !standing.some((row) => overlaps(row, was))
        : is.fromMm !== was.fromMm || is.toMm !== was.toMm,
    )
    .sort((a, b) => a.was.fromMm - b.was.fromMm);
}

/** Rows that touch and went the same way, as one. */
function runsOf(moved: readonly Moved[]): readonly Moved[] {
  const runs: Moved[] = [];
  for (const each of moved) {
    const last = runs.at(-1);
    if (last === undefined || !follows(last, each)) runs.push(each);
    else
      runs[runs.length - 1] = {
        was: joined(last.was, each.was),
        is: last.is && each.is && joined(last.is, each.is),
      };
  }
  return runs;
}

function follows(above: Moved, below: Moved): boolean {
  if (above.was.toMm !== below.was.fromMm) return false;
  if (above.is === undefined || below.is === undefined) return above.is === below.is;
  return isShift(above) && isShift(below) && byMm(above, above.is) === byMm(below, below.is);
}

function joined(above: Interval, below: Interval): Interval {
  return { fromMm: above.fromMm, toMm: below.toMm };
}

function isShift({ was, is }: Moved): boolean {
  return is !== undefined && is.toMm - is.fromMm === was.toMm - was.fromMm;
}

function byMm({ was }: Moved, is: Interval): number {
  return is.fromMm - was.fromMm;
}

function bagsOver(bags: readonly BagOfMetres[], { was, is }: Moved): readonly BagOfMetres[] {
  return bags.filter((bag) => overlaps(bag, was) || (is !== undefined && overlaps(bag, is)));
}

function findingOf(hole: string, moved: Moved, bags: readonly BagOfMetres[]): Finding {
  const at = moved.is ?? moved.was;
  const first = bags[0];
  return rowsMoved.at(
    { hole, fromMm: at.fromMm, toMm: at.toMm },
    {
      problem: `${happened(moved)} The bags there keep their metres: ${bagsWords(bags)}.`,
      remedy:
        moved.is === undefined
          ? 'Log the metres again, or say why they have no log in a remark of the next row.'
          : `Lay the calicos beside the piles. If they fit as they are, nothing is to be done; if not, say what is in each, like ;bag ${first === undefined ? '' : formatInterval(first).replace('–', '-')} ${first?.number}.`,
    },
  );
}

function happened(moved: Moved): string {
  const { was, is } = moved;
  if (is === undefined) return `What was logged at ${formatInterval(was)} is cleared.`;
  if (!isShift(moved)) return `The row logged as ${formatInterval(was)} is now ${formatInterval(is)}.`;
  const by = byMm(moved, is);
  return `What was logged at ${formatInterval(was)} is now ${formatDepth(Math.abs(by) as typeof is.fromMm)} m ${by < 0 ? 'higher' : 'deeper'}.`;
}
