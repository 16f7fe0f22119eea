import type { Bag, PutOff } from '../hole/bags.ts';
import { formatDepth } from '../quantity/depth.ts';
import { formatInterval } from '../quantity/interval.ts';
import { type BagRunLine, bagRunText } from '../sampling/numbers/bag-run.ts';
import type { stockOf } from '../sampling/scheme/stock.ts';
import type { BagRunOf } from '../standing/bag-run.ts';
import { tableText } from './table-text.ts';

/** The bags of one hole: those to label, those issued, controls that still wait. */
export interface BagFacts {
  readonly run: BagRunOf;
  readonly issued: readonly Bag[];
  readonly putOff: readonly PutOff[];
}

/** The bag run of each hole with boxes to tick, what waits, labels left over, and the controls in stock. */
export function bagsText(
  facts: readonly BagFacts[],
  stock: ReturnType<typeof stockOf>,
  leftOver: readonly string[] = [],
): string {
  return [
    ...(facts.length === 0
      ? ['No hole to be drilled has numbered bags: ;numbered and the first and last number, in its log.', '']
      : facts.flatMap((each) => [...runText(each), ''])),
    ...(leftOver.length === 0
      ? []
      : [`Left over from holes that are over: ${leftOver.join('; ')}. ;numbered rest takes them on.`, '']),
    'Stock of controls:',
    ...stock.map((each) => `  ${each.kind} ${each.material}: ${each.left} of ${each.came} left`),
  ].join('\n');
}

function runText({ run, putOff }: BagFacts): readonly string[] {
  const foot = run.toMm === undefined ? '' : ` to ${formatDepth(run.toMm)} m`;
  return [
    run.lines.length === 0
      ? `${run.hole}: no bags to label${foot}`
      : `${run.hole}: ${run.lines.length} bags to label${foot}, ${countsText(run.lines)}`,
    ...(run.lines.length === 0 ? [] : [bagRunText(run.lines)]),
    ...(run.shortMm === 0
      ? []
      : [
          `NOT ENOUGH: ${formatDepth(run.shortMm)} m of ${run.hole}${foot} have no numbered bag. Number more: ;numbered and their first and last number.`,
        ]),
    ...putOff.map((put) => `Put off, its number is kept: ${put.number}  ${put.kind}, ${put.reason}`),
  ];
}

/** `66 primary, 3 standard, 4 field duplicate`: how many of each kind. */
function countsText(lines: readonly BagRunLine[]): string {
  const kinds = [...new Set(lines.map((line) => line.kind))];
  return kinds.map((kind) => `${lines.filter((line) => line.kind === kind).length} ${kind}`).join(', ');
}

/** The bags of a hole as issued: facts, that no amendment of the log renumbers. */
export function issuedText({ run, issued }: BagFacts): string {
  const rows = issued.map(({ number, kind, fromMm, toMm, of, method, material, reason }) => [
    number,
    kind,
    fromMm === undefined || toMm === undefined ? '' : formatInterval({ fromMm, toMm }),
    [of === undefined ? undefined : `of ${of}`, method, material, reason]
      .filter((part) => part !== undefined)
      .join(', '),
  ]);
  return `${run.hole}: ${issued.length} bags issued\n${tableText([['number', 'kind', 'metres', ''], ...rows])}`;
}
