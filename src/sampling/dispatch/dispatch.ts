import { type Finding, ok, type Result } from '../../finding/finding.ts';
import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { dispatchDouble, dispatchGap, dispatchNotIssued } from '../findings.ts';
import { bagNumberDistance, type NumberForm, parseBagNumber } from '../numbers/bag-number.ts';
import type { Sampling } from '../sampling.ts';
import type { Sack } from './dispatch-noun.ts';

/** What a dispatch is made up from: the bags to send, every bag issued, and the dispatches that numbers went in before. */
export interface ToSend {
  readonly name: string;
  readonly numbers: readonly string[];
  readonly issued: readonly Bag[];
  readonly sentBefore: ReadonlyMap<string, string>;
}

/** Sacks of a dispatch with their ranges, in the order of the numbers. Refused where a bag is doubled, unknown, or left out in between. */
export function makeUpSacks(sampling: Sampling, send: ToSend): Result<readonly Sack[]> {
  const findings = [...doubles(send), ...notIssued(sampling, send), ...gaps(sampling, send)];
  if (findings.length > 0) return { ok: false, findings };
  const sorted = inOrder(sampling, send.numbers);
  const sacks: Sack[] = [];
  for (let start = 0; start < sorted.length; start += sampling.sackBags) {
    const bags = sorted.slice(start, start + sampling.sackBags);
    sacks.push({ sack: sacks.length + 1, bags });
  }
  return ok(sacks);
}

/** True of a bag that has something in it for the laboratory: it is not spoiled, and its metre gave a return. */
export function holdsSample({ kind }: Bag): boolean {
  return kind !== 'spoiled' && kind !== 'no sample';
}

/** Numbers in the order of their prefixes and serials. */
export function inOrder(sampling: Sampling, numbers: readonly string[]): readonly string[] {
  return [...numbers].sort((a, b) => orderOf(sampling, a, b));
}

function orderOf(sampling: Sampling, a: string, b: string): number {
  const one = parseBagNumber(sampling.numbers, a);
  const other = parseBagNumber(sampling.numbers, b);
  if (one === undefined || other === undefined || one.prefix !== other.prefix) return a < b ? -1 : 1;
  return one.serial - other.serial;
}

function doubles(send: ToSend): readonly Finding[] {
  return send.numbers.flatMap((number, index) => {
    const twice = send.numbers.indexOf(number) < index;
    const before = send.sentBefore.get(number);
    if (!twice && before === undefined) return [];
    return [
      dispatchDouble.at(
        { thing: `dispatch ${send.name}` },
        {
          excerpt: number,
          problem: twice
            ? `${number} is in this dispatch twice.`
            : `${number} was sent before, in ${before}.`,
          remedy: 'Look at the calico. Take the number out, or correct the one that is wrong.',
        },
      ),
    ];
  });
}

function notIssued(sampling: Sampling, send: ToSend): readonly Finding[] {
  const known = new Map(send.issued.map((bag) => [bag.number, bag]));
  return send.numbers.flatMap((number) => {
    const bag = known.get(number);
    if (bag !== undefined && holdsSample(bag)) return [];
    const isOurs = parseBagNumber(sampling.numbers, number) !== undefined;
    const why =
      bag?.kind === 'no sample'
        ? 'is no sample: its metre gave no return'
        : bag !== undefined
          ? 'is spoiled'
          : isOurs
            ? 'was never issued'
            : 'is no bag number of this project';
    return [
      dispatchNotIssued.at(
        { thing: `dispatch ${send.name}` },
        {
          excerpt: number,
          problem: `${number} ${why}.`,
          remedy:
            bag?.kind === 'no sample'
              ? `Leave it here. If there is something in it, record it in the log of the hole: ${filledLine(bag)}.`
              : 'Look at the calico and correct its number, or leave it here.',
        },
      ),
    ];
  });
}

/** The line that says that there is a bag of a metre without return. */
export function filledLine({ number, fromMm, toMm }: Pick<Bag, 'number' | 'fromMm' | 'toMm'>): string {
  const metre =
    fromMm === undefined || toMm === undefined ? '' : `${formatDepth(fromMm)}-${formatDepth(toMm)} `;
  return `;bag ${metre}${number} =`;
}

/** Issued bags of the same prefix between the first and the last number that are neither sent before nor in this dispatch. */
function gaps(sampling: Sampling, send: ToSend): readonly Finding[] {
  const gone = new Set([...send.numbers, ...send.sentBefore.keys()]);
  const ends = new Map<string, { first: number; last: number }>();
  for (const number of send.numbers) {
    const here = parseBagNumber(sampling.numbers, number);
    if (here === undefined) continue;
    const { first, last } = ends.get(here.prefix) ?? { first: here.serial, last: here.serial };
    ends.set(here.prefix, { first: Math.min(first, here.serial), last: Math.max(last, here.serial) });
  }
  return send.issued
    .filter((bag) => holdsSample(bag) && !gone.has(bag.number))
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
          problem: `${bag.number} is between bags that go, and does not go.`,
          remedy: 'Put it in, or mark it spoiled (;spoiled) with the reason if it is lost.',
        },
      ),
    );
}

/** What a sack's label says: its numbers by runs and their count, `ZQ000121–ZQ000124, ZQ000161 (5)`. */
export function sackRange(form: NumberForm, sack: Sack): string {
  const runs: string[][] = [];
  for (const number of sack.bags) {
    const run = runs.at(-1);
    if (run !== undefined && follows(form, run.at(-1), number)) run.push(number);
    else runs.push([number]);
  }
  const words = runs.map((run) => (run.length === 1 ? run[0] : `${run[0]}–${run.at(-1)}`));
  return `${words.join(', ')} (${sack.bags.length})`;
}

function follows(form: NumberForm, before: string | undefined, number: string): boolean {
  const one = before === undefined ? undefined : parseBagNumber(form, before);
  const other = parseBagNumber(form, number);
  return one !== undefined && other !== undefined && bagNumberDistance(one, other) === 1;
}
