import { type Finding, ok, type Result } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import { parseBagNumber } from './bag-number.ts';
import type { Dispatch, Sack, Transfer } from './dispatch-noun.ts';
import { dispatchDouble } from './findings/dispatch-double.ts';
import { dispatchGap } from './findings/dispatch-gap.ts';
import { dispatchNotIssued } from './findings/dispatch-not-issued.ts';
import { receiptDiffers } from './findings/receipt-differs.ts';
import { transferCount } from './findings/transfer-count.ts';
import type { Sampling } from './sampling.ts';
import { csvText } from './sheet-text.ts';

/** What a dispatch is made up from: the bags to send, every bag issued, and the numbers sent before. */
export interface ToSend {
  readonly name: string;
  readonly numbers: readonly string[];
  readonly issued: readonly Bag[];
  readonly sentBefore: readonly string[];
}

/** Sacks of a dispatch with their ranges, in the order of the numbers. Refused where a bag is doubled, unknown, or left out in between. */
export function makeUpSacks(sampling: Sampling, send: ToSend): Result<readonly Sack[]> {
  const findings = [...doubles(send), ...notIssued(send), ...gaps(sampling, send)];
  if (findings.length > 0) return { ok: false, findings };
  const sorted = [...send.numbers].sort((a, b) => orderOf(sampling, a, b));
  const sacks: Sack[] = [];
  for (let start = 0; start < sorted.length; start += sampling.sackBags) {
    const bags = sorted.slice(start, start + sampling.sackBags);
    sacks.push({ sack: sacks.length + 1, bags });
  }
  return ok(sacks);
}

function orderOf(sampling: Sampling, a: string, b: string): number {
  const one = parseBagNumber(sampling.numbers, a);
  const other = parseBagNumber(sampling.numbers, b);
  if (one === undefined || other === undefined || one.prefix !== other.prefix) return a < b ? -1 : 1;
  return one.serial - other.serial;
}

function doubles(send: ToSend): readonly Finding[] {
  const sent = new Set(send.sentBefore);
  return send.numbers.flatMap((number, index) => {
    const twice = send.numbers.indexOf(number) < index;
    if (!twice && !sent.has(number)) return [];
    return [
      dispatchDouble.at(
        { thing: `dispatch ${send.name}` },
        {
          excerpt: number,
          problem: twice ? `${number} is in this dispatch twice.` : `${number} was sent before.`,
          remedy: 'Look at the calico. Take the number out, or correct the one that is wrong.',
        },
      ),
    ];
  });
}

function notIssued(send: ToSend): readonly Finding[] {
  const known = new Map(send.issued.map((bag) => [bag.number, bag]));
  return send.numbers.flatMap((number) => {
    const bag = known.get(number);
    if (bag !== undefined && bag.kind !== 'void') return [];
    return [
      dispatchNotIssued.at(
        { thing: `dispatch ${send.name}` },
        {
          excerpt: number,
          problem: bag === undefined ? `${number} was never issued.` : `${number} is void.`,
          remedy: 'Look at the calico and correct its number, or leave it here.',
        },
      ),
    ];
  });
}

/** Issued bags of the same prefix between the first and the last number that are neither sent before nor in this dispatch. */
function gaps(sampling: Sampling, send: ToSend): readonly Finding[] {
  const gone = new Set([...send.numbers, ...send.sentBefore]);
  const ends = new Map<string, { first: number; last: number }>();
  for (const number of send.numbers) {
    const here = parseBagNumber(sampling.numbers, number);
    if (here === undefined) continue;
    const { first, last } = ends.get(here.prefix) ?? { first: here.serial, last: here.serial };
    ends.set(here.prefix, { first: Math.min(first, here.serial), last: Math.max(last, here.serial) });
  }
  return send.issued
    .filter((bag) => bag.kind !== 'void' && !gone.has(bag.number))
    .filter((bag) => {
      const here = parseBagNumber(sampling.numbers, bag.number);
      const end = here && ends.get(here.prefix);
      return here !== undefined && end !== undefined && end.first < here.serial && here.serial < end.last;
    })
    .map((bag) =>
      dispatchGap.at(
        { thing: `dispatch ${send.name}` },
        {
          excerpt: bag.number,
          problem: `${bag.number} lies between bags that go, and does not go.`,
          remedy: 'Put it in, or void it with the reason if it is lost.',
        },
      ),
    );
}

