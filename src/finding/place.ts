import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';

/**
 * Where something is: in a file (with line and column, counted from 1), in a hole, at a depth, in a field. Every part
 * is optional; a place with nothing in it is a fault of the caller's and reads "somewhere".
 */
export interface Place {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly hole?: string;
  readonly fromMm?: number;
  readonly toMm?: number;
  readonly field?: string;
  readonly thing?: string;
}

/** The place in words, from the whole to the part: `logging.json:12:5, field rock` or `ZQRC004, 46–47, field pyrite`. */
export function formatPlace(place: Place): string {
  const parts: string[] = [];
  if (place.file !== undefined) {
    const line =
      place.line === undefined ? '' : `:${place.line}${place.column === undefined ? '' : `:${place.column}`}`;
    parts.push(`${place.file}${line}`);
  }
  if (place.hole !== undefined) parts.push(place.hole);
  if (place.fromMm !== undefined) parts.push(depthText(place.fromMm, place.toMm));
  if (place.thing !== undefined) parts.push(place.thing);
  if (place.field !== undefined) parts.push(`field ${place.field}`);
  return parts.length === 0 ? 'somewhere' : parts.join(', ');
}

function depthText(fromMm: number, toMm: number | undefined): string {
  if (toMm !== undefined) return formatInterval({ fromMm, toMm });
  return `${formatDepth(fromMm)} m`;
}

/** Where in a text an offset is, counted from 1. */
export function lineAndColumn(
  text: string,
  offset: number,
): { readonly line: number; readonly column: number } {
  let line = 1;
  let lastFeed = -1;
  // A loop over characters: looking for each line feed by itself takes a second for a file of nothing else.
  for (let index = 0; index < offset; index += 1) {
    if (text.charCodeAt(index) !== 0x0a) continue;
    line += 1;
    lastFeed = index;
  }
  return { line, column: offset - lastFeed };
}

/** The line of text around an offset, cut to what fits on a screen. */
export function lineExcerpt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  const line = text.slice(start, end < 0 ? text.length : end);
  const from = line.length <= 80 ? 0 : Math.max(0, offset - start - 30);
  return line.slice(from, from + 80).trim();
}
