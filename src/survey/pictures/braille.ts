import { boundsOf, type Picture, type PictureLine, type PicturePoint, roundLength } from './picture.ts';

/** Dots of a braille cell (2 × 4) by column and row, as bits of Unicode's braille patterns (U+2800). */
const DOTS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;

/** A dot of each line is drawn where this says so, by the number of the dot along the line. */
const PEN: Readonly<Record<PictureLine['what'], (dot: number) => boolean>> = {
  planned: (dot) => dot % 3 === 0,
  surveyed: () => true,
  projected: (dot) => dot % 6 < 3,
};

interface Canvas {
  readonly columns: number;
  readonly rows: number;
  readonly cells: number[];
}

/**
 * A picture as lines of text, `columns` wide: braille dots at one scale both ways, letters for the marks, a scale bar and the
 * meaning of the letters below. `rows` is the most that the drawing itself takes.
 */
export function brailleLines(picture: Picture, columns: number, rows: number): readonly string[] {
  const box = boundsOf(picture);
  const dotM = Math.max(box.widthM / Math.max(1, columns * 2 - 1), box.heightM / Math.max(1, rows * 4 - 1));
  const used = Math.min(rows, Math.ceil((Math.round(box.heightM / dotM) + 1) / 4));
  const canvas: Canvas = { columns, rows: used, cells: new Array<number>(columns * used).fill(0) };
  const toDot = (point: PicturePoint) => ({
    x: Math.round((point.x - box.left) / dotM),
    y: Math.round((point.y - box.top) / dotM),
  });
  for (const line of picture.lines) drawLine(canvas, line.points.map(toDot), PEN[line.what]);
  const drawing = rowsOf(canvas, picture, toDot);
  return [
    `${picture.title} · right is ${picture.rightward}`,
    ...drawing,
    scaleBar(dotM, columns),
    legend(picture),
  ];
}

function drawLine(canvas: Canvas, dots: readonly PicturePoint[], pen: (dot: number) => boolean): void {
  let count = 0;
  for (let index = 1; index < dots.length; index++) {
    const from = dots[index - 1]!;
    const to = dots[index]!;
    const steps = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
    for (let step = index === 1 ? 0 : 1; step <= steps; step++) {
      const part = steps === 0 ? 0 : step / steps;
      if (pen(count++))
        setDot(
          canvas,
          Math.round(from.x + part * (to.x - from.x)),
          Math.round(from.y + part * (to.y - from.y)),
        );
    }
  }
}

function setDot({ columns, rows, cells }: Canvas, x: number, y: number): void {
  const column = x >> 1;
  const row = y >> 2;
  if (column < 0 || column >= columns || row < 0 || row >= rows) return;
  const bit = DOTS[x & 1 ? 1 : 0][(y & 3) as 0 | 1 | 2 | 3];
  cells[row * columns + column] = (cells[row * columns + column] ?? 0) | bit;
}

function rowsOf(
  { columns, rows, cells }: Canvas,
  picture: Picture,
  toDot: (point: PicturePoint) => PicturePoint,
): readonly string[] {
  // Where marks fall together a hazard is the one that is seen.
  const marks = [...picture.marks].sort((a, b) => Number(a.letter === '!') - Number(b.letter === '!'));
  const letters = new Map(
    marks.map((mark) => {
      const dot = toDot(mark.at);
      return [Math.min(rows - 1, dot.y >> 2) * columns + Math.min(columns - 1, dot.x >> 1), mark.letter];
    }),
  );
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_cell, column) => {
      const index = row * columns + column;
      const bits = cells[index] ?? 0;
      return letters.get(index) ?? (bits === 0 ? ' ' : String.fromCharCode(0x2800 + bits));
    })
      .join('')
      .trimEnd(),
  );
}

function scaleBar(dotM: number, columns: number): string {
  const lengthM = roundLength(dotM * 2 * Math.max(2, Math.floor(columns / 3)));
  const cells = Math.max(1, Math.round(lengthM / dotM / 2));
  return `├${'─'.repeat(Math.max(0, cells - 2))}┤ ${lengthM} m, one scale both ways`;
}

function legend(picture: Picture): string {
  const marks = picture.marks.map((mark) => `${mark.letter} ${mark.meaning}`);
  const lines = picture.lines.map((line) =>
    line.what === 'planned'
      ? 'dotted planned'
      : line.what === 'surveyed'
        ? 'solid surveyed'
        : 'dashed projected',
  );
  return [...new Set([...marks, ...lines])].join(' · ');
}
