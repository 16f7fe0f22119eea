import type { Finding } from '../../finding/finding.ts';
import { keysReadAsPair, strokesNear, strokesNearElsewhere } from '../findings.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';
import type { Stroke } from '../strokes.ts';
import { lettersBesideAmount } from './keyboard.ts';

/** A pair or what would be one: its letters, and whether an amount comes after it. */
type PairLike = Pick<Stroke, 'strokes' | 'takes'>;

/**
 * What goes wrong where a key and what comes after it read as a pair: a finger that lands on the letter beside an amount
 * (`p3` becomes `pe`), and an amount left out between two keys (`p3c2` becomes `pc2`).
 */
export function checkKeyRuns(
  schema: LoggingSchema,
  strokes: readonly Stroke[],
  raise: Raise,
  free: (stroke: Stroke) => string | undefined,
): readonly Finding[] {
  const keys = strokes.filter((stroke) => stroke.is === 'key');
  return strokes
    .filter((stroke) => stroke.is === 'pair')
    .flatMap((pair) => [
      ...keys.flatMap((key) => amountSlip(schema, key, pair, raise, free)),
      ...keysTogether(keys, pair, raise, free),
    ]);
}

/** The amount behind a key that is one slip from a pair, or undefined where none is or the pair would be refused for want of an amount. */
export function amountBesidePair(schema: LoggingSchema, key: Stroke, pair: PairLike): string | undefined {
  if (key.takes === 'no amount' || pair.takes === 'amount' || pair.strokes[0] !== key.strokes)
    return undefined;
  const letter = pair.strokes.slice(1);
  return shortAmounts(schema, key).find((amount) => lettersBesideAmount(amount).includes(letter));
}

/** The two keys that a pair reads as, where an amount can come after them and behind it. */
export function keysOfPair(keys: readonly Stroke[], pair: PairLike): readonly [Stroke, Stroke] | undefined {
  if (pair.takes === 'no amount') return undefined;
  const [first, second] = [...pair.strokes].map((letter) =>
    keys.find((key) => key.strokes === letter && key.takes !== 'no amount'),
  );
  return first === undefined || second === undefined ? undefined : [first, second];
}

function amountSlip(
  schema: LoggingSchema,
  key: Stroke,
  pair: Stroke,
  raise: Raise,
  free: (stroke: Stroke) => string | undefined,
): readonly Finding[] {
  const amount = amountBesidePair(schema, key, pair);
  if (amount === undefined) return [];
  const same = pair.field === key.field;
  const beside = { ',': 'the comma', ';': 'the semicolon' }[amount] ?? amount;
  return [
    raise(same ? strokesNear : strokesNearElsewhere, [pair.part, key.part], {
      problem:
        `${key.strokes}${amount} (${key.label}) and ${pair.strokes} (${pair.label}) are one slip apart` +
        (same ? ', in the same field' : ` (${key.field.label}, ${pair.field.label})`),
      remedy: `Give ${pair.label} a pair whose second letter is not beside ${beside}, or ${key.label} another key${isFree(free(pair))}.`,
    }),
  ];
}

function keysTogether(
  keys: readonly Stroke[],
  pair: Stroke,
  raise: Raise,
  free: (stroke: Stroke) => string | undefined,
): readonly Finding[] {
  const found = keysOfPair(keys, pair);
  if (found === undefined) return [];
  const [first, second] = found;
  return [
    raise(keysReadAsPair, [pair.part, first.part], {
      problem:
        `${first.strokes} (${first.label}) and ${second.strokes} (${second.label}), with no amount between them, ` +
        `read as ${pair.strokes} (${pair.label})`,
      remedy: `Give ${pair.label} another pair, or one of the two another key${isFree(free(pair))}.`,
    }),
  ];
}

/** The pair that is free, where one is, at the end of a remedy. */
function isFree(pair: string | undefined): string {
  return pair === undefined ? '' : `: the pair ${pair} is free`;
}

/** Amounts of one character that can come after a stroke: 0 takes out, a comma is a trace, a semicolon a half. */
function shortAmounts(schema: LoggingSchema, { field }: Stroke): readonly string[] {
  // A scale that is not there has a finding of its own.
  const scale = 'scale' in field ? schema.scales[field.scale] : undefined;
  const levels = scale?.levels.map(({ level }) => String(level)) ?? [];
  const steps = 'ladder' in field ? field.ladder.map((step) => (step === 0.5 ? ';' : String(step))) : [];
  const shares = field.kind === 'code' ? ['1', '2', '3', '4', '5', '6', '7', '8', '9'] : [];
  const trace = 'traceCountsAsPercent' in field && field.traceCountsAsPercent !== undefined ? [','] : [];
  return ['0', ...levels, ...steps, ...shares, ...trace].filter((amount) => amount.length === 1);
}
