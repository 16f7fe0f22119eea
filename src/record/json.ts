/** What a JSON file can hold, read-only. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** A JSON object, read-only. */
export type JsonObject = { readonly [key: string]: Json };

/**
 * JSON with its keys sorted at every depth (by UTF-16 units) and no white space, as RFC 8785 writes it: equal values have
 * equal texts, so that a hash of the text is a hash of the value. Undefined members are left out, as JSON.stringify does.
 */
export function canonicalJson(value: unknown): string {
  if (typeof value === 'string') return quoted(value);
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return canonicalList(value);
  const record = value as Readonly<Record<string, unknown>>;
  let members = '';
  for (const key of sortedKeys(record)) {
    if (record[key] === undefined) continue;
    members += `${members === '' ? '' : ','}${quoted(key)}:${canonicalJson(record[key])}`;
  }
  return `{${members}}`;
}

function canonicalList(list: readonly unknown[]): string {
  let items = '';
  for (let index = 0; index < list.length; index += 1)
    items += `${index === 0 ? '' : ','}${canonicalJson(list[index])}`;
  return `[${items}]`;
}

/** By insertion: the objects of a file have a handful of keys, and sort() costs more than the rest of their text. */
function sortedKeys(record: object): readonly string[] {
  const keys = Object.keys(record);
  if (keys.length > MOST_BY_INSERTION) return keys.sort();
  for (let index = 1; index < keys.length; index += 1) {
    const key = keys[index] as string;
    let at = index;
    for (; at > 0 && (keys[at - 1] as string) > key; at -= 1) keys[at] = keys[at - 1] as string;
    keys[at] = key;
  }
  return keys;
}
const MOST_BY_INSERTION = 24;

/** Text that JSON writes as it is. */
const AS_IT_IS = /^[\x20\x21\x23-\x5b\x5d-\x7e]*$/;
const quoted = (text: string): string => (AS_IT_IS.test(text) ? `"${text}"` : JSON.stringify(text));

/** True where two JSON values are the same, the order of keys aside. Undefined is "not there" and is the same only as itself. */
export function sameJson(a: unknown, b: unknown): boolean {
  return a === undefined || b === undefined ? a === b : sameValue(a, b);
}

/** True where the canonical texts of two values are the same, found without writing them. */
function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (!isHolder(a) || !isHolder(b))
    return !isHolder(a) && !isHolder(b) && canonicalJson(a) === canonicalJson(b);
  if (!Array.isArray(a) || !Array.isArray(b))
    return !Array.isArray(a) && !Array.isArray(b) && sameMembers(a, b);
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index += 1) if (!sameValue(a[index], b[index])) return false;
  return true;
}

type Members = { readonly [key: string]: unknown };

const isHolder = (value: unknown): value is Members => typeof value === 'object' && value !== null;

function sameMembers(a: Members, b: Members): boolean {
  let count = 0;
  for (const key of Object.keys(a)) {
    if (a[key] === undefined) continue;
    count += 1;
    if (!Object.hasOwn(b, key) || b[key] === undefined || !sameValue(a[key], b[key])) return false;
  }
  for (const key of Object.keys(b)) if (b[key] !== undefined) count -= 1;
  return count === 0;
}

/**
 * The member of that name, or undefined. Names come from files, so one that every object inherits (`constructor`,
 * `__proto__`) must read as not there unless the file has it.
 */
export function own<T>(record: { readonly [key: string]: T } | undefined, key: string): T | undefined {
  return record !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;
}

/** Sets a member of a record that is still being made. Plain assignment to `__proto__` would change what the record is instead. */
export function setOwn<T>(record: Record<string, T>, key: string, value: T): void {
  if (key === '__proto__')
    Object.defineProperty(record, key, { value, writable: true, enumerable: true, configurable: true });
  else record[key] = value;
}

/** True of a JSON object: neither null, a list nor a plain value. */
export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
