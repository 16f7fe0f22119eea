import { type Code, type Field, type LoggingSchema, listOf } from '../schema/logging-schema.ts';
import { writeAmount } from './read-amount.ts';
import { rockField } from './rock.ts';
import { typingIndex } from './typing-index.ts';

/** Strokes that examples are made of: a project whose lists have no basalt and no pyrite is shown its own. */
export type ExampleStrokes = {
  /** Pair of a rock. */
  readonly rock: string;
  /** A mineral by its pair, with an amount of its ladder. */
  readonly mineral: { readonly pair: string; readonly text: string };
  /** Its single key; its pair where it has none. */
  readonly key: string;
  /** The rock said by its field. */
  readonly named: string;
  /** What in the log shows a zone: `sulphides PYR>=2`. */
  readonly seen: string;
  /** An event with its figure. */
  readonly event: string;
};

const known = new WeakMap<LoggingSchema, ExampleStrokes>();

/** The examples of a schema: its first rock and its first mineral that pairs type and that can hurt nobody. */
export function exampleStrokes(schema: LoggingSchema): ExampleStrokes {
  const found = known.get(schema) ?? made(schema);
  known.set(schema, found);
  return found;
}

function made(schema: LoggingSchema): ExampleStrokes {
  const rock = firstTyped(schema, rockField(schema)) ?? firstTyped(schema, schema.fields.find(isOfCode));
  const mineral = schema.fields
    .filter(({ kind }) => kind === 'percents' || kind === 'levels')
    .sort((a, b) => Number(b.kind === 'percents') - Number(a.kind === 'percents'))
    .map((field) => firstTyped(schema, field))
    .find((each) => each !== undefined);
  const event = firstTyped(
    schema,
    schema.fields.find(({ kind }) => kind === 'events'),
  );
  const amount = mineral === undefined ? '' : amountOf(mineral.field);
  const pair = mineral?.pair ?? rock?.pair ?? 'nr';
  return {
    rock: rock?.pair ?? 'nr',
    mineral: { pair, text: `${pair}${amount}` },
    key: mineral?.key ?? pair,
    named: rock === undefined ? "remark'text" : `${rock.field.name}'${rock.code.code}`,
    seen: mineral === undefined ? 'nr' : `${mineral.field.name} ${mineral.code.code}>=${amount}`,
    event: event === undefined ? pair : `${event.pair}${event.code.measure === undefined ? '' : '2'}`,
  };
}

interface TypedCode {
  readonly field: Field;
  readonly code: Code;
  readonly pair: string;
  readonly key: string | undefined;
}

const isOfCode = ({ kind }: Field): boolean => kind === 'code';

function firstTyped(schema: LoggingSchema, field: Field | undefined): TypedCode | undefined {
  if (field === undefined) return undefined;
  const codes = (listOf(schema, field)?.codes ?? []).filter(
    ({ retiredSince, caution }) => retiredSince === undefined && caution === undefined,
  );
  for (const code of codes) {
    const { pair, key } = typingIndex(schema).strokesOf(field, code.code);
    if (pair !== undefined) return { field, code, pair, key };
  }
  return undefined;
}

/** 2, or the step of the ladder that is nearest to it. */
function amountOf(field: Field): string {
  if (!('ladder' in field)) return '2';
  const nearest = [...field.ladder].sort((a, b) => Math.abs(a - 2) - Math.abs(b - 2))[0];
  return writeAmount(nearest ?? 2);
}
