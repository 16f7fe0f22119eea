import { describe, expect, it } from 'vitest';
import { arrivalIn } from '../../src/desk/arriving/read-arrival.ts';
import { makeBundle } from '../../src/handover/bundle/make-bundle.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import { attached, mail, mailWith, multipart, type Part, partBytes } from './crafted-mail.ts';
import { craftZip } from './crafted-zip.ts';
import { SMALL_HOLE } from './fuzz/small-hole.ts';
import { HOSTILE, obeyedInLines } from './vectors.ts';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const HOME = { project: 'Mulgara Bend', handWritten: { 'project.json': '{}' } };
const MEGABYTE = 1024 * 1024;
const arrive = (bytes: Uint8Array, file = 'reply.eml') => arrivalIn(bytes, file, HOME);

/** Why a mail is refused: every finding has place and remedy, and nothing that a terminal obeys. */
async function refusal(bytes: Uint8Array, file = 'reply.eml'): Promise<string> {
  const arrival = await arrive(bytes, file);
  if (arrival.ok) return expect.fail(`it was taken: ${JSON.stringify(arrival.value.left)}`);
  expect(arrival.findings.length).toBeGreaterThan(0);
  for (const finding of arrival.findings) {
    expect(finding.place.file?.startsWith(file)).toBe(true);
    expect(finding.remedy).not.toBe('');
    expect(JSON.stringify(finding).length).toBeLessThan(900);
    expect(obeyedInLines(`${finding.place.file} ${finding.place.thing} ${finding.problem}`)).toBeUndefined();
  }
  return arrival.findings[0]?.problem ?? '';
}

/** The documents of a mail that is taken, by name, and what is left. */
async function taken(bytes: Uint8Array) {
  const arrival = await arrive(bytes);
  if (!arrival.ok) return expect.fail(JSON.stringify(arrival.findings));
  return {
    documents: arrival.value.documents.map(({ document }) => `${document.kind} ${document.id}`),
    left: arrival.value.left.map(({ what }) => what),
  };
}

const HOLE = attached('ZQRC001.json', SMALL_HOLE, 'application/json');
const bundle = makeBundle(
  { project: 'Mulgara Bend', replica: 'k3f9', by: 'NOK', at: '2026-03-14T16:05:10+08:00' as Stamp },
  [
    { file: 'project.json', bytes: text('{}') },
    { file: 'holes/ZQRC001.json', bytes: text(SMALL_HOLE) },
  ],
);
const BUNDLE = attached('camp.zip', bundle.bytes, 'application/zip');
const WORDS: Part = { headers: ['Content-Type: text/plain'], body: 'See attached.' };
const ONE_HOLE = { documents: ['hole ZQRC001'], left: [] };

describe('a mail that camp sends', () => {
  it('brings the holes and bundles attached to it, in their order', async () => {
    expect(await taken(mailWith(HOLE))).toEqual(ONE_HOLE);
    expect(await taken(mailWith(BUNDLE))).toEqual(ONE_HOLE);
    expect((await taken(mailWith(BUNDLE, HOLE))).documents).toHaveLength(2);
  });

  it('is read as the common mail programs make it: forwarded, nested, in quoted-printable, with lines of LF alone', async () => {
    const forwarded: Part = { headers: ['Content-Type: message/rfc822'], body: mailWith(HOLE) };
    expect(await taken(mail(multipart([WORDS, forwarded], 'outer')))).toEqual(ONE_HOLE);
    const nested = multipart(
      [
        multipart([WORDS, { headers: ['Content-Type: text/html'], body: '<p>See' }], 'a', 'alternative'),
        HOLE,
      ],
      'b',
    );
    expect(await taken(mail(nested))).toEqual(ONE_HOLE);
    const quoted =
      SMALL_HOLE.replaceAll('=', '=3D')
        .replaceAll('\n', '=0A')
        .match(/.{1,70}(?<!=|=.)/gs) ?? [];
    const printable: Part = {
      headers: [
        'Content-Type: text/plain',
        'Content-Transfer-Encoding: quoted-printable',
        'Content-Disposition: attachment; filename=ZQRC001.json',
      ],
      body: quoted.join('=\r\n'),
    };
    expect(await taken(mailWith(printable))).toEqual(ONE_HOLE);
    const linesOfUnix = Buffer.from(
      Buffer.from(mailWith(HOLE)).toString('latin1').replaceAll('\r\n', '\n'),
      'latin1',
    );
    expect(await taken(linesOfUnix)).toEqual(ONE_HOLE);
  });

  it('brings a hole under whatever name a mail program gave it', async () => {
    for (const name of ['ZQRC001.json.txt', 'noname', 'hole (2)', '=?utf-8?B?WlFSQzAwMS5qc29u?='])
      expect((await taken(mailWith(attached(name, SMALL_HOLE)))).documents, name).toEqual(['hole ZQRC001']);
    expect((await taken(mailWith(attached('ATT00001', bundle.bytes)))).documents).toEqual(['hole ZQRC001']);
  });

  it('leaves pictures and the like, and says so', async () => {
    const picture = attached('chips 45.jpg', Buffer.from([0xff, 0xd8, 0xff]), 'image/jpeg');
    const sheet = attached('budget.xlsx', craftZip([{ name: 'a.xml', content: text('<a/>') }]));
    expect((await taken(mailWith(picture, HOLE, sheet))).left).toEqual([
      'reply.eml, chips 45.jpg',
      'reply.eml, budget.xlsx',
    ]);
  });

  it('leaves the settings of the one who packed, and says where they differ from ours', async () => {
    const other = makeBundle({ ...bundle.manifest, at: bundle.at }, [
      { file: 'project.json', bytes: text('{ }') },
      { file: 'holes/ZQRC001.json', bytes: text(SMALL_HOLE) },
    ]);
    expect(await taken(mailWith(attached('camp.zip', other.bytes)))).toEqual({
      documents: ['hole ZQRC001'],
      left: ['reply.eml, camp.zip, project.json'],
    });
  });
});

