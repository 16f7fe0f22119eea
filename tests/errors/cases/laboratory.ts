import { takeResults } from '../../../src/acts/results.ts';
import type { Bag } from '../../../src/hole/bags.ts';
import { makeUpSacks } from '../../../src/sampling/dispatch/dispatch.ts';
import { checkReceipt, checkTransfers } from '../../../src/sampling/dispatch/dispatch-check.ts';
import type { Dispatch } from '../../../src/sampling/dispatch/dispatch-noun.ts';
import { saidNumbers } from '../../../src/sampling/dispatch/dispatch-said.ts';
import { readReceipt } from '../../../src/sampling/dispatch/receipt-read.ts';
import { checkOwnSamples, type OwnSampleRule } from '../../../src/sampling/laboratory/own-samples.ts';
import { checkResults } from '../../../src/sampling/laboratory/results-check.ts';
import type { Certificate } from '../../../src/sampling/laboratory/results-noun.ts';
import { type Assay, readResults } from '../../../src/sampling/laboratory/results-read.ts';
import { checkReturned, returnedResults } from '../../../src/sampling/laboratory/returned.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, NOON, primary, SETTINGS, sampling } from '../../sampling/build.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const ISSUED = issue(sampling(), { ...atCollar('ZQ000131'), drilledMm: 11_000 });
const NUMBERS = ISSUED.map((bag) => bag.number);
const sent = (code: string, input: string, numbers: readonly string[]): ErrorCase =>
  given(code, input, () =>
    findingsIn(
      makeUpSacks(sampling(), { name: 'D1', numbers, issued: ISSUED, sentBefore: new Map<string, string>() }),
    ),
  );
const DISPATCH: Dispatch = {
  name: 'D1',
  laboratory: 'Assay House',
  madeAt: NOON,
  madeBy: 'NOK',
  sacks: madeUp(),
  transfers: [],
  receipts: [],
};
const HANDS = { at: NOON, from: 'NOK', to: 'freight', sacks: 3, sealsWhole: true, recordedBy: 'NOK' };

function madeUp(): Dispatch['sacks'] {
  const made = makeUpSacks(sampling(), {
    name: 'D1',
    numbers: NUMBERS,
    issued: ISSUED,
    sentBefore: new Map<string, string>(),
  });
  return made.ok ? [...made.value] : [];
}

const DISPATCH_CASES: readonly ErrorCase[] = [
  sent(
    'dispatch-gap',
    'a bag left behind',
    NUMBERS.filter((each) => each !== 'ZQ000136'),
  ),
  sent('dispatch-double', 'a bag sent twice', [...NUMBERS, 'ZQ000136']),
  sent('dispatch-not-issued', 'a bag that was never filled', [...NUMBERS, 'ZQ000300']),
  given('transfer-count', 'a sack fewer, and a seal broken', () =>
    checkTransfers({ ...DISPATCH, transfers: [{ ...HANDS, sacks: 2, sealsWhole: false }] }),
  ),
  given('custody-broken', 'sacks given by a hand that did not have them', () =>
    checkTransfers({ ...DISPATCH, transfers: [{ ...HANDS, from: 'camp' }] }),
  ),
  given('receipt-differs', 'a bag not received', () =>
    checkReceipt({
      ...DISPATCH,
      receipts: [
        { at: NOON, takenInBy: 'NOK', file: 'r.csv', sha256: 'a'.repeat(64), numbers: NUMBERS.slice(1) },
      ],
    }),
  ),
  given('receipt-unreadable', 'a list of someone else', () =>
    findingsIn(readReceipt(sampling().numbers, [['Sample'], ['AB12']], 'receipt.csv')),
  ),
  given('dispatch-refused', 'a range of which no bag was issued', () =>
    findingsIn(saidNumbers(sampling(), { issued: ISSUED, waiting: [] }, ['ZQ000300-ZQ000310'], 'D1')),
  ),
];

const CERTIFIED = sampling({
  controls: {
    ...SETTINGS.controls,
    standards: [{ lot: 'low', sachets: 40, certified: [{ analyte: 'Au', value: 1, sd: 0.1 }] }],
    blanks: [{ name: 'crushed glass', type: 'coarse', bags: 40, limits: [{ analyte: 'Au', limit: 0.05 }] }],
  },
});
const au = (number: string, value: number): Assay => ({ number, values: { Au: { value } } });
const results = (
  code: string,
  input: string,
  list: readonly Bag[],
  ...values: readonly number[]
): ErrorCase =>
  given(code, input, () =>
    checkResults(
      CERTIFIED,
      list,
      values.map((value, index) => au(`ZQ${index + 1}`, value)),
    ),
  );
