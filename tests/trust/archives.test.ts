import { describe, expect, it } from 'vitest';
import { inflateExactly } from '../../src/files/inflate.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { bundleNameFault } from '../../src/handover/bundle/names.ts';
import { ZIP_LIMITS, type ZipLimits } from '../../src/handover/zip/limits.ts';
import { readZip } from '../../src/handover/zip/read-zip.ts';
import { writeZip } from '../../src/handover/zip/write-zip.ts';
import { LONG_RUN } from '../support/long-run.ts';
import { type Crafted, craftZip, type End } from './crafted-zip.ts';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const HOLE = 'holes/ZQRC001.json';
const AT = '2026-03-14T07:42:10+08:00';
const MEGABYTE = 1024 * 1024;

const read = (bytes: Uint8Array, limits: ZipLimits = ZIP_LIMITS) =>
  readZip({ bytes, file: 'in.zip', limits, nameFault: bundleNameFault, inflate: inflateExactly });

/** Why an archive is refused: one finding, with place and remedy, that quotes nothing a terminal obeys. */
function refusal(bytes: Uint8Array, limits?: ZipLimits): Finding {
  const result = read(bytes, limits);
  if (result.ok) return expect.fail('it was taken');
  const [finding] = result.findings;
  if (finding === undefined) return expect.fail('refused without a finding');
  expect(finding.place.file).toBe('in.zip');
  expect(finding.remedy).toMatch(/Nothing was changed\.$/);
  expect(JSON.stringify(finding)).toMatch(/^[\x20-\x7e]*$/);
  expect(JSON.stringify(finding).length).toBeLessThan(600);
  return finding;
}

const plain = (more: Partial<Crafted> = {}): Crafted => ({ name: HOLE, content: text('{"a":1}'), ...more });
const one = (more: Partial<Crafted> = {}, end?: End): Uint8Array => craftZip([plain(more)], end);
const other = plain({ name: 'holes/ZQRC002.json' });

describe('an archive', () => {
  it('is read where it is as offsider writes it, by whoever wrote it', () => {
    const crafted = read(craftZip([plain(), other]));
    expect(crafted.ok && crafted.value.map((each) => each.name)).toEqual([HOLE, 'holes/ZQRC002.json']);
    const ours = read(writeZip([{ name: HOLE, bytes: text('') }], AT));
    expect(ours.ok && ours.value[0]?.bytes.length).toBe(0);
  });
});

const zip64Extra = Buffer.concat([Buffer.from([1, 0, 16, 0]), Buffer.alloc(16, 0xff)]);

describe('an archive whose records lie', () => {
  const vectors: readonly (readonly [what: string, bytes: Uint8Array, problem: RegExp])[] = [
    ['size smaller in the directory', one({ central: { bytes: 1 } }), /not agree/],
    ['size larger in the directory', one({ central: { bytes: 900 } }), /not agree/],
    ['size smaller in its own record', one({ local: { bytes: 1 } }), /not agree/],
    ['both sizes smaller', one({ local: { bytes: 1 }, central: { bytes: 1 } }), /damaged on the way/],
    ['both sizes larger', one({ local: { bytes: 8 }, central: { bytes: 8 } }), /damaged on the way/],
    ['both sizes nothing', one({ local: { bytes: 0 }, central: { bytes: 0 } }), /damaged on the way/],
    ['packed size in the directory', one({ central: { packed: 3 } }), /not agree/],
    ['packed size in its own record', one({ local: { packed: 3 } }), /not agree/],
    [
      'packed size past the end',
      one({ local: { packed: 9e5 }, central: { packed: 9e5 } }),
      /into the directory/,
    ],
    [
      'packed size a byte short',
      one({ local: { packed: 8 }, central: { packed: 8 } }),
      /damaged|belong to no entry/,
    ],
    ['checksum in the directory', one({ central: { crc: 1 } }), /not agree/],
    ['checksum in both', one({ local: { crc: 1 }, central: { crc: 1 } }), /damaged on the way/],
    ['another name in the directory', one({ central: { name: 'holes/ZQRC002.json' } }), /not agree/],
    ['another name in its own record', one({ local: { name: 'holes/ZQRC002.json' } }), /not agree/],
    ['a climbing name in its own record', one({ local: { name: '../../evil/x.json.' } }), /not agree/],
    ['another time in its own record', one({ local: { time: 0 } }), /not agree/],
    ['a flag in its own record', one({ local: { flags: 8 } }), /not agree/],
    ['another way of packing in its own record', one({ local: { method: 0 } }), /not agree/],
    ['a later version in its own record', one({ local: { needed: 45 } }), /not agree/],
    ['an extra field in its own record', one({ local: { extra: zip64Extra } }), /not agree/],
    ['a count of none', one({}, { entries: 0 }), /its end|belong to no entry|does not agree/],
    ['a count of two', one({}, { entries: 2 }), /broken off|does not agree/],
    ['two counts', one({}, { here: 2 }), /its end does not agree/],
    ['a directory elsewhere', one({}, { at: 0 }), /its end does not agree/],
    ['a directory past the end', one({}, { at: 0x7fffffff }), /its end does not agree/],
    ['a directory of another size', one({}, { bytes: 10 }), /its end does not agree/],
    ['an entry that begins elsewhere', one({ central: { at: 5 } }), /not as offsider writes it/],
  ];
  it.each(vectors)('is refused: %s', (_what, bytes, problem) => {
    expect(refusal(bytes).problem).toMatch(problem);
  });
});

