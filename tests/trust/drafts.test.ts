import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openProject } from '../../src/commands/at-project.ts';
import { holdToShape } from '../../src/files/json-shape.ts';
import { formatPlace } from '../../src/finding/place.ts';
import { writeDraft } from '../../src/mail/write-draft.ts';
import type { Project } from '../../src/project/project.ts';
import { projectSettings } from '../../src/project/settings.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import { hear, SAMPLE } from '../commands/support/outside.ts';
import { holeWith, rod, row } from '../standing/support/hole.ts';
import { part } from '../support/long-run.ts';
import { draftFault, headersOf, packed, parsedMail } from './packed.ts';
import { HOSTILE } from './vectors.ts';

let sample: Project;
beforeAll(async () => {
  const opened = await openProject(hear().outside, { folder: SAMPLE });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  sample = opened.value.project;
});

/** Texts that would make headers, recipients or parts of their own. */
const INJECTIONS: readonly string[] = [
  'x\r\nBcc: evil@example.org',
  'x\nBcc: evil@example.org',
  'x\rBcc: evil@example.org',
  'x\r\n\r\n<html>body</html>',
  'x\r\n Bcc: evil@example.org',
  'x\r\n\tX-Evil: yes',
  'x\u0000\r\nBcc: evil@example.org',
  'x\u0085Bcc: evil@example.org',
  'x\u2028Bcc: evil@example.org',
  'x\u2029\r\nTo: evil@example.org',
  'x\v\fBcc: evil@example.org',
  'x%0d%0aBcc:%20evil@example.org',
  'x\\r\\nBcc: evil@example.org',
  'x\u560a\u560dBcc: evil@example.org',
  '=?utf-8?Q?=0D=0ABcc:_evil@example.org?=',
  '=?utf-8?B?DQpCY2M6IGV2aWxAZXhhbXBsZS5vcmc=?=',
  '=?utf-7?Q?+AA0ACg-Bcc?=',
  'evil@example.org (comment)',
  'group: evil@example.org, other@example.org;',
  '"quoted" <evil@example.org>',
  '<evil@example.org>',
  'a, evil@example.org',
  'a; evil@example.org',
  '"unclosed',
  '(((((unclosed',
  '\\"\\"\\\\',
  '--_NmP-00000000-Part_1',
  '\r\n--_NmP-00000000-Part_1\r\nContent-Type: text/html\r\n\r\n<p>',
  'Content-Type: text/html',
  '.\r\n.',
  'From evil',
  '../../etc/passwd',
  'name.exe"; filename="evil.exe',
  "name*=utf-8''evil.exe",
  'ü'.repeat(180),
  '輝'.repeat(190),
  '👩‍👩‍👧'.repeat(20),
  'x'.repeat(200),
  ' '.repeat(199),
  'a b '.repeat(49),
  `${'e\u0301'.repeat(90)}`,
  '\ud800',
  'abc\udc00def',
  '\ufeffBOM',
  '{{7*7}}',
  '=cmd|calc',
];
const TEXTS = [...INJECTIONS, ...part(HOSTILE, 4).map((each) => each.slice(0, 200))];
const CAMP = { to: ['camp@example.com', 'ines.falk+rc@mail.example.org'], cc: ['office@example.com'] };

/** The sample's project with texts of ours in the place of its name and of a person's. */
const projectCalled = (name: string, person = 'Nadia Okafor'): Project => ({
  ...sample,
  settings: {
    ...sample.settings,
    name,
    camp: CAMP,
    people: sample.settings.people.map((each) => ({ ...each, name: person })),
  },
});
const HOLE = holeWith({ rods: [rod(1, 6)], rows: [row(0, 4)] });

