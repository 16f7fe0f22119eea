import { queriesOf } from '../acts/plod.ts';
import type { Outside } from '../desk/outside.ts';
import { csvText } from '../finding/sheet-text.ts';
import type { Project } from '../project/project.ts';
import { formatCents } from '../quantity/cents.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatMinutes, isDay, type Stamp } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { answerTo, openQueries, queryName } from '../shift/answers.ts';
import type { Bill } from '../shift/bill.ts';
import { beforeTax, centsBeforeTax } from '../shift/invoice.ts';
import { ownRecord } from '../shift/own-record.ts';
import { queryText } from '../shift/query-list.ts';
import { shiftHeaderOf, shiftThings } from '../shift/shift.ts';
import { closed } from '../shift/shift-end.ts';
import { sumBy } from '../shift/shift-record.ts';
import { rulesOn } from '../shift/shift-rules.ts';
import { signersOf } from '../shift/signed.ts';
import { metresPerHour, share, spanFigures } from '../shift/span-figures.ts';
import { timelineKeys, timelineLegend, timelineOf } from '../shift/timeline.ts';
import { type AtProject, atProject, holesOf, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { reconcilePage } from './reconcile-page.ts';
import {
  type Billed,
  exceptionText,
  type InvoiceSides,
  invoiceLines,
  invoiceTable,
  type Reconciled,
  type Span,
} from './reconcile-span.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';
import { tableText } from './table-text.ts';

/** What `offsider plod --reconcile` is given. */
export interface ReconcileAsked extends Shared {
  /** Local dates, both included: `2026-03-12..2026-03-18`, or one date. */
  readonly span: string;
  readonly as: 'text' | 'json' | 'csv' | 'html';
}

/** Compares the plods of a span of dates with our own record: table, totals, query list, the invoice expected. */
export function reconcileSpan(outside: Outside, asked: ReconcileAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const [from = '', to = from] = asked.span.split('..');
    if (![from, to].every(isDay) || from > to)
      return refuse(
        outside,
        wrongUse.at(
          { thing: `--reconcile ${asked.span}` },
          {
            problem: 'it is not a span of dates',
            remedy: 'Give the first and the last day: 2026-03-12..2026-03-18.',
          },
        ),
      );
    const span = spanOf(
      at,
      from,
      to,
      asked.rig === undefined ? undefined : at.project.settings.rigs[0]?.name,
    );
    if (asked.as === 'json') sayJson(outside, span);
    else if (asked.as === 'csv') sayFile(outside, spanCsv(span));
    else if (asked.as === 'html') sayFile(outside, reconcilePage(at.project.settings.name, span));
    else say(outside, spanText(span));
    return span.shifts.some((each) => each.open > 0) ? EXIT.findings : EXIT.fine;
  });
}

function spanOf({ desk, project }: AtProject, from: string, to: string, rig: string | undefined): Span {
  const documents = [...desk.documents().values()];
  const stored = documents
    .filter((each) => {
      if (each.kind !== 'shift') return false;
      const header = shiftHeaderOf(each);
      return header.date >= from && header.date <= to && (rig === undefined || header.rig === rig);
    })
    .sort(
      (a, b) =>
        Date.parse(shiftHeaderOf(a).startsAt) - Date.parse(shiftHeaderOf(b).startsAt) ||
        (a.id < b.id ? -1 : 1),
    );
  const shifts = stored.map((shift) => reconciled(project, documents, holesOf(desk), shift, desk.now()));
  const context = { documents, shifts: project.shift.shifts, now: desk.now() };
  const ended = stored.map((shift) => closed(shift, context));
  return {
    from,
    to,
    currency: project.shift.contract.currency,
    shifts: shifts.map((each) => each.reconciled),
    figures: spanFigures(ended, holesOf(desk), project.shift, desk.now()),
    ...invoiceLines(shifts),
  };
}

