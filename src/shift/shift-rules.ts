import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Cents, cents, type Rounding } from '../quantity/cents.ts';
import { type Depth, depthFromMetres } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { ShiftName } from './charge-class.ts';
import { settingsUnsound } from './findings.ts';
import type { ActivityKind, ContractSettings, ShiftSettings } from './settings.ts';

/** A shift of the day in minutes of the local day; `toMin` is over 1440 where it ends on the next day. */
export interface ShiftTimes {
  readonly name: ShiftName;
  readonly fromMin: number;
  readonly toMin: number;
}

/** A band of depth from surface with its rate; the last one has no bottom. */
export interface MetreRate {
  readonly fromMm: Depth;
  readonly toMm?: Depth;
  readonly centsPerM: Cents;
}

/** The contract with its bands in millimetres. */
export type Contract = Omit<ContractSettings, 'metreRates' | 'bitSizes' | 'notPayable' | 'rounding'> & {
  readonly rounding: Rounding;
  readonly metreRates: readonly MetreRate[];
  /** Rates for bits up to a gauge in millimetres, the smallest first. */
  readonly bitSizes: readonly { readonly toMm: number; readonly metreRates: readonly MetreRate[] }[];
  readonly notPayable: readonly (Interval & { readonly hole: string })[];
};

/** Terms that hold on some days, for a rig or for all. */
interface DatedContract {
  readonly rig?: string | undefined;
  readonly from: string;
  readonly to?: string | undefined;
  readonly terms: Contract;
}

/** How far a plod may be off before it is queried. */
interface Tolerances {
  readonly minutes: number;
  readonly metresMm: number;
  readonly shots: number;
  readonly consumables: number;
  readonly cents: number;
}

/** The shift part of project.json, checked and in the units of the program. */
export interface ShiftRules {
  readonly shifts: readonly ShiftTimes[];
  readonly activities: readonly ActivityKind[];
  readonly contract: Contract;
  readonly contracts: readonly DatedContract[];
  readonly tolerances: Tolerances;
}

/** Turns settings into rules; refused, with every fault, where they do not hold together. */
export function resolveShiftRules(settings: ShiftSettings): Result<ShiftRules> {
  const shifts = settings.shifts.map((each): ShiftTimes => {
    const [fromMin, toMin] = [minuteOfDay(each.startsAt), minuteOfDay(each.endsAt)];
    return { name: each.name, fromMin, toMin: toMin > fromMin ? toMin : toMin + 1440 };
  });
  const findings = [
    ...shiftFaults(shifts),
    ...twice(
      'activities',
      'code',
      settings.activities.map((each) => each.code),
    ),
    ...twice(
      'activities',
      'key',
      settings.activities.map((each) => each.key),
    ),
    ...contractFaults(settings.contract, settings.activities, 'contract'),
    ...(settings.contracts ?? []).flatMap(({ terms }, index) =>
      contractFaults(terms, settings.activities, `contracts.${index}.terms`),
    ),
    ...dateFaults(settings.contracts ?? []),
  ];
  if (findings.length > 0) return refused(...findings);
  const { metresM, ...tolerances } = settings.tolerances;
  return ok({
    shifts,
    activities: settings.activities,
    contract: contractOf(settings.contract),
    contracts: (settings.contracts ?? []).map((each) => ({ ...each, terms: contractOf(each.terms) })),
    tolerances: { ...tolerances, metresMm: depthFromMetres(metresM) },
  });
}

/** The rules with the terms that hold for a rig on a day, the date that its shift carries: those of the rig before those of all. */
export function rulesOn(rules: ShiftRules, rig: string, date: string): ShiftRules {
  const holding = rules.contracts.filter(({ from, to }) => from <= date && (to === undefined || date <= to));
  const found = holding.find((each) => each.rig === rig) ?? holding.find((each) => each.rig === undefined);
  return found === undefined ? rules : { ...rules, contract: found.terms };
}

/** The activity of that code, or undefined. */
export function activityNamed(rules: ShiftRules, code: string): ActivityKind | undefined {
  return rules.activities.find((each) => each.code === code);
}

function minuteOfDay(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}

function contractOf(settings: ContractSettings): Contract {
  return {
    ...settings,
    metreRates: bands(settings.metreRates),
    bitSizes: (settings.bitSizes ?? []).map(({ toMm, metreRates }) => ({
      toMm,
      metreRates: bands(metreRates),
    })),
    notPayable: (settings.notPayable ?? []).map(({ hole, fromM, toM }) => ({
      hole,
      fromMm: depthFromMetres(fromM),
      toMm: depthFromMetres(toM),
    })),
  };
}

function bands(rates: ContractSettings['metreRates']): readonly MetreRate[] {
  return rates.map((rate, index) => ({
    fromMm: depthFromMetres(rates[index - 1]?.toM ?? 0),
    ...(rate.toM === undefined ? {} : { toMm: depthFromMetres(rate.toM) }),
    centsPerM: cents(rate.centsPerM, 'down'),
  }));
}

function fault(field: string, problem: string, remedy: string): Finding {
  return settingsUnsound.at({ file: 'project.json', field: `shift.${field}` }, { problem, remedy });
}

