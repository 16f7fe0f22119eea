/** A value of SQLite: `real` is a number that is stored as a floating-point one though it may be whole. */
export type SqlValue = null | string | Uint8Array | { readonly integer: number } | { readonly real: number };

const utf8 = new TextEncoder();

/** A whole number as a varint: seven bits a byte, the highest first; a negative one takes nine bytes. Source: SQLite file format, section 1.6. */
export function varint(value: number): readonly number[] {
  if (value < 0) {
    const bits = BigInt.asUintN(64, BigInt(value));
    const seven = Array.from(
      { length: 8 },
      (_, index) => Number((bits >> BigInt(57 - index * 7)) & 127n) + 128,
    );
    return [...seven, Number(bits & 255n)];
  }
  const bytes = [value % 128];
  for (let left = Math.floor(value / 128); left > 0; left = Math.floor(left / 128))
    bytes.unshift((left % 128) + 128);
  return bytes;
}

/** A row as a record: the kinds of its values, then their bytes. Source: SQLite file format, section 2.1. */
export function record(values: readonly SqlValue[]): Uint8Array {
  const kinds: number[] = [];
  let end = 0;
  for (const value of values) {
    end = room(end, value);
    const { kind, bytes } = put(end, value);
    kinds.push(...varint(kind));
    end += bytes;
  }
  // The size of the head counts itself: one byte, or two where it passes 127.
  const head = kinds.length + 1 <= 127 ? varint(kinds.length + 1) : varint(kinds.length + 2);
  const whole = new Uint8Array(head.length + kinds.length + end);
  whole.set(head);
  whole.set(kinds, head.length);
  whole.set(body.subarray(0, end), head.length + kinds.length);
  return whole;
}

/** Where the bytes of a row are put together, one row after the other: an array for each value would cost three times as much. */
let body = new Uint8Array(4096);
let view = new DataView(body.buffer);

/** Makes room for a value behind `end`; gives `end`. */
function room(end: number, value: SqlValue): number {
  const bytes = typeof value === 'string' ? value.length * 3 : value instanceof Uint8Array ? value.length : 8;
  if (end + bytes > body.length) {
    const larger = new Uint8Array((end + bytes) * 2);
    larger.set(body);
    body = larger;
    view = new DataView(body.buffer);
  }
  return end;
}

/** Puts a value at a place; gives its kind and how many bytes it took. */
function put(at: number, value: SqlValue): { readonly kind: number; readonly bytes: number } {
  if (value === null) return { kind: 0, bytes: 0 };
  if (typeof value === 'string') {
    const { written } = utf8.encodeInto(value, body.subarray(at));
    return { kind: written * 2 + 13, bytes: written };
  }
  if (value instanceof Uint8Array) {
    body.set(value, at);
    return { kind: value.length * 2 + 12, bytes: value.length };
  }
  if ('integer' in value) {
    // Two halves: a BigInt for each number costs more than all the rest.
    view.setInt32(at, Math.floor(value.integer / 2 ** 32));
    view.setUint32(at + 4, value.integer >>> 0);
    return { kind: 6, bytes: 8 };
  }
  view.setFloat64(at, value.real);
  return { kind: 7, bytes: 8 };
}
