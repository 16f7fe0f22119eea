import { Buffer, isUtf8 } from 'node:buffer';
import { type ParseErrorCode, printParseErrorCode, visit } from 'jsonc-parser';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { lineAndColumn, lineExcerpt } from '../finding/place.ts';
import type { Json } from '../record/json.ts';
import { notJson, unsafeJson } from './findings.ts';

/** How much of a file is accepted before it is parsed. */
export interface JsonLimits {
  readonly bytes: number;
  readonly depth: number;
}

const MEGABYTE = 1024 * 1024;
/** Limits for a document (six times the file of a hole of 2,000 m with every row amended) and for every other file. */
export const DOCUMENT_LIMITS: JsonLimits = { bytes: 24 * MEGABYTE, depth: 64 };
export const OTHER_LIMITS: JsonLimits = { bytes: 4 * MEGABYTE, depth: 64 };

/** A hundred times what the fullest table of a hole holds; parsing more in one object takes seconds. */
const MOST_NAMES = 250_000;

/** A file's text (its byte order mark taken off) and what it says. */
export interface JsonText {
  readonly file: string;
  readonly text: string;
  readonly value: unknown;
}

/**
 * Reads JSON that anything may have written. Refused, each with its place: bytes that are not UTF-8, a file or a
 * nesting past the limits, a name said twice or reserved, a whole number past 2^53 and anything that is not JSON.
 */
export function readJsonText(bytes: Uint8Array, file: string, limits: JsonLimits): Result<JsonText> {
  if (bytes.length > limits.bytes) return refused(tooLarge(file, bytes.length, limits));
  const text = utf8Text(bytes);
  if (text === undefined) return refused(notUtf8(bytes, file));
  const names = namesIn(text, limits.depth);
  if (!names.ok) {
    return refused(
      at(text, file, names.at, unsafeJson.at, {
        problem: names.problem,
        remedy: 'No file of ours is: look at where it came from. Nothing was changed.',
      }),
    );
  }
  const value = parsedText(text);
  if (value !== undefined && plainNames(value) === names.count) return ok({ file, text, value });
  const faults = faultsOf(text, file);
  return faults.length > 0 ? { ok: false, findings: faults } : ok({ file, text, value: JSON.parse(text) });
}

/** The text of bytes, its byte order mark taken off; undefined where they are not UTF-8. A tenth of what TextDecoder takes. */
function utf8Text(bytes: Uint8Array): string | undefined {
  if (!isUtf8(bytes)) return undefined;
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('utf8');
  return text.startsWith('\uFEFF') ? text.slice(1) : text;
}

function parsedText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const RESERVED: ReadonlySet<string> = new Set(Object.getOwnPropertyNames(Object.prototype));

/**
 * How many names a parsed value holds, at every depth; not a number where one is reserved or a number is past what is exact. A name
 * said twice is held once: the text then has more names than its value.
 */
function plainNames(value: unknown): number {
  if (typeof value === 'number') return isExact(value) ? 0 : Number.NaN;
  if (typeof value !== 'object' || value === null) return 0;
  let count = 0;
  if (Array.isArray(value)) {
    for (const item of value) count += plainNames(item);
    return count;
  }
  for (const name in value) {
    if (RESERVED.has(name)) return Number.NaN;
    count += 1 + plainNames((value as { readonly [name: string]: unknown })[name]);
  }
  return count;
}

/** A number past 2^53 stands for its neighbours too, so that what was meant is lost. */
function isExact(value: number): boolean {
  return Number.isInteger(value) ? Number.isSafeInteger(value) : Number.isFinite(value);
}

/** Why a value could be written and not be read again by readJsonText, in words; undefined where it could. */
export function jsonFault(value: Json | undefined, depth: number): string | undefined {
  if (typeof value === 'number')
    return isExact(value) ? undefined : `${value} is too large to be kept exactly`;
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth === 0) return 'it is nested too deep';
  for (const [name, member] of Object.entries(value)) {
    if (name in Object.prototype) return `the name ${name} is reserved`;
    const fault = jsonFault(member, depth - 1);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** The finding for a file past its limit. */
export function tooLarge(file: string, bytes: number, limits: JsonLimits): Finding {
  const inMegabytes = (count: number): number => Math.ceil(count / MEGABYTE);
  return unsafeJson.at(
    { file },
    {
      problem: `it is ${inMegabytes(bytes)} MB; at most ${inMegabytes(limits.bytes)} MB is read`,
      remedy: 'No file of ours is that large: look at where it came from. Nothing was changed.',
    },
  );
}

function notUtf8(bytes: Uint8Array, file: string): Finding {
  const bad = firstBadByte(bytes);
  let line = 1;
  for (let feed = bytes.indexOf(0x0a); feed >= 0 && feed < bad; feed = bytes.indexOf(0x0a, feed + 1))
    line += 1;
  return notJson.at(
    { file, line },
    {
      problem: 'a byte here is not UTF-8 text',
      remedy: 'Save the file as UTF-8 in an editor, or restore a good copy. Nothing was changed.',
    },
  );
}

const PIECE = 65_536;

/** The first byte that is not UTF-8: the piece it is in is found first, then by halving where in it. */
function firstBadByte(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let start = 0;
  try {
    for (; start < bytes.length; start += PIECE)
      decoder.decode(bytes.subarray(start, start + PIECE), { stream: true });
  } catch {
    // It is in this piece, or in a character that was begun at the end of the piece before.
  }
  start = Math.max(0, Math.min(start, bytes.length) - 3);
  while (start > 0 && ((bytes[start] ?? 0) & 0xc0) === 0x80) start -= 1;
  let good = start;
  let bad = Math.min(bytes.length, start + PIECE + 6);
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(start, middle), { stream: true });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return good;
}

