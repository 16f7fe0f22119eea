import { type LoggingSchema, qualifierFor } from '../schema/logging-schema.ts';
import { takesOf } from '../schema/strokes.ts';
import { exampleStrokes } from './example-strokes.ts';
import { isWrong, meaning } from './meaning.ts';
import { nearPairs } from './near.ts';
import { qualifiedBy, qualityTyped, type Subject } from './qualities.ts';
import { readAmount, readPoint } from './read-amount.ts';
import { fieldNameAt, readNamed } from './read-named.ts';
import { type Refusal, refusal, type Said, type Saying } from './said.ts';
import { labelOf, NO_RETURN, type Quality, type Typed, typingIndex } from './typing-index.ts';

/** What the items of a line are read with. */
export type ItemsContext = { readonly schema: LoggingSchema; readonly gloves?: boolean | undefined };

/** The items of a line, whether a last `=` insists on the whole of it, and the remark behind `/`. */
export type Items = {
  readonly kind: 'items';
  readonly said: readonly Said[];
  readonly insisted: boolean;
  readonly remark?: string;
};

/** What follows the items (or the `.`, or `nr`) from a place of the line: `=`, a remark, nothing; else undefined. */
export function readEnd(
  text: string,
  at: number,
): { readonly insisted: boolean; readonly remark?: string } | undefined {
  const found = /^ *(=?) *(?:\/(.*?)( *=)? *)?$/s.exec(text.slice(at));
  if (found === null) return undefined;
  const remark = found[2]?.trim() ?? '';
  // Behind a remark too: whoever is asked about a line puts = where the cursor stands.
  const insisted = found[1] === '=' || found[3] !== undefined;
  return { insisted, ...(remark === '' ? {} : { remark }) };
}

/** Reads the items of a line from a place on, by longest match: two letters are a pair, one letter with an amount a key. */
export function readItems(context: ItemsContext, text: string, start: number): Items | Refusal {
  const said: Said[] = [];
  let subject: Subject | undefined;
  let at = start;
  for (;;) {
    const spaces = /^ */.exec(text.slice(at))?.[0].length ?? 0;
    const end = readEnd(text, at);
    if (end !== undefined) return { kind: 'items', said, ...end };
    const mayName = at === start || spaces > 0;
    const item = readItem(context, text, at + spaces, mayName, subject);
    if ('kind' in item) return item;
    if ('subject' in item) subject = item.subject;
    else {
      said.push(item.said);
      subject = subjectOf(item.said) ?? subject;
      // Behind what more is said of an item, = insists on the item too.
      const main = said.findLastIndex((each) => !('quality' in each.says));
      if (item.said.insisted && said[main] !== undefined) said[main] = { ...said[main], insisted: true };
    }
    at = item.end;
  }
}

/** An item, or a mineral that stands without an amount because only what follows is said of it (`clpv`). */
type ItemRead =
  | { readonly said: Said; readonly end: number }
  | { readonly subject: Subject; readonly end: number };

/** What the next pair can say more of: an item that was not itself a quality. */
function subjectOf({ field, says, position }: Said): Subject | undefined {
  if ('quality' in says) return undefined;
  if ('event' in says) return { field, code: undefined, isShare: false, position };
  const code = 'code' in says ? says.code : 'code' in says.cell ? says.cell.code : undefined;
  return { field, code, isShare: 'code' in says && field.kind === 'code', position };
}

function readItem(
  context: ItemsContext,
  text: string,
  at: number,
  mayName: boolean,
  subject: Subject | undefined,
): ItemRead | Refusal {
  const name = fieldNameAt(text, at);
  const glued = name === undefined ? undefined : gluedField(context.schema, name, mayName);
  if (glued !== undefined && name !== undefined) return gluedName(at + name.length - glued.length, glued);
  if (name !== undefined && mayName) return readNamedItem(context, text, at, name, subject);
  const letters = /^[a-z]{1,2}/.exec(text.slice(at))?.[0];
  if (letters === undefined) return strayCharacter(context.schema, text, at);
  const quality = qualityTyped(context.schema, letters, subject);
  if (quality !== undefined) return qualityItem(context.schema, text, at, letters, quality, subject);
  const typed = typedBy(context, text, at, letters);
  if ('kind' in typed) return typed;
  const alone = saidOnlyMore(context.schema, text, at + letters.length, typed, at);
  return alone ?? amountBehind(context, text, at, letters, typed);
}