/** Range of a sack as its label says: `ZQ000121–ZQ000125 (5)`. */
export function sackRange(sack: Sack): string {
  return `${sack.bags[0]}–${sack.bags.at(-1)} (${sack.bags.length})`;
}

/** Transfers at which the count or the seal is not what was sent. */
export function checkTransfers(dispatch: Dispatch): readonly Finding[] {
  const sacks = dispatch.sacks.length;
  const bags = dispatch.sacks.reduce((sum, sack) => sum + sack.bags.length, 0);
  return dispatch.transfers.flatMap((transfer) => {
    const off = [
      ...(transfer.sacks === sacks ? [] : [`${transfer.sacks} sacks counted, ${sacks} sent`]),
      ...(transfer.bags === undefined || transfer.bags === bags
        ? []
        : [`${transfer.bags} bags counted, ${bags} sent`]),
      ...(transfer.sealsWhole ? [] : ['a seal was broken']),
    ];
    return off.length === 0 ? [] : [transferOff(dispatch, transfer, off)];
  });
}

function transferOff(dispatch: Dispatch, transfer: Transfer, off: readonly string[]): Finding {
  return transferCount.at(
    { thing: `dispatch ${dispatch.name}, from ${transfer.from} to ${transfer.to}` },
    {
      problem: `${off.join('; ')}.`,
      remedy: 'Count again with both there, and write down which sack it is before it moves on.',
    },
  );
}

/** The laboratory's receipt held against the dispatch: what is missing, what came twice, what was not sent. */
export function checkReceipt(dispatch: Dispatch, received: readonly string[]): readonly Finding[] {
  const sent = new Set(dispatch.sacks.flatMap((sack) => sack.bags));
  const came = new Set(received);
  const groups: readonly (readonly [string, readonly string[]])[] = [
    ['not received', [...sent].filter((number) => !came.has(number))],
    ['received and never sent', [...came].filter((number) => !sent.has(number))],
    ['received twice', [...new Set(received.filter((number, index) => received.indexOf(number) < index))]],
  ];
  return groups
    .filter(([, numbers]) => numbers.length > 0)
    .map(([what, numbers]) =>
      receiptDiffers.at(
        { thing: `dispatch ${dispatch.name}` },
        {
          excerpt: numbers.join(', '),
          problem: `${numbers.length} ${what}.`,
          remedy: 'Ask the laboratory to look through the sacks before anything is dried.',
        },
      ),
    );
}

/** The sheet that goes to the laboratory with the bags: numbers by sack and nothing else, so that every control stays blind. */
export function laboratorySheet(dispatch: Dispatch): string {
  return csvText([
    ['sack', 'sample'],
    ...dispatch.sacks.flatMap((sack) => sack.bags.map((number) => [sack.sack, number])),
  ]);
}

/** The same for camp, with what is in every bag. Never sent to the laboratory. */
export function campSheet(dispatch: Dispatch, issued: readonly (Bag & { readonly hole: string })[]): string {
  const known = new Map(issued.map((bag) => [bag.number, bag]));
  const metresOf = (mm: number | undefined): number | string => (mm === undefined ? '' : mm / 1000);
  return csvText([
    ['sack', 'sample', 'hole', 'kind', 'from_m', 'to_m', 'duplicate_of', 'material'],
    ...dispatch.sacks.flatMap((sack) =>
      sack.bags.map((number) => {
        const bag = known.get(number);
        return [
          sack.sack,
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
  ]);
}
