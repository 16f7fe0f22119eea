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
  const parts = values.map(stored);
  const kinds = parts.flatMap(({ kind }) => varint(kind));
  // The size of the head counts itself: one byte, or two where it passes 127.
  const head = kinds.length + 1 <= 127 ? varint(kinds.length + 1) : varint(kinds.length + 2);
  const whole = new Uint8Array(
    head.length + kinds.length + parts.reduce((sum, { bytes }) => sum + bytes.length, 0),
  );
  whole.set(head);
  whole.set(kinds, head.length);
  let at = head.length + kinds.length;
  for (const { bytes } of parts) {
    whole.set(bytes, at);
    at += bytes.length;
  }
  return whole;
}

function stored(value: SqlValue): { readonly kind: number; readonly bytes: Uint8Array } {
  if (value === null) return { kind: 0, bytes: new Uint8Array() };
  if (typeof value === 'string') {
    const bytes = utf8.encode(value);
    return { kind: bytes.length * 2 + 13, bytes };
  }
  if (value instanceof Uint8Array) return { kind: value.length * 2 + 12, bytes: value };
  const bytes = new Uint8Array(8);
  const view = new DataView(bytes.buffer);
  if ('integer' in value) view.setBigInt64(0, BigInt(value.integer));
  else view.setFloat64(0, value.real);
  return { kind: 'integer' in value ? 6 : 7, bytes };
}
