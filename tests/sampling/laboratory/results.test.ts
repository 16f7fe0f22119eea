import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import { rootMeanSquareVariation } from '../../../src/sampling/laboratory/pairs.ts';
import { metresToResplit, pilePlace, resplitBags } from '../../../src/sampling/laboratory/resplit.ts';
import {
  blankResults,
  controlChart,
  duplicateResults,
  standardScores,
} from '../../../src/sampling/laboratory/results.ts';
import { checkResults } from '../../../src/sampling/laboratory/results-check.ts';
import { type Assay, readResults } from '../../../src/sampling/laboratory/results-read.ts';
import { runSignals, runsIn } from '../../../src/sampling/laboratory/run-rules.ts';
import { atCollar, inShort, primary, SETTINGS, sampling } from '../build.ts';

const columns = {
  sample: 'SampleID',
  analytes: [
    { column: 'Au_ppm', analyte: 'Au', unit: 'ppm' },
    { column: 'Cu_ppm', analyte: 'Cu', unit: 'ppm' },
  ],
  belowDetection: 'half the limit' as const,
};
const headings = ['SampleID', 'Weight', 'Au_ppm', 'Cu_ppm'];

const project = sampling({
  controls: {
    ...SETTINGS.controls,
    standards: [{ lot: 'low', sachets: 40, certified: [{ analyte: 'Au', value: 1, sd: 0.1 }] }],
    blanks: [{ name: 'crushed glass', type: 'coarse', bags: 40, limits: [{ analyte: 'Au', limit: 0.05 }] }],
  },
});
const standard = (number: string): Bag => ({ number, kind: 'standard', material: 'low' });
const au = (number: string, value: number, belowLimit?: number): Assay => ({
  number,
  values: { Au: { value, ...(belowLimit === undefined ? {} : { belowLimit }) } },
});

describe('reading returned results', () => {
  test('columns are found by heading, whatever stands between them', () => {
    const { assays } = readResults(columns, [headings, ['ZQ000131', '3.1', '1.25', '40']]);
    expect(assays).toEqual([{ number: 'ZQ000131', values: { Au: { value: 1.25 }, Cu: { value: 40 } } }]);
  });

  test.each([
    ['half the limit', 0.005],
    ['the limit', 0.01],
    ['zero', 0],
  ] as const)(
    'a value under its detection limit counts as %s and keeps the limit',
    (belowDetection, value) => {
      const { assays } = readResults({ ...columns, belowDetection }, [headings, ['ZQ1', '', '<0.01', '']]);
      expect(assays[0]?.values).toEqual({ Au: { value, belowLimit: 0.01 } });
    },
  );

  test('a line that cannot be read is named with its line, and the others stand', () => {
    const read = readResults(columns, [
      headings,
      ['ZQ1', '', 'NSS', ''],
      ['', '', '1', ''],
      ['ZQ2', '', '2', ''],
    ]);
    expect(read.assays.map((each) => each.number)).toEqual(['ZQ2']);
    expect(read.findings.map((each) => [each.code, each.place.line])).toEqual([
      ['result-unreadable', 2],
      ['result-unreadable', 3],
    ]);
  });

  test('a mapped column that is missing refuses the whole file', () => {
    const read = readResults(columns, [
      ['SampleID', 'Au_ppb', 'Cu_ppm'],
      ['ZQ1', '5', '4'],
    ]);
    expect(read.assays).toEqual([]);
    expect(read.findings.map((each) => [each.code, each.place.field])).toEqual([
      ['result-column-missing', 'Au_ppm'],
    ]);
  });
});

describe('standards', () => {
  const bags = ['ZQ1', 'ZQ2', 'ZQ3', 'ZQ4'].map(standard);

  test('warn from 2 SD and fail from 3 SD, on both sides', () => {
    const assays = [au('ZQ1', 1.19), au('ZQ2', 1.21), au('ZQ3', 0.79), au('ZQ4', 0.69)];
    const scores = standardScores(project, bags, assays);
    expect(scores.map((each) => each.state)).toEqual(['in', 'warn', 'warn', 'fail']);
    expect(scores[3]?.z).toBeCloseTo(-3.1, 9);
  });

  test('a lot without certified values has no score', () => {
    expect(standardScores(sampling(), bags, [au('ZQ1', 1)])).toEqual([]);
  });

  test('two of three over 2 SD on one side are a run, on two sides not', () => {
    expect(runSignals([2.1, 0, 2.2]).map((each) => each.words)).toEqual([
      '2 of 3 more than 2 SD off on one side',
    ]);
    expect(runSignals([2.1, 0, -2.2])).toEqual([]);
  });

  test('four of five over 1 SD, and eight in a row on one side, are runs', () => {
    expect(runSignals([1.1, 1.2, 0.2, 1.3, 1.4])).toMatchObject([{ at: 4 }]);
    expect(runSignals([0.1, 0.2, 0.1, 0.3, 0.2, 0.1, 0.4, 0.1])).toMatchObject([{ at: 7 }]);
    expect(runSignals([0.1, 0.2, 0.1, 0.3, 0.2, 0.1, 0.4, 0])).toEqual([]);
  });

  test('a run is reported once, however long it lasts and however many rules it breaks', () => {
    const drift = Array.from({ length: 20 }, () => 1.5);
    expect(runsIn(drift)).toEqual([
      { from: 0, at: 19, words: '4 of 5 more than 1 SD off on one side; 8 in a row on one side' },
    ]);
    expect(runsIn([2.5, 2.5, 2.5, -2.5, -2.5]).map(({ from, at }) => [from, at])).toEqual([
      [0, 2],
      [3, 4],
    ]);
  });

  test('the chart marks 2 and 3 SD and where the result lies', () => {
    const [line] = controlChart(standardScores(project, bags, [au('ZQ1', 1.25)]));
    expect(line).toBe('ZQ1     |   :       +       : * |     +2.5 SD  warn');
  });
});

