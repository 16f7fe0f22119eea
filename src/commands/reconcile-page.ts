import { htmlText } from '../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../finding/what-it-is-not.ts';
import { formatCents } from '../quantity/cents.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatMinutes } from '../quantity/stamp.ts';
import { metresPerHour, share } from '../shift/span-figures.ts';
import { exceptionText, invoiceTable, type Reconciled, type Span } from './reconcile-span.ts';

/** A page to print: both sides of every shift with its timeline and queries, and the invoice expected. One file, nothing fetched. */
export function reconcilePage(project: string, span: Span): string {
  const money = (texts: readonly string[]): string =>
    texts.map((each) => `<td class="n">${each}</td>`).join('');
  const row = ([head = '', ...amounts]: readonly string[]): string =>
    `<tr><td>${htmlText(head)}</td>${money(amounts)}</tr>`;
  const table = ([heads = [], ...rows]: readonly (readonly string[])[]): string =>
    `<table><tr>${heads.map((each) => `<th>${each}</th>`).join('')}</tr>${rows.map(row).join('')}</table>`;
  const shifts = span.shifts.map(({ shift, ownCents, plodCents }) => [
    shift,
    formatCents(ownCents),
    plodCents === undefined ? 'no plod yet' : formatCents(plodCents),
    plodCents === undefined || plodCents === ownCents ? '' : formatCents(plodCents - ownCents),
  ]);
  const title = `${htmlText(project)}: plods ${span.from} to ${span.to}`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${title}</title>
<style>
body { font: 11pt sans-serif; margin: 1.5cm; color: #000; background: #fff }
table { border-collapse: collapse; margin: 0.5em 0 } td, th { border: 1px solid #999; padding: 2px 8px; text-align: left }
td.n { text-align: right } pre { font: 9pt monospace } section { break-inside: avoid } li { margin: 0.4em 0 }
</style></head><body>
<h1>${title}</h1>
${WHAT_IT_IS_NOT_HTML}<p>${htmlText(span.currency)}, both sides by the terms of the contract in the project.</p>
<h2>Shifts, before tax</h2>${table([['shift', 'own record', 'plod', 'difference'], ...shifts])}
<h2>Invoice expected</h2>${table(invoiceTable(span))}
${figureTables(span)}
${span.shifts.map(shiftSection).join('\n')}
</body></html>
`;
}

function figureTables({ figures: { byClass, lost, pace } }: Span): string {
  const whole = byClass.reduce((sum, each) => sum + each.minutes, 0);
  const cells = (texts: readonly string[], tag = 'td'): string =>
    `<tr>${texts.map((each) => `<${tag}>${htmlText(each)}</${tag}>`).join('')}</tr>`;
  const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
    `<table>${cells(heads, 'th')}${rows.map((row) => cells(row)).join('')}</table>`;
  const timed = (what: string, minutes: number): readonly string[] => [
    what,
    formatMinutes(minutes),
    share(minutes, whole),
  ];
  return `<h2>Hours, time lost, pace</h2>
${table(
  ['charged by', 'hours', 'share'],
  byClass.filter((each) => each.minutes > 0).map(({ charge, minutes }) => timed(charge, minutes)),
)}
${table(
  ['time lost', 'hours', 'share'],
  lost.map(({ cause, minutes }) => timed(cause, minutes)),
)}
${table(
  ['shift', 'hole', 'metres', 'drilling', 'm an hour'],
  pace.map((each) => [
    each.shift,
    each.hole,
    formatDepth(each.mm),
    formatMinutes(each.minutes),
    metresPerHour(each) ?? 'no time',
  ]),
)}`;
}

function shiftSection(each: Reconciled): string {
  const queries = each.queries.map(
    (query) =>
      `<li><b>${htmlText(query.name)}</b> [${query.answer}] ${htmlText(query.problem)}<br><em>${htmlText(query.remedy)}</em></li>`,
  );
  const list = queries.length === 0 ? '<p>No queries.</p>' : `<ul>${queries.join('')}</ul>`;
  const exceptions = each.exceptions.map((one) => `<li>${htmlText(exceptionText(one))}</li>`);
  const open =
    exceptions.length === 0 ? '' : `<h3>Exceptions of the sign-off</h3><ul>${exceptions.join('')}</ul>`;
  const sheets = each.plods.length === 0 ? 'no plod yet' : `plod ${htmlText(each.plods.join(', '))}`;
  const signed =
    each.signedBy.length === 0 ? 'not signed' : `signed by ${htmlText(each.signedBy.join(', '))}`;
  return `<section><h2>${htmlText(each.shift)}</h2><p>${sheets}, ${signed}</p>
<pre>${htmlText(each.timeline.join('\n'))}</pre><p><small>${htmlText(each.keys)}</small></p>${open}${list}</section>`;
}
