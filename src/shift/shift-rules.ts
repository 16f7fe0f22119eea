import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { type Cents, cents, type Rounding } from '../quantity/cents.ts';
import { type Depth, depthFromMetres } from '../quantity/depth.ts';
import type { ShiftName } from './charge-class.ts';
import { settingsUnsound } from './findings.ts';
import type { ActivityKind, ContractSettings, ShiftSettings } from './settings.ts';

/** A shift of the day in minutes of the local day; `toMin` is over 1440 where it ends on the next day. */
export interface ShiftTimes {
  readonly name: ShiftName;
  readonly fromMin: number;
  readonly toMin: number;
}

/** A band of depth from surface with its rate; the last one has no foot. */
export interface MetreRate {
  readonly fromMm: Depth;
  readonly toMm?: Depth;
  readonly centsPerM: Cents;
}

/** The contract with its bands in millimetres. */
export type Contract = Omit<ContractSettings, 'metreRates' | 'rounding'> & {
  readonly rounding: Rounding;
  readonly metreRates: readonly MetreRate[];
};

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
    ...bandFaults(settings.contract),
    ...contractFaults(settings),
  ];
  if (findings.length > 0) return refused(...findings);
  const { metresM, ...tolerances } = settings.tolerances;
  return ok({
    shifts,
    activities: settings.activities,
    contract: { ...settings.contract, metreRates: bands(settings.contract) },
    tolerances: { ...tolerances, metresMm: depthFromMetres(metresM) },
  });
}

/** The activity of that code, or undefined. */
export function activityNamed(rules: ShiftRules, code: string): ActivityKind | undefined {
  return rules.activities.find((each) => each.code === code);
}

function minuteOfDay(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}

function bands(contract: ContractSettings): readonly MetreRate[] {
  return contract.metreRates.map((rate, index) => ({
    fromMm: depthFromMetres(contract.metreRates[index - 1]?.toM ?? 0),
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

function bandFaults(contract: ContractSettings): readonly Finding[] {
  const feet = contract.metreRates.map((rate) => rate.toM);
  const findings: Finding[] = [];
  if (feet.at(-1) !== undefined)
    findings.push(
      fault(
        'contract.metreRates',
        'the last band has a foot, so deeper metres have no rate',
        'Leave toM out of the last one.',
      ),
    );
  if (feet.slice(0, -1).some((foot, index) => foot === undefined || foot <= (feet[index - 1] ?? 0)))
    findings.push(
      fault(
        'contract.metreRates',
        'the bands are not in order from the top down',
        'Give every band but the last its foot, each deeper than the one above.',
      ),
    );
  return findings;
}

function contractFaults({ contract, activities }: ShiftSettings): readonly Finding[] {
  const lumps = (contract.lumpSums ?? []).map((each) => each.activity);
  const items = (contract.consumables ?? []).map((each) => each.item);
  return [
    ...termFaults('lumpSums', lumps, activities, 'lump sum'),
    ...termFaults(
      'freeTime',
      (contract.freeTime ?? []).map((each) => each.activity),
      activities,
      'hourly',
    ),
    ...termFaults(
      'hourlyRates',
      (contract.hourlyRates ?? []).map((each) => each.activity),
      activities,
      'hourly',
    ),
    ...twice('contract.consumables', 'item', items),
    ...activities
      .filter((each) => each.charge === 'lump sum' && !lumps.includes(each.code))
      .map((each) =>
        fault(
          'contract.lumpSums',
          `${each.code} is charged as a lump sum, but none is given`,
          'Give its sum; 0 where the contract pays none.',
        ),
      ),
  ];
}

/** A term about activities names each once, and only such as are charged that way. */
function termFaults(
  term: string,
  codes: readonly string[],
  activities: readonly ActivityKind[],
  way: 'lump sum' | 'hourly',
): readonly Finding[] {
  const charged = activities.filter((each) => each.charge.endsWith(way)).map((each) => each.code);
  const words = way === 'hourly' ? 'by the hour' : 'as a lump sum';
  return [
    ...twice(`contract.${term}`, 'activity', codes),
    ...codes
      .filter((code) => !charged.includes(code))
      .map((code) =>
        fault(
          `contract.${term}`,
          `${code} is no activity charged ${words}`,
          `Set its charge in the list of activities, or take it out of ${term}.`,
        ),
      ),
  ];
}