test("a blank over its limit is found; one under a detection limit above its own limit can't be told", () => {
  const bags: readonly Bag[] = ['ZQ1', 'ZQ2', 'ZQ3'].map((number) => ({
    number,
    kind: 'blank',
    material: 'crushed glass',
  }));
  const assays = [au('ZQ1', 0.06), au('ZQ2', 0.05), au('ZQ3', 0.1, 0.2)];
  expect(blankResults(project, bags, assays).map((each) => each.over)).toEqual(['yes', 'no', 'cannot tell']);
});

test('a pair counts only where both results are over their detection limit', () => {
  const twin = (number: string, of: string): Bag => ({ number, kind: 'field duplicate', of });
  const bags = [primary('ZQ1', 0, 1), twin('ZQ2', 'ZQ1'), primary('ZQ3', 1, 2), twin('ZQ4', 'ZQ3')];
  const pairs = duplicateResults(bags, [au('ZQ1', 1), au('ZQ2', 1.1), au('ZQ3', 1), au('ZQ4', 0.5, 1)], 'Au');
  expect(pairs).toEqual([
    { primary: 'ZQ1', duplicate: 'ZQ2', a: 1, b: 1.1, difference: expect.closeTo(9.5238, 4) },
  ]);
});

test('of no pairs, or pairs of nothing, there is no variation', () => {
  expect(rootMeanSquareVariation([])).toBeUndefined();
  expect(rootMeanSquareVariation([{ a: 0, b: 0 }])).toBeUndefined();
});

test('what the controls say is said as findings: stranger, standard, run, blank, pair', () => {
  const bags: readonly Bag[] = [
    ...['ZQ1', 'ZQ2', 'ZQ3'].map(standard),
    { number: 'ZQ4', kind: 'blank', material: 'crushed glass' },
    primary('ZQ5', 0, 1),
    { number: 'ZQ6', kind: 'field duplicate', of: 'ZQ5' },
  ];
  const assays = [
    au('ZQ1', 1.21),
    au('ZQ2', 1.22),
    au('ZQ3', 1),
    au('ZQ4', 0.3),
    au('ZQ5', 1),
    au('ZQ6', 4),
    au('ZQ9', 1),
  ];
  expect(checkResults(project, bags, assays).map((each) => [each.code, each.place.thing])).toEqual([
    ['result-of-no-bag', 'sample ZQ9'],
    ['standard-off', 'sample ZQ1'],
    ['standard-off', 'sample ZQ2'],
    ['standard-run', 'sample ZQ2'],
    ['blank-high', 'sample ZQ4'],
    ['duplicate-apart', 'samples ZQ5 and ZQ6'],
  ]);
});

describe('splitting composites again', () => {
  const composite = (number: string, from: number): Bag => ({
    number,
    kind: 'primary',
    rank: 'composite',
    fromMm: depthFromMm(from * 1000),
    toMm: depthFromMm((from + 4) * 1000),
  });
  const bags = [0, 4, 8, 12, 16].map((from, index) => composite(`ZQ00013${5 + index}`, from));
  const rule = { analyte: 'Au', atLeast: 0.3, neighbours: 1 };

  test('a composite over the limit asks for its metres and its neighbours’, each once', () => {
    const metres = metresToResplit(
      bags,
      [au('ZQ000135', 0.4), au('ZQ000136', 0.5), au('ZQ000139', 0.1)],
      rule,
    );
    expect(metres.map((each) => each.fromMm / 1000)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });

  test('a composite without a result asks for nothing', () => {
    expect(metresToResplit(bags, [], rule)).toEqual([]);
  });

  test('the pile of a metre is found by row and place', () => {
    expect(pilePlace(0, 20, 46_000)).toEqual({ row: 3, place: 7 });
    expect(pilePlace(30_000, 30, 46_000)).toEqual({ row: 1, place: 17 });
    expect(pilePlace(30_000, 30, 4000)).toBeUndefined();
  });

  test('they take new numbers with the controls that those bring, and stand beside the composites', () => {
    const metres = metresToResplit(bags, [au('ZQ000137', 0.4)], { ...rule, neighbours: 0 });
    const run = { ...atCollar('ZQ000170', 'ZQ000180'), bags, drilledMm: 20_000 };
    const split = resplitBags(sampling({ sampled: { rank: 'composite', lengthM: 4 } }), run, metres);
    expect(inShort(split)).toEqual([
      '170 primary 8–9',
      '171 primary 9–10',
      '172 primary 10–11',
      '173 field duplicate 10–11',
      '174 primary 11–12',
    ]);
    expect(split[3]).toMatchObject({ rank: 'metre', method: 'spear', of: 'ZQ000172' });
  });
});