/**
 * How many names a text that is JSON has (its colons outside strings), or where nesting first goes past a depth. Runs without
 * recursion, before any parser does.
 */
function namesIn(
  text: string,
  limit: number,
):
  | { readonly ok: true; readonly count: number }
  | { readonly ok: false; readonly at: number; readonly problem: string } {
  let depth = 0;
  let count = 0;
  // Names of the object that is open at each depth.
  const here = new Int32Array(limit + 1);
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charCodeAt(index);
    if (character === 0x22) index = stringEnd(text, index);
    else if (character === 0x3a) {
      count += 1;
      const names = (here[depth] ?? 0) + 1;
      here[depth] = names;
      if (names > MOST_NAMES)
        return { ok: false, at: index, problem: `more than ${MOST_NAMES} names are in one object` };
    } else if (character === 0x7b || character === 0x5b) {
      depth += 1;
      if (depth > limit) return { ok: false, at: index, problem: `it is nested more than ${limit} deep` };
      here[depth] = 0;
    } else if (character === 0x7d || character === 0x5d) depth -= 1;
  }
  return { ok: true, count };
}

/** Where the string that begins at an offset ends: at its closing quote, or with the text. */
function stringEnd(text: string, start: number): number {
  for (let index = start + 1; index < text.length; index += 1) {
    const character = text.charCodeAt(index);
    if (character === 0x5c) index += 1;
    else if (character === 0x22) return index;
  }
  return text.length;
}

const PARSER_WORDS: Partial<Record<ReturnType<typeof printParseErrorCode>, string>> = {
  CommaExpected: 'a comma is missing before this',
  ColonExpected: 'a colon is missing before this',
  ValueExpected: 'a value is missing before this (or a comma is too many)',
  PropertyNameExpected: 'a name in double quotes is missing before this (or a comma is too many)',
  CloseBraceExpected: 'a } is missing before this',
  CloseBracketExpected: 'a ] is missing before this',
  EndOfFileExpected: 'there is something after the end',
  InvalidCommentToken: 'comments are not JSON',
  UnexpectedEndOfString: 'a text is not closed with a double quote',
  InvalidSymbol: 'this is no JSON value',
  InvalidNumberFormat: 'this is no JSON number',
};

/** More faults of one file are not told: whoever mends these sees the next. */
const MOST_FAULTS = 20;

function faultsOf(text: string, file: string): readonly Finding[] {
  const faults: Finding[] = [];
  let broken: Finding | undefined;
  const names: Set<string>[] = [];
  const unsafe = (offset: number, problem: string, remedy: string): void => {
    if (faults.length < MOST_FAULTS) faults.push(at(text, file, offset, unsafeJson.at, { problem, remedy }));
  };
  visit(
    text,
    {
      onObjectBegin: () => {
        names.push(new Set());
      },
      onObjectEnd: () => {
        names.pop();
      },
      onObjectProperty: (name, offset) => {
        const said = names.at(-1);
        if (said?.has(name)) unsafe(offset, `${name} is given twice`, 'Keep one of the two.');
        if (name in Object.prototype) unsafe(offset, `the name ${name} is reserved`, 'Use another name.');
        said?.add(name);
      },
      onLiteralValue: (value, offset, length) => {
        if (typeof value !== 'number') return;
        const written = text.slice(offset, offset + length);
        if (isExact(value)) return;
        unsafe(offset, `${written.slice(0, 40)} is too large to be kept exactly`, 'Write a smaller number.');
      },
      onError: (error, offset) => {
        broken ??= at(text, file, offset, notJson.at, parserWords(error));
      },
    },
    { disallowComments: true, allowTrailingComma: false },
  );
  return broken === undefined ? faults : [broken];
}

function parserWords(error: ParseErrorCode): { readonly problem: string; readonly remedy: string } {
  return {
    problem: PARSER_WORDS[printParseErrorCode(error)] ?? 'this is not JSON',
    remedy: 'Fix this place in an editor that knows JSON, or restore a good copy. Nothing was changed.',
  };
}

function at(
  text: string,
  file: string,
  offset: number,
  make: typeof notJson.at,
  said: { readonly problem: string; readonly remedy: string },
): Finding {
  const excerpt = lineExcerpt(text, offset);
  return make({ file, ...lineAndColumn(text, offset) }, { ...said, ...(excerpt === '' ? {} : { excerpt }) });
}
