import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { resultsByMetre } from '../../../src/sampling/laboratory/by-metre.ts';
import { blankSvg, pairsSvg, standardSvg } from '../../../src/sampling/laboratory/charts-svg.ts';
import { figure, qualityLines } from '../../../src/sampling/laboratory/charts-text.ts';
import { qualityOf } from '../../../src/sampling/laboratory/quality.ts';
import { qualityPage } from '../../../src/sampling/laboratory/quality-page.ts';
import type { Assay } from '../../../src/sampling/laboratory/results-read.ts';
import { primary, SETTINGS, sampling } from '../build.ts';

const project = sampling({
  results: {
    sample: 'Sample',
    analytes: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }],
    belowDetection: 'half the limit',
  },
  controls: {
    ...SETTINGS.controls,
    standards: [{ lot: 'low', sachets: 40, certified: [{ analyte: 'Au', value: 1, sd: 0.1 }] }],
    blanks: [{ name: 'crushed glass', type: 'coarse', bags: 40, limits: [{ analyte: 'Au', limit: 0.05 }] }],
  },
});
const standard = (number: string): Bag => ({ number, kind: 'standard', material: 'low' });
const blank = (number: string): Bag => ({ number, kind: 'blank', material: 'crushed glass' });
const au = (number: string, value: number): Assay => ({ number, values: { Au: { value } } });
const bags: readonly Bag[] = [
  ...['ZQ1', 'ZQ2', 'ZQ3'].map(standard),
  ...['ZQ4', 'ZQ5'].map(blank),
  primary('ZQ6', 0, 1),
  { number: 'ZQ7', kind: 'field duplicate', of: 'ZQ6' },
];
const assays = [
  au('ZQ1', 1.02),
  au('ZQ2', 1.25),
  au('ZQ3', 1.22),
  au('ZQ4', 0.0125),
  au('ZQ5', 0.2),
  au('ZQ6', 1),
  au('ZQ7', 1.5),
];
const quality = qualityOf(project, bags, assays);

describe('the controls as text', () => {
  const lines = qualityLines(quality);

  test('stand in 78 columns, each with its figures and, where it is off, the word for it', () => {
    expect(Math.max(...lines.map((each) => each.length))).toBeLessThanOrEqual(78);
    expect(lines).toContain('low, Au 1 ± 0.1 ppm: 3 results, mean +1.6 SD, 2 warn, 0 fail');
    expect(lines).toContain('  ZQ2     |   :       +       : * |     +2.5 SD  warn');
    expect(lines).toContain('  run ZQ2 to ZQ3: 2 of 3 more than 2 SD off on one side');
    expect(lines).toContain('crushed glass, Au, limit 0.05 ppm: 2 results, 1 over');
    expect(lines).toContain(`  ZQ4 ${'*'.repeat(5).padEnd(20)}| 0.0125`);
    expect(lines.find((each) => each.startsWith('  ZQ5'))).toMatch(/^ {2}ZQ5 \*{20}\|\*{20} 0\.2 {2}OVER$/);
  });

  test('pairs give the root-mean-square coefficient of variation and each its difference', () => {
    // 100 · 0.5 / 1.25 = 40 %; 40 / √2 = 28.3 %.
    expect(lines).toContain('Au in ppm: 1 pairs, root-mean-square CV 28.3 %');
    expect(lines.at(-1)).toBe('  ZQ6        1  ZQ7      1.5   40 % ****');
  });

  test('of results without controls nothing is drawn', () => {
    expect(qualityLines(qualityOf(project, bags, []))).toEqual([]);
  });

  test('a figure has four significant digits at most', () => {
    expect([0.0025, 12.345678, 1234.5, 0].map(figure)).toEqual(['0.0025', '12.35', '1235', '0']);
  });
});

describe('the controls as a page', () => {
  const page = qualityPage({ title: 'Results of <West>', lines: ['1 & 2'] }, quality, []);

  test('hold a chart for each standard, blank and analyte of pairs, and run nothing', () => {
    expect(page.match(/<svg /g)).toHaveLength(3);
    expect(page).not.toMatch(/<script|<West>| on\w+=/);
    expect(page).toContain('Results of &lt;West&gt;');
  });

  test('tell a result that warns from one that fails by its shape, not by colour', () => {
    const series = quality.standards[0]!;
    const failing = { ...series, scores: [{ ...series.scores[0]!, z: 5, state: 'fail' as const }] };
    const shapes = (svg: string) =>
      [/<circle/, /<path d="M[\d.]+ [\d.]+l5 9/, /l10 10m0-10l-10 10/].map((each) => each.test(svg));
    expect(shapes(standardSvg(series))).toEqual([true, true, false]);
    expect(shapes(standardSvg(failing))).toEqual([false, false, true]);
    expect(shapes(blankSvg(quality.blanks[0]!))).toEqual([true, false, true]);
    expect(page).not.toMatch(/fill="(?!none|currentColor)|stroke="(?!currentColor)/);
  });

  test('put a standard’s certified value in the middle and keep what is far off inside the frame', () => {
    const series = quality.standards[0]!;
    const at = (z: number): number => {
      const svg = standardSvg({ ...series, scores: [{ ...series.scores[0]!, z, state: 'in' }] });
      return Number(/<circle cx="[\d.]+" cy="([\d.]+)"/.exec(svg)?.[1]);
    };
    expect(at(0)).toBe(28 + 75);
    expect(at(4)).toBe(28);
    expect(at(99)).toBe(28);
    expect(at(-99)).toBe(28 + 150);
  });

  test('a pair of nothing is drawn too', () => {
    expect(
      pairsSvg({ analyte: 'Au', unit: 'ppm', pairs: [{ primary: 'a', duplicate: 'b', a: 0, b: 0 }] }),
    ).not.toContain('NaN');
  });
});

describe('results by metre', () => {
  const composite: Bag = { ...primary('ZQ1', 0, 4), rank: 'composite' };
  const single = (number: string, fromM: number) => primary(number, fromM, fromM + 1);
  const ranked = (...list: readonly Bag[]) => {
    const results = new Map(list.map((bag) => [bag.number, au(bag.number, 1)]));
    return resultsByMetre(list, results, 'composite').map(({ number, best }) => `${number} ${best}`);
  };

  test('composites and single metres both stand; a composite is best until each of its metres has a result', () => {
    expect(ranked(composite)).toEqual(['ZQ1 true']);
    expect(ranked(composite, single('ZQ2', 1))).toEqual(['ZQ1 true', 'ZQ2 true']);
    expect(ranked(single('ZQ5', 3), single('ZQ3', 1), single('ZQ2', 0), single('ZQ4', 2), composite)).toEqual(
      ['ZQ1 false', 'ZQ2 true', 'ZQ3 true', 'ZQ4 true', 'ZQ5 true'],
    );
  });

  test('controls and bags without a result are no metre', () => {
    expect(resultsByMetre([standard('ZQ9'), composite], new Map([['ZQ9', au('ZQ9', 1)]]), 'metre')).toEqual(
      [],
    );
  });
});