describe('an archive with entries that share or hide bytes', () => {
  const twice = [plain(), { ...other, recordOnly: true, central: { at: 0 } }];
  const vectors: readonly (readonly [what: string, bytes: Uint8Array])[] = [
    ['two records for the same bytes', craftZip(twice)],
    [
      'thousands of records for the same bytes',
      craftZip([
        plain(),
        ...Array.from({ length: 3000 }, (_, n) => ({
          ...plain({ name: `holes/Z${n}.json` }),
          recordOnly: true,
          central: { at: 0 },
        })),
      ]),
    ],
    [
      'an entry inside the bytes of another',
      craftZip([plain({ raw: craftZip([other]), content: text('x') })]),
    ],
    ['bytes between entries', craftZip([plain({ behind: text('hidden') }), other])],
    ['an entry that the directory has not', craftZip([plain({ behind: craftZip([other]).subarray(0, 70) })])],
    ['bytes before the first entry', one({}, { before: text('#!/bin/sh\n') })],
    ['bytes behind the end', one({}, { behind: text('more') })],
    ['another archive behind the end', one({}, { behind: one() })],
    ['a comment behind the end', one({}, { comment: 'see http://example.invalid' })],
    ['a comment of an entry', one({ central: { comment: 'hello' } })],
    ['bytes behind the directory', one({}, { between: text('hidden') })],
    [
      'packed bytes behind the last block',
      one({ raw: Buffer.concat([Buffer.from([0x03, 0x00]), Buffer.from('tail')]), content: text('') }),
    ],
    ['two entries of one name', craftZip([plain(), plain()])],
    ['two entries of one name, the second other', craftZip([plain(), plain({ content: text('{"a":2}') })])],
  ];
  it.each(vectors)('is refused: %s', (_what, bytes) => {
    refusal(bytes);
  });
});

