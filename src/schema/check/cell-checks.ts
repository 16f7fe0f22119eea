import type { FindingKind } from '../../finding/finding.ts';
import {
  type Amount,
  type Cell,
  type PointEvent,
  qualifiedIn,
  type Share,
  sharesIn,
} from '../../value/cell.ts';
import { codesIn } from '../codes-in.ts';
import {
  rowAmountOff,
  rowCannotBeNone,
  rowCodeUnknown,
  rowDecimals,
  rowEmptyCell,
  rowEventOff,
  rowLevelOffScale,
  rowNumberOutOfRange,
  rowQualifierOff,
  rowSecondIsFirst,
  rowSumOverLimit,
  rowWrongKind,
} from '../findings.ts';
import {
  codeOf,
  type Field,
  type LoggingSchema,
  type Measure,
  qualifierFor,
  qualifiersOf,
  scaleOf,
} from '../logging-schema.ts';
import { percentOf } from '../read-cell.ts';

/** The most that a second code can take, in percent: over half, it is the first. */
export const SECOND_AT_MOST_PERCENT = 50;

/** A problem of a cell, without its place. */
export type CellProblem = {
  readonly kind: FindingKind;
  readonly problem: string;
  readonly remedy: string;
};

/** What keeps a cell from being one of its field. Retired codes pass: old rows have them. */
export function checkCell(schema: LoggingSchema, field: Field, cell: Cell): readonly CellProblem[] {
  if ('absent' in cell) {
    return cell.absent === 'none' && !field.canBeNone
      ? [{ kind: rowCannotBeNone, problem: `${field.label} always is something`, remedy: 'Say what it is.' }]
      : [];
  }
  if (!isOfKind(field, cell))
    return [
      {
        kind: rowWrongKind,
        problem: `${field.label} should hold ${field.kind}, and has ${Object.keys(cell).join(', ') || 'nothing'}`,
        remedy: 'Log it again.',
      },
    ];
  return [...checkValue(schema, field, cell), ...checkQualified(schema, field, cell)];
}

function checkValue(schema: LoggingSchema, field: Field, cell: Cell): readonly CellProblem[] {
  if ('code' in cell) return checkCode(schema, field, cell);
  if ('level' in cell) return checkLevel(schema, field, cell.level, field.label);
  if ('levels' in cell) return checkLevels(schema, field, cell.levels);
  if ('percents' in cell) return checkPercents(schema, field, cell.percents);
  if ('codes' in cell) return checkCodes(schema, field, Object.keys(cell.codes));
  if ('events' in cell) return checkEvents(schema, field, cell.events);
  if ('percent' in cell) return checkAmount(field, cell.percent, field.label);
  return 'number' in cell ? checkNumber(field, cell.number) : [];
}

/** The members that a cell of each kind may have. */
function isOfKind(field: Field, cell: Cell): boolean {
  const allowed: readonly string[] =
    field.kind === 'code' && field.second
      ? ['code', 'second', ...(field.third === true ? ['third'] : [])]
      : [field.kind];
  const members = Object.keys(cell).filter(
    (member) => member !== 'qualified' || qualifiersOf(field).length === 0,
  );
  return members.includes(field.kind) && members.every((member) => allowed.includes(member));
}

function checkCode(
  schema: LoggingSchema,
  field: Field,
  cell: Extract<Cell, { code: string }>,
): readonly CellProblem[] {
  const shares = sharesIn(cell);
  const left = shares.reduce((rest, { percent }) => rest - percent, 100);
  return [
    ...unknownCode(schema, field, cell.code),
    ...shares.flatMap((share, index) => {
      const before = [cell.code, ...shares.slice(0, index).map(({ code }) => code)];
      return [...unknownCode(schema, field, share.code), ...checkShare(share, before, left)];
    }),
  ];
}

/** A share beside the first: over nothing, not more than what is left for the first, and of another code. */
function checkShare(
  { code, percent }: Share,
  before: readonly string[],
  left: number,
): readonly CellProblem[] {
  const place = before.length === 1 ? 'second' : 'third';
  const twice = before.indexOf(code);
  return [
    ...(twice === -1
      ? []
      : [
          {
            kind: rowSecondIsFirst,
            problem: `${code} is ${twice === 0 ? 'first' : 'second'} and ${place}`,
            remedy: 'Take one away.',
          },
        ]),
    ...(percent > 0 && percent <= SECOND_AT_MOST_PERCENT && percent <= left + 1e-9
      ? []
      : [
          {
            kind: rowAmountOff,
            problem: `${code} as the ${place} has ${percent} %`,
            remedy: `Give it over 0 and at most ${SECOND_AT_MOST_PERCENT} %, and no more than the first is left with; over that, it is the first.`,
          },
        ]),
  ];
}

function checkCodes(schema: LoggingSchema, field: Field, codes: readonly string[]): readonly CellProblem[] {
  return [...empty(codes), ...codes.flatMap((code) => unknownCode(schema, field, code))];
}

/** Events of the list, each measured within its limits, or not at all. Where they are is compared with their row. */
function checkEvents(
  schema: LoggingSchema,
  field: Field,
  events: { readonly [code: string]: PointEvent },
): readonly CellProblem[] {
  return [
    ...empty(events),
    ...Object.entries(events).flatMap(([code, { number }]) => {
      const measure = codeOf(schema, field, code)?.measure;
      const off = number === undefined ? undefined : measureFault(measure, number);
      return [
        ...unknownCode(schema, field, code),
        ...(off === undefined
          ? []
          : [{ kind: rowEventOff, problem: `${code} ${off}`, remedy: 'Look for a digit too many.' }]),
      ];
    }),
  ];
}

