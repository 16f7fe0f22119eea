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
