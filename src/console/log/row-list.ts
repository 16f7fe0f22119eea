import { rowsDown } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { cautionsIn, cautionTexts } from '../../schema/cautions.ts';
import { cellWords } from '../../shorthand/words.ts';
import { type Listed, oneSection } from '../lists/listed.ts';
import type { State } from '../state.ts';
import { line, spans, wrap } from '../widgets/line.ts';
import type { RowCursor } from './panels/rows-panel.ts';

/** One row with its cautions, then every field: the row that is open, at the logged head the last one. */
export function rowList(state: State, hole: Document, from: RowCursor, width: number): Listed {
  const rows = rowsDown(hole);
  const row = (from === 'head' ? rows.at(-1) : rows.find(([id]) => id === from))?.[1];
  if (row === undefined) return oneSection('the whole row', [[line('No row is logged yet.', 'warn')]]);
  const cells = state.project.schema.fields.flatMap((field) => {
    const cell = row.cells[field.name];
    if (cell === undefined) return [];
    const words = cellWords(state.project.schema, field, cell).join(', ').replace(`${field.label} `, '');
    const carried = row.carried?.includes(field.name) ? '  (as above)' : '';
    return [spans(`${field.label.padEnd(24)} `, words, [carried, 'faint'])];
  });
  const more = [
    ...(row.remark === undefined ? [] : [line(`remark: ${row.remark}`)]),
    ...(row.asked ?? []).map((reason) => line(`asked, not settled: ${reason}`, 'warn')),
  ];
  const cautions = cautionTexts(cautionsIn(state.project.schema, row.cells)).map((text) =>
    wrap(`CAUTION ${text}`, width, 'alert'),
  );
  return oneSection(`the whole row ${formatInterval(row)}`, [
    ...cautions,
    ...[...cells, ...more].map((each) => [each]),
  ]);
}