/** The field whose name stands glued behind other items, as `rock` in `p3rock'bst`. */
function gluedField(schema: LoggingSchema, name: string, mayName: boolean): string | undefined {
  const { fields } = typingIndex(schema);
  if (mayName && fields.has(name)) return undefined;
  return [...fields.keys()].find((field) => name.endsWith(field));
}

/** A mineral without its amount, where what stands right behind it says more of it: its amount stays as it is above. */
function saidOnlyMore(
  schema: LoggingSchema,
  text: string,
  end: number,
  { field, code }: Typed,
  position: number,
): ItemRead | undefined {
  const letters = /^[a-z]{2}/.exec(text.slice(end))?.[0];
  if (letters === undefined || code === undefined || takesOf(field) !== 'amount' || end - position !== 2)
    return undefined;
  const subject: Subject = { field, code: code.code, isShare: false, position };
  const quality = qualityTyped(schema, letters, subject);
  return quality !== undefined && qualifierFor(field, quality.list, code.code) !== undefined
    ? { subject, end }
    : undefined;
}

/** What more a pair says: of the item before it, or of the one field that it can be said of. */
function qualityItem(
  schema: LoggingSchema,
  text: string,
  at: number,
  letters: string,
  { list, code }: Quality,
  subject: Subject | undefined,
): ItemRead | Refusal {
  const behind = readAmount(text, at + letters.length);
  const end = behind?.end ?? at + letters.length;
  const span = { position: at, length: end - at };
  if (behind !== undefined && behind.amount !== 0)
    return refusal(span, `${code.label} takes no amount`, `Type ${letters}, or ${letters}0 to take it out`);
  const target = qualifiedBy(schema, list, subject);
  if ('problem' in target) return refusal(span, `${code.label} ${target.problem}`, target.remedy);
  const says = { list, quality: behind === undefined ? code.code : undefined, of: target.of };
  return finished(text, at, end, { field: target.field, says, byKey: false });
}

function readNamedItem(
  context: ItemsContext,
  text: string,
  at: number,
  name: string,
  subject: Subject | undefined,
): ItemRead | Refusal {
  const read = readNamed(context.schema, text, at, name);
  if ('kind' in read) return read;
  const placed = 'event' in read.says ? placedEvent(text, read.end, read.says) : read;
  if ('kind' in placed) return placed;
  const named = { ...read, ...placed };
  if (!/^(?:[ =/]|$)/.test(text.slice(named.end))) {
    return refusal(
      { position: named.end, length: 1 },
      `Nothing can be glued to what ${name}' says`,
      'Type a space before the next item',
    );
  }
  const list = typingIndex(context.schema).qualityFields.get(named.field.name);
  if (list !== named.field)
    return finished(text, at, named.end, { field: named.field, says: named.says, byKey: false });
  const span = { position: at, length: named.end - at };
  const target = qualifiedBy(context.schema, list.list, subject);
  if ('problem' in target) return refusal(span, `${list.label} ${target.problem}`, target.remedy);
  const quality = 'cell' in named.says && 'code' in named.says.cell ? named.says.cell.code : undefined;
  const says = { list: list.list, quality, of: target.of };
  return finished(text, at, named.end, { field: target.field, says, byKey: false });
}

function typedBy(context: ItemsContext, text: string, at: number, letters: string): Typed | Refusal {
  const { schema } = context;
  const index = typingIndex(schema);
  const span = { position: at, length: letters.length };
  const typed = (letters.length === 2 ? index.pairs : index.keys).get(letters);
  if (typed === undefined) return unknownLetters(context, span, letters, text);
  if (letters.length === 2 || context.gloves !== true) return typed;
  const pair = index.strokesOf(typed.field, typed.code?.code).pair;
  return refusal(
    span,
    `Gloves mode takes no single keys: ${letters}`,
    pair === undefined ? 'Say it by its field' : `Type ${pair} and the amount`,
  );
}