describe('a mail draft of a project with a hostile text in it', () => {
  it.each(TEXTS)(
    'has its headers and recipients and no other, and its own bundle: as the name of the project %j',
    async (text) => {
      expect(await draftFault(await packed(projectCalled(text), [HOLE]), CAMP)).toBeUndefined();
    },
  );

  it.each(TEXTS)(
    'has its headers and recipients and no other: as the name of a person, of a hole and why it waits %j',
    async (text) => {
      const short = text.slice(0, 60);
      const hole = holeWith(
        { rods: [rod(1, 6)], rows: [row(0, 4)] },
        { name: short, state: 'suspended', stateReason: text },
      );
      expect(await draftFault(await packed(projectCalled('West', short), [hole]), CAMP)).toBeUndefined();
    },
  );

  it('says in its text what was there, on the line where it belongs', async () => {
    const { draft } = await packed(projectCalled('West\r\nBcc: evil@example.org'), [HOLE]);
    const { subject, text } = await parsedMail(draft.bytes);
    expect(subject).toBe('West␍␊Bcc: evil@example.org: MBRC900, 2026-03-14, from Nadia Okafor (NOK)');
    expect(text).toMatch(
      /^West␍␊Bcc: evil@example\.org: packed on 2026-03-14 at 16:05 by Nadia Okafor \(NOK\)\.\n/,
    );
  });

  it('writes a name that is not ASCII as RFC 2047 has it, and it reads back as it was', async () => {
    const { draft } = await packed(projectCalled('Östra Ån 輝石'), [HOLE]);
    const subject = headersOf(draft.bytes).find(([name]) => name === 'Subject')?.[1] ?? '';
    expect(subject).toMatch(/^(?:=\?UTF-8\?[QB]\?[!->@-~]*\?=|[\x20-\x7e])+$/);
    expect(subject).toContain('=?UTF-8?');
    expect((await parsedMail(draft.bytes)).subject).toBe(
      'Östra Ån 輝石: MBRC900, 2026-03-14, from Nadia Okafor (NOK)',
    );
  });

  it('has no address where the project names none', async () => {
    const project = projectCalled('West');
    const { camp: _camp, ...settings } = project.settings;
    expect(await draftFault(await packed({ ...project, settings }, [HOLE]), {})).toBeUndefined();
  });
});

describe('a draft written by itself', () => {
  it.each(INJECTIONS)('keeps its subject on one line: %j', async (subject) => {
    const bytes = await writeDraft({
      ...CAMP,
      subject: `x ${subject}`,
      text: subject,
      attachment: { name: 'A.zip', bytes: new Uint8Array([1]) },
      at: '2026-03-14T16:05:10+08:00' as Stamp,
      token: 'ab12',
    });
    const names = headersOf(bytes).map(([name]) => name);
    expect(names).toEqual([
      'X-Unsent',
      'To',
      'Cc',
      'Subject',
      'Message-ID',
      'Date',
      'MIME-Version',
      'Content-Type',
    ]);
    const read = await parsedMail(bytes);
    expect(read.subject).not.toMatch(/\p{Cc}/u);
    expect(read.to?.map((each) => each.address)).toEqual(CAMP.to);
  });

  it('is the same bytes for the same words, and has no boundary longer than RFC 2046 allows', async () => {
    const [first, second] = [
      await packed(projectCalled('West'), [HOLE]),
      await packed(projectCalled('West'), [HOLE]),
    ];
    expect(Buffer.from(first.draft.bytes).equals(second.draft.bytes)).toBe(true);
    const type = headersOf(first.draft.bytes).find(([name]) => name === 'Content-Type')?.[1];
    expect(/boundary="([^"]+)"/.exec(type ?? '')?.[1]?.length).toBeLessThanOrEqual(70);
    for (const line of Buffer.from(first.draft.bytes).toString('latin1').split('\r\n')) {
      expect(line.length).toBeLessThanOrEqual(998);
      expect(line).toMatch(/^[\x20-\x7e\t]*$/);
    }
  });
});

