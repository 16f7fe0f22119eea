import { overlaps } from '../../../quantity/interval.ts';
import type { Document } from '../../../record/document.ts';
import type { SampleColumn } from '../../../schema/logging-schema.ts';
import { bagsOnGround, streamFactAt } from '../../../standing/stream.ts';
import type { Row } from '../../../value/row.ts';

/** What a row's column says of its sample: the end of the bag's number where the whole has no room, `dash` where nothing is recorded. */
export function sampleText(
  hole: Document,
  row: Row,
  column: SampleColumn,
  width: number,
  dash: string,
): string {
  if (column === 'bag number') return bagText(hole, row, width, dash);
  const { moisture, recovery } = streamFactAt(hole, row);
  return (column === 'sample moisture' ? moisture : recovery) ?? dash;
}

/** The bag of the row's own metres; of several the first, and how many more. */
function bagText(hole: Document, row: Row, width: number, dash: string): string {
  const [first, ...more] = bagsOnGround(hole).flatMap(({ kind, fromMm, toMm, number }) => {
    const isOfRow =
      kind === 'primary' && fromMm !== undefined && toMm !== undefined && overlaps({ fromMm, toMm }, row);
    return isOfRow ? [number] : [];
  });
  if (first === undefined) return dash;
  const others = more.length === 0 ? '' : `+${more.length}`;
  const room = Math.max(1, width - others.length);
  // Cut to its last digits it shows no half of a prefix.
  const shown = first.length <= room ? first : first.slice(-room).replace(/^\D+/, '');
  return `${shown}${others}`;
}
