import stringWidth from 'string-width';
import { narrowText } from '../../../finding/safe-text.ts';

let segmenter: Intl.Segmenter | undefined;

/** The characters of a text as a person counts them, combining marks and joined emoji whole. */
export function graphemes(text: string): readonly string[] {
  if (narrowText.test(text)) return text.split('');
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

/** Width of a text in terminal cells; escape sequences count as nothing, ambiguous widths as one. */
export function cellWidth(text: string): number {
  if (narrowText.test(text)) return text.length;
  const known = widths.get(text);
  if (known !== undefined) return known;
  const width = stringWidth(text);
  if (widths.size >= MOST_WIDTHS) widths.clear();
  widths.set(text, width);
  return width;
}

/** Widths found last: a screen is measured again at each key, and finding one takes a segmenter and a table of emoji. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 2000;

/** The text with spaces after it up to `width` cells; a wider text stays as it is. */
export function padEnd(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - cellWidth(text)));
}

/**
 * The text cut to at most `width` cells, `ellipsis` in its last cells when anything was cut. A wide character is never halved, so
 * the result may be a cell narrower. Plain text only: style it afterwards.
 */
export function truncate(text: string, width: number, ellipsis = '…'): string {
  if (cellWidth(text) <= width) return text;
  const mark = cellWidth(ellipsis);
  if (width < mark) return '';
  let kept = '';
  let used = 0;
  for (const grapheme of graphemes(text)) {
    const next = used + cellWidth(grapheme);
    if (next > width - mark) break;
    kept += grapheme;
    used = next;
  }
  return kept + ellipsis;
}

/** The text in exactly `width` cells: cut with an ellipsis or filled with spaces. */
export function fit(text: string, width: number, ellipsis = '…'): string {
  return padEnd(truncate(text, width, ellipsis), width);
}
