import { htmlText } from '../../finding/sheet-text.ts';
import { figure } from './charts-text.ts';
import type { BlankSeries, PairSeries, StandardSeries } from './quality.ts';

const WIDTH = 640;
const LEFT = 64;
const TOP = 28;
const INNER = 150;
const PLOT = WIDTH - LEFT - 16;

/** A point of a chart with what marks it: a ring is in, a triangle warns, a cross fails; told on paper without colour. */
interface Mark {
  readonly x: number;
  readonly y: number;
  readonly shape: 'ring' | 'triangle' | 'cross';
  readonly title: string;
}

/** A control chart of one standard: results in the laboratory's order, lines at the certified value, 2 SD and 3 SD. */
export function standardSvg(series: StandardSeries): string {
  const { lot, analyte, unit, certified, sd, scores } = series;
  const reach = 4;
  const y = (z: number): number => TOP + (INNER / 2) * (1 - Math.max(-reach, Math.min(reach, z)) / reach);
  const step = PLOT / Math.max(1, scores.length);
  const rules = [-3, -2, 0, 2, 3].map((z) =>
    rule(y(z), `${figure(certified + z * sd)}`, DASH[Math.abs(z)] ?? ''),
  );
  const marks = scores.map(({ number, z, value, state }, index): Mark => {
    const shape = state === 'fail' ? 'cross' : state === 'warn' ? 'triangle' : 'ring';
    return {
      x: LEFT + step * (index + 0.5),
      y: y(z),
      shape,
      title: `${number}: ${figure(value)}, ${z.toFixed(1)} SD`,
    };
  });
  const path = `<polyline points="${marks.map((each) => `${round(each.x)},${round(each.y)}`).join(' ')}" fill="none" stroke="currentColor" stroke-width=".7"/>`;
  return chart(`Standard ${lot}: ${analyte} in ${unit}`, [...rules, path, ...marks.map(drawn)]);
}

const BLANK_SHAPES = { yes: 'cross', no: 'ring', 'cannot tell': 'triangle' } as const;

/** Results of one blank against its limit; one that can't be told is at its detection limit, as a triangle. */
export function blankSvg({ material, analyte, unit, limit, results }: BlankSeries): string {
  const heightOf = ({ value, belowLimit, over }: BlankSeries['results'][number]): number =>
    over === 'cannot tell' ? (belowLimit ?? value) : value;
  const most = Math.max(limit * 1.2, ...results.map(heightOf)) || 1;
  const y = (value: number): number => TOP + INNER * (1 - value / most);
  const step = PLOT / Math.max(1, results.length);
  const marks = results.map(
    (result, index): Mark => ({
      x: LEFT + step * (index + 0.5),
      y: y(heightOf(result)),
      shape: BLANK_SHAPES[result.over],
      title: `${result.number}: ${result.over === 'cannot tell' ? `<${figure(heightOf(result))}, can't tell` : figure(result.value)}`,
    }),
  );
  const rules = [rule(y(0), '0', ''), rule(y(limit), `limit ${figure(limit)}`, '6 3')];
  return chart(`Blank ${material}: ${analyte} in ${unit}`, [...rules, ...marks.map(drawn)]);
}

/** Duplicates against their primaries on one scale both ways, with the line on which a pair agrees. */
export function pairsSvg({ analyte, unit, pairs, variationPercent }: PairSeries): string {
  const most = Math.max(...pairs.flatMap(({ a, b }) => [a, b])) || 1;
  const x = (value: number): number => LEFT + INNER * (value / most);
  const y = (value: number): number => TOP + INNER * (1 - value / most);
  const marks = pairs.map(
    ({ primary, duplicate, a, b, difference }): Mark => ({
      x: x(a),
      y: y(b),
      shape: (difference ?? 0) > 50 ? 'triangle' : 'ring',
      title: `${primary} ${figure(a)}, ${duplicate} ${figure(b)}`,
    }),
  );
  const whole =
    variationPercent === undefined ? '' : `, root-mean-square CV ${variationPercent.toFixed(1)} %`;
  const equal = `<path d="M${x(0)} ${y(0)}L${x(most)} ${y(most)}" stroke="currentColor" stroke-dasharray="6 3"/>`;
  const frame = `<rect x="${LEFT}" y="${TOP}" width="${INNER}" height="${INNER}" fill="none" stroke="currentColor" stroke-width=".5"/>`;
  const ends = [
    `<text x="${LEFT - 4}" y="${TOP + 4}" text-anchor="end">${figure(most)}</text>`,
    `<text x="${LEFT + INNER}" y="${TOP + INNER + 14}" text-anchor="end">primary, to ${figure(most)} ${htmlText(unit)}</text>`,
    `<text x="${LEFT - 4}" y="${TOP + INNER}" text-anchor="end">0</text>`,
  ];
  return chart(`Pairs of ${analyte} in ${unit}: ${pairs.length}${whole}`, [
    frame,
    equal,
    ...ends,
    ...marks.map(drawn),
  ]);
}

const DASH: Readonly<Record<number, string>> = { 0: '', 2: '2 3', 3: '6 3' };

function rule(y: number, label: string, dash: string): string {
  const dashes = dash === '' ? '' : ` stroke-dasharray="${dash}"`;
  return `<path d="M${LEFT} ${round(y)}h${PLOT}" stroke="currentColor" stroke-width=".5"${dashes}/><text x="${LEFT - 4}" y="${round(y + 4)}" text-anchor="end">${htmlText(label)}</text>`;
}

function drawn({ x, y, shape, title }: Mark): string {
  const [at, up] = [round(x), round(y)];
  const figures = {
    ring: `<circle cx="${at}" cy="${up}" r="3"/>`,
    triangle: `<path d="M${at} ${round(y - 5)}l5 9h-10z"/>`,
    cross: `<path d="M${round(x - 5)} ${round(y - 5)}l10 10m0-10l-10 10" stroke-width="2"/>`,
  };
  return `<g fill="none" stroke="currentColor"><title>${htmlText(title)}</title>${figures[shape]}</g>`;
}

function chart(title: string, parts: readonly string[]): string {
  const height = TOP + INNER + 22;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" font-family="sans-serif" font-size="10" fill="currentColor">`,
    `<title>${htmlText(title)}</title>`,
    `<text x="${LEFT}" y="16" font-size="12">${htmlText(title)}</text>`,
    ...parts,
    '</svg>',
  ].join('\n');
}

const round = (pixels: number): number => Math.round(pixels * 10) / 10;