describe('a mail with an attachment that is not sound', () => {
  const hole = (from: string, to: string): Part => attached('ZQRC001.json', SMALL_HOLE.replace(from, to));
  const vectors: readonly (readonly [what: string, part: Part, problem: RegExp])[] = [
    ['a bundle cut off', attached('camp.zip', bundle.bytes.slice(0, 400)), /no end/],
    [
      'a bundle with a bit changed',
      attached(
        'camp.zip',
        bundle.bytes.map((byte, at) => (at === 60 ? byte ^ 1 : byte)),
      ),
      /damaged|agree/,
    ],
    [
      'an archive that is not a bundle',
      attached('photos.zip', craftZip([{ name: 'holes/ZQRC001.json', content: text(SMALL_HOLE) }])),
      /not manifest\.json/,
    ],
    [
      'an archive that climbs',
      attached('camp.zip', craftZip([{ name: '../x.json', content: text('{}') }])),
      /no file that offsider packs/,
    ],
    [
      'an archive that inflates',
      attached('camp.zip', craftZip([{ name: 'manifest.json', content: new Uint8Array(9 * MEGABYTE) }])),
      /200 times/,
    ],
    ['a text called an archive', attached('camp.zip', 'see attached'), /no end/],
    ['base64 that is none', { ...BUNDLE, body: '!!!! not base64 ????' }, /no end/],
    [
      'base64 with a line lost',
      {
        ...BUNDLE,
        body: String(BUNDLE.body)
          .split('\r\n')
          .filter((_, at) => at !== 3)
          .join('\r\n'),
      },
      /end|agree|damaged|belong/,
    ],
    [
      'base64 with letters lost',
      { ...BUNDLE, body: String(BUNDLE.body).replace(/^.{7}/, '') },
      /end|agree|damaged/,
    ],
    ['base64 twice over', { ...BUNDLE, body: Buffer.from(String(BUNDLE.body)).toString('base64') }, /no end/],
    [
      'a bundle said to be 7bit',
      { ...BUNDLE, headers: BUNDLE.headers.map((each) => each.replace('base64', '7bit')) },
      /no end/,
    ],
    [
      'a bundle said to be quoted-printable',
      { ...BUNDLE, headers: BUNDLE.headers.map((each) => each.replace('base64', 'quoted-printable')) },
      /no end/,
    ],
    ['a hole with a comma lost', hole('"format": 1,', '"format": 1'), /comma/],
    ['a hole that says its id twice', hole('"format": 1,', '"format": 1, "id": "X",'), /given twice/],
    ['a hole with __proto__', hole('"format": 1,', '"format": 1, "__proto__": {},'), /reserved/],
    ['a hole with a member unknown', hole('"format": 1,', '"format": 1, "more": 1,'), /not known here/],
    ['a hole of a later format', hole('"format": 1,', '"format": 99,'), /format 99/],
    ['a hole of another id', hole('"id": "ZQRC001"', '"id": "../../x"'), /not a hole, shift/],
    ['a hole with a device for an id', hole('"id": "ZQRC001"', '"id": "CON"'), /not a hole, shift/],
    ['a hole in UTF-16', attached('ZQRC001.json', Buffer.from(SMALL_HOLE, 'utf16le')), /JSON|missing/],
    [
      'a hole in UTF-16 said to be such',
      attached(
        'ZQRC001.json',
        Buffer.from(`\ufeff${SMALL_HOLE}`, 'utf16le'),
        'application/json; charset=utf-16',
      ),
      /UTF-8/,
    ],
    [
      'a hole in UTF-7',
      attached('ZQRC001.json', '+AHsAIgBmAG8AcgBtAGEAdAAiADo-', 'application/json; charset=utf-7'),
      /JSON/,
    ],
    [
      'a hole with a byte of no text',
      attached('ZQRC001.json', Buffer.concat([Buffer.from(SMALL_HOLE), Buffer.from([0xff])])),
      /UTF-8/,
    ],
    ['another program’s JSON', attached('package.json', '{"name":"x"}'), /not a hole, shift/],
    [
      'attachments in a form of one program',
      attached('winmail.dat', 'x\x9f>"', 'application/ms-tnef'),
      /its own form/,
    ],
    ['the same by its name alone', attached('WINMAIL.DAT', 'x'), /its own form/],
    ['nothing but a picture', attached('chips.jpg', 'x', 'image/jpeg'), /only reply\.eml, chips\.jpg/],
  ];
  it.each(vectors)(
    'is refused, and the sound hole beside it is not taken either: %s',
    async (what, part, problem) => {
      const beside = what.startsWith('nothing') ? [] : [HOLE];
      expect(await refusal(mailWith(...beside, part))).toMatch(problem);
    },
  );
});

