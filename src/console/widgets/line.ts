import { safeText } from '../../finding/safe-text.ts';
import { cellWidth, padEnd, truncate } from '../terminal/paint/cells.ts';
import type { Tone } from '../theme.ts';

/** A run of text in one tone. */
interface Span {
  readonly text: string;
  readonly tone?: Tone;
}

/** One line of a screen, left to right. Everything shown is lines: panels are functions from data to lines. */
export type Line = readonly Span[];

/** A line of one tone. Text is made safe here, before it is measured: what is shown instead of a control is wider than it. */
export function line(text: string, tone: Tone = 'plain'): Line {
  return text === '' ? [] : [{ text: safeText(text), tone }];
}

/** A line of several spans: texts are plain, pairs are [text, tone]. Empty texts fall away; all are made safe. */
export function spans(...parts: readonly (string | readonly [string, Tone])[]): Line {
  return parts
    .map(
      (part): Span =>
        typeof part === 'string' ? { text: safeText(part) } : { text: safeText(part[0]), tone: part[1] },
    )
    .filter((span) => span.text !== '');
}

/** Width of a line in terminal cells. */
export function lineWidth(of: Line): number {
  return of.reduce((sum, span) => sum + cellWidth(span.text), 0);
}

/** A line in exactly `width` cells: cut with an ellipsis, or filled with spaces. */
export function fitLine(of: Line, width: number, ellipsis = '…'): Line {
  const whole = lineWidth(of);
  if (whole <= width) return whole === width ? of : [...of, { text: ' '.repeat(width - whole) }];
  const kept: Span[] = [];
  let room = width;
  for (const span of of) {
    const wide = cellWidth(span.text);
    if (wide < room) {
      kept.push(span);
      room -= wide;
      continue;
    }
    kept.push({
      ...span,
      text: padEnd(truncate(wide === room ? `${span.text} ` : span.text, room, ellipsis), room),
    });
    break;
  }
  return kept;
}

/** Two groups of spans at the two ends of a line; the left one gives way. */
export function endToEnd(left: Line, right: Line, width: number): Line {
  const rightWidth = Math.min(width, lineWidth(right));
  return [...fitLine(left, width - rightWidth), ...fitLine(right, rightWidth)];
}

/** Lines cut or filled to exactly `height`. */
export function fitHeight(lines: readonly Line[], height: number): readonly Line[] {
  return lines.length >= height
    ? lines.slice(0, height)
    : [...lines, ...Array.from({ length: height - lines.length }, (): Line => [])];
}

/** A text broken into lines of at most `width` cells at its spaces; a word longer than a line is cut hard. */
export function wrap(text: string, width: number, tone: Tone = 'plain'): readonly Line[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    const joined = current === '' ? word : `${current} ${word}`;
    if (cellWidth(joined) <= width) {
      current = joined;
      continue;
    }
    if (current !== '') lines.push(current);
    current = word;
    while (current !== '' && cellWidth(current) > width) {
      // Where not even one letter fits a letter is taken all the same: without it there would be no end.
      const head = truncate(current, width, '') || String.fromCodePoint(current.codePointAt(0) ?? 0x20);
      lines.push(head);
      current = current.slice(head.length);
    }
  }
  if (current !== '') lines.push(current);
  return lines.map((each) => line(each, tone));
}
