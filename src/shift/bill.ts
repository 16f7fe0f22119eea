import { type Cents, cents, percentOf } from '../quantity/cents.ts';
import { depthFromMm } from '../quantity/depth.ts';
import { type Interval, sharedMm } from '../quantity/interval.ts';
import type { ChargeClass } from './charge-class.ts';
import { without } from './claims.ts';
import type { BitFrom, HoleFacts } from './hole-facts.ts';
import { itemKey } from './item-name.ts';
import { type DrilledMetres, paidByMetre, type ShiftRecord, sumBy, type Work } from './shift-record.ts';
import type { Contract, MetreRate } from './shift-rules.ts';

/**
 * What a line of a bill is made from, in the words of a comparison: the metres of a hole, the hours of a class; of every hole or item where
 * none is named. `bill` is made from the other lines: a minimum, tax.
 */
export interface LineFrom {
  readonly subject: 'hours' | 'beside' | 'metres' | 'wet' | 'shots' | 'consumables' | 'bill';
  readonly of?: string;
}

/** True for the name of a line that is counted on others. */
export const isDerived = (what: string): boolean => /^(minimum of|tax) /.test(what);

/** A line of a bill; the same words stand on the bill of either side, so that lines can be compared. */
export interface BillLine {
  readonly what: string;
  readonly cents: Cents;
  readonly from: LineFrom;
  /** Of a line of tax, its percent: such a line is counted on the others. */
  readonly taxPercent?: number;
}

/** What a record of a shift comes to under the contract. */
export interface Bill {
  readonly lines: readonly BillLine[];
  readonly total: Cents;
}

/**
 * The bill of one side's record under the contract: metres by depth band from surface, wet surcharge, hours, lump sums, shots,
 * consumables at cost plus, then what is missing to the minimum of a finished hole and of the shift (consumables apart). Each line
 * is rounded to the cent once, as the contract says. Lines that come to nothing are left out. `before` is the work of the rig's shift
 * before: a move that goes on in this one has its free time and its lump sum once.
 */
export function billOf(
  record: ShiftRecord,
  contract: Contract,
  facts: ReadonlyMap<string, HoleFacts>,
  before: readonly Work[] = [],
): Bill {
  const placed = withHoles(record.work, before);
  const worked = [
    ...metreLines(record, contract, facts),
    ...hourLines(placed, contract),
    ...concurrentLines(record.work, contract),
    ...lumpLines(placed, contract),
    ...shotLines(record.shots, contract),
    ...holeMinimums(contract, facts),
  ];
  const lines = [
    ...worked,
    ...shiftMinimum(worked, contract),
    ...consumableLines(record.consumables, contract),
  ];
  const taxed = [...lines, ...taxLine(lines, contract)];
  return { lines: taxed.filter((line) => line.cents !== 0), total: sum(taxed) };
}

function sum(lines: readonly BillLine[]): Cents {
  return cents(
    lines.reduce((total, line) => total + line.cents, 0),
    'down',
  );
}

/** Cents for millimetres at a rate a metre, by band, not rounded: thousandths of a cent, exact in integers. */
function bandMils(metres: readonly Interval[], rates: readonly MetreRate[]): number {
  return rates.reduce((mils, rate) => {
    const inBand = metres.map((each) =>
      sharedMm(each, { fromMm: rate.fromMm, toMm: rate.toMm ?? each.toMm }),
    );
    return mils + rate.centsPerM * inBand.reduce((mm, each) => mm + each, 0);
  }, 0);
}

/** Rates by depth band, with the words that tell a bit of their own from the usual one: ` with a bit to 120 mm`. */
interface BitRates {
  readonly of: string;
  readonly rates: readonly MetreRate[];
}

function ratesFor(contract: Contract, bitMm: number | undefined): BitRates {
  const size = bitMm === undefined ? undefined : contract.bitSizes.find((each) => bitMm <= each.toMm);
  return size === undefined
    ? { of: '', rates: contract.metreRates }
    : { of: `, bit to ${size.toMm} mm`, rates: size.metreRates };
}

/** Metres by the rates of the bit that drilled them, those of the usual rates first. A bit drills down to where the next one does. */
function byBit(
  metres: readonly Interval[],
  bits: readonly BitFrom[],
  contract: Contract,
): readonly (BitRates & { readonly metres: readonly Interval[] })[] {
  const from = [{ fromMm: depthFromMm(0), bitMm: undefined }, ...bits];
  const parts = from.map(({ fromMm, bitMm }, index) => {
    const below = from[index + 1]?.fromMm;
    const within = metres.flatMap((each) => {
      const top = depthFromMm(Math.max(each.fromMm, fromMm));
      const foot = depthFromMm(Math.min(each.toMm, below ?? each.toMm));
      return foot > top ? [{ fromMm: top, toMm: foot }] : [];
    });
    return { ...ratesFor(contract, bitMm), metres: within };
  });
  return [
    { of: '', rates: contract.metreRates },
    ...contract.bitSizes.map(({ toMm }) => ratesFor(contract, toMm)),
  ].map((each) => ({
    ...each,
    metres: parts.filter(({ of }) => of === each.of).flatMap((part) => part.metres),
  }));
}

