import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGeneration } from '../../src/files/journal.ts';
import {
  formatLine,
  type JournalLine,
  lineFault,
  parseLine,
  type WorkLine,
} from '../../src/files/journal-line.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

const work = (seq: number, safe: number): WorkLine => ({
  seq,
  safe,
  links: [{ onto: '', makes: `hash${seq}` }],
  edit: {
    edit: `k3f9qx-${seq}`,
    at: '2026-03-14T08:00:00+08:00',
    by: 'Ana Reyes',
    what: `row ${seq} – größer`,
    parts: [
      {
        document: { kind: 'hole', id: 'ZQRC001' },
        changes: [{ put: ['rows', `k3f9qx-${seq}`], thing: { fromMm: seq } }],
      },
    ],
  },
});
const begin: JournalLine = { begins: { generation: 3, next: 5, documents: ['hole/ZQRC001'] } };
const generation = (...lines: readonly JournalLine[]): string => lines.map(formatLine).join('');

describe('a line of the journal', () => {
  it('is one line of JSON that begins with the CRC-32 of the rest of it', () => {
    expect(formatLine(begin)).toBe(
      '{"crc":"7904a1f0","begins":{"generation":3,"next":5,"documents":["hole/ZQRC001"]}}\n',
    );
  });

  it('reads back as it was written', () => {
    for (const line of [begin, work(7, 6)])
      expect(parseLine(encode(formatLine(line).trimEnd()))).toEqual(line);
  });

  it('is not read where any one byte of it is another', () => {
    const bytes = encode(formatLine(work(7, 6)).trimEnd());
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const changed = bytes.slice();
        changed[at] = (changed[at] ?? 0) ^ flip;
        expect(parseLine(changed)).toBeUndefined();
      }),
    );
  });

  it('has a fault where its work could not be kept', () => {
    expect(lineFault(work(1, 0))).toBeUndefined();
    const line = work(1, 0);
    expect(
      lineFault({
        ...line,
        links: [],
        edit: { ...('edit' in line ? line.edit : never()), what: 'x'.repeat(10_001) },
      }),
    ).toMatch(/what/);
  });
});

function never(): never {
  throw new Error('an edit line has an edit');
}

describe('a generation', () => {
  const text = generation(begin, work(5, 4), work(6, 5), work(7, 6));

  it('is read whole where nothing is wrong with it', () => {
    const read = readGeneration(3, encode(text));
    expect(read.lines.map((line) => line.seq)).toEqual([5, 6, 7]);
    expect(read.begin).toEqual(begin);
    expect(read.torn).toBeUndefined();
    expect(read.damaged).toEqual([]);
  });

  it('keeps every whole line before the place where it was cut off, wherever that is', () => {
    const bytes = encode(text);
    const ends = [...bytes.keys()].filter((at) => bytes[at] === 0x0a);
    fc.assert(
      fc.property(fc.nat(bytes.length), (length) => {
        const read = readGeneration(3, bytes.subarray(0, length));
        const whole = ends.filter((end) => end < length).length;
        expect(read.lines.length + (read.begin === undefined ? 0 : 1)).toBe(whole);
        expect(read.damaged).toEqual([]);
        const tornBytes = length - (whole === 0 ? 0 : (ends[whole - 1] ?? 0) + 1);
        expect(read.torn?.bytes.length ?? 0).toBe(tornBytes);
      }),
    );
  });

  it('calls a broken line damage where a later line says that it had been saved', () => {
    const broken = text.replace('row 5', 'row 9');
    const read = readGeneration(3, encode(broken));
    expect(read.damaged).toEqual([{ line: 2, lines: 1 }]);
    expect(read.lines.map((line) => line.seq)).toEqual([6, 7]);
    expect(read.torn).toBeUndefined();
  });

  it('calls a broken line torn where the lines after it were on their way with it', () => {
    const oneWrite = generation(begin, work(5, 4), work(6, 4), work(7, 4)).replace('row 5', 'row 9');
    const read = readGeneration(3, encode(oneWrite));
    expect(read.torn?.line).toBe(2);
    expect(read.lines).toEqual([]);
    expect(read.damaged).toEqual([]);
  });

  it('is all torn where its first line is', () => {
    const read = readGeneration(3, encode('{"crc":"0000'));
    expect(read).toMatchObject({ lines: [], damaged: [], torn: { line: 1 } });
  });

  it('is empty where its file is', () => {
    expect(readGeneration(3, new Uint8Array())).toEqual({
      generation: 3,
      begin: undefined,
      lines: [],
      damaged: [],
    });
  });
});