describe('an archive with a name that leads elsewhere', () => {
  const names = [
    '/etc/passwd',
    '/holes/ZQRC001.json',
    '../ZQRC001.json',
    'holes/../../ZQRC001.json',
    'holes/..\\x.json',
    '..\\..\\x.json',
    'C:\\x.json',
    'C:x.json',
    '\\\\server\\share\\x.json',
    'holes\\ZQRC001.json',
    './holes/ZQRC001.json',
    'holes//ZQRC001.json',
    'holes/./ZQRC001.json',
    'holes/',
    '',
    '.',
    '..',
    ' ',
    'holes/ZQRC001.json/',
    'holes/ZQRC001.json ',
    'holes/ZQRC001.json.',
    'holes/zqrc001.json',
    'HOLES/ZQRC001.json',
    'holes/ZQRC001.JSON',
    'holes/ZQRC001',
    'holes/ZQRC001.json\0.zip',
    'holes/ZQ\nRC.json',
    'holes/ZQ\x1b[2J.json',
    'holes/\u00c4BC.json',
    'holes/ZQRC001.json:stream',
    '~/x.json',
    '%2e%2e/x.json',
    'journal/1.jsonl',
    '.git/config',
    'a/b/C.json',
    'project.json.exe',
    'autorun.inf',
    `holes/${'A'.repeat(41)}.json`,
    'A'.repeat(5000),
    '__proto__',
    'inner.zip',
  ];
  it.each(names)('is refused, and named as far as it can be shown: %j', (name) => {
    expect(refusal(one({ name })).code).toBe('archive-unsafe');
  });

  it('is refused where two names differ by case alone, if the rule of names let them through', () => {
    const bytes = craftZip([plain(), plain({ name: 'holes/zqrc001.json' })]);
    const loose = readZip({
      bytes,
      file: 'in.zip',
      limits: ZIP_LIMITS,
      nameFault: () => undefined,
      inflate: inflateExactly,
    });
    expect(loose.ok ? [] : loose.findings.map((each) => each.problem)).toEqual([
      'two entries have this name',
    ]);
  });
});

describe('an archive of another kind', () => {
  const vectors: readonly (readonly [what: string, bytes: Uint8Array, problem: RegExp])[] = [
    ['locked with a password', one({ local: { flags: 1 }, central: { flags: 1 } }), /password/],
    ['locked with a strong password', one({ central: { flags: 0x41 } }), /password/],
    ['its directory locked', one({ central: { flags: 0x2000 } }), /password/],
    ['sizes behind the bytes', one({ local: { flags: 8 }, central: { flags: 8 } }), /another program/],
    ['names in UTF-8', one({ local: { flags: 0x800 }, central: { flags: 0x800 } }), /another program/],
    [
      'stored',
      one({ local: { method: 0 }, central: { method: 0 }, raw: text('{"a":1}') }),
      /packed in a way/,
    ],
    ['packed by another method', one({ local: { method: 14 }, central: { method: 14 } }), /packed in a way/],
    [
      'a symbolic link',
      one({ central: { madeBy: 0x0314, attributes: 0xa1ff0000 } }),
      /link to another place/,
    ],
    ['a folder by its mode', one({ central: { madeBy: 0x0314, attributes: 0x41ed0010 } }), /another program/],
    ['a device by its mode', one({ central: { madeBy: 0x0314, attributes: 0x21b60000 } }), /another program/],
    [
      'a file that may be run',
      one({ central: { madeBy: 0x0314, attributes: 0x81ed0000 } }),
      /another program/,
    ],
    [
      'an extra field',
      one({ local: { extra: zip64Extra }, central: { extra: zip64Extra } }),
      /another program/,
    ],
    ['zip64 sizes', one({ central: { packed: 0xffffffff, bytes: 0xffffffff, extra: zip64Extra } }), /4 GB/],
    ['a zip64 place', one({ central: { at: 0xffffffff, extra: zip64Extra } }), /4 GB/],
    ['a zip64 end', one({}, { entries: 0xffff, at: 0xffffffff, bytes: 0xffffffff }), /4 GB/],
    [
      'a zip64 end record',
      one({}, { between: Buffer.from('PK\x06\x06', 'latin1') }),
      /its end does not agree/,
    ],
    ['nothing', new Uint8Array(0), /no end/],
    ['two letters', text('PK'), /no end/],
    ['a text', text('{"kind":"hole"}'), /no end/],
    ['noughts', new Uint8Array(5000), /no end/],
  ];
  it.each(vectors)('is refused: %s', (_what, bytes, problem) => {
    expect(refusal(bytes).problem).toMatch(problem);
  });
});

