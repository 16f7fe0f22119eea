import { formatDepth } from '../../../quantity/depth.ts';
import { type Field, type LoggingSchema, scaleOf } from '../../../schema/logging-schema.ts';
import { type Amount, amountsIn, type Cell, qualifiedIn, sharesIn } from '../../../value/cell.ts';
import { cellWidth, fit } from '../../terminal/paint/cells.ts';

/** A cell in the few characters that a column of the log has: `bst`, `frs`, `chl2 sil1`, `pyr 2`, `–` for none, `?` for not observed. */
export function cellText(schema: LoggingSchema, field: Field, cell: Cell | undefined, dash: string): string {
  if (cell === undefined) return '';
  if ('absent' in cell) return cell.absent === 'none' ? dash : '?';
  if ('code' in cell) {
    const beside = sharesIn(cell).map(({ code, percent }) => `+${code.toLowerCase()}${percent}`);
    return `${cell.code.toLowerCase()}${more(cell, cell.code)}${beside.join('')}`;
  }
  if ('level' in cell) {
    const code = scaleOf(schema, field)?.levels.find((each) => each.level === cell.level)?.code;
    return code?.toLowerCase() ?? String(cell.level);
  }
  if ('levels' in cell || 'percents' in cell) return listed(cell);
  if ('events' in cell)
    return Object.entries(cell.events)
      .map(([code, { atMm }]) => `${code.toLowerCase()}${atMm === undefined ? '' : `@${formatDepth(atMm)}`}`)
      .join(' ');
  if ('codes' in cell)
    return Object.keys(cell.codes)
      .map((code) => `${code.toLowerCase()}${more(cell, code)}`)
      .join(' ');
  if ('percent' in cell) return cell.percent === 'trace' ? 'tr' : `${cell.percent}%`;
  if ('number' in cell) return String(cell.number);
  return 'flag' in cell ? 'yes' : cell.text;
}

/** What more is said of a code: `/per`, `/pal/gre`. */
function more(cell: Cell, code: string): string {
  return Object.values(qualifiedIn(cell)[code] ?? {})
    .map((quality) => `/${quality.toLowerCase()}`)
    .join('');
}

/** The largest first, so that what is cut off is what matters least. A trace is kept with its mineral by a space that is not a break. */
function listed(cell: Cell): string {
  const size = (amount: Amount): number => (amount === 'trace' ? 0 : amount);
  return Object.entries(amountsIn(cell))
    .sort(([, a], [, b]) => size(b) - size(a))
    .map(
      ([code, amount]) =>
        `${code.toLowerCase()}${amount === 'trace' ? '\u00a0tr' : amount}${more(cell, code)}`,
    )
    .join(' ');
}

/** A cell's text in exactly `width` cells. Of a list whole items stay and the rest is counted: `chl2 sil1 +1`. */
export function fitCell(text: string, width: number, ellipsis: string): string {
  if (cellWidth(text) <= width) return fit(text, width, ellipsis);
  const items = text.split(' ');
  for (let kept = items.length - 1; kept > 0; kept -= 1) {
    const counted = `${items.slice(0, kept).join(' ')} +${items.length - kept}`;
    if (cellWidth(counted) <= width) return fit(counted, width, ellipsis);
  }
  return fit(text, width, ellipsis);
}