/** Metres of one hole without those that the contract doesn't pay. */
function payableOf(metres: readonly DrilledMetres[], { notPayable }: Contract): readonly Interval[] {
  return metres.flatMap((each) =>
    without(
      each,
      notPayable.filter(({ hole }) => hole === each.hole),
    ),
  );
}

/** Wet stretches of a hole: as this side says, or as the samples were. */
function wetIn(
  { wet }: ShiftRecord,
  hole: string,
  facts: ReadonlyMap<string, HoleFacts>,
): readonly Interval[] {
  return wet?.filter((each) => each.hole === hole) ?? facts.get(hole)?.wet ?? [];
}

const sharedWith = (metres: readonly Interval[], others: readonly Interval[]): number =>
  metres.reduce((sum, each) => others.reduce((mm, other) => mm + sharedMm(each, other), sum), 0);

/** Millimetres that a side drilled wet by hole, payable or not. */
export function wetByHole(
  record: ShiftRecord,
  facts: ReadonlyMap<string, HoleFacts>,
): ReadonlyMap<string, number> {
  return sumBy(
    record.metres,
    ({ hole }) => hole,
    (each) => sharedWith([each], wetIn(record, each.hole, facts)),
  );
}

function metreLines(
  record: ShiftRecord,
  contract: Contract,
  facts: ReadonlyMap<string, HoleFacts>,
): readonly BillLine[] {
  const payable = record.metres.filter(paidByMetre);
  return [...new Set(payable.map((each) => each.hole))].flatMap((hole) => {
    const here = payableOf(
      payable.filter((each) => each.hole === hole),
      contract,
    );
    const wetMm = sharedWith(here, wetIn(record, hole, facts));
    return [
      ...byBit(here, facts.get(hole)?.bits ?? [], contract).map(({ of, rates, metres }) => ({
        what: `metres ${hole}${of}`,
        from: { subject: 'metres' as const, of: hole },
        cents: cents(bandMils(metres, rates) / 1000, contract.rounding),
      })),
      {
        what: `wet metres ${hole}`,
        from: { subject: 'wet' as const, of: hole },
        cents: cents((wetMm * (contract.wetCentsPerM ?? 0)) / 1000, contract.rounding),
      },
    ];
  });
}

/**
 * Hours by class, those of an activity with a rate of its own by activity. Free time is counted off once an activity and hole,
 * however many times the work was taken up again and whether or not each line names the hole.
 */
function hourLines(placed: readonly Placed[], contract: Contract): readonly BillLine[] {
  const own = contract.hourlyRates ?? [];
  const byClass = (charge: ChargeClass): readonly Placed[] =>
    placed.filter((each) => each.charge === charge && !own.some((rate) => rate.activity === each.activity));
  const line = (what: string, worked: readonly Placed[], centsPerHour: number): BillLine => ({
    what,
    from: { subject: 'hours', ...(worked[0] === undefined ? {} : { of: worked[0].charge }) },
    cents: cents(
      (steps(chargeableMinutes(worked, contract), contract) * centsPerHour) / 60,
      contract.rounding,
    ),
  });
  return [
    line('active hourly', byClass('active hourly'), contract.activeHourlyCents),
    line('standby hourly', byClass('standby hourly'), contract.standbyHourlyCents),
    ...own.map(({ activity, centsPerHour }) =>
      line(
        `hours ${activity}`,
        placed.filter((each) => each.activity === activity && each.charge.endsWith('hourly')),
        centsPerHour,
      ),
    ),
  ];
}

/** Minutes in the steps that the contract counts hours in. */
function steps(minutes: number, { hourStep }: Contract): number {
  if (hourStep === undefined) return minutes;
  const round = { up: Math.ceil, nearest: Math.round, down: Math.floor }[hourStep.rounding];
  return round(minutes / hourStep.minutes) * hourStep.minutes;
}

/** What ran beside the work, by the hour, whatever the work itself is charged by. */
function concurrentLines(work: readonly Work[], contract: Contract): readonly BillLine[] {
  return (contract.concurrent ?? []).map(({ item, centsPerHour }) => {
    const minutes = work
      .filter((each) => each.beside?.some((one) => itemKey(one) === itemKey(item)))
      .reduce((sum, each) => sum + each.minutes, 0);
    return {
      what: `hours ${item}`,
      from: { subject: 'beside' as const, of: item },
      cents: cents((steps(minutes, contract) * centsPerHour) / 60, contract.rounding),
    };
  });
}

/** Tax on everything above it, rounded once. Several shifts on one invoice are taxed together: see invoiceOf. */
function taxLine(lines: readonly BillLine[], { taxPercent, rounding }: Contract): readonly BillLine[] {
  if (taxPercent === undefined) return [];
  return [
    {
      what: `tax ${taxPercent} %`,
      cents: percentOf(sum(lines), taxPercent, rounding),
      from: { subject: 'bill' },
      taxPercent,
    },
  ];
}

