import { csvText, htmlText } from '../../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../../finding/what-it-is-not.ts';
import type { Bag } from '../../hole/bags.ts';
import { localDate, localTime, type Stamp } from '../../quantity/stamp.ts';
import { type Dispatch, sentNumbers } from './dispatch-noun.ts';

/** A table of a sheet: headings first. */
export type SheetTable = readonly (readonly (string | number)[])[];

/** Who a sheet is for. The laboratory's says numbers and nothing else. */
export type SheetReader = 'laboratory' | 'camp';

/** A bag with the hole that it is of. */
export type BagOfHole = Bag & { readonly hole: string };

/** Stands on a sheet in the place of the sack, for a number between those sent that no calico comes with. */
const NO_SAMPLE = 'no sample';

/**
 * The sheet that goes to the laboratory with the bags: numbers by sack and nothing else, so that every control stays blind. A number between
 * them that was kept for a metre without return is named as no sample, so that no one looks for its calico.
 */
export function laboratoryTable(dispatch: Dispatch, issued: readonly Bag[] = []): SheetTable {
  return [
    ['sack', 'sample'],
    ...dispatch.sacks.flatMap((sack) => sack.bags.map((number) => [sack.sack, number])),
    ...noSamples(dispatch, issued).map(({ number }) => [NO_SAMPLE, number]),
  ];
}

/** Bags without a sample whose numbers stand between the first and the last that is sent. */
function noSamples<Held extends Bag>(dispatch: Dispatch, issued: readonly Held[]): readonly Held[] {
  const sent = new Set(sentNumbers(dispatch));
  const sorted = [...sent].sort();
  const [first = '', last = ''] = [sorted[0], sorted.at(-1)];
  return issued.filter(
    ({ number, kind }) => kind === 'no sample' && !sent.has(number) && first < number && number < last,
  );
}

/** The same for camp, with what is in every bag and the seals. Never sent to the laboratory. */
export function campTable(dispatch: Dispatch, issued: readonly BagOfHole[]): SheetTable {
  const known = new Map(issued.map((bag) => [bag.number, bag]));
  const metresOf = (mm: number | undefined): number | string => (mm === undefined ? '' : mm / 1000);
  return [
    ['sack', 'seal', 'sample', 'hole', 'kind', 'from_m', 'to_m', 'duplicate_of', 'material'],
    ...dispatch.sacks.flatMap((sack) =>
      sack.bags.map((number) => {
        const bag = known.get(number);
        return [
          sack.sack,
          sack.seal ?? '',
          number,
          bag?.hole ?? '',
          bag?.kind ?? '',
          metresOf(bag?.fromMm),
          metresOf(bag?.toMm),
          bag?.of ?? '',
          bag?.material ?? '',
        ];
      }),
    ),
    ...noSamples(dispatch, issued).map(({ number, hole, kind, fromMm, toMm }) => [
      NO_SAMPLE,
      '',
      number,
      hole,
      kind,
      metresOf(fromMm),
      metresOf(toMm),
      '',
      '',
    ]),
  ];
}

/** The table of a sheet for whoever reads it. */
export function sheetTable(
  dispatch: Dispatch,
  reader: SheetReader,
  issued: readonly BagOfHole[],
): SheetTable {
  return reader === 'laboratory' ? laboratoryTable(dispatch, issued) : campTable(dispatch, issued);
}

/** A sheet as CSV. */
export function sheetCsv(table: SheetTable): string {
  return csvText(table);
}

/** What is above a sheet: the laboratory reads nothing of the program in it. */
export function sheetHead(dispatch: Dispatch, reader: SheetReader): readonly string[] {
  const counts = `${dispatch.sacks.length} sacks, ${sentNumbers(dispatch).length} samples`;
  return [
    `Dispatch ${dispatch.name} to ${dispatch.laboratory}`,
    reader === 'laboratory' ? counts : `${counts}. For camp only: it says what the controls are.`,
  ];
}

/** The chain of custody, a line a hand: who, when, what was counted, whether the seals were whole. */
export function custodyLines(dispatch: Dispatch): readonly string[] {
  const when = (at: Stamp): string => `${localDate(at)} ${localTime(at)}`;
  return [
    `${when(dispatch.madeAt)}  made up by ${dispatch.madeBy}: ${dispatch.sacks.length} sacks, ${sentNumbers(dispatch).length} bags`,
    ...dispatch.transfers.map(
      ({ at, from, to, sacks, bags, sealsWhole }) =>
        `${when(at)}  ${from} to ${to}: ${sacks} sacks${bags === undefined ? '' : `, ${bags} bags`} counted, ${sealsWhole ? 'seals intact' : 'A SEAL BROKEN'}`,
    ),
    ...dispatch.receipts.map(
      ({ at, takenInBy, file, numbers }) =>
        `${when(at)}  receipt ${file} taken in by ${takenInBy}: ${numbers.length} numbers`,
    ),
  ];
}

/** A sheet to print: black on white, a line to sign for every pair of hands. One HTML page that needs nothing else. */
export function sheetHtml(dispatch: Dispatch, reader: SheetReader, table: SheetTable): string {
  const [title = '', ...head] = sheetHead(dispatch, reader);
  const [headings = [], ...rows] = table;
  const cells = (tag: 'th' | 'td', row: readonly (string | number)[]): string =>
    `<tr>${row.map((cell) => `<${tag}>${htmlText(String(cell))}</${tag}>`).join('')}</tr>`;
  const sign = `<tr>${'<td>&nbsp;</td>'.repeat(5)}</tr>`;
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><title>${htmlText(title)}</title>`,
    '<style>body{font:12pt sans-serif;margin:1.5cm}table{border-collapse:collapse;margin:1em 0}th,td{border:1px solid #000;padding:.15em .6em;text-align:left}thead{display:table-header-group}tr{break-inside:avoid}.sign{width:100%}</style></head>',
    `<body><h1>${htmlText(title)}</h1>${WHAT_IT_IS_NOT_HTML}`,
    ...head.map((line) => `<p>${htmlText(line)}</p>`),
    `<table><thead>${cells('th', headings)}</thead><tbody>`,
    ...rows.map((row) => cells('td', row)),
    '</tbody></table>',
    `<table class="sign">${cells('th', ['given by', 'taken by', 'date, time', 'sacks counted', 'seals intact'])}${sign.repeat(3)}</table>`,
    '</body></html>',
    '',
  ].join('\n');
}
