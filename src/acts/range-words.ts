import { formatDepth } from '../quantity/depth.ts';
import { formatInterval, overlaps } from '../quantity/interval.ts';
import type { Document, Id } from '../record/document.ts';
import { bagsWords, issuedBagsOver } from '../sampling/stream/moved-rows.ts';
import type { RangeCommand, Rows } from './range-plan.ts';

/** The preview of a range command: what it is about to do, row by row what would change, and that bags stay as they are. */
export function rangeLines(
  hole: Document,
  command: RangeCommand,
  before: Rows,
  after: Rows,
): readonly string[] {
  return [intended(command), ...previewLines(command, before, after), ...bagLines(hole, before, after)];
}

const INTENDED = {
  clear: 'clear',
  insert: 'insert',
  merge: 'make one row of',
  copy: 'copy',
  shift: 'move',
} as const;
const DONE = {
  clear: 'cleared',
  insert: 'inserted',
  merge: 'made one row of',
  copy: 'copied',
  shift: 'moved',
} as const;

/** What the command is about to do, over its preview. */
function intended(command: RangeCommand): string {
  return inWords(command, command.does === 'split' ? 'split' : INTENDED[command.does]);
}

/** What the command did, for the history. */
export function rangeWords(command: RangeCommand): string {
  return inWords(command, command.does === 'split' ? 'split' : DONE[command.does]);
}

function inWords(command: RangeCommand, verb: string): string {
  if (command.does === 'split') return `${verb} the row at ${formatDepth(command.atMm)} m`;
  const range = `${verb} ${formatInterval(command)}`;
  if (command.does === 'shift')
    return `${range} ${command.byMm < 0 ? 'up' : 'down'} by ${formatDepth(Math.abs(command.byMm))} m`;
  return command.does === 'insert'
    ? `${range}, rows below ${verb === 'insert' ? 'move' : 'moved'} down`
    : range;
}

/** What changes, row by row; the first few, and how many more. */
function previewLines(command: RangeCommand, before: Rows, after: Rows): readonly string[] {
  const was = new Map(before);
  const is = new Map(after);
  const source = sourcesOf(command, before, after);
  const lines = [
    ...after.flatMap(([id, row]) => {
      const old = was.get(id);
      if (old === undefined) return [`new row ${formatInterval(row)}${source(id)}`];
      return old.fromMm === row.fromMm && old.toMm === row.toMm
        ? []
        : [`${formatInterval(old)} becomes ${formatInterval(row)}`];
    }),
    ...before.filter(([id]) => !is.has(id)).map(([, row]) => `${formatInterval(row)} is taken out`),
  ];
  const shown = lines.slice(0, 8);
  return lines.length > shown.length ? [...shown, `and ${lines.length - shown.length} more`] : shown;
}

/** Behind each row of a copy what it is a copy of. */
function sourcesOf(command: RangeCommand, before: Rows, after: Rows): (id: Id) => string {
  if (command.does !== 'copy') return () => '';
  const was = new Map(before);
  const copied = before.filter(([, row]) => overlaps(row, command));
  const made = after.filter(([id]) => !was.has(id)).map(([id]) => id);
  return (id) => {
    const row = copied[made.indexOf(id)]?.[1];
    return row === undefined ? '' : ` as ${formatInterval(row)}`;
  };
}

/** Bags are facts: where rows move over issued ones the preview says that the bags stay. */
function bagLines(hole: Document, before: Rows, after: Rows): readonly string[] {
  const is = new Map(after);
  const moved = before.flatMap(([id, was]) => {
    const row = is.get(id);
    if (row?.fromMm === was.fromMm && row.toMm === was.toMm) return [];
    return row === undefined ? [was] : [was, row];
  });
  const bags = issuedBagsOver(hole, moved);
  return bags.length === 0 ? [] : [`bags keep their metres: ${bagsWords(bags)}`];
}