function chargeableMinutes(work: readonly Placed[], contract: Contract): number {
  const minutes = sumBy(work, placeOf, (each) => each.minutes);
  return [...minutes].reduce((all, [place, spent]) => {
    const used = work.find((each) => placeOf(each) === place)?.minutesBefore ?? 0;
    return all + Math.max(0, spent - Math.max(0, freeMinutes(contract, place) - used));
  }, 0);
}

/**
 * Work without a hole is of the hole that its activity names next, or named last, with no drilling by the metre between: a move told in two
 * lines is one move. Where none is named, drilling between two moves makes them two. Work before the first drilling goes on with what the shift
 * before did after its last.
 */
function withHoles(work: readonly Work[], before: readonly Work[] = []): readonly Placed[] {
  const open = before.length === 0 ? [] : withHoles(before.slice(before.findLastIndex(isDrilling) + 1));
  const first = work.findIndex(isDrilling);
  return placedIn(work).map((each, index) => {
    const same = open.filter(
      ({ activity, hole }) =>
        activity === each.activity && (hole === undefined || each.hole === undefined || hole === each.hole),
    );
    return same.length === 0 || (first >= 0 && index > first)
      ? each
      : { ...each, minutesBefore: same.reduce((sum, { minutes }) => sum + minutes, 0) };
  });
}

const isDrilling = ({ charge }: Work): boolean => charge === 'metres';

function placedIn(work: readonly Work[]): readonly Placed[] {
  return work.map((each, index) => {
    const named = (others: readonly Work[]): string | undefined => {
      const near = others.findIndex(isDrilling);
      return others
        .slice(0, near < 0 ? others.length : near)
        .find(({ activity, hole }) => activity === each.activity && hole !== undefined)?.hole;
    };
    const hole = each.hole ?? named(work.slice(index + 1)) ?? named(work.slice(0, index).reverse());
    const drillings = work.slice(0, index).filter(isDrilling).length;
    return hole === undefined ? { ...each, place: `${drillings}` } : { ...each, hole, place: `at ${hole}` };
  });
}

/** Work with the place that its free time is given once at: a hole, or between two drillings where no hole is known. */
type Placed = Work & {
  readonly place: string;
  /** Minutes that the shift before spent on the same, where this goes on with it. */
  readonly minutesBefore?: number;
};

const placeOf = ({ activity, place }: Placed): string => JSON.stringify([activity, place]);

function freeMinutes(contract: Contract, place: string): number {
  const [activity] = JSON.parse(place) as [string];
  return contract.freeTime?.find((each) => each.activity === activity)?.freeMinutes ?? 0;
}

/** A lump sum is due once a hole; where no line of the work names a hole, each time. What the shift before began was due there. */
function lumpLines(placed: readonly Placed[], contract: Contract): readonly BillLine[] {
  const begunBefore = new Set(placed.filter((each) => each.minutesBefore !== undefined).map(placeOf));
  return (contract.lumpSums ?? []).map(({ activity, cents: each }) => {
    const here = placed.filter(
      (one) => one.activity === activity && one.charge === 'lump sum' && !begunBefore.has(placeOf(one)),
    );
    const named = new Set(here.map((one) => one.hole).filter((hole) => hole !== undefined)).size;
    const unnamed = here.filter((one) => one.hole === undefined).length;
    return {
      what: `lump sum ${activity}`,
      from: { subject: 'hours', of: 'lump sum' },
      cents: cents((named + unnamed) * each, contract.rounding),
    };
  });
}

function shotLines(shots: ReadonlyMap<string, number>, contract: Contract): readonly BillLine[] {
  const count = [...shots.values()].reduce((all, each) => all + each, 0);
  return [
    {
      what: 'shots',
      from: { subject: 'shots' },
      cents: cents(count * (contract.shotCents ?? 0), contract.rounding),
    },
  ];
}

function holeMinimums(contract: Contract, facts: ReadonlyMap<string, HoleFacts>): readonly BillLine[] {
  return [...facts].flatMap(([hole, { finished, bits = [] }]) => {
    if (finished === undefined || contract.minimumHoleCents === undefined) return [];
    const mils = byBit([finished], bits, contract).map(({ metres, rates }) => bandMils(metres, rates));
    const paid = cents(mils.reduce((all, each) => all + each, 0) / 1000, contract.rounding);
    const missing = Math.max(0, contract.minimumHoleCents - paid);
    return [
      { what: `minimum of ${hole}`, from: { subject: 'bill' }, cents: cents(missing, contract.rounding) },
    ];
  });
}

function shiftMinimum(worked: readonly BillLine[], contract: Contract): readonly BillLine[] {
  const missing = Math.max(0, (contract.minimumShiftCents ?? 0) - sum(worked));
  return [
    { what: 'minimum of the shift', from: { subject: 'bill' }, cents: cents(missing, contract.rounding) },
  ];
}

function consumableLines(used: ReadonlyMap<string, number>, contract: Contract): readonly BillLine[] {
  return (contract.consumables ?? []).map(({ item, costCents, plusPercent }) => ({
    what: item,
    from: { subject: 'consumables', of: item },
    cents: percentOf((used.get(item) ?? 0) * costCents, 100 + plusPercent, contract.rounding),
  }));
}
