/** What a JSON file can hold, read-only. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** A JSON object, read-only. */
export type JsonObject = { readonly [key: string]: Json };

/**
 * JSON with its keys sorted at every depth (by UTF-16 units) and no white space, as RFC 8785 writes it: equal values have
 * equal texts, so that a hash of the text is a hash of the value. Undefined members are left out, as JSON.stringify does.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item)).join(',')}]`;
  const record = value as Readonly<Record<string, unknown>>;
  const members = Object.keys(record)
    .filter((key) => record[key] !== undefined)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonicalJson(record[key])}`);
  return `{${members.join(',')}}`;
}

/** True where two JSON values are the same, the order of keys aside. Undefined is "not there" and is the same only as itself. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a === b || canonicalJson(a) === canonicalJson(b);
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
