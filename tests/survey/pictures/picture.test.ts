import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { expectedHere } from '../../../src/survey/expected/expected.ts';
import type { PlannedLine } from '../../../src/survey/path/miss.ts';
import { ORIGIN } from '../../../src/survey/path/vector.ts';
import { brailleLines } from '../../../src/survey/pictures/braille.ts';
import {
  boundsOf,
  type Picture,
  type PictureSource,
  planPicture,
  roundLength,
  sectionPicture,
} from '../../../src/survey/pictures/picture.ts';
import { svgOf } from '../../../src/survey/pictures/svg.ts';
import { pathOf, pointing } from '../build.ts';

const at = depthFromMetres;
const PATH = pathOf([0, 90, -60], [30, 91, -58], [60, 93, -55]);
const PLAN: PlannedLine = { direction: pointing(90, -60), targetMm: at(100), from: ORIGIN };
const SOURCE: PictureSource = {
  path: PATH,
  plan: PLAN,
  plannedMm: at(100),
  drilledMm: at(72),
  expected: expectedHere(
    [
      { name: 'top of fresh rock', fromMm: at(40) },
      { name: 'old stope <3>', fromMm: at(80), hazard: 'void' },
    ],
    PATH,
    PLAN,
    at(100),
  ),
};

const LINE: Picture = {
  title: 'line',
  rightward: 'east',
  downward: 'down',
  lines: [
    {
      what: 'surveyed',
      points: [
        { x: 0, y: 0 },
        { x: 7, y: 7 },
      ],
    },
  ],
  marks: [],
  zones: [],
  ticks: [],
};

describe('what a picture holds', () => {
  test('a section has the collar at its head, the target where the plan puts it, depth downwards', () => {
    const picture = sectionPicture(SOURCE);
    const mark = (letter: string) => picture.marks.find((one) => one.letter === letter)?.at;
    expect(mark('C')).toEqual({ x: 0, y: 0 });
    expect(mark('T')?.x).toBeCloseTo(50, 9);
    expect(mark('T')?.y).toBeCloseTo(100 * Math.sin(Math.PI / 3), 9);
    expect(picture.lines.map((line) => line.what)).toEqual(['planned', 'surveyed', 'projected']);
  });

  test('a plan has north up', () => {
    const north = planPicture({ ...SOURCE, path: pathOf([0, 0, -45], [30, 0, -45]), plan: undefined });
    const end = north.lines[0]?.points.at(-1);
    expect(end?.y).toBeLessThan(0);
    expect(end?.x).toBeCloseTo(0, 9);
  });

  test('a hazard is marked by a letter of its own, not by colour', () => {
    expect(sectionPicture(SOURCE).marks.map((mark) => [mark.letter, mark.meaning])).toEqual([
      ['C', 'collar'],
      ['1', 'top of fresh rock'],
      ['!', 'old stope <3>'],
      ['S', 'last shot'],
      ['T', 'target'],
    ]);
  });
});

describe.each([
  ['plan', planPicture],
  ['section', sectionPicture],
] as const)('a %s', (_view, picture) => {
  const source = (expected: Parameters<typeof expectedHere>[0], drilledM = 0): PictureSource => ({
    path: pathOf([0, 90, -60]),
    plan: PLAN,
    plannedMm: at(120),
    drilledMm: at(drilledM),
    expected: expectedHere(expected, pathOf([0, 90, -60]), PLAN, at(400)),
  });
  const lengthOf = (drawn: Picture, what: string): number => {
    const points = drawn.lines.find((line) => line.what === what)?.points ?? [];
    const [first, last] = [points[0]!, points.at(-1)!];
    return Math.hypot(last.x - first.x, last.y - first.y);
  };
  const whole = picture === sectionPicture ? 1 : Math.cos(Math.PI / 3);

  test('goes to the planned depth before a metre is drilled, past the target', () => {
    const drawn = picture(source([]));
    expect(lengthOf(drawn, 'planned')).toBeCloseTo(120 * whole, 6);
    expect(lengthOf(drawn, 'projected')).toBeCloseTo(120 * whole, 6);
  });

  test('goes through every hazard that is expected, below the planned depth too, with its mark', () => {
    const drawn = picture(
      source([
        { name: 'old stope', fromMm: at(130), toMm: at(141), hazard: 'void' },
        { name: 'ironstone', fromMm: at(160), hazard: 'fibre' },
      ]),
    );
    expect(lengthOf(drawn, 'projected')).toBeGreaterThanOrEqual(160 * whole - 1e-6);
    expect(drawn.marks.filter(({ letter }) => letter === '!').map(({ meaning }) => meaning)).toEqual([
      'old stope',
      'bottom of old stope',
      'ironstone',
    ]);
    expect(svgOf(drawn, 600)).toContain('! BOTTOM OF OLD STOPE');
    expect(brailleLines(drawn, 76, 14).join('')).toContain('! old stope · ! bottom of old stope');
  });

  test('shows a hazard that falls on another mark', () => {
    const drawn = picture(source([{ name: 'old stope', fromMm: at(100), toMm: at(120), hazard: 'void' }]));
    expect(brailleLines(drawn, 76, 14).slice(1, -2).join('')).toContain('!');
  });
});

