import { amountsIn, type Cell, sharesIn } from '../value/cell.ts';

/** The codes that a cell names: a first one and those beside it, or all that it holds. */
export function codesIn(cell: Cell): readonly string[] {
  return 'code' in cell
    ? [cell.code, ...sharesIn(cell).map(({ code }) => code)]
    : Object.keys(amountsIn(cell));
}
