import type { Condition } from '../../condition/condition.ts';
import { parseDepth } from '../../quantity/depth.ts';
import { fieldNamed, type LoggingSchema } from '../../schema/logging-schema.ts';
import type { Expected } from './expected.ts';

/** How an expected contact or zone is said, for messages. */
export const EXPECTED_FORM =
  'fresh rock 40 seen oxidation<=1; lode 70-78 seen sulphides PYR>=2; shale 55 seen rock SHL; old stope 80-84 void';

/** A contact or zone as said, or what is wrong with it, in words. */
export type ExpectedRead =
  | { readonly ok: true; readonly expected: Expected }
  | { readonly ok: false; readonly problem: string };

const FORM =
  /^(?<name>\S(?:.*?\S)?) +(?<from>[\d.]+)(?:-(?<to>[\d.]+))?(?: +(?<hazard>fibre|void))?(?: +seen +(?<field>\w+)(?: +(?<code>\w+))?(?: *(?<asks>>=|<=|>|<) *(?<amount>\d+(?:\.\d+)?))?)?$/;

const ASKS = { '>=': 'atLeast', '>': 'moreThan', '<=': 'atMost', '<': 'lessThan' } as const;

/**
 * Reads `lode 70-78 seen sulphides PYR>=2`: a name, its depth along the planned hole (or two, for a zone), perhaps its hazard, and behind
 * `seen` what in the log tells it: a field, a code of it, an amount. The field's kind says whether a code is what it is or what it holds.
 */
export function readExpected(schema: LoggingSchema, text: string): ExpectedRead {
  const said = FORM.exec(text.trim())?.groups;
  if (said === undefined) return { ok: false, problem: 'a name and a depth are wanted, like shale 55' };
  const fromMm = parseDepth(said.from ?? '');
  const toMm = said.to === undefined ? undefined : parseDepth(said.to);
  if (fromMm === undefined || (said.to !== undefined && toMm === undefined))
    return {
      ok: false,
      problem: `${said.from}${said.to === undefined ? '' : `-${said.to}`} is not a depth in metres`,
    };
  if (toMm !== undefined && toMm <= fromMm)
    return { ok: false, problem: 'the bottom of the zone is not below its top' };
  const { hazard } = said;
  const seen =
    said.field === undefined
      ? undefined
      : seenBy(schema, said as Readonly<Record<string, string | undefined>>);
  return {
    ok: true,
    expected: {
      name: said.name ?? '',
      fromMm,
      ...(toMm === undefined ? {} : { toMm }),
      ...(hazard === 'fibre' || hazard === 'void' ? { hazard } : {}),
      ...(seen === undefined ? {} : { seen }),
    },
  };
}

function seenBy(schema: LoggingSchema, said: Readonly<Record<string, string | undefined>>): Condition {
  const { field: name = '', code, asks, amount } = said;
  const of = code === undefined ? {} : { of: code };
  if (asks !== undefined)
    return { field: name, ...of, [ASKS[asks as keyof typeof ASKS]]: Number(amount) } as Condition;
  const field = fieldNamed(schema, name);
  const several =
    field?.kind === 'percents' ||
    field?.kind === 'levels' ||
    field?.kind === 'codes' ||
    field?.kind === 'events';
  return code !== undefined && !several ? { field: name, is: code } : { field: name, ...of, seen: true };
}
