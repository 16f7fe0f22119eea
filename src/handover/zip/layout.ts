/**
 * The three records of a ZIP archive as offsider writes them, and only so: one disk, every entry deflated, sizes known beforehand, no
 * extra fields, comments, attributes or flags. Source: PKWARE APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16.
 */
export interface ZipHeader {
  readonly name: string;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Date in the upper, time in the lower 16 bits, as FAT has them. */
  readonly dosTime: number;
}

export const LOCAL_BYTES = 30;
export const CENTRAL_BYTES = 46;
export const END_BYTES = 22;

const LOCAL_MARK = 0x04034b50;
export const CENTRAL_MARK = 0x02014b50;
export const END_MARK = 0x06054b50;

/** Version 2.0 of the format: the first that has deflate. */
const VERSION = 20;
const DEFLATED = 8;

const ascii = (name: string): Uint8Array => Uint8Array.from(name, (letter) => letter.charCodeAt(0));

function record(bytes: number, name: string, fill: (view: DataView) => void): Uint8Array {
  const whole = new Uint8Array(bytes + name.length);
  fill(new DataView(whole.buffer));
  whole.set(ascii(name), bytes);
  return whole;
}

/** Fields that the local and the central header share, from the version needed on. */
function shared(view: DataView, from: number, header: ZipHeader): void {
  view.setUint16(from, VERSION, true);
  view.setUint16(from + 4, DEFLATED, true);
  view.setUint32(from + 6, header.dosTime, true);
  view.setUint32(from + 10, header.crc, true);
  view.setUint32(from + 14, header.packedBytes, true);
  view.setUint32(from + 18, header.bytes, true);
  view.setUint16(from + 22, header.name.length, true);
}

/** The record in front of an entry's packed bytes. The name is ASCII. */
export function localHeader(header: ZipHeader): Uint8Array {
  return record(LOCAL_BYTES, header.name, (view) => {
    view.setUint32(0, LOCAL_MARK, true);
    shared(view, 4, header);
  });
}

/** The record of an entry in the directory at the end; `at` is where its local header begins. */
export function centralHeader(header: ZipHeader, at: number): Uint8Array {
  return record(CENTRAL_BYTES, header.name, (view) => {
    view.setUint32(0, CENTRAL_MARK, true);
    view.setUint16(4, VERSION, true);
    shared(view, 6, header);
    view.setUint32(42, at, true);
  });
}

/** The record that ends an archive: how many entries, and where their directory is. */
export function endRecord(entries: number, directoryBytes: number, directoryAt: number): Uint8Array {
  return record(END_BYTES, '', (view) => {
    view.setUint32(0, END_MARK, true);
    view.setUint16(8, entries, true);
    view.setUint16(10, entries, true);
    view.setUint32(12, directoryBytes, true);
    view.setUint32(16, directoryAt, true);
  });
}

/**
 * A wall clock's date and time as FAT has them, to two seconds: `2026-03-14T07:42:10`, whatever offset follows. Years before
 * 1980 and after 2107, which it can't say, are cut to those.
 */
export function dosTimeOf(stamp: string): number {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = stamp
    .slice(0, 19)
    .split(/[-T:]/)
    .map(Number);
  const years = Math.min(127, Math.max(0, year - 1980));
  const date = (years << 9) | (month << 5) | day;
  return ((date << 16) | (hour << 11) | (minute << 5) | (second >> 1)) >>> 0;
}