describe('an address in project.json', () => {
  const settings = JSON.parse(readFileSync(join(SAMPLE, 'project.json'), 'utf8')) as object;
  const held = (address: string) => {
    const value = { ...settings, camp: { to: ['camp@example.com', address] } };
    return holdToShape(
      { file: 'project.json', text: JSON.stringify(value, null, 2), value },
      projectSettings as never,
    );
  };
  const refused = [
    '',
    ' ',
    '@',
    'a',
    'a@',
    '@b.com',
    'a@b',
    'a@@b.com',
    'a@b@c.com',
    'a@b.com\r\nBcc: c@d.com',
    'a@b.com\n',
    '\na@b.com',
    'a@b.com\r',
    'a@b.com\0',
    'a@b.com\u2028',
    'a\u200b@b.com',
    'a@b\u202e.com',
    'a\u0085@b.com',
    ' a@b.com',
    'a@b.com ',
    'a @b.com',
    'a@b .com',
    'a\t@b.com',
    'a@b.com, c@d.com',
    'a@b.com;c@d.com',
    'a@b.com c@d.com',
    '<a@b.com>',
    'Ines <a@b.com>',
    '"Ines" <a@b.com>',
    'Group: a@b.com;',
    'Group:;',
    'undisclosed-recipients:;',
    'a(comment)@b.com',
    '(comment)a@b.com',
    'a@(comment)b.com',
    'a@b.com(comment)',
    '"a b"@c.com',
    '"a\\"b"@c.com',
    '"a@x.com"@c.com',
    '""@c.com',
    'a@[127.0.0.1]',
    'a@[IPv6:::1]',
    'a@127.0.0.1',
    'a@localhost',
    'a@-b.com',
    'a@b-.com',
    'a@b..com',
    'a@.b.com',
    'a@b.com.',
    '.a@b.com',
    'a.@b.com',
    'a..b@c.com',
    '-oQ/tmp@b.com',
    '-@b.com',
    '+a@b.com',
    'a!b@c.com',
    'a%b@c.com',
    'a/b@c.com',
    'a|b@c.com',
    'a`b@c.com',
    'a$b@c.com',
    'a=b@c.com',
    'a?b@c.com',
    'a#b@c.com',
    'a&b@c.com',
    "a'b@c.com",
    'a*b@c.com',
    'a{b}@c.com',
    'ä@b.com',
    'a@ä.com',
    'а@b.com',
    'a@b.соm',
    'a＠b.com',
    'a@b。com',
    '輝@b.com',
    '=?utf-8?Q?a?=@b.com',
    'a@=?utf-8?Q?b?=.com',
    'mailto:a@b.com',
    'a@b.com?bcc=c@d.com',
    'a%0d%0aBcc:c@d.com',
    'a\\r\\n@b.com',
    'a@b.c1',
    'a@b.1',
    `${'a'.repeat(65)}@b.com`,
    `a@${'b'.repeat(260)}.com`,
    `${'a.'.repeat(20_000)}a@b.com`,
    `a@${'b-'.repeat(200_000)}`,
    `a@${'b.'.repeat(200_000)}`,
    `${'a'.repeat(500_000)}`,
  ];
  it.each(refused.map((each) => [each.slice(0, 60), each]))(
    'is refused with its place: %j',
    (_shown, address) => {
      const result = held(address);
      if (result.ok) return expect.fail('it was taken');
      const [finding] = result.findings;
      expect(finding === undefined ? '' : formatPlace(finding.place)).toMatch(
        /^project\.json:\d+:\d+, field camp\.to\.1$/,
      );
      expect(finding?.problem).toMatch(/is not a plain mail address, like camp@example\.com|is too long/);
    },
  );

  it.each([
    'a@b.co',
    'ines.falk@example.com',
    'i_f+rc-7@mail.example.org',
    '7@example.com',
    '_x@a-b.example.com',
    `${'a'.repeat(64)}@b.com`,
  ])('is taken as it is written: %s', (address) => {
    expect(held(address).ok).toBe(true);
  });
});
