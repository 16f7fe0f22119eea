import { measureFault, SECOND_AT_MOST_PERCENT } from '../schema/check/cell-checks.ts';
import {
  type Code,
  type Field,
  type FieldOf,
  type LoggingSchema,
  scaleOf,
} from '../schema/logging-schema.ts';
import { type Amount, NONE } from '../value/cell.ts';
import type { Saying } from './said.ts';
import { labelOf, type Typed } from './typing-index.ts';

/** What is wrong with an item, and what to do instead. */
export type Wrong = { readonly problem: string; readonly remedy: string };

/** What strokes with an amount behind them (or none) say, within the limits of the field. `typedAs` is used in remedies. */
export function meaning(
  schema: LoggingSchema,
  typed: Typed,
  amount: Amount | undefined,
  typedAs: string,
): Saying | Wrong {
  const { field, code } = typed;
  const label = labelOf(schema, field, code?.code);
  if (field.kind === 'code' && code !== undefined) return ofCodeField(field, code, amount, label);
  if (field.kind === 'events' && code !== undefined) return ofEvent(code, amount, label, typedAs);
  if (field.kind === 'flag') return ofFlag(field, amount, label, typedAs);
  if (field.kind === 'codes' && code !== undefined) return ofCodes(code, amount, label, typedAs);
  if (amount === undefined) {
    return { problem: `${label}: how much?`, remedy: `Type the amount after it: ${typedAs}2` };
  }
  const wrong = outsideLimits(schema, field, amount, label);
  if (wrong !== undefined) return wrong;
  if (code !== undefined) return { code: code.code, amount };
  if (amount === 0) return field.canBeNone ? { cell: NONE } : alwaysSomething(field);
  return { cell: field.kind === 'level' ? { level: Number(amount) } : { percent: amount } };
}

/** True where it is a problem and not what an item says. */
export function isWrong(result: Saying | Wrong): result is Wrong {
  return 'problem' in result;
}

/** Why "none" can't be said of a field. */
export function alwaysSomething(field: Field): Wrong {
  return {
    problem: `${field.label} is always something: it can't be none`,
    remedy: `Say what it is, or ${field.name}'nr if it was not observed`,
  };
}

function ofCodeField(
  field: FieldOf<'code'>,
  code: Code,
  amount: Amount | undefined,
  label: string,
): Saying | Wrong {
  if (amount === undefined) return { cell: { code: code.code } };
  if (!field.second) {
    return { problem: `${field.label} takes no second one`, remedy: `Leave out the amount after ${label}` };
  }
  if (amount === 'trace' || amount > SECOND_AT_MOST_PERCENT) {
    return {
      problem: `${label} as the second: its share is over 0, up to ${SECOND_AT_MOST_PERCENT} %`,
      remedy: 'Name the one with the bigger share first, without an amount',
    };
  }
  return { code: code.code, amount };
}

function ofFlag(
  field: FieldOf<'flag'>,
  amount: Amount | undefined,
  label: string,
  typedAs: string,
): Saying | Wrong {
  if (amount === undefined) return { cell: { flag: true } };
  if (amount === 0) return field.canBeNone ? { cell: NONE } : alwaysSomething(field);
  return { problem: `${label} is there or not`, remedy: `Type ${typedAs}, or ${typedAs}0 to take it out` };
}

/** An event with what was measured of it, or 0 where it is taken out. Its depth is read behind it. */
function ofEvent(code: Code, amount: Amount | undefined, label: string, typedAs: string): Saying | Wrong {
  if (amount === undefined) return { event: code.code };
  if (amount === 0) return { event: code.code, gone: true };
  if (amount === 'trace') return { problem: `${label}: no trace is logged here`, remedy: 'Type a figure' };
  const off = measureFault(code.measure, amount);
  if (off === undefined) return { event: code.code, number: amount };
  return {
    problem: `${label} ${off}`,
    remedy:
      code.measure === undefined
        ? `Its depth comes after @: ${typedAs}@.6`
        : `Type it in ${code.measure.unit}, its depth after @: ${typedAs}${code.measure.max}@.6`,
  };
}

/** A code without an amount: 1 stands for that it is there. */
function ofCodes(code: Code, amount: Amount | undefined, label: string, typedAs: string): Saying | Wrong {
  if (amount === undefined || amount === 0) return { code: code.code, amount: amount ?? 1 };
  return { problem: `${label} is there or not`, remedy: `Type ${typedAs}, or ${typedAs}0 to take it out` };
}

/** Limits of an amount: the levels of the scale, 0 to 100 percent, a trace only where the field knows one. */
function outsideLimits(
  schema: LoggingSchema,
  field: Field,
  amount: Amount,
  label: string,
): Wrong | undefined {
  const levels = scaleOf(schema, field)?.levels.length;
  if (levels !== undefined) {
    return amount !== 'trace' && Number.isInteger(amount) && amount <= levels
      ? undefined
      : { problem: `${label}: levels go from 1 to ${levels}`, remedy: 'Type one of them; 0 takes it out' };
  }
  if (amount === 'trace') {
    return 'traceCountsAsPercent' in field && field.traceCountsAsPercent !== undefined
      ? undefined
      : { problem: `${label}: no trace is logged here`, remedy: 'Type a percent' };
  }
  return amount <= 100
    ? undefined
    : { problem: `${label}: ${amount} % is more than all of it`, remedy: 'Type up to 100' };
}
