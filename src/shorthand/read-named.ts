import { type Code, type Field, type LoggingSchema, listOf, scaleOf } from '../schema/logging-schema.ts';
import { type Amount, type Cell, NONE, NOT_OBSERVED } from '../value/cell.ts';
import { alwaysSomething, isWrong, meaning, type Wrong } from './meaning.ts';
import { nearWords } from './near.ts';
import { readAmount } from './read-amount.ts';
import { type Refusal, refusal, type Saying } from './said.ts';
import { typingIndex } from './typing-index.ts';

const FIELD = /[a-z][a-z0-9]*'/y;
const BARE = /[^ '/=]+/y;
/** Behind an event its depth stands, behind @. */
const BARE_EVENT = /[^ '/=@]+/y;
const NUMBER = /^-?(?:\d+(?:\.\d+)?|\.\d+)$/;

/** What comes after a field's name: as typed, whether in quotes, the amount behind it. */
type NamedValue = { readonly value: string; readonly quoted: boolean; readonly amount?: Amount };

/** The name of a field with its `'` at a place of the line, or undefined. */
export function fieldNameAt(text: string, at: number): string | undefined {
  FIELD.lastIndex = at;
  return FIELD.exec(text)?.[0].slice(0, -1);
}

/** An item said by its field, `rock'bst`, `comment''on time'`, `alteration'chl'2`: what it says and where it ends. */
export function readNamed(
  schema: LoggingSchema,
  text: string,
  at: number,
  name: string,
): { readonly field: Field; readonly says: Saying; readonly end: number } | Refusal {
  const { fields, qualityFields } = typingIndex(schema);
  const field = fields.get(name) ?? qualityFields.get(name);
  const span = { position: at, length: name.length };
  if (field === undefined) {
    const near = nearWords(name, [...fields.keys()]);
    const suggestions = near.map((each) => ({ text: `${each}'`, label: fields.get(each)?.label ?? each }));
    return refusal(
      span,
      `No field is called ${name}`,
      `Fields: ${[...fields.keys()].join(', ')}`,
      suggestions,
    );
  }
  const found = readValue(schema, field, text, at + name.length + 1);
  if (found === undefined) {
    return refusal(
      { position: at, length: text.length - at },
      `${name}: nothing readable comes after the '`,
      `Type ${name}'value, or ${name}''more than one word'`,
    );
  }
  const says = sayingOf(schema, field, found);
  return isWrong(says)
    ? refusal({ position: at, length: found.end - at }, says.problem, says.remedy)
    : { field, says, end: found.end };
}

function readValue(
  schema: LoggingSchema,
  field: Field,
  text: string,
  at: number,
): (NamedValue & { readonly end: number }) | undefined {
  const found =
    text[at] === "'"
      ? readQuoted(schema, field, text, at + 1)
      : readBare(text, at, field.kind === 'events' ? BARE_EVENT : BARE);
  if (found === undefined || text[found.end] !== "'") return found;
  const behind = readAmount(text, found.end + 1);
  return behind === undefined ? undefined : { ...found, ...behind };
}

function readBare(
  text: string,
  at: number,
  bare: RegExp,
): (NamedValue & { readonly end: number }) | undefined {
  bare.lastIndex = at;
  const value = bare.exec(text)?.[0];
  return value === undefined ? undefined : { value, quoted: false, end: at + value.length };
}

/** In quotes a code stands as it is (the longest that fits); in a text an apostrophe is doubled. */
function readQuoted(
  schema: LoggingSchema,
  field: Field,
  text: string,
  at: number,
): (NamedValue & { readonly end: number }) | undefined {
  const list = listOf(schema, field);
  if (list === undefined) {
    const value = /^(?:[^']|'')+/.exec(text.slice(at))?.[0];
    const end = at + (value?.length ?? 0);
    if (value === undefined || text[end] !== "'") return undefined;
    return { value: value.replaceAll("''", "'"), quoted: true, end: end + 1 };
  }
  const rest = text.slice(at).toLowerCase();
  const code = list.codes
    .map((each) => each.code)
    .filter((each) => rest.startsWith(`${each.toLowerCase()}'`))
    .sort((a, b) => b.length - a.length)[0];
  const length = code?.length ?? text.indexOf("'", at) - at;
  if (length <= 0) return undefined;
  return { value: text.slice(at, at + length), quoted: true, end: at + length + 1 };
}

function sayingOf(schema: LoggingSchema, field: Field, said: NamedValue): Saying | Wrong {
  const { value, quoted, amount } = said;
  if (!quoted && value === 'nr') return noAmount(field, amount) ?? { cell: NOT_OBSERVED };
  if (!quoted && value === '0' && (field.canBeNone || field.kind !== 'number')) {
    return noAmount(field, amount) ?? (field.canBeNone ? { cell: NONE } : alwaysSomething(field));
  }
  const list = listOf(schema, field);
  if (list !== undefined) {
    const code = codeTyped(list.codes, value);
    if (isWrongCode(code)) return code;
    return meaning(schema, { field, code }, amount, `${field.name}'${value}'`);
  }
  return noAmount(field, amount) ?? plainValue(schema, field, value, quoted);
}

function noAmount(field: Field, amount: Amount | undefined): Wrong | undefined {
  if (amount === undefined) return undefined;
  return {
    problem: `${field.label}: an amount has no meaning there`,
    remedy: "Leave out the second ' and the amount",
  };
}

function isWrongCode(code: Code | Wrong): code is Wrong {
  return 'problem' in code;
}

/** The code as typed, or the one code that differs from it only in capitals. */
function codeTyped(codes: readonly Code[], value: string): Code | Wrong {
  const alike = codes.filter((each) => each.code.toLowerCase() === value.toLowerCase());
  const code = alike.find((each) => each.code === value) ?? (alike.length === 1 ? alike[0] : undefined);
  if (code === undefined) {
    const near = nearWords(
      value.toLowerCase(),
      codes.map((each) => each.code.toLowerCase()),
    );
    const remedy =
      near.length === 0 ? 'Press Tab after the field for the list' : `Did you mean ${near.join(', ')}?`;
    return { problem: `${value} is not in the list`, remedy };
  }
  if (code.retiredSince === undefined) return code;
  return {
    problem: `${code.label} was retired on ${code.retiredSince} and can’t be used any more`,
    remedy: 'Take the code that replaced it',
  };
}

function plainValue(schema: LoggingSchema, field: Field, value: string, quoted: boolean): Saying | Wrong {
  if (field.kind === 'text') return { cell: { text: value } };
  if (field.kind === 'number') return numberSaid(field, value);
  if (field.kind === 'flag' && value === '1') return { cell: { flag: true } };
  const level = scaleOf(schema, field)?.levels.find(
    (each) => each.code?.toLowerCase() === value.toLowerCase(),
  );
  if (level !== undefined) return { cell: { level: level.level } };
  const typed = quoted ? undefined : readAmount(value, 0);
  if (typed?.end === value.length && field.kind !== 'flag') {
    return meaning(schema, { field }, typed.amount, `${field.name}'`);
  }
  return {
    problem: `${field.label}: ${value} can't be read`,
    remedy:
      field.kind === 'flag' ? `Type ${field.name}'1 or ${field.name}'0` : `Type ${field.name}' and an amount`,
  };
}

function numberSaid(field: Extract<Field, { kind: 'number' }>, value: string): Saying | Wrong {
  const limits = `${field.min} to ${field.max} ${field.unit}, up to ${field.decimals} decimals`;
  const wrong = (problem: string): Wrong => ({
    problem: `${field.label}: ${problem}`,
    remedy: `Type a number, ${limits}`,
  });
  if (!NUMBER.test(value)) return wrong(`${value} is not a number`);
  const number = Number(value);
  if (number < field.min || number > field.max) return wrong(`${value} is out of range`);
  if (Number(number.toFixed(field.decimals)) !== number) return wrong(`${value} has too many decimals`);
  return { cell: { number: number === 0 ? 0 : number } } satisfies { cell: Cell };
}