describe('an attachment with a name that leads elsewhere or hides', () => {
  const names = [
    '../../holes/ZQRC001.json',
    '..\\..\\ZQRC001.json',
    '/etc/passwd',
    'C:\\x.json',
    'CON',
    'nul.json',
    'COM1.json',
    '',
    ' ',
    '.',
    '..',
    '.json',
    'a'.repeat(5000),
    `${'a'.repeat(5000)}.json`,
    'x\\"; filename=\\"evil.exe',
    "x'; DROP",
    'x\u0000.json',
    'file://x',
    'x.json:stream',
    '=?utf-8?Q?=0D=0ABcc=3A_x?=',
    '=?utf-8?B?4oCuZ3BqLmV4ZQ==?=',
    ...HOSTILE.map((each) => each.replaceAll(/[\r\n"]/g, ' ')),
  ];
  it.each(names)('says it on one line and never goes by it: %j', async (name) => {
    const broken = attached(name, `${SMALL_HOLE} trailing`);
    const arrival = await arrive(mailWith(attached(name, SMALL_HOLE), broken));
    if (arrival.ok) return expect.fail('it was taken');
    for (const { place } of arrival.findings) {
      expect(obeyedInLines(place.file ?? '')).toBeUndefined();
      expect([...(place.file ?? '')].length).toBeLessThan(100);
    }
  });
});

describe('a mail that is made to be misread', () => {
  const top = 'From: a@example.com\r\nSubject: x\r\nMIME-Version: 1.0\r\n';
  const nested = (depth: number): string =>
    Array.from(
      { length: depth },
      (_, at) => `Content-Type: multipart/mixed; boundary="b${at}"\r\n\r\n--b${at}\r\n`,
    ).join('');
  const mailsInMails = (depth: number): Uint8Array => {
    let inner = mailWith(HOLE);
    for (let at = 0; at < depth; at += 1)
      inner = mail(multipart([WORDS, { headers: ['Content-Type: message/rfc822'], body: inner }], `b${at}`));
    return inner;
  };
  const vectors: readonly (readonly [what: string, bytes: Uint8Array, problem: RegExp])[] = [
    ['nothing', text(''), /no header of a mail/],
    ['a line', text('hello'), /no header of a mail/],
    ['a page of the web', text('<html><body>x</body></html>'), /no header of a mail/],
    ['a hole under the name of a mail', text(SMALL_HOLE), /no header of a mail/],
    ['a bundle under the name of a mail', bundle.bytes, /no header of a mail/],
    ['noughts', new Uint8Array(100_000), /no header of a mail/],
    [
      'a mail that a program saved in a form of its own',
      Buffer.from('d0cf11e0a1b11ae1', 'hex'),
      /its own form/,
    ],
    ['parts 5,000 deep', text(top + nested(5000)), /nested deeper/],
    ['parts 41 deep', text(top + nested(41)), /nested deeper/],
    ['mails in mails, 12 deep', mailsInMails(12), /too deep to look into/],
    [
      'mails in mails, 2,000 deep',
      text(top + 'Content-Type: message/rfc822\r\n\r\nFrom: a@b.c\r\n'.repeat(2000)),
      /too deep to look into|nested/,
    ],
    ['a header of 1 MB', text(`${top}X-Long: ${'a'.repeat(MEGABYTE)}\r\n\r\nx`), /headers are longer/],
    [
      'a header folded 60,000 times',
      text(`${top}X-Long: a\r\n${' b\r\n'.repeat(60_000)}\r\nx`),
      /60\d+ lines/,
    ],
    ['20,000 headers', text(`${top}${'X-A: bbbbbbbbbbbb\r\n'.repeat(19_000)}\r\nx`), /headers are longer/],
    ['two million lines', text(`${top}\r\n${'\n'.repeat(2_000_000)}`), /2000004 lines/],
    [
      'half a million parts',
      text(
        `${top}Content-Type: multipart/mixed; boundary=b\r\n\r\n${`--b\r\n\r\n${'x'.repeat(200)}\r\n`.repeat(20_000)}`,
      ),
      /lines/,
    ],
    ['30 MB', text(`${top}\r\n${'x'.repeat(30 * MEGABYTE)}`), /at most 24 MB/],
    ['250 attachments', mailWith(...Array.from({ length: 250 }, () => HOLE)), /250 attachments/],
    ['no attachment', mail(WORDS), /no bundle and no file of a hole is attached/],
    [
      'a limit that never comes',
      text(`${top}Content-Type: multipart/mixed; boundary=zz\r\n\r\nx`),
      /no bundle/,
    ],
    [
      'an empty limit',
      text(`${top}Content-Type: multipart/mixed; boundary=""\r\n\r\n--\r\n\r\nx`),
      /no bundle/,
    ],
    [
      'two limits',
      text(`${top}Content-Type: multipart/mixed; boundary=a; boundary=b\r\n\r\n--c\r\n`),
      /no bundle/,
    ],
    [
      'a type of 50,000 parameters',
      text(`${top}Content-Type: text/plain; ${'a=b; '.repeat(40_000)}\r\n\r\nx`),
      /no bundle/,
    ],
    ['100,000 brackets in a type', text(`${top}Content-Type: ${'('.repeat(100_000)}\r\n\r\nx`), /no bundle/],
    [
      'a name in 9,000 pieces',
      text(
        `${top}Content-Disposition: attachment; ${Array.from({ length: 9000 }, (_, at) => `filename*${at}*=%41`).join('; ')}\r\n\r\nx`,
      ),
      /no bundle/,
    ],
    [
      'a name in pieces that is numbered to 2^53',
      text(`${top}Content-Disposition: attachment; filename*9007199254740992=x\r\n\r\nx`),
      /no bundle/,
    ],
    ['groups of addresses in groups', text(`${top}Cc: ${'a: '.repeat(30_000)}\r\n\r\nx`), /no bundle/],
    [
      'a charset that no one knows',
      text(`${top}Content-Type: text/plain; charset=klingon-7\r\n\r\nx`),
      /no bundle/,
    ],
    ['headers of __proto__', text(`${top}__proto__: x\r\nconstructor: y\r\n\r\nx`), /no bundle/],
    ['a header without a name', text(`${top}: x\r\n\r\nx`), /no bundle/],
    ['an encoded word without end', text(`${top}Subject: ${'=?'.repeat(20_000)}\r\n\r\nx`), /no bundle/],
  ];
  it.each(vectors)('is refused: %s', async (_what, bytes, problem) => {
    expect(await refusal(bytes)).toMatch(problem);
  });

  it('is refused wherever it is cut off inside its bundle, and its text alone brings nothing', async () => {
    const whole = mailWith(BUNDLE);
    for (let length = 0; length < whole.length - 20; length += 7) {
      const arrival = await arrive(whole.slice(0, length));
      expect(arrival.ok, String(length)).toBe(false);
    }
  });

  it('brings the attachment of a mail once, whatever is behind its last limit', async () => {
    const whole = Buffer.concat([mailWith(HOLE), partBytes(HOLE)]);
    expect(await taken(whole)).toEqual(ONE_HOLE);
  });
});
