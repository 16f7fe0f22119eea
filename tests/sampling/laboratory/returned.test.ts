import { describe, expect, test } from 'vitest';
import type { Bag } from '../../../src/hole/bags.ts';
import type { Dispatch } from '../../../src/sampling/dispatch/dispatch-noun.ts';
import { checkMapping } from '../../../src/sampling/laboratory/results-mapping.ts';
import { type Certificate, counting } from '../../../src/sampling/laboratory/results-noun.ts';
import { assayOf, type ResultColumns, readResults } from '../../../src/sampling/laboratory/results-read.ts';
import { checkReturned, notReturned, returnedResults } from '../../../src/sampling/laboratory/returned.ts';
import { suspectedSwap } from '../../../src/sampling/laboratory/swaps.ts';
import type { SamplingSettings } from '../../../src/sampling/settings.ts';
import { NOON, primary, SETTINGS, sampling } from '../build.ts';

const COLUMNS: ResultColumns = {
  sample: 'Sample',
  analytes: [{ column: 'Au_ppb', analyte: 'Au', unit: 'ppb', countedIn: 'ppm' }],
  belowDetection: 'half the limit',
};
const project = (
  changed: Partial<ResultColumns> = {},
  controls: Partial<SamplingSettings['controls']> = {},
) => sampling({ results: { ...COLUMNS, ...changed }, controls: { ...SETTINGS.controls, ...controls } });

/** A certificate with a result of gold in ppb for each number. */
function certificate(
  id: string,
  results: Readonly<Record<string, string>>,
  changed: Partial<Certificate> = {},
): Certificate {
  const lines = Object.entries(results).map(([number, text], index) => ({
    line: index + 2,
    number,
    reported: { Au_ppb: text },
  }));
  const taken = { takenInAt: NOON, takenInBy: 'NOK', file: `${id}.csv`, sha256: 'a'.repeat(64) };
  return {
    id,
    certificate: id,
    ...taken,
    columns: [{ column: 'Au_ppb', analyte: 'Au', unit: 'ppb' }],
    lines,
    ...changed,
  };
}

function dispatch(...bags: string[]): Dispatch {
  const sacks = [{ sack: 1, bags }];
  return {
    name: 'D1',
    laboratory: 'Assay House',
    madeAt: NOON,
    madeBy: 'NOK',
    sacks,
    transfers: [],
    receipts: [],
  };
}

describe("reading the laboratory's CSV", () => {
  const read = (columns: Partial<ResultColumns>, ...lines: readonly (readonly string[])[]) =>
    readResults({ ...COLUMNS, ...columns }, lines, 'WA1.csv');

  test('headings are found below a letterhead; a line of units that agrees and one of limits are passed over', () => {
    const { lines, assays, findings } = read(
      {},
      ['Assay House', 'Certificate WA1'],
      [],
      ['Sample', ' Au_ppb '],
      ['Units', 'ppb'],
      ['Detection limit', '5'],
      ['ZQ1', '1250'],
    );
    expect(findings).toEqual([]);
    expect(lines).toEqual([{ line: 6, number: 'ZQ1', reported: { Au_ppb: '1250' } }]);
    expect(assays).toEqual([{ number: 'ZQ1', values: { Au: { value: 1.25 } } }]);
  });

  test('a line of units that denies the mapping is found with its remedy', () => {
    const { findings } = read({}, ['Sample', 'Au_ppb'], ['', 'g/t'], ['ZQ1', '1.25']);
    expect(findings).toMatchObject([{ code: 'result-unit', place: { line: 2 }, excerpt: 'g/t' }]);
    expect(findings[0]?.remedy).toContain('"unit": "g/t"');
  });

  test.each([
    ['<5', { value: 0.0025, belowLimit: 0.005 }],
    ['< 5', { value: 0.0025, belowLimit: 0.005 }],
    ['>10000', { value: 10, aboveLimit: 10 }],
    ['.5', { value: 0.0005 }],
  ])('%s counts as %j in parts per million', (text, value) => {
    expect(assayOf(COLUMNS, { number: 'ZQ1', reported: { Au_ppb: text } })).toEqual({
      number: 'ZQ1',
      values: { Au: value },
    });
  });

  test.each(['-5', '1,25', '1e3', 'LNR', '5 ppb', '<', '0x10'])('%s is not a result', (text) => {
    expect(assayOf(COLUMNS, { number: 'ZQ1', reported: { Au_ppb: text } })).toContain(text);
  });

  test('a minus is under the limit, and a word stands for nothing, where the project says so', () => {
    const columns = { ...COLUMNS, minusIsBelow: true as const, notReported: ['LNR'] };
    const counted = (text: string) => assayOf(columns, { number: 'ZQ1', reported: { Au_ppb: text } });
    expect(counted('-5')).toMatchObject({ values: { Au: { belowLimit: 0.005 } } });
    expect(counted('LNR')).toEqual({ number: 'ZQ1', values: {} });
  });

  test('of two columns of one analyte the later that is filled counts', () => {
    const over = { column: 'Au_over', analyte: 'Au', unit: 'g/t', countedIn: 'ppm' };
    const columns = { ...COLUMNS, analytes: [...COLUMNS.analytes, over] };
    const counted = (reported: Readonly<Record<string, string>>) =>
      assayOf(columns, { number: 'ZQ1', reported });
    expect(counted({ Au_ppb: '>10000', Au_over: '12.5' })).toMatchObject({ values: { Au: { value: 12.5 } } });
    expect(counted({ Au_ppb: '40' })).toMatchObject({ values: { Au: { value: 0.04 } } });
  });
});

