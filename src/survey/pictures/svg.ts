import { htmlText } from '../../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT } from '../../finding/what-it-is-not.ts';
import { boundsOf, type Picture, type PictureLine, type PicturePoint, roundLength } from './picture.ts';
import { placeLabels } from './svg-labels.ts';

/** Dashes of each line in units of its width: told apart without colour, on paper as on a screen. */
const DASHES: Readonly<Record<PictureLine['what'], string>> = {
  planned: '1 3',
  surveyed: '',
  projected: '6 4',
};

const MARGIN = 24;
const LETTERING = 12;
/** Height of the foot: scale bar, then the meaning of the lines. */
const FOOT = 3 * LETTERING;
/** A drawing is not made higher than this many times its width; a deeper hole is drawn at a smaller scale. */
const TALLEST = 1.2;
/** Least height of a drawing, pixels, so that there is room for words about a flat one. */
const FLATTEST = 100;

type Placed = (point: PicturePoint) => PicturePoint;

/**
 * A picture as an SVG document `width` pixels wide, at one scale both ways: the hole with its depths, its plan, zones as a wide band along
 * the hole (a hazard's is hatched by dashes and named in capitals), marks with their meaning, a scale bar and what each line is. Black on
 * whatever is behind it; nothing is told by colour. `alone` is a drawing on a page of its own, which then says what offsider is not.
 */
export function svgOf(picture: Picture, width: number, alone = false): string {
  const box = boundsOf(picture);
  const inner = width - 2 * MARGIN;
  const scale = Math.min(inner / box.widthM, (inner * TALLEST) / box.heightM);
  const left = MARGIN + (inner - box.widthM * scale) / 2;
  const drawn = Math.max(FLATTEST, box.heightM * scale);
  const top = MARGIN + LETTERING + (drawn - box.heightM * scale) / 2;
  const height = Math.ceil(drawn) + 2 * MARGIN + 2 * LETTERING + FOOT;
  const notice = alone ? noticeOf(width, height) : [];
  const whole = height + notice.length * LETTERING + (alone ? LETTERING : 0);
  const place: Placed = (point) => ({
    x: round(left + (point.x - box.left) * scale),
    y: round(top + (point.y - box.top) * scale),
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${whole}" viewBox="0 0 ${width} ${whole}" font-family="sans-serif" font-size="${LETTERING}" fill="currentColor" role="img">`,
    `<title>${escaped(picture.title)}</title>`,
    `<desc>${escaped(WHAT_IT_IS_NOT)}</desc>`,
    text(
      MARGIN,
      LETTERING + 2,
      `${picture.title}: right is ${picture.rightward}, down is ${picture.downward}`,
    ),
    ...picture.zones.map((zone) => bandOf(zone.points.map(place), zone.hazard)),
    ...picture.lines.map((line) => polyline(line, place)),
    ...pointsOf(picture, place, { width, height: height - FOOT }),
    ...footOf(picture, roundLength(inner / 3 / scale), scale, height),
    ...notice,
    '</svg>',
  ].join('\n');
}

/** What offsider is not, in lines under a drawing that is on no other page. */
function noticeOf(width: number, top: number): readonly string[] {
  const most = Math.floor((width - 2 * MARGIN) / (LETTERING * 0.55));
  const lines: string[] = [];
  for (const word of WHAT_IT_IS_NOT.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines.map((words, index) => text(MARGIN, top + (index + 1) * LETTERING, words));
}

function bandOf(points: readonly PicturePoint[], hazard: boolean): string {
  const dashes = hazard ? ' stroke-dasharray="2 2"' : '';
  return `<polyline class="zone" points="${pairs(points)}" fill="none" stroke="currentColor" stroke-opacity="0.35" stroke-width="9"${dashes}/>`;
}

function polyline({ what, points }: PictureLine, place: Placed): string {
  return `<polyline class="${what}" points="${pairs(points.map(place))}" fill="none" stroke="currentColor" stroke-width="1.5"${dashed(what)}/>`;
}

function dashed(what: PictureLine['what']): string {
  return DASHES[what] === '' ? '' : ` stroke-dasharray="${DASHES[what]}"`;
}

const pairs = (points: readonly PicturePoint[]) => points.map(({ x, y }) => `${x},${y}`).join(' ');

/** Marks and depths along the hole, with words that keep clear of each other. */
function pointsOf(
  picture: Picture,
  place: Placed,
  frame: { readonly width: number; readonly height: number },
): readonly string[] {
  const marks = picture.marks.map(({ letter, meaning, at }) => ({
    at: place(at),
    words: `${letter} ${letter === '!' ? meaning.toUpperCase() : meaning}`,
  }));
  const ticks = picture.ticks.map(({ depthM, at }) => ({ at: place(at), words: `${depthM}` }));
  return [
    ...marks.map(({ at }) => `<circle cx="${at.x}" cy="${at.y}" r="2.5"/>`),
    ...ticks.map(({ at }) => `<path d="M${round(at.x - 3)} ${at.y}h6m-3-3v6" stroke="currentColor"/>`),
    ...placeLabels([...marks, ...ticks], frame, LETTERING).map(({ x, y, words }) => text(x, y, words)),
  ];
}

/** The scale bar, then a sample of each kind of line with its name. */
function footOf(picture: Picture, barM: number, scale: number, height: number): readonly string[] {
  const bar = height - FOOT + 4;
  const legend = height - LETTERING + 2;
  const kinds = [...new Set(picture.lines.map((line) => line.what))];
  return [
    `<path d="M${MARGIN} ${bar - 4}v8m0-4h${round(barM * scale)}m0-4v8" stroke="currentColor" fill="none"/>`,
    text(MARGIN + barM * scale + 6, bar + 4, `${barM} m, one scale both ways`),
    ...kinds.flatMap((what, index) => {
      const x = MARGIN + index * 110;
      return [
        `<path d="M${x} ${legend - 4}h24" stroke="currentColor" stroke-width="1.5"${dashed(what)}/>`,
        text(x + 30, legend, what),
      ];
    }),
  ];
}

function text(x: number, y: number, words: string): string {
  return `<text x="${round(x)}" y="${round(y)}">${escaped(words)}</text>`;
}

const round = (pixels: number) => Math.round(pixels * 10) / 10;

/** Text safe between tags: names come from files that others wrote; characters that XML can't hold are left out. */
function escaped(words: string): string {
  return htmlText(words.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, ''));
}
