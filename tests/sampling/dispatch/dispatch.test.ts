import { describe, expect, test } from 'vitest';
import { documentFault } from '../../../src/files/document-file.ts';
import type { Document } from '../../../src/record/document.ts';
import { makeUpSacks, sackRange } from '../../../src/sampling/dispatch/dispatch.ts';
import {
  checkDispatches,
  checkReceipt,
  checkTransfers,
} from '../../../src/sampling/dispatch/dispatch-check.ts';
import { type Dispatch, dispatchOf } from '../../../src/sampling/dispatch/dispatch-noun.ts';
import { saidNumbers, sealed } from '../../../src/sampling/dispatch/dispatch-said.ts';
import {
  campTable,
  custodyLines,
  laboratoryTable,
  sheetCsv,
  sheetHead,
  sheetHtml,
} from '../../../src/sampling/dispatch/dispatch-sheet.ts';
import { readReceipt } from '../../../src/sampling/dispatch/receipt-read.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, NOON, sampling, spoiledBag } from '../build.ts';

const issued = issue(sampling(), { ...atCollar('ZQ000131'), drilledMm: 11_000 });
const numbers = issued.map((bag) => bag.number);
const form = sampling().numbers;
const send = { name: 'D1', numbers, issued, sentBefore: new Map<string, string>() };
const refusals = (changed: Partial<typeof send>): readonly string[] => {
  const made = makeUpSacks(sampling(), { ...send, ...changed });
  return made.ok ? [] : made.findings.map((each) => `${each.code}: ${each.problem}`);
};

/** A dispatch that goes as it should. */
function dispatched(changed: Partial<Dispatch> = {}): Dispatch {
  const made = makeUpSacks(sampling(), send);
  if (!made.ok) throw new Error('the sacks were refused');
  const header = { name: 'D1', laboratory: 'Assay House', madeAt: NOON, madeBy: 'NOK' };
  return { ...header, sacks: made.value, transfers: [], receipts: [], ...changed };
}

const link = { at: NOON, from: 'NOK', to: 'freight', sacks: 3, sealsWhole: true, recordedBy: 'NOK' };
const receipt = (received: readonly string[]) => ({
  receipts: [{ at: NOON, takenInBy: 'NOK', file: 'r.csv', sha256: 'a'.repeat(64), numbers: [...received] }],
});

describe('making up a dispatch', () => {
  test('sacks hold five calicos each in the order of the numbers, the last the rest', () => {
    const made = makeUpSacks(sampling(), { ...send, numbers: [...numbers].reverse() });
    expect(made.ok && made.value.map((sack) => sackRange(form, sack))).toEqual([
      'ZQ000131–ZQ000135 (5)',
      'ZQ000136–ZQ000140 (5)',
      'ZQ000141–ZQ000142 (2)',
    ]);
  });

  test("a sack's label names each run of its numbers", () => {
    const bags = ['ZQ000131', 'ZQ000132', 'ZQ000140', 'ZQ000142', 'ZQ000143'];
    expect(sackRange(form, { sack: 1, bags })).toBe('ZQ000131–ZQ000132, ZQ000140, ZQ000142–ZQ000143 (5)');
  });

  test('a bag left out between two that go is refused', () => {
    expect(refusals({ numbers: numbers.filter((each) => each !== 'ZQ000136') })).toEqual([
      'dispatch-gap: ZQ000136 is between bags that go, and does not go.',
    ]);
  });

  test('one that is spoiled or sent before is not a gap', () => {
    const spared = numbers.filter((each) => each !== 'ZQ000136');
    const torn = issued.map((bag) => (bag.number === 'ZQ000136' ? spoiledBag(bag.number) : bag));
    expect(refusals({ numbers: spared, issued: torn })).toEqual([]);
    expect(refusals({ numbers: spared, sentBefore: new Map([['ZQ000136', 'D0']]) })).toEqual([]);
  });

  test('a bag twice and one sent before are refused, and where it went is said', () => {
    expect(refusals({ numbers: [...numbers, 'ZQ000136'] })).toEqual([
      'dispatch-double: ZQ000136 is in this dispatch twice.',
    ]);
    expect(refusals({ sentBefore: new Map([['ZQ000136', 'D0']]) })).toEqual([
      'dispatch-double: ZQ000136 was sent before, in D0.',
    ]);
  });

  test.each([
    ['ZQ000300', 'ZQ000300 was never issued.'],
    ['ZQ000150', 'ZQ000150 is spoiled.'],
    ['XX99', 'XX99 is no bag number of this project.'],
  ])('%s is refused with the reason', (number, problem) => {
    const changed = { issued: [...issued, spoiledBag('ZQ000150')], numbers: [...numbers, number] };
    expect(refusals(changed)).toEqual([`dispatch-not-issued: ${problem}`]);
  });
});