const standards = [1, 2].map((serial): Bag => ({ number: `ZQ${serial}`, kind: 'standard', material: 'low' }));
const read = (code: string, input: string, ...lines: readonly (readonly string[])[]): ErrorCase =>
  given(code, input, () => {
    return readResults(COLUMNS, lines, 'LAB1041.csv').findings;
  });

const COLUMNS = {
  sample: 'Sample',
  analytes: [{ column: 'Au_ppm', analyte: 'Au', unit: 'ppm' }],
  belowDetection: 'zero' as const,
};
const LABORATORY = sampling({ results: COLUMNS });
const certificate = (id: string, ...numbers: readonly string[]): Certificate => ({
  id,
  certificate: id,
  file: `${id}.csv`,
  sha256: 'a'.repeat(64),
  takenInAt: NOON,
  takenInBy: 'NOK',
  columns: [...COLUMNS.analytes],
  lines: numbers.map((number, index) => ({ line: index + 2, number, reported: { Au_ppm: '0.1' } })),
});

/** A sample of the laboratory's own that reads so, beside a result of 0.5 for ZQ1. */
const own = (code: string, input: string, rule: OwnSampleRule, value: number, of?: string): ErrorCase =>
  given(code, input, () =>
    checkOwnSamples(
      [
        {
          number: 'ZQ1 RPT',
          certificate: 'WA1',
          rule,
          values: { Au: { value } },
          ...(of === undefined ? {} : { of }),
        },
      ],
      new Map([['ZQ1', { number: 'ZQ1', values: { Au: { value: 0.5 } } }]]),
    ),
  );
const REPEAT: OwnSampleRule = { is: 'repeat', at: 'end', text: 'RPT' };
const MARKED = { at: 'whole', text: 'GREENROCK 4' } as const;

const RESULT_CASES: readonly ErrorCase[] = [
  own('laboratory-pair-apart', 'a repeat a third higher', REPEAT, 0.7, 'ZQ1'),
  own('laboratory-repeat-of-nothing', 'a repeat of a number without a result', REPEAT, 0.5, 'ZQ9'),
  own(
    'laboratory-standard-off',
    'a standard of the laboratory 4 SD high',
    { ...MARKED, is: 'standard', certified: [{ analyte: 'Au', value: 1, sd: 0.05 }] },
    1.2,
  ),
  own(
    'laboratory-blank-high',
    'gold in a blank of the laboratory',
    { ...MARKED, is: 'blank', limits: [{ analyte: 'Au', limit: 0.01 }] },
    0.03,
  ),
  results('result-of-no-bag', 'a number that was not sent', [], 1),
  results('standard-off', 'a standard 3 SD off', standards, 1.31),
  results('standard-run', 'two standards over 2 SD on one side', standards, 1.21, 1.22),
  results(
    'blank-high',
    'gold in a blank',
    [{ number: 'ZQ1', kind: 'blank', material: 'crushed glass' }],
    0.3,
  ),
  given('blank-untold', 'a blank under a detection limit above its own', () =>
    checkResults(
      CERTIFIED,
      [{ number: 'ZQ1', kind: 'blank', material: 'crushed glass' }],
      [{ number: 'ZQ1', values: { Au: { value: 0.1, belowLimit: 0.2 } } }],
    ),
  ),
  results(
    'duplicate-apart',
    'a duplicate four times its primary',
    [primary('ZQ1', 0, 1), { number: 'ZQ2', kind: 'field duplicate', of: 'ZQ1' }],
    1,
    4,
  ),
  read('result-column-missing', 'another unit', ['Sample', 'Au_ppb'], ['ZQ1', '5']),
  read('result-unreadable', 'a word for a number', ['Sample', 'Au_ppm'], ['ZQ1', 'NSS']),
  read('result-unit', 'a line of units that denies the mapping', ['Sample', 'Au_ppm'], ['Units', 'ppb']),
  given(
    'result-twice',
    'a number on two certificates',
    () =>
      returnedResults(LABORATORY, [certificate('WA1', 'ZQ000131'), certificate('WA2', 'ZQ000131')]).findings,
  ),
  given('result-missing', 'a number left out between two', () =>
    checkReturned(LABORATORY, ISSUED, [DISPATCH], [certificate('WA1', 'ZQ000131', 'ZQ000133')]),
  ),
  given('results-refused', 'a certificate in the place of one that is not there', () =>
    findingsIn(
      takeResults(
        [],
        COLUMNS,
        { ...certificate('WA2', 'ZQ000131'), supersedes: 'WA1' },
        { newId: () => 'a-1', at: NOON, by: 'NOK' },
      ),
    ),
  ),
];

/** Errors of what goes to the laboratory and what comes back. */
export const LABORATORY_CASES: readonly ErrorCase[] = [...DISPATCH_CASES, ...RESULT_CASES];
