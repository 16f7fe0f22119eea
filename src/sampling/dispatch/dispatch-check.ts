import type { Finding } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import {
  custodyBroken,
  dispatchDouble,
  dispatchNotIssued,
  receiptDiffers,
  transferCount,
} from '../findings.ts';
import { holdsSample } from './dispatch.ts';
import { type Dispatch, sentNumbers, type Transfer } from './dispatch-noun.ts';

/** Everything that is wrong with the dispatches of a project, beside the bags as they are recorded today. */
export function checkDispatches(dispatches: readonly Dispatch[], bags: readonly Bag[]): readonly Finding[] {
  return [
    ...sentTwice(dispatches),
    ...dispatches.flatMap((each) => [
      ...noLonger(each, bags),
      ...checkTransfers(each),
      ...checkReceipt(each),
    ]),
  ];
}

/** Bags that are in two sacks, of one dispatch or of two: two computers made them up, or a file was edited by hand. */
function sentTwice(dispatches: readonly Dispatch[]): readonly Finding[] {
  const seen = new Map<string, string>();
  return dispatches.flatMap((dispatch) =>
    dispatch.sacks.flatMap(({ sack, bags }) =>
      bags.flatMap((number) => {
        const here = `sack ${sack} of ${dispatch.name}`;
        const before = seen.get(number);
        seen.set(number, before ?? here);
        if (before === undefined) return [];
        return [
          dispatchDouble.at(
            { thing: `dispatch ${dispatch.name}` },
            {
              excerpt: number,
              problem: `${number} is in ${before} and in ${here}.`,
              remedy: 'Open both sacks before they leave, and correct the one that does not hold it.',
            },
          ),
        ];
      }),
    ),
  );
}

/** Bags that were sent and are spoiled or gone from the record since. */
function noLonger(dispatch: Dispatch, bags: readonly Bag[]): readonly Finding[] {
  const known = new Map(bags.map((bag) => [bag.number, bag]));
  return sentNumbers(dispatch).flatMap((number) => {
    const bag = known.get(number);
    if (bag !== undefined && holdsSample(bag)) return [];
    return [
      dispatchNotIssued.at(
        { thing: `dispatch ${dispatch.name}` },
        {
          excerpt: number,
          problem: `${number} was sent and is ${bag === undefined ? 'no longer on record' : bag.kind} now.`,
          remedy: 'Tell the laboratory which calico it is not to use, or correct the record of the bag.',
        },
      ),
    ];
  });
}

/** Transfers at which the count or the seal is not what was sent, or the hands do not follow on one another. */
export function checkTransfers(dispatch: Dispatch): readonly Finding[] {
  const sacks = dispatch.sacks.length;
  const bags = sentNumbers(dispatch).length;
  return dispatch.transfers.flatMap((transfer, index) => {
    const off = [
      ...(transfer.sacks === sacks ? [] : [`${transfer.sacks} sacks counted, ${sacks} sent`]),
      ...(transfer.bags === undefined || transfer.bags === bags
        ? []
        : [`${transfer.bags} bags counted, ${bags} sent`]),
      ...(transfer.sealsWhole ? [] : ['a seal was broken']),
    ];
    const holder = index === 0 ? dispatch.madeBy : (dispatch.transfers[index - 1]?.to ?? '');
    return [
      ...(off.length === 0 ? [] : [transferOff(dispatch, transfer, off)]),
      ...(transfer.from === holder ? [] : [handMissing(dispatch, transfer, holder)]),
    ];
  });
}

function placeOf(dispatch: Dispatch, { from, to }: Transfer) {
  return { thing: `dispatch ${dispatch.name}, from ${from} to ${to}` };
}

function transferOff(dispatch: Dispatch, transfer: Transfer, off: readonly string[]): Finding {
  return transferCount.at(placeOf(dispatch, transfer), {
    problem: `${off.join('; ')}.`,
    remedy: 'Count again with both there, and write down which sack it is before it moves on.',
  });
}

function handMissing(dispatch: Dispatch, transfer: Transfer, holder: string): Finding {
  return custodyBroken.at(placeOf(dispatch, transfer), {
    problem: `${holder} had the sacks, and ${transfer.from} gave them.`,
    remedy: `Ask how they came from ${holder} to ${transfer.from}, and record that transfer.`,
  });
}

/** The laboratory's latest receipt compared with the dispatch: what is missing, what came twice, what was not sent. */
export function checkReceipt(dispatch: Dispatch): readonly Finding[] {
  const received = dispatch.receipts.at(-1)?.numbers;
  if (received === undefined) return [];
  const sent = new Set(sentNumbers(dispatch));
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
