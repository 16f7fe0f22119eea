import { csvText } from '../../src/finding/sheet-text.ts';
import type { Bag } from '../../src/hole/bags.ts';
import { rowsDown } from '../../src/hole/hole.ts';
import type { Document } from '../../src/record/document.ts';
import { hashText } from '../../src/record/hash.ts';
import type { Dispatch } from '../../src/sampling/dispatch/dispatch-noun.ts';
import { sentNumbers } from '../../src/sampling/dispatch/dispatch-noun.ts';
import type { Sampling } from '../../src/sampling/sampling.ts';

/** What the invented laboratory sends: its receipt, and weeks later its certificate. */
export interface Papers {
  readonly receipt: string;
  readonly certificate: string;
}

/** Slips that the certificate shows: a standard 2.4 SD high, a bag that held another sachet, a blank that the zone smeared into. */
const SLIPS: Readonly<Record<string, number>> = { MB000160: 6.508, MB000220: 0.531, MB000227: 0.034 };

/** Papers for a dispatch of one hole. Gold follows the sulphides that were logged; all of it comes from the numbers, so that twice the same comes out. */
export function papersOf(
  dispatch: Dispatch,
  hole: Document,
  bags: readonly Bag[],
  sampling: Sampling,
): Papers {
  const numbers = sentNumbers(dispatch);
  const byNumber = new Map(bags.map((bag) => [bag.number, bag]));
  const assayed = numbers.map((number) => {
    const bag = byNumber.get(number);
    const gold = SLIPS[number] ?? (bag === undefined ? 0 : goldOf(bag, hole, byNumber, sampling));
    return [
      number,
      (2.4 + 1.2 * chance(`${number} kg`)).toFixed(2),
      gold < 0.005 ? '<0.005' : gold.toFixed(3),
    ];
  });
  return {
    receipt: csvText([
      ['Sacks received', dispatch.sacks.length],
      ['No', 'Sample'],
      ...numbers.map((number, index) => [index + 1, number]),
    ]),
    certificate: csvText([
      ['Wattlebird Assay', 'Certificate WA26-0417'],
      ['Sample', 'Wt_kg', 'Au_ppm'],
      ['Units', 'kg', 'ppm'],
      ['Detection limit', '0.01', '0.005'],
      ...assayed,
    ]),
  };
}

/** Gold of a bag in ppm. */
function goldOf(bag: Bag, hole: Document, byNumber: ReadonlyMap<string, Bag>, sampling: Sampling): number {
  const spread = chance(bag.number) + chance(`${bag.number} again`) - 1;
  if (bag.kind === 'blank') return 0.003 + 0.003 * chance(bag.number);
  if (bag.kind === 'standard') {
    const [certified] = sampling.standards.find((each) => each.lot === bag.material)?.certified ?? [];
    return certified === undefined ? 0 : certified.value + certified.sd * (0.3 + 1.4 * spread);
  }
  if (bag.kind === 'field duplicate') {
    const primary = byNumber.get(bag.of ?? '');
    return primary === undefined ? 0 : goldOf(primary, hole, byNumber, sampling) * (1 + 0.35 * spread);
  }
  return sulphideGold(bag, hole) * (1 + 0.5 * spread) + 0.004 * chance(`${bag.number} ground`);
}

/** Gold that the sulphides logged in a metre bring: arsenopyrite most of it. */
function sulphideGold({ fromMm, toMm }: Bag, hole: Document): number {
  const row = rowsDown(hole).find(([, each]) => each.fromMm < (toMm ?? 0) && (fromMm ?? 0) < each.toMm)?.[1];
  const cell = row?.cells.sulphides;
  if (cell === undefined || !('percents' in cell)) return 0.004;
  const percent = (code: string): number => {
    const amount = cell.percents[code];
    return typeof amount === 'number' ? amount : amount === undefined ? 0 : 0.1;
  };
  return 0.004 + 0.03 * percent('PYR') + 0.9 * percent('ARS');
}

/** A figure from 0 to 1 that hangs on the words alone. */
function chance(words: string): number {
  return Number.parseInt(hashText(words).slice(0, 8), 16) / 0xffffffff;
}