describe('a picture in the terminal', () => {
  test('draws a diagonal as a diagonal, at one scale both ways', () => {
    expect(brailleLines(LINE, 4, 2).slice(1, 3)).toEqual(['⠑⢄', '  ⠑⢄']);
  });

  test('dots a planned line and dashes a projected one: nothing is told by colour', () => {
    const level = (what: Picture['lines'][number]['what']): Picture => ({
      ...LINE,
      lines: [
        {
          what,
          points: [
            { x: 0, y: 0 },
            { x: 11, y: 0 },
          ],
        },
      ],
    });
    const row = (what: Picture['lines'][number]['what']) => brailleLines(level(what), 6, 2)[1];
    expect(row('surveyed')).toBe('⠉⠉⠉⠉⠉⠉');
    expect(row('planned')).toBe('⠁⠈ ⠁⠈');
    expect(row('projected')).toBe('⠉⠁ ⠉⠁');
  });

  test('says its scale and what its letters and lines mean', () => {
    const lines = brailleLines(sectionPicture(SOURCE), 50, 20);
    expect(lines[0]).toBe('section along 090° · right is 090°');
    expect(lines.at(-2)).toMatch(/^├─+┤ \d+ m, one scale both ways$/);
    expect(lines.at(-1)).toContain('C collar · 1 top of fresh rock · ! old stope');
    expect(lines.at(-1)).toContain('dotted planned · solid surveyed · dashed projected');
  });

  test('keeps inside its columns and rows whatever it draws', () => {
    const point = fc.record({
      x: fc.double({ min: -500, max: 500, noNaN: true }),
      y: fc.double({ min: -500, max: 500, noNaN: true }),
    });
    const picture = fc.array(point, { minLength: 2, maxLength: 8 }).map(
      (points): Picture => ({
        ...LINE,
        lines: [{ what: 'planned', points }],
        marks: [{ letter: 'T', meaning: 'target', at: points[0]! }],
      }),
    );
    fc.assert(
      fc.property(
        picture,
        fc.integer({ min: 4, max: 90 }),
        fc.integer({ min: 2, max: 40 }),
        (one, columns, rows) => {
          const drawing = brailleLines(one, columns, rows).slice(1, -2);
          expect(drawing.length).toBeLessThanOrEqual(rows);
          for (const line of drawing) expect(line.length).toBeLessThanOrEqual(columns);
          expect(drawing.join('')).toContain('T');
        },
      ),
    );
  });

  test('draws a hole with a line-up alone', () => {
    const lines = brailleLines(
      sectionPicture({ ...SOURCE, path: pathOf([0, 90, -60]), expected: [] }),
      40,
      12,
    );
    expect(lines.join('\n')).toContain('C');
    expect(lines.at(-1)).not.toContain('last shot');
  });
});

describe('a picture as SVG', () => {
  const svg = svgOf(sectionPicture(SOURCE), 600);

  test('has a line of each kind, told apart by dashes, and a scale', () => {
    for (const what of ['planned', 'surveyed', 'projected'])
      expect(svg).toContain(`<polyline class="${what}"`);
    for (const dashes of ['1 3', '6 4']) expect(svg).toContain(`stroke-dasharray="${dashes}"`);
    expect(svg).toMatch(/>\d+ m, one scale both ways<\/text>/);
  });

  test('bands an expected zone along the hole; that of a hazard is broken and named in capitals', () => {
    expect(svg).toMatch(/class="zone"[^>]*stroke-dasharray="2 2"/);
    expect(svg).toContain('! OLD STOPE');
  });

  test('writes depths along the hole at round steps', () => {
    const depths = sectionPicture(SOURCE).ticks.map((tick) => tick.depthM);
    expect(depths.length).toBeGreaterThanOrEqual(2);
    for (const depth of depths) expect(svg).toContain(`>${depth}</text>`);
    expect(new Set(depths.map((depth, index) => depth - (depths[index - 1] ?? 0))).size).toBe(1);
  });

  test('shows names from files as text, never as markup', () => {
    expect(svg).toContain('OLD STOPE &lt;3&gt;');
    expect(svg).not.toContain('<3>');
  });

  test('keeps every point inside its frame', () => {
    for (const [, x] of svg.matchAll(/cx="([\d.-]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(600);
    }
  });
});

test('a scale is a round length that fits', () => {
  expect([0.7, 1, 4.9, 5, 37, 999].map(roundLength)).toEqual([0.5, 1, 2, 5, 20, 500]);
});

test('a picture of one point still has a size', () => {
  const point = { ...LINE, lines: [], marks: [{ letter: 'C', meaning: 'collar', at: { x: 3, y: 4 } }] };
  expect(boundsOf(point)).toEqual({ left: 3, top: 4, widthM: 1, heightM: 1 });
});