describe('numbers said', () => {
  const said = (...words: readonly string[]) =>
    saidNumbers(sampling(), { issued: [...issued, spoiledBag('ZQ000199')], waiting: [] }, words, 'D1');

  test('a range takes what was issued in it, spoiled ones left out; a single number is taken as it is', () => {
    expect(said('zq000140-zq000199 ZQ000131,XX9')).toEqual({
      ok: true,
      value: ['ZQ000140', 'ZQ000141', 'ZQ000142', 'ZQ000131', 'XX9'],
    });
  });

  test('a range in which nothing was issued is refused', () => {
    expect(said('ZQ000300-ZQ000310')).toMatchObject({ ok: false, findings: [{ code: 'dispatch-refused' }] });
  });

  test('seals count up from the first; one without digits is on the first sack alone', () => {
    const sacks = dispatched().sacks;
    expect(sealed(sacks, 'S098').map((each) => each.seal)).toEqual(['S098', 'S099', 'S100']);
    expect(sealed(sacks, 'blue').map((each) => each.seal)).toEqual(['blue', undefined, undefined]);
    expect(sealed(sacks, undefined)).toEqual(sacks);
  });
});

describe('the chain of custody', () => {
  test('a count or a seal that is off at a transfer names the two hands', () => {
    const transfers = [
      link,
      { ...link, from: 'freight', to: 'Assay House', sacks: 2, bags: 12, sealsWhole: false },
    ];
    expect(checkTransfers(dispatched({ transfers })).map((each) => [each.place.thing, each.problem])).toEqual(
      [['dispatch D1, from freight to Assay House', '2 sacks counted, 3 sent; a seal was broken.']],
    );
    const short = [{ ...link, bags: 11 }];
    expect(checkTransfers(dispatched({ transfers: short }))[0]?.problem).toBe('11 bags counted, 12 sent.');
  });

  test('sacks given by someone who did not have them are a hand missing', () => {
    const transfers = [link, { ...link, from: 'camp', to: 'Assay House' }];
    expect(checkTransfers(dispatched({ transfers })).map((each) => [each.code, each.problem])).toEqual([
      ['custody-broken', 'freight had the sacks, and camp gave them.'],
    ]);
  });

  test('is told from the making up to the receipt', () => {
    expect(custodyLines(dispatched({ transfers: [link], ...receipt(numbers) }))).toEqual([
      '2026-03-14 12:00  made up by NOK: 3 sacks, 12 bags',
      '2026-03-14 12:00  NOK to freight: 3 sacks counted, seals intact',
      '2026-03-14 12:00  receipt r.csv taken in by NOK: 12 numbers',
    ]);
  });

  test('a bag in two dispatches, and one spoiled since it was sent, are found', () => {
    const other = { ...dispatched(), name: 'D2', sacks: [{ sack: 1, bags: ['ZQ000131'] }] };
    expect(checkDispatches([dispatched(), other], issued).map((each) => each.problem)).toEqual([
      'ZQ000131 is in sack 1 of D1 and in sack 1 of D2.',
    ]);
    const torn = issued.map((bag) => (bag.number === 'ZQ000136' ? spoiledBag(bag.number) : bag));
    expect(checkDispatches([dispatched()], torn).map((each) => each.problem)).toEqual([
      'ZQ000136 was sent and is spoiled now.',
    ]);
    expect(checkDispatches([dispatched()], issued)).toEqual([]);
  });
});