function unknownLetters(
  { schema }: ItemsContext,
  span: { readonly position: number; readonly length: number },
  letters: string,
  text: string,
): Refusal {
  const retired = typingIndex(schema).retired.get(letters);
  if (retired !== undefined) {
    return refusal(
      span,
      `${retired.label} (${letters}) was retired on ${retired.retiredSince}`,
      'Old logs keep it; type what replaced it',
    );
  }
  if (letters === NO_RETURN) {
    return refusal(
      span,
      'nr means no return and is typed alone',
      `Type nr by itself, or a field with it: ${schema.fields[0]?.name ?? 'rock'}'nr`,
    );
  }
  const near = nearPairs(schema, letters);
  const remedy =
    near.length === 0
      ? 'Press Tab for what fits here'
      : `Did you mean ${near.map((each) => `${each.text} ${each.label}`).join(', ')}?`;
  const isAlone = letters.length === 1 && text.length > span.position + 1;
  return refusal(span, isAlone ? `No key ${letters}` : `${letters} is unknown`, remedy, near);
}

function amountBehind(
  { schema }: ItemsContext,
  text: string,
  at: number,
  letters: string,
  typed: Typed,
): ItemRead | Refusal {
  const behind = readAmount(text, at + letters.length);
  const end = behind?.end ?? at + letters.length;
  const span = { position: at, length: end - at };
  if (letters.length === 1 && behind === undefined) {
    const label = labelOf(schema, typed.field, typed.code?.code);
    return refusal(span, `${letters} ${label}: how much?`, `Type the amount after it: ${letters}2`);
  }
  const says = meaning(schema, typed, behind?.amount, letters);
  if (isWrong(says)) return refusal(span, says.problem, says.remedy);
  const placed = 'event' in says ? placedEvent(text, end, says) : { says, end };
  if ('kind' in placed) return placed;
  return finished(text, at, placed.end, {
    field: typed.field,
    says: placed.says,
    byKey: letters.length === 1,
  });
}

/** An event with the depth that comes after it, where one does. */
function placedEvent(
  text: string,
  at: number,
  says: Extract<Saying, { event: string }>,
): { readonly says: Saying; readonly end: number } | Refusal {
  if (text[at] !== '@') return { says, end: at };
  const point = readPoint(text, at);
  if (point === undefined)
    return refusal(
      { position: at, length: 1 },
      'No depth comes after @',
      'Type it in metres, @44.6, or what comes after the point: @.6',
    );
  return { says: { ...says, at: point.at }, end: point.end };
}

/** A `=` glued to an item insists on that item; one behind a space, on the whole row. */
function finished(
  text: string,
  at: number,
  end: number,
  item: Pick<Said, 'field' | 'says' | 'byKey'>,
): ItemRead {
  const insisted = text[end] === '=';
  const said = { ...item, text: text.slice(at, end), position: at, length: end - at, insisted };
  return { said, end: insisted ? end + 1 : end };
}

function gluedName(at: number, name: string): Refusal {
  return refusal(
    { position: at, length: name.length + 1 },
    `${name}' must start the line or follow a space`,
    'Type a space before it',
  );
}

function strayCharacter(schema: LoggingSchema, text: string, at: number): Refusal {
  const character = text[at] ?? '';
  const span = { position: at, length: 1 };
  if (/\p{Lu}/u.test(character)) {
    return refusal(span, `${character} is a capital: Caps Lock?`, 'Codes are typed in lower case');
  }
  if (/[\d.,]/.test(character)) {
    return refusal(
      span,
      `${character} has nothing before it to measure`,
      `Type the letters first, then the amount: ${exampleStrokes(schema).mineral.text}`,
    );
  }
  if (character === ';')
    return refusal(span, '; starts a command and comes first', 'Clear the line, then type ;');
  if (character === "'")
    return refusal(
      span,
      "' follows the name of a field",
      `Type the field first: ${exampleStrokes(schema).named}`,
    );
  return refusal(span, `${character} has no meaning here`, 'Take it out');
}