/** Why a figure can't be what was measured of an event, in words; undefined where it can. */
export function measureFault(measure: Measure | undefined, number: number): string | undefined {
  if (measure === undefined) return `takes no amount, and has ${number}`;
  const { min, max, unit, decimals } = measure;
  if (number < min || number > max) return `is ${number} ${unit}; it goes from ${min} to ${max}`;
  return Number(number.toFixed(decimals)) === number
    ? undefined
    : `is ${number} ${unit}; it has at most ${decimals} decimals`;
}

/** What more is said of codes: by a list that can be said of them, with a code of that list, and of nothing that isn't there. */
function checkQualified(schema: LoggingSchema, field: Field, cell: Cell): readonly CellProblem[] {
  const there = 'code' in cell ? [cell.code] : codesIn(cell);
  return Object.entries(qualifiedIn(cell)).flatMap(([code, qualities]) =>
    Object.entries(qualities).flatMap(([list, quality]) => {
      const known = schema.lists[list]?.codes.some((each) => each.code === quality) === true;
      if (there.includes(code) && known && qualifierFor(field, list, code) !== undefined) return [];
      const why = there.includes(code)
        ? `${field.label} has ${quality} (${list}) of ${code}, which is not in the schema`
        : `${field.label} has ${quality} (${list}) of ${code}, and ${code} is not there`;
      return [
        { kind: rowQualifierOff, problem: why, remedy: 'Log it again, or put it back into the schema.' },
      ];
    }),
  );
}

function checkLevels(
  schema: LoggingSchema,
  field: Field,
  levels: { readonly [code: string]: number },
): readonly CellProblem[] {
  return [
    ...empty(levels),
    ...Object.entries(levels).flatMap(([code, level]) => [
      ...unknownCode(schema, field, code),
      ...checkLevel(schema, field, level, code),
    ]),
  ];
}

function checkPercents(
  schema: LoggingSchema,
  field: Field,
  percents: { readonly [code: string]: Amount },
): readonly CellProblem[] {
  const limit = field.kind === 'percents' ? field.sumLimitPercent : 100;
  const sum = Object.values(percents).reduce<number>((total, amount) => total + percentOf(amount, field), 0);
  return [
    ...empty(percents),
    ...Object.entries(percents).flatMap(([code, amount]) => [
      ...unknownCode(schema, field, code),
      ...checkAmount(field, amount, code),
    ]),
    ...(sum <= limit + 1e-9
      ? []
      : [
          {
            kind: rowSumOverLimit,
            problem: `${field.label} add up to ${Number(sum.toFixed(3))} %, over ${limit} %`,
            remedy: 'Look which of them has a digit too many.',
          },
        ]),
  ];
}

function unknownCode(schema: LoggingSchema, field: Field, code: string): readonly CellProblem[] {
  if (codeOf(schema, field, code) !== undefined) return [];
  return [
    {
      kind: rowCodeUnknown,
      problem: `${field.label} has the code ${code}, which is not in its list`,
      remedy: 'Add the code to the list, or log the row again.',
    },
  ];
}

function checkLevel(
  schema: LoggingSchema,
  field: Field,
  level: number,
  what: string,
): readonly CellProblem[] {
  const scale = scaleOf(schema, field);
  if (scale?.levels.some((each) => each.level === level)) return [];
  return [
    {
      kind: rowLevelOffScale,
      problem: `${what} has level ${level}; its levels go from 1 to ${scale?.levels.length ?? 0}`,
      remedy: 'Log it again.',
    },
  ];
}

function checkAmount(field: Field, amount: Amount, what: string): readonly CellProblem[] {
  const traceAllowed = 'traceCountsAsPercent' in field && field.traceCountsAsPercent !== undefined;
  if (amount === 'trace' ? traceAllowed : amount > 0 && amount <= 100) return [];
  return [
    {
      kind: rowAmountOff,
      problem:
        amount === 'trace'
          ? `${what} has a trace, which ${field.label} does not know`
          : `${what} has ${amount} %`,
      remedy: 'Give a percent over 0 and at most 100.',
    },
  ];
}

function checkNumber(field: Field, number: number): readonly CellProblem[] {
  if (field.kind !== 'number') return [];
  const inRange = number >= field.min && number <= field.max;
  return [
    ...(inRange
      ? []
      : [
          {
            kind: rowNumberOutOfRange,
            problem: `${field.label} is ${number} ${field.unit}; it goes from ${field.min} to ${field.max}`,
            remedy: 'Look for a digit too many, or another unit.',
          },
        ]),
    ...(Number(number.toFixed(field.decimals)) === number
      ? []
      : [
          {
            kind: rowDecimals,
            problem: `${field.label} is ${number}; it has at most ${field.decimals} decimals`,
            remedy: 'Look where the point is.',
          },
        ]),
  ];
}

function empty(amounts: object): readonly CellProblem[] {
  if (Object.keys(amounts).length > 0) return [];
  return [{ kind: rowEmptyCell, problem: 'there is no code in it', remedy: 'Say none, or not observed.' }];
}