describe("the laboratory's receipt", () => {
  const read = (...records: readonly (readonly string[])[]) => readReceipt(form, records, 'r.csv');

  test('is read from the column that holds our numbers, whatever is above and beside it', () => {
    const records = [
      ['Receipt 7', ''],
      ['no.', 'Sample'],
      ['1', 'ZQ000131'],
      ['2', ' ZQ000132 '],
      ['', ''],
      ['3', 'AB12'],
    ];
    expect(read(...records)).toEqual({ ok: true, value: ['ZQ000131', 'ZQ000132', 'AB12'] });
  });

  test('is refused where no column holds any', () => {
    expect(read(['Sample'], ['AB12'])).toMatchObject({
      ok: false,
      findings: [{ code: 'receipt-unreadable' }],
    });
    expect(read()).toMatchObject({ ok: false });
  });

  test('that lists what was sent raises nothing', () => {
    expect(checkReceipt(dispatched(receipt(numbers)))).toEqual([]);
    expect(checkReceipt(dispatched())).toEqual([]);
  });

  test('with one missing, one strange and one doubled names each; the latest receipt stands', () => {
    const received = [...numbers.slice(1), 'ZQ000999', 'ZQ000140'];
    const two = { receipts: [...receipt(numbers).receipts, ...receipt(received).receipts] };
    expect(checkReceipt(dispatched(two)).map((each) => [each.problem, each.excerpt])).toEqual([
      ['1 not received.', 'ZQ000131'],
      ['1 received and never sent.', 'ZQ000999'],
      ['1 received twice.', 'ZQ000140'],
    ]);
  });
});

describe('sheets', () => {
  const bags = issued.map((bag) => ({ ...bag, hole: 'ZQRC004' }));
  const tells = /standard|blank|duplicate|crushed|low|middle|high|ZQRC004|metre|primary/;

  test("the laboratory's is blind, as CSV and as a page: numbers by sack, in order, and nothing else", () => {
    const table = laboratoryTable(dispatched());
    expect(sheetCsv(table).split('\r\n').slice(0, 3)).toEqual(['sack,sample', '1,ZQ000131', '1,ZQ000132']);
    expect(table.slice(1).map((row) => row[1])).toEqual(numbers);
    expect(sheetCsv(table)).not.toMatch(tells);
    expect(sheetHtml(dispatched(), 'laboratory', table).replace(/<style>.*<\/style>/, '')).not.toMatch(tells);
    expect(sheetHead(dispatched(), 'laboratory').join('\n')).not.toMatch(tells);
  });

  test("camp's says what is in every bag, and that it is for camp only", () => {
    const sacks = dispatched().sacks.map((sack) => ({ ...sack, seal: 'S1' }));
    const table = campTable(dispatched({ sacks }), bags);
    expect(sheetCsv(table).split('\r\n')[3]).toBe('1,S1,ZQ000133,ZQRC004,field duplicate,1,2,ZQ000132,');
    expect(sheetHead(dispatched(), 'camp')[1]).toContain('For camp only');
  });

  test('a page to print holds no tag but its own, and a line to sign for each pair of hands', () => {
    const page = sheetHtml(dispatched({ laboratory: '<script>x</script>' }), 'laboratory', [
      ['sack'],
      ['<b>'],
    ]);
    expect(page).not.toMatch(/<script|<b>/);
    expect(page).toContain('<th>seals intact</th>');
  });
});

test('a dispatch can be kept in a file, and reads back as it was made', () => {
  const document: Document = {
    kind: 'dispatch',
    id: 'D1',
    history: [],
    tables: {
      dispatch: { dispatch: { laboratory: 'Assay House', madeAt: NOON, madeBy: 'NOK' } },
      sacks: { 'a-2': { sack: 2, bags: ['ZQ000136'] }, 'a-1': { sack: 1, bags: ['ZQ000131'], seal: 'S1' } },
      transfers: { 'a-3': link },
    },
  };
  const things = Object.entries(document.tables).flatMap(([table, held]) =>
    Object.keys(held).map((id) => [table, id] as const),
  );
  expect(documentFault(document, things)).toBeUndefined();
  expect(
    documentFault({ ...document, tables: { sacks: { 'a-1': { sack: 1, bags: [] } } } }, [['sacks', 'a-1']]),
  ).toContain('sacks a-1');
  expect(dispatchOf(document)).toMatchObject({
    name: 'D1',
    sacks: [{ sack: 1, seal: 'S1' }, { sack: 2 }],
    transfers: [link],
    receipts: [],
  });
});
