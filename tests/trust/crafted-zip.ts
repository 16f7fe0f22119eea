import { deflateRawSync } from 'node:zlib';
import { crc32 } from '../../src/record/crc32.ts';

/** Fields of a record of an archive that can be told wrongly. */
interface Fields {
  readonly needed?: number;
  readonly flags?: number;
  readonly method?: number;
  readonly time?: number;
  readonly crc?: number;
  readonly packed?: number;
  readonly bytes?: number;
  readonly extra?: Uint8Array;
  readonly name?: string;
}

/** An entry of a crafted archive: what its packed bytes are, and what each of its two records says that is not so. */
export interface Crafted {
  readonly name: string;
  readonly content: Uint8Array;
  /** Packed bytes in the place of the content deflated. */
  readonly raw?: Uint8Array;
  readonly local?: Fields;
  readonly central?: Fields & {
    readonly madeBy?: number;
    readonly attributes?: number;
    readonly at?: number;
    readonly comment?: string;
  };
  /** Bytes between this entry and the next. */
  readonly behind?: Uint8Array;
  /** The entry has a directory record and no bytes of its own. */
  readonly recordOnly?: boolean;
}

/** What the end of a crafted archive says that is not so. */
export interface End {
  readonly entries?: number;
  readonly here?: number;
  readonly bytes?: number;
  readonly at?: number;
  readonly comment?: string;
  readonly behind?: Uint8Array;
  readonly before?: Uint8Array;
  /** Records between the directory and the end. */
  readonly between?: Uint8Array;
}

const latin = (text: string): Buffer => Buffer.from(text, 'latin1');
const u16 = (...values: readonly number[]): Buffer => {
  const bytes = Buffer.alloc(values.length * 2);
  for (const [index, value] of values.entries()) bytes.writeUInt16LE(value & 0xffff, index * 2);
  return bytes;
};
const u32 = (...values: readonly number[]): Buffer => {
  const bytes = Buffer.alloc(values.length * 4);
  for (const [index, value] of values.entries()) bytes.writeUInt32LE(value >>> 0, index * 4);
  return bytes;
};

/** The fields that both records of an entry have, and its name and extra field behind them. */
function common(entry: Crafted, packed: Uint8Array, said: Fields): readonly [Buffer, Buffer, Buffer] {
  const name = latin(said.name ?? entry.name);
  const extra = Buffer.from(said.extra ?? []);
  const fields = Buffer.concat([
    u16(said.needed ?? 20, said.flags ?? 0, said.method ?? 8),
    u32(said.time ?? 0x5c6e4400, said.crc ?? crc32(entry.content)),
    u32(said.packed ?? packed.length, said.bytes ?? entry.content.length),
    u16(name.length, extra.length),
  ]);
  return [fields, name, extra];
}

/** An archive by hand: sound where nothing is said to the contrary. Source: PKWARE APPNOTE.TXT 6.3, section 4.3. */
export function craftZip(entries: readonly Crafted[], end: End = {}): Uint8Array {
  const parts: Buffer[] = [Buffer.from(end.before ?? [])];
  const directory: Buffer[] = [];
  let offset = parts[0]?.length ?? 0;
  for (const entry of entries) {
    const packed = entry.raw ?? deflateRawSync(entry.content, { level: 9 });
    const [fields, name, extra] = common(entry, packed, entry.local ?? {});
    const local = Buffer.concat([
      u32(0x04034b50),
      fields,
      name,
      extra,
      packed,
      entry.behind ?? Buffer.alloc(0),
    ]);
    const { madeBy = 20, attributes = 0, at = offset, comment = '', ...said } = entry.central ?? {};
    const [said1, said2, said3] = common(entry, packed, said);
    directory.push(
      Buffer.concat([u32(0x02014b50), u16(madeBy), said1, u16(comment.length, 0, 0), u32(attributes, at)]),
      Buffer.concat([said2, said3, latin(comment)]),
    );
    if (entry.recordOnly === true) continue;
    parts.push(local);
    offset += local.length;
  }
  const listing = Buffer.concat(directory);
  const count = end.entries ?? entries.length;
  return new Uint8Array(
    Buffer.concat([
      ...parts,
      listing,
      end.between ?? Buffer.alloc(0),
      u32(0x06054b50),
      u16(0, 0, end.here ?? count, count),
      u32(end.bytes ?? listing.length, end.at ?? offset),
      u16(end.comment?.length ?? 0),
      latin(end.comment ?? ''),
      end.behind ?? Buffer.alloc(0),
    ]),
  );
}