describe('the mapping', () => {
  const wrong = (analyte: Partial<ResultColumns['analytes'][number]>, controls = {}) =>
    checkMapping(
      project({ analytes: [{ column: 'Au', analyte: 'Au', unit: 'ppb', ...analyte }] }, controls),
    ).map((each) => each.problem);

  test('holds where units can be converted and headings agree', () => {
    expect(checkMapping(project())).toEqual([]);
    expect(checkMapping(sampling())).toEqual([]);
  });

  test('is found where its heading says another unit, where units can not be converted, where a limit is for what no column reports', () => {
    expect(wrong({ column: 'Au_ppm' })).toEqual(['The heading Au_ppm says ppm, and the mapping says ppb.']);
    expect(wrong({ countedIn: 'cps' })).toEqual([
      'Au is in ppb and counted in cps, and nothing says how many make one.',
    ]);
    const standards = [{ lot: 'low', sachets: 1, certified: [{ analyte: 'gold', value: 1, sd: 0.1 }] }];
    expect(wrong({}, { standards })).toEqual([
      'Limits or certified values are given for gold, and no column of the results is gold.',
    ]);
  });
});

describe('certificates', () => {
  test('one that was issued again counts in the place of the other, and both stand', () => {
    const first = certificate('WA1', { ZQ1: '10', ZQ2: '20' });
    const again = certificate('WA1-2', { ZQ1: '11' }, { supersedes: 'WA1' });
    expect(counting([first, again]).map((each) => each.id)).toEqual(['WA1-2']);
    const returned = returnedResults(project(), [first, again]);
    expect([...returned.byNumber.keys()]).toEqual(['ZQ1']);
    expect(returned.byNumber.get('ZQ1')?.values.Au?.value).toBe(0.011);
    expect(returned.findings).toEqual([]);
  });

  test('a number on two that count, or twice on one, is found, and the first counts', () => {
    const later = '2026-03-15T12:00:00+08:00' as Certificate['takenInAt'];
    const two = [certificate('WA2', { ZQ1: '30' }, { takenInAt: later }), certificate('WA1', { ZQ1: '10' })];
    const returned = returnedResults(project(), two);
    expect(returned.byNumber.get('ZQ1')?.certificate).toBe('WA1');
    expect(returned.findings.map((each) => each.problem)).toEqual([
      'ZQ1 is reported on WA1 and on WA2; the first counts.',
    ]);
    const [line] = certificate('WA1', { ZQ1: '10' }).lines;
    const twice = certificate('WA1', {}, { lines: [line!, { ...line!, line: 3 }] });
    expect(returnedResults(project(), [twice]).findings[0]?.problem).toBe(
      'ZQ1 is reported twice on WA1; the first counts.',
    );
  });

  test('are read by the unit they came in, though the project has mapped another since', () => {
    const today = project({ analytes: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }] });
    const returned = returnedResults(today, [certificate('WA1', { ZQ1: '1250' })]);
    expect(returned.byNumber.get('ZQ1')?.values.Au?.value).toBe(1.25);
  });

  test('numbers left out between those reported are found; those behind wait without a word', () => {
    const bags = [1, 2, 3, 4].map((serial) => primary(`ZQ00000${serial}`, serial, serial + 1));
    const sent = dispatch(...bags.map((bag) => bag.number));
    const came = certificate('WA1', { ZQ000001: '10', ZQ000003: '10' });
    const found = checkReturned(project(), bags, [sent], [came]);
    expect(found.map((each) => [each.code, each.excerpt])).toEqual([['result-missing', 'ZQ000002']]);
    expect(notReturned([sent], returnedResults(project(), [came]))).toEqual(['ZQ000002', 'ZQ000004']);
  });

  test('a stranger whose digits are swapped is named with the bag that has no result', () => {
    const bags = [primary('ZQ000012', 0, 1)];
    const found = checkReturned(project(), bags, [], [certificate('WA1', { ZQ000021: '10' })]);
    expect(found).toMatchObject([{ code: 'result-of-no-bag' }]);
    expect(found[0]?.remedy).toContain('ZQ000012 has no result');
  });
});

describe('a control that is off', () => {
  const standards = [
    { lot: 'low', sachets: 9, certified: [{ analyte: 'Au', value: 1, sd: 0.1 }] },
    { lot: 'high', sachets: 9, certified: [{ analyte: 'Au', value: 5, sd: 0.2 }] },
  ];
  const bags: readonly Bag[] = [
    primary('ZQ1', 0, 1),
    { number: 'ZQ2', kind: 'standard', material: 'low' },
    { number: 'ZQ3', kind: 'blank', material: 'crushed glass' },
  ];
  const suspected = (values: readonly number[], number: string, value: number): string | undefined => {
    const assays = values.map((each, index) => ({
      number: `ZQ${index + 1}`,
      values: { Au: { value: each } },
    }));
    return suspectedSwap(project({}, { standards }), bags, assays, { number, analyte: 'Au', value });
  };

  test('and reads like another standard was perhaps that sachet', () => {
    expect(suspected([0.1, 5.1, 0], 'ZQ2', 5.1)).toBe('It reads like high: was that sachet in the bag?');
    expect(suspected([0.1, 1, 0.95], 'ZQ3', 0.95)).toBe('It reads like low: was that sachet in the bag?');
  });

  test('beside a metre that reads like it was perhaps swapped with it', () => {
    expect(suspected([1.05, 0.1, 0], 'ZQ2', 0.1)).toBe(
      'ZQ1 beside it reads like low: were the two bags swapped?',
    );
  });

  test('and reads like nothing near raises no suspicion', () => {
    expect(suspected([0.1, 2, 0], 'ZQ2', 2)).toBeUndefined();
  });
});