describe('an archive that would inflate without end', () => {
  const bomb = (bytes: number): Crafted => plain({ content: new Uint8Array(bytes) });
  const claiming = (bytes: number, raw: Uint8Array, name = HOLE): Crafted =>
    plain({ name, content: text(''), raw, local: { bytes, crc: 0 }, central: { bytes, crc: 0 } });

  it.each<readonly [what: string, bytes: Uint8Array, problem: RegExp]>([
    ['16 MB of noughts', craftZip([bomb(16 * MEGABYTE)]), /more than 200 times/],
    ['65 MB by its word', craftZip([claiming(65 * MEGABYTE, Buffer.alloc(400_000))]), /65 MB; at most 64/],
    ...(LONG_RUN
      ? [['65 MB of noughts', craftZip([bomb(65 * MEGABYTE)]), /65 MB; at most 64/] as const]
      : []),
    [
      '4 GB by its word',
      one({ local: { bytes: 0xfffffffe }, central: { bytes: 0xfffffffe } }),
      /4096 MB; at most 64/,
    ],
    [
      'one that says little and holds 16 MB',
      craftZip([{ ...bomb(16 * MEGABYTE), local: { bytes: 40 }, central: { bytes: 40 } }]),
      /damaged on the way/,
    ],
    [
      'two that inflate to more than all may',
      craftZip([
        claiming(60 * MEGABYTE, Buffer.alloc(400_000)),
        ...[2, 3, 4, 5].map((n) => claiming(60 * MEGABYTE, Buffer.alloc(400_000), `holes/Z${n}.json`)),
      ]),
      /with it the archive would inflate to 300 MB/,
    ],
    [
      'an archive in an archive',
      craftZip([plain({ name: 'inner.zip', content: craftZip([bomb(MEGABYTE)]) })]),
      /no file that offsider packs/,
    ],
  ])('is refused before it does: %s', (_what, bytes, problem) => {
    const before = process.memoryUsage().arrayBuffers;
    expect(refusal(bytes).problem).toMatch(problem);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(8 * MEGABYTE);
  });

  it('is refused where it has more entries than a bundle has', () => {
    const many = craftZip(Array.from({ length: 5001 }, (_, n) => plain({ name: `holes/Z${n}.json` })));
    expect(refusal(many).problem).toBe('it has 5001 entries; at most 5000 are read');
  });

  it('is refused by its own size, before a byte of it is looked at', () => {
    const limits = { ...ZIP_LIMITS, archiveBytes: MEGABYTE };
    expect(refusal(new Uint8Array(MEGABYTE + 1), limits).problem).toBe('it is 2 MB; at most 1 MB is read');
  });
});

describe('an archive damaged on the way', () => {
  const files = ['ZQRC001', 'ZQRC002'].map((id) => ({
    name: `holes/${id}.json`,
    bytes: text(JSON.stringify({ id, rows: Array.from({ length: 40 }, (_, n) => n * n) })),
  }));
  const whole = writeZip(files, AT);

  it('is refused wherever it is cut off', () => {
    for (let length = 0; length < whole.length; length += 1) refusal(whole.slice(0, length));
  });

  it('is refused wherever its beginning is lost', () => {
    for (let start = 1; start < whole.length; start += 1) refusal(whole.slice(start));
  });

  it('is refused with any one bit changed, or gives the files as they were packed', () => {
    let same = 0;
    for (let at = 0; at < whole.length * 8; at += 1) {
      const bytes = whole.slice();
      bytes[at >> 3] = (bytes[at >> 3] ?? 0) ^ (1 << (at & 7));
      const result = read(bytes);
      if (!result.ok) continue;
      // Bits that fill up the last byte behind the end of the packed data say nothing.
      same += 1;
      expect(result.value.map(({ name, bytes }) => ({ name, bytes: new Uint8Array(bytes) }))).toEqual(files);
    }
    // The date of the archive stands in both records of each entry, so a single bit of it does not pass.
    expect(same).toBeLessThanOrEqual(2 * 7);
  });

  it('is refused with any one byte replaced by nought or by 255, or gives the files as they were', () => {
    for (let at = 0; at < whole.length; at += 1)
      for (const value of [0, 255]) {
        if (whole[at] === value) continue;
        const bytes = whole.slice();
        bytes[at] = value;
        const result = read(bytes);
        if (result.ok)
          expect(result.value.map(({ name, bytes }) => ({ name, bytes: new Uint8Array(bytes) }))).toEqual(
            files,
          );
      }
  });
});
