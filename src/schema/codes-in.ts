import type { Cell } from '../value/cell.ts';

/** The codes that a cell names: a first and a second one, or all that have an amount. */
export function codesIn(cell: Cell): readonly string[] {
  if ('code' in cell) return cell.second === undefined ? [cell.code] : [cell.code, cell.second.code];
  if ('levels' in cell) return Object.keys(cell.levels);
  return 'percents' in cell ? Object.keys(cell.percents) : [];
}
