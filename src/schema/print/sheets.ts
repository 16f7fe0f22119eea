import { htmlText } from '../../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../../finding/what-it-is-not.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { type CribItem, cribCautions, cribSections, LINE_WORDS } from './crib.ts';

const STYLE = `
  @page { size: A4 landscape; margin: 8mm }
  body { font: 8.5pt/1.25 sans-serif; color: #000; background: #fff; margin: 0 }
  h1 { font-size: 12pt; margin: 0 0 2mm }
  h2 { font-size: 9pt; margin: 0; border-bottom: 1px solid #000 }
  .columns { columns: 5; column-gap: 4mm }
  section { break-inside: avoid-column; margin-bottom: 2mm }
  dl { display: grid; grid-template-columns: max-content 1fr; gap: 0 2mm; margin: 0 }
  dt { font-family: monospace; font-weight: bold }
  dd { margin: 0 }
  table { border-collapse: collapse; width: 100% }
  th, td { border: 1px solid #000; height: 7mm; padding: 0 1mm; text-align: left }
  p { margin: 1mm 0 }
  .caution { border: 1px solid #000; padding: 0.5mm 1mm; font-weight: bold }
`;

/** The crib as one printed page (HTML, A4 on its side). */
export function cribHtml(schema: LoggingSchema): string {
  const sections = cribSections(schema).map(({ title, hint, items }) => section(title, hint, items));
  const body = [...sections, section('every line', '', LINE_WORDS)].join('\n');
  const cautions = cribCautions(schema).map((text) => `<p class="caution">${escaped(text)}</p>`);
  return page(`Keys: ${schema.name}`, `${cautions.join('\n')}\n<div class="columns">\n${body}\n</div>`);
}

/** A blank log sheet: one line a row, one column a field, for the day the laptop dies. Depths in millimetres. */
export function logSheetHtml(
  schema: LoggingSchema,
  sheet: {
    readonly hole: string;
    readonly fromMm: number;
    readonly intervalMm: number;
    readonly rows: number;
  },
): string {
  const headings = ['m', ...schema.fields.map((field) => field.label), 'remark'];
  const lines = Array.from({ length: sheet.rows }, (_, index) => {
    const fromMm = sheet.fromMm + index * sheet.intervalMm;
    return [formatInterval({ fromMm, toMm: fromMm + sheet.intervalMm })];
  });
  return page(`Log: ${sheet.hole}`, `${signatures()}${table(headings, lines)}`);
}

/** A bag sheet: numbers and what belongs in each bag, with room for what really happened. */
export function bagSheetHtml(sheet: {
  readonly hole: string;
  readonly lines: readonly { readonly number: string; readonly what: string }[];
}): string {
  const headings = ['bag', 'for', 'from', 'to', 'dry, moist or wet', 'recovery', 'mass kg', 'remark'];
  const lines = sheet.lines.map(({ number, what }) => [number, what]);
  return page(`Bags: ${sheet.hole}`, `${signatures()}${table(headings, lines)}`);
}

function section(title: string, hint: string, items: readonly CribItem[]): string {
  const list = items
    .map(({ strokes, says, caution }) => {
      const mark = caution === undefined ? '' : ` <b>!${escaped(caution)}</b>`;
      return `<dt>${escaped(strokes)}</dt><dd>${escaped(says)}${mark}</dd>`;
    })
    .join('');
  const note = hint === '' ? '' : `<p>${escaped(hint)}</p>`;
  return `<section><h2>${escaped(title)}</h2>${note}<dl>${list}</dl></section>`;
}

function signatures(): string {
  return '<p>Logged by ____________________ &nbsp; Rig __________ &nbsp; Date __________ &nbsp; Page ____ of ____</p>';
}

/** A table; cells that a line does not have are left blank to write in. */
function table(headings: readonly string[], lines: readonly (readonly string[])[]): string {
  const head = headings.map((heading) => `<th>${escaped(heading)}</th>`).join('');
  const rows = lines.map(
    (line) => `<tr>${headings.map((_, at) => `<td>${escaped(line[at] ?? '')}</td>`).join('')}</tr>`,
  );
  return `<table><thead><tr>${head}</tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table>`;
}

function page(title: string, body: string): string {
  return (
    `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title>` +
    `<style>${STYLE}</style></head><body>\n<h1>${escaped(title)}</h1>\n${WHAT_IT_IS_NOT_HTML}\n${body}\n</body></html>\n`
  );
}

/** Text from a file as HTML shows it: never markup, and characters that can't be seen made visible. */
function escaped(text: string): string {
  return htmlText(text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '\ufffd'));
}
