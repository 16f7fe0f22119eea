import { type Field, type LoggingSchema, listOf, scaleOf } from '../schema/logging-schema.ts';
import { COMMAND_WORDS, RANGE_FORM } from './commands.ts';
import type { EntryContext } from './parse.ts';
import { writeAmount } from './read-amount.ts';
import type { Suggestion } from './said.ts';
import { labelOf, standsIn, type Typed, typingIndex } from './typing-index.ts';
import { writeNamedAmount, writeNamedCell, writeNamedEvent } from './write-named.ts';

/** What could stand at the end of a line. */
export type Completion = {
  /** Each option takes the place of the line from here on. */
  readonly from: number;
  /** The likeliest first: Tab takes it. */
  readonly options: readonly Suggestion[];
  /** Amounts that can follow what is typed, with their meaning: shown, never taken by Tab, because they are observed. */
  readonly amounts: readonly Suggestion[];
};

/**
 * What could complete the last token of a line, or come next where none is begun. A pair is found by its letters, by
 * the start of a word of its label, and by its code; a command from `words`, which may hold more than the entry line's own.
 */
export function complete(
  text: string,
  context: EntryContext,
  words: readonly Suggestion[] = COMMAND_WORDS,
): Completion {
  if (text.startsWith(';')) return completeCommand(text, context, words);
  const named = /(?:^| )([a-z][a-z0-9]*)'('?)([^'/=]*)$/.exec(text);
  const index = typingIndex(context.schema);
  const field = index.fields.get(named?.[1] ?? '') ?? index.qualityFields.get(named?.[1] ?? '');
  if (named !== null && field !== undefined) {
    const from = text.length - named[0].trimStart().length;
    return { from, options: valuesOf(context.schema, field, named[3] ?? ''), amounts: [] };
  }
  if (/[/']/.test(text)) return { from: text.length, options: [], amounts: [] };
  const begun = /[a-z]*$/.exec(text)?.[0] ?? '';
  if (begun === '') return { from: text.length, options: nextItems(context), amounts: [] };
  const whole = completeToken(text, begun, context);
  return whole.options.length + whole.amounts.length > 0
    ? whole
    : completeToken(text, lastToken(context, begun), context);
}

function completeToken(text: string, token: string, context: EntryContext): Completion {
  const from = text.length - token.length;
  const mayName = from === 0 || text[from - 1] === ' ';
  const typed = typedBy(context, token);
  return {
    from,
    options: matching(context, token, mayName).filter((option) => option.text !== token),
    amounts: typed === undefined ? [] : amountsOf(context.schema, typed),
  };
}

/** What is left of glued letters when the pairs before it are taken off: `py` of `bspy`. */
function lastToken({ schema }: EntryContext, letters: string): string {
  const { pairs, qualities } = typingIndex(schema);
  return letters.length > 2 && (pairs.has(letters.slice(0, 2)) || qualities.has(letters.slice(0, 2)))
    ? lastToken({ schema }, letters.slice(2))
    : letters;
}

/** What letters name as they are: a pair, or a key whose mineral is above. */
function typedBy({ schema, above, gloves }: EntryContext, letters: string): Typed | undefined {
  const { pairs, keys } = typingIndex(schema);
  if (letters.length !== 1) return pairs.get(letters);
  const typed = gloves === true ? undefined : keys.get(letters);
  return typed !== undefined && standsIn(above?.cells, typed.field, typed.code?.code) ? typed : undefined;
}

/** Amounts that can follow: levels with their names, the steps of the ladder; 0 takes out. */
function amountsOf(schema: LoggingSchema, { field, code }: Typed): readonly Suggestion[] {
  const out = field.canBeNone || code !== undefined ? [{ text: '0', label: 'none: takes it out' }] : [];
  if (field.kind === 'events') {
    const unit = code?.measure?.unit;
    const measured = unit === undefined ? [] : [{ text: '2', label: `in ${unit}` }];
    return [...measured, { text: '@.6', label: 'its depth, in metres' }, ...out];
  }
  const levels = scaleOf(schema, field)?.levels;
  if (levels !== undefined) {
    return [
      ...levels.map(({ level, label, look }) => ({
        text: `${level}`,
        label: look === '' ? label : `${label}: ${look}`,
      })),
      ...out,
    ];
  }
  if (!('ladder' in field)) return [];
  const trace = field.traceCountsAsPercent === undefined ? [] : [{ text: ',', label: 'trace' }];
  return [...trace, ...field.ladder.map((step) => ({ text: writeAmount(step), label: `${step} %` })), ...out];
}

/** Keys of what is above, then every pair in the order of the log sheet, then fields that are said by name. */
function nextItems(context: EntryContext): readonly Suggestion[] {
  const { schema, above, gloves } = context;
  const { keys, pairs } = typingIndex(schema);
  const byKey =
    gloves === true
      ? []
      : [...keys].filter(([, { field, code }]) => standsIn(above?.cells, field, code?.code));
  return [...byKey, ...pairs]
    .map(([strokes, typed]) => suggestion(schema, strokes, typed))
    .concat(fieldNames(schema, ''));
}

function suggestion(schema: LoggingSchema, text: string, { field, code }: Typed): Suggestion {
  return { text, label: labelOf(schema, field, code?.code) };
}

function fieldNames(schema: LoggingSchema, begun: string): readonly Suggestion[] {
  return schema.fields
    .filter(({ name }) => name.startsWith(begun))
    .map(({ name, label }) => ({ text: `${name}'`, label }));
}

/** Pairs, codes without a pair and field names that the letters could begin; the pair's own letters first. */
function matching(context: EntryContext, begun: string, mayName: boolean): readonly Suggestion[] {
  const { schema } = context;
  const byLetters: Suggestion[] = [];
  const byWord: Suggestion[] = [];
  for (const [pair, typed] of typingIndex(schema).pairs) {
    const named = suggestion(schema, pair, typed);
    if (pair.startsWith(begun)) byLetters.push(named);
    else if (wordsBegin(named.label, begun) || wordsBegin(typed.code?.code ?? typed.field.name, begun))
      byWord.push(named);
  }
  for (const [pair, { code }] of typingIndex(schema).qualities) {
    const named = { text: pair, label: code.label };
    if (pair.startsWith(begun)) byLetters.push(named);
    else if (wordsBegin(code.label, begun) || wordsBegin(code.code, begun)) byWord.push(named);
  }
  return [
    ...byLetters,
    ...byWord,
    ...(mayName ? [...fieldNames(schema, begun), ...unpaired(schema, begun)] : []),
  ];
}

/** Codes without strokes, as their field says them. */
function unpaired(schema: LoggingSchema, begun: string): readonly Suggestion[] {
  return schema.fields.flatMap((field) =>
    (listOf(schema, field)?.codes ?? [])
      .filter(({ code, label, retiredSince }) => {
        const isTyped = typingIndex(schema).strokesOf(field, code).pair !== undefined;
        return (
          !isTyped && retiredSince === undefined && (wordsBegin(label, begun) || wordsBegin(code, begun))
        );
      })
      .map(({ code, label }) => ({ text: codeByName(schema, field, code), label })),
  );
}

function codeByName(schema: LoggingSchema, field: Field, code: string): string {
  if (field.kind === 'code') return writeNamedCell(schema, field, { code });
  const one = writeNamedAmount(schema, field, code, 1);
  if (field.kind === 'events') return writeNamedEvent(schema, field, code, undefined);
  return field.kind === 'codes' ? one : one.slice(0, -1);
}

function wordsBegin(words: string, begun: string): boolean {
  return words
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .some((word) => word.startsWith(begun));
}

/** What a field can be said to be: its codes, its levels; not observed, and none where it can be. */
function valuesOf(schema: LoggingSchema, field: Field, begun: string): readonly Suggestion[] {
  const codes = (listOf(schema, field)?.codes ?? [])
    .filter(({ retiredSince }) => retiredSince === undefined)
    .map(({ code, label }) => ({ value: code, text: codeByName(schema, field, code), label }));
  const levels = (field.kind === 'level' ? (scaleOf(schema, field)?.levels ?? []) : []).map(
    ({ level, code, label }) => ({
      value: code ?? `${level}`,
      text: writeNamedCell(schema, field, { level }),
      label,
    }),
  );
  const absences = [
    ...(field.canBeNone ? [{ value: '0', text: `${field.name}'0`, label: `no ${field.label}` }] : []),
    { value: 'nr', text: `${field.name}'nr`, label: 'not observed' },
  ];
  return [...codes, ...levels, ...absences]
    .filter(
      ({ value, label }) =>
        value.toLowerCase().startsWith(begun.toLowerCase()) || wordsBegin(label, begun.toLowerCase()),
    )
    .map(({ text, label }) => ({ text, label }));
}

/** Behind a range what can be said of its rows, without single keys: they would have to stand in each. Behind a word its form, shown only. */
function completeCommand(text: string, context: EntryContext, words: readonly Suggestion[]): Completion {
  const range = /^;[\d.]+-[\d.]+ +/.exec(text)?.[0];
  if (range !== undefined) {
    const said = complete(text.slice(range.length), { ...context, gloves: true });
    return { ...said, from: said.from + range.length };
  }
  const [, word = '', space = ''] = /^;([^ ]*)( *)/.exec(text) ?? [];
  if (space !== '') {
    const known = words.filter((each) => each.text === word);
    return {
      from: text.length,
      options: [],
      amounts: known.map(({ label }) => ({ text: `;${word}`, label })),
    };
  }
  const options = words
    .filter((each) => each.text.startsWith(word))
    .map((each) => ({ text: `;${each.text}`, label: each.label }));
  const ranges = word === '' ? [{ text: ';', label: `${RANGE_FORM.form}: ${RANGE_FORM.does}` }] : [];
  return { from: 0, options: [...options, ...ranges], amounts: [] };
}
