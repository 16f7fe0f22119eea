import { expect, test } from 'vitest';
import { csvText, htmlText } from '../../../src/finding/sheet-text.ts';
import { bagRunCsv, bagRunHtml, bagRunLines, bagRunText } from '../../../src/sampling/numbers/bag-run.ts';
import { NEAR_SPLITTER } from '../../../src/sampling/rod/mismatch.ts';
import { issue } from '../../../src/sampling/stream/issue.ts';
import { atCollar, sampling } from '../build.ts';

const state = atCollar('ZQ000131', 'ZQ000320');
const lines = bagRunLines(sampling(), { name: 'ZQRC004', state }, 20_000);

test('the bag run printed the evening before is what the rods issue, numbers, kinds and materials', () => {
  const issued = issue(sampling(), { ...state, drilledMm: 20_000 });
  expect(lines.map(({ number, kind, material }) => ({ number, kind, material }))).toEqual(
    issued.map(({ number, kind, material }) => ({ number, kind, material })),
  );
});

test('as text every bag has a box, its metre, and its tray or what is to be put in', () => {
  expect(bagRunText(lines).split('\n').slice(0, 4)).toEqual([
    '[ ] ZQ000131  0–1          tray 1 no. 1',
    '[ ] ZQ000132  1–2          tray 1 no. 2',
    '[ ] ZQ000133  1–2          duplicate of ZQ000132',
    '[ ] ZQ000134  2–3          tray 1 no. 3',
  ]);
  expect(bagRunText(lines)).toContain('[ ] ZQ000147               blank crushed glass (or standard)');
});

test('as CSV for labels no control tells what it is', () => {
  const csv = bagRunCsv(lines);
  expect(csv.split('\r\n').slice(0, 4)).toEqual([
    'number,hole,from_m,to_m,tray,compartment',
    'ZQ000131,ZQRC004,0,1,1,1',
    'ZQ000132,ZQRC004,1,2,1,2',
    'ZQ000133,ZQRC004,,,,',
  ]);
  for (const word of ['standard', 'blank', 'duplicate', 'crushed glass', 'middle'])
    expect(csv).not.toContain(word);
});

test('as HTML nothing in a name can become markup', () => {
  const html = bagRunHtml(
    lines.map((line) => ({ ...line, hole: '<b>&"' })),
    'Bags <script>',
  );
  expect(html).toContain('&lt;b&gt;&amp;&quot;');
  expect(html).not.toContain('<script>');
  expect(html).toContain(NEAR_SPLITTER);
  expect(html.match(/class="control"/g)?.length).toBe(lines.filter((line) => line.kind !== 'primary').length);
});

test('it ends where the numbered bags run out', () => {
  const short = bagRunLines(sampling(), { name: 'ZQRC004', state: atCollar('ZQ000141', 'ZQ000143') }, 20_000);
  expect(short.at(-1)?.toMm).toBe(3000);
});

test.each(['=1+1', '+1', '-1', '@x', '\tx'])('a text that a spreadsheet would run is defused: %j', (text) => {
  expect(csvText([[text]])).toBe(`'${text}\r\n`);
});

test('a number is written as a number, and a comma or quote is quoted', () => {
  expect(csvText([[-1.5, 'a,b', 'c"d']])).toBe('-1.5,"a,b","c""d"\r\n');
});

test('text for HTML has no character left that means something there', () => {
  expect(htmlText(`<a href='x'>&"`)).toBe('&lt;a href=&#39;x&#39;&gt;&amp;&quot;');
});
