import { boundsOf, type Picture, type PictureLine, type PicturePoint, roundLength } from './picture.ts';

/** Dashes of each line in units of its width: told apart without colour, on paper as on a screen. */
const DASHES: Readonly<Record<PictureLine['what'], string>> = {
  planned: '1 3',
  surveyed: '',
  projected: '6 4',
};

const MARGIN = 24;
const LETTERING = 12;

/** A picture as an SVG document `width` pixels wide, at one scale both ways, with a scale bar; black on whatever is behind it. */
export function svgOf(picture: Picture, width: number): string {
  const box = boundsOf(picture);
  const inner = width - 2 * MARGIN;
  const scale = inner / Math.max(box.widthM, box.heightM);
  const height = Math.ceil(box.heightM * scale) + 2 * MARGIN + 3 * LETTERING;
  const place = (point: PicturePoint) => ({
    x: round(MARGIN + (point.x - box.left) * scale),
    y: round(MARGIN + LETTERING + (point.y - box.top) * scale),
  });
  const lines = picture.lines.map((line) => polyline(line, place));
  const marks = picture.marks.map((mark) => {
    const { x, y } = place(mark.at);
    const side = x > width * 0.7 ? { at: x - 5, anchor: ' text-anchor="end"' } : { at: x + 5, anchor: '' };
    const words = escaped(`${mark.letter} ${mark.meaning}`);
    return `<circle cx="${x}" cy="${y}" r="2.5"/><text x="${round(side.at)}" y="${round(y - 4)}"${side.anchor}>${words}</text>`;
  });
  const barM = roundLength(inner / 3 / scale);
  const foot = height - MARGIN / 2;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="${LETTERING}" fill="currentColor">`,
    `<title>${escaped(picture.title)}</title>`,
    `<text x="${MARGIN}" y="${LETTERING + 2}">${escaped(`${picture.title}, right is ${picture.rightward}`)}</text>`,
    ...lines,
    ...marks,
    `<path d="M${MARGIN} ${foot - 4}v8m0-4h${round(barM * scale)}m0-4v8" stroke="currentColor" fill="none"/>`,
    `<text x="${round(MARGIN + barM * scale + 6)}" y="${foot + 4}">${barM} m</text>`,
    '</svg>',
  ].join('\n');
}

function polyline(line: PictureLine, place: (point: PicturePoint) => PicturePoint): string {
  const points = line.points.map(place).map(({ x, y }) => `${x},${y}`);
  const dashes = DASHES[line.what] === '' ? '' : ` stroke-dasharray="${DASHES[line.what]}"`;
  return `<polyline class="${line.what}" points="${points.join(' ')}" fill="none" stroke="currentColor" stroke-width="1.5"${dashes}/>`;
}

const round = (pixels: number) => Math.round(pixels * 10) / 10;

/** Text safe between tags: names come from files that others wrote; characters that XML can't hold are left out. */
function escaped(text: string): string {
  return text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