function reconciled(
  project: Project,
  documents: readonly Document[],
  holes: readonly Document[],
  stored: Document,
  now: Stamp,
): Billed {
  const shift = closed(stored, { documents, shifts: project.shift.shifts, now });
  const { queries, ownBill, plodBill } = queriesOf(project, documents, stored, now);
  const amounts = (bill: Bill) =>
    sumBy(
      beforeTax(bill),
      (line) => line.what,
      (line) => line.cents,
    );
  const [own, plod] = [amounts(ownBill), amounts(plodBill)];
  const plods = shiftThings(stored, 'plods').map(([, each]) => each.sheet);
  const hasPlod = plods.length > 0;
  const { rig, date } = shiftHeaderOf(stored);
  const { contract } = rulesOn(project.shift, rig, date);
  const reconciled: Reconciled = {
    shift: stored.id,
    ownCents: centsBeforeTax(ownBill),
    plodCents: hasPlod ? centsBeforeTax(plodBill) : undefined,
    plods,
    signedBy: shiftThings(stored, 'plods').flatMap(([id]) => signersOf(stored, id)),
    exceptions: shiftThings(stored, 'signOffs').flatMap(([, { by, at, exceptions = [] }]) =>
      exceptions.map((problem) => ({ by, at, problem })),
    ),
    queries: queries.map((query) => ({
      ...query,
      name: queryName(query),
      answer: answerTo(stored, query)?.answer ?? 'open',
    })),
    open: openQueries(stored, queries).length,
    timeline: timelineOf(shift, ownRecord(shift, holes, now).metres, project.shift, now),
    keys: timelineKeys(shift, project.shift),
    lines: [...new Set([...own.keys(), ...plod.keys()])].map((what) => ({
      what,
      own: own.get(what) ?? 0,
      plod: hasPlod ? (plod.get(what) ?? 0) : undefined,
    })),
  };
  return { reconciled, ownBill, plodBill, contract };
}

function spanText(span: Span): string {
  const rows = span.shifts.map((each) => [
    each.shift,
    each.plods.join(', ') || 'no plod',
    formatCents(each.ownCents),
    each.plodCents === undefined ? '' : formatCents(each.plodCents),
    each.plodCents === undefined ? '' : formatCents(each.plodCents - each.ownCents),
    String(each.open),
    each.signedBy.join(', '),
  ]);
  return [
    `${span.from} to ${span.to}, ${span.currency}`,
    tableText([
      ['shift, before tax', 'plod', 'own record', 'plod says', 'difference', 'open', 'signed'],
      ...rows,
    ]),
    '',
    tableText(invoiceTable(span)),
    ...figureLines(span),
    ...span.shifts.flatMap((each) => [
      '',
      each.shift,
      ...each.timeline,
      ...timelineLegend(each.keys),
      ...each.exceptions.map(exceptionText),
      ...each.queries.map((query) => queryText(query, query.answer)),
    ]),
  ].join('\n');
}

/** Hours by class with their share, time lost by cause, pace by hole and shift. */
function figureLines({ figures: { byClass, lost, pace } }: Span): readonly string[] {
  const whole = byClass.reduce((sum, each) => sum + each.minutes, 0);
  const hours = (minutes: number): string => `${formatMinutes(minutes)} h`;
  const none = [['none', '', '']];
  return [
    '',
    tableText([
      ['charged by', 'hours', 'share'],
      ...byClass
        .filter((each) => each.minutes > 0)
        .map(({ charge, minutes }) => [charge, hours(minutes), share(minutes, whole)]),
    ]),
    '',
    tableText([
      ['time lost', 'hours', 'share'],
      ...(lost.length === 0
        ? none
        : lost.map(({ cause, minutes }) => [cause, hours(minutes), share(minutes, whole)])),
    ]),
    '',
    tableText([
      ['shift', 'hole', 'metres', 'drilling', 'm an hour'],
      ...pace.map((each) => [
        each.shift,
        each.hole,
        formatDepth(each.mm),
        hours(each.minutes),
        metresPerHour(each) ?? 'no time',
      ]),
    ]),
  ];
}

function spanCsv(span: Span): string {
  const cells = ({ own, ownWithPlod, plod }: InvoiceSides) => [own, plod, plod - ownWithPlod];
  return csvText([
    ['shift', 'invoice line', 'own record cents', 'plod cents', 'difference cents'],
    ...span.shifts.flatMap((each) =>
      each.lines.map(({ what, own, plod }) =>
        plod === undefined ? [each.shift, what, own, '', ''] : [each.shift, what, own, plod, plod - own],
      ),
    ),
    ...span.invoice.filter(({ isTax }) => isTax).map((each) => ['', each.what, ...cells(each)]),
    ['total', '', ...cells(span.total)],
  ]);
}