function shiftFaults(shifts: readonly ShiftTimes[]): readonly Finding[] {
  const [one, other] = shifts;
  if (one === undefined || other === undefined) return [];
  if (one.name === other.name)
    return [fault('shifts', `two shifts are called ${one.name}`, 'Call one day and the other night.')];
  const apart = (a: ShiftTimes, b: ShiftTimes): boolean =>
    b.fromMin >= a.toMin && b.toMin <= a.fromMin + 1440;
  return apart(one, other) || apart(other, one)
    ? []
    : [fault('shifts', 'the two shifts overlap', 'Let one end before the other starts.')];
}

function twice(list: string, field: string, values: readonly string[]): readonly Finding[] {
  return [...new Set(values.filter((value, index) => values.indexOf(value) !== index))].map((value) =>
    fault(list, `two have the ${field} ${value}`, `Give one of them another ${field}.`),
  );
}

function bandFaults(rates: ContractSettings['metreRates'], field: string): readonly Finding[] {
  const feet = rates.map((rate) => rate.toM);
  const findings: Finding[] = [];
  if (feet.at(-1) !== undefined)
    findings.push(
      fault(
        field,
        'the last band has a bottom, so deeper metres have no rate',
        'Leave toM out of the last one.',
      ),
    );
  if (feet.slice(0, -1).some((foot, index) => foot === undefined || foot <= (feet[index - 1] ?? 0)))
    findings.push(
      fault(
        field,
        'the bands are not in order from the top down',
        'Give every band but the last its bottom, each deeper than the one above.',
      ),
    );
  return findings;
}

/** Two contracts of one rig, or two of every rig, that hold on the same day; one that ends before it begins. */
function dateFaults(contracts: NonNullable<ShiftSettings['contracts']>): readonly Finding[] {
  return contracts.flatMap((each, index): readonly Finding[] => {
    const field = `contracts.${index}`;
    if (each.to !== undefined && each.to < each.from)
      return [fault(field, `it ends on ${each.to}, before it begins`, 'Give its first day, then its last.')];
    const other = contracts
      .slice(0, index)
      .find(
        (before) =>
          before.rig === each.rig && before.from <= (each.to ?? '9999') && each.from <= (before.to ?? '9999'),
      );
    return other === undefined
      ? []
      : [
          fault(
            field,
            `it holds on days of the one from ${other.from}, for ${each.rig ?? 'every rig'}`,
            'End one on the day before the other begins.',
          ),
        ];
  });
}

function contractFaults(
  contract: ContractSettings,
  activities: readonly ActivityKind[],
  at: string,
): readonly Finding[] {
  const lumps = (contract.lumpSums ?? []).map((each) => each.activity);
  const codes = (list: readonly { readonly activity: string }[] | undefined) =>
    (list ?? []).map((each) => each.activity);
  const sizes = contract.bitSizes ?? [];
  return [
    ...bandFaults(contract.metreRates, `${at}.metreRates`),
    ...sizes.flatMap((each, index) => bandFaults(each.metreRates, `${at}.bitSizes.${index}.metreRates`)),
    ...(sizes.some((each, index) => each.toMm <= (sizes[index - 1]?.toMm ?? 0))
      ? [fault(`${at}.bitSizes`, 'the sizes are not in order', 'List the smallest bit first.')]
      : []),
    ...(contract.notPayable ?? [])
      .filter(({ fromM, toM }) => toM <= fromM)
      .map(({ hole }) =>
        fault(
          `${at}.notPayable`,
          `the metres of ${hole} end at or above where they start`,
          'Give fromM, then toM.',
        ),
      ),
    ...termFaults(at, 'lumpSums', lumps, activities, 'lump sum'),
    ...termFaults(at, 'freeTime', codes(contract.freeTime), activities, 'hourly'),
    ...termFaults(at, 'hourlyRates', codes(contract.hourlyRates), activities, 'hourly'),
    ...twice(
      `${at}.consumables`,
      'item',
      (contract.consumables ?? []).map((each) => each.item),
    ),
    ...twice(
      `${at}.concurrent`,
      'item',
      (contract.concurrent ?? []).map((each) => each.item),
    ),
    ...activities
      .filter((each) => each.charge === 'lump sum' && !lumps.includes(each.code))
      .map((each) =>
        fault(
          `${at}.lumpSums`,
          `${each.code} is charged as a lump sum, but none is given`,
          'Give its sum; 0 where the contract pays none.',
        ),
      ),
  ];
}

/** A term about activities names each once, and only such as are charged that way. */
function termFaults(
  at: string,
  term: string,
  codes: readonly string[],
  activities: readonly ActivityKind[],
  way: 'lump sum' | 'hourly',
): readonly Finding[] {
  const charged = activities.filter((each) => each.charge.endsWith(way)).map((each) => each.code);
  const words = way === 'hourly' ? 'by the hour' : 'as a lump sum';
  return [
    ...twice(`${at}.${term}`, 'activity', codes),
    ...codes
      .filter((code) => !charged.includes(code))
      .map((code) =>
        fault(
          `${at}.${term}`,
          `${code} is not an activity charged ${words}`,
          `Set its charge in the list of activities, or take it out of ${term}.`,
        ),
      ),
  ];
}
