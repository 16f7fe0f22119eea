import type { Depth } from '../quantity/depth.ts';
import { type Cell, sameCell } from './cell.ts';

/** The cells of a row by the name of their field. Only fields that apply to the row are there. */
export type Cells = { readonly [field: string]: Cell };

/** One logged interval: what was observed between two depths. */
export type Row = {
  readonly fromMm: Depth;
  readonly toMm: Depth;
  readonly cells: Cells;
  /** No chips came up: every cell is `not observed`, and the metre never counts as barren. */
  readonly noReturn?: true;
  /** Fields that the geologist left unsaid and that carried from the last observed row above. */
  readonly carried?: readonly string[];
  /** Said in one stroke to be the same as the row above: an explicit repeat. */
  readonly repeat?: true;
  /** What was asked about the row and is not settled yet, in words; until it is, termination rules can't tell. */
  readonly asked?: readonly string[];
  /** The fields that the open questions are about; missing where one is about the whole row. */
  readonly askedOf?: readonly string[];
  readonly remark?: string;
};

/** A row without its place: what an entry line can say. */
export type RowSaid = Omit<Row, 'fromMm' | 'toMm'>;

/** True where two rows observe the same, wherever they are and however they were typed; remarks are not observations. */
export function sameObservation(a: RowSaid, b: RowSaid): boolean {
  if ((a.noReturn ?? false) !== (b.noReturn ?? false)) return false;
  const fields = new Set([...Object.keys(a.cells), ...Object.keys(b.cells)]);
  for (const field of fields) if (!sameCell(a.cells[field], b.cells[field])) return false;
  return true;
}
