import { type Cell, cellsToText, styledCells } from './styled-cells.ts';

/** Total width in cells. */
const widthOf = (cells: readonly Cell[]) => cells.reduce((sum, cell) => sum + cell.width, 0);

const same = (one: Cell | undefined, other: Cell | undefined) =>
  one !== undefined && other !== undefined && one.text === other.text && one.style === other.style;

/** The cells that fit in `columns`, so that no line ever wraps. */
function within(cells: readonly Cell[], columns: number): readonly Cell[] {
  let used = 0;
  const end = cells.findIndex((cell) => {
    used += cell.width;
    return used > columns;
  });
  return end === -1 ? cells : cells.slice(0, end);
}

/**
 * What to write to turn a line of the screen into another: the first column (from 0) that differs and the text from there, or
 * undefined when they look the same. Only the cells between the first and the last difference are in it; a line that became shorter
 * is erased to its end.
 */
export function lineChange(
  before: string,
  after: string,
  columns: number,
): { readonly column: number; readonly text: string } | undefined {
  const old = within(styledCells(before), columns);
  const now = within(styledCells(after), columns);
  let start = 0;
  while (same(old[start], now[start])) start++;
  const oldWidth = widthOf(old);
  const width = widthOf(now);
  let tail = 0;
  const longestTail = width === oldWidth ? Math.min(old.length, now.length) - start : 0;
  while (tail < longestTail && same(old.at(-1 - tail), now.at(-1 - tail))) tail++;
  const changed = now.slice(start, now.length - tail);
  const shorter = width < oldWidth;
  if (changed.length === 0 && !shorter) return undefined;
  return { column: widthOf(now.slice(0, start)), text: cellsToText(changed) + (shorter ? '\x1b[K' : '') };
}
