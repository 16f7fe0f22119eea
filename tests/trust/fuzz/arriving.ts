import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { arrivalIn } from '../../../src/desk/arriving/read-arrival.ts';
import { makeBundle } from '../../../src/handover/bundle/make-bundle.ts';
import { type Project, resolveProject } from '../../../src/project/project.ts';
import { projectSettings } from '../../../src/project/settings.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { identifierFault } from '../../../src/record/identifiers.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { SAMPLE } from '../../commands/support/outside.ts';
import { spoiling } from '../../files/hostile.ts';
import { holeWith, rod, row } from '../../standing/support/hole.ts';
import { resolveStyle } from '../../support/styles.ts';
import { attached, mailWith } from '../crafted-mail.ts';
import { type Crafted, craftZip } from '../crafted-zip.ts';
import { draftFault, packed } from '../packed.ts';
import { HOSTILE, obeyedInLines } from '../vectors.ts';
import { SMALL_HOLE } from './small-hole.ts';
import { spoil } from './spoil.ts';
import { refusedBare, target } from './target.ts';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const FILES = [
  { file: 'project.json', bytes: text('{}') },
  { file: 'holes/ZQRC001.json', bytes: text(SMALL_HOLE) },
];
const BUNDLE = makeBundle(
  { project: 'Mulgara Bend', replica: 'k3f9', by: 'NOK', at: '2026-03-14T16:05:10+08:00' as Stamp },
  FILES,
);
const HOME = { project: 'Mulgara Bend', handWritten: { 'project.json': '{}' } };

/** What is wrong with how something that arrives is taken. */
async function takenBadly(bytes: Uint8Array, file: string): Promise<string | undefined> {
  const arrival = await arrivalIn(bytes, file, HOME);
  if (!arrival.ok) {
    const said = arrival.findings.map(({ place, problem }) => `${place.file} ${place.thing} ${problem}`);
    return refusedBare(arrival.findings) ?? obeyedInLines(said.join(' '));
  }
  const misnamed = arrival.value.documents.find(({ document }) => identifierFault(document.id) !== undefined);
  if (misnamed !== undefined) return `taken as ${misnamed.document.id}`;
  return obeyedInLines(arrival.value.left.map((each) => `${each.what} ${each.why}`).join(' '));
}

const field = fc.option(fc.oneof(fc.nat(70_000), fc.constantFrom(0, 1, 0xffff, 0xffffffff, 0xfffffffe)), {
  nil: undefined,
  freq: 8,
});
const fields = fc
  .record({
    needed: field,
    flags: field,
    method: field,
    time: field,
    crc: field,
    packed: field,
    bytes: field,
  })
  .map((said) => Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)));
const name = fc.oneof(
  fc.constantFrom('manifest.json', 'project.json', 'holes/ZQRC001.json', '../x.json', 'holes/CON.json', ''),
  fc.constantFrom(...HOSTILE),
  fc.string({ maxLength: 20 }),
);
const entry: fc.Arbitrary<Crafted> = fc.record({
  name,
  content: fc.oneof(fc.constantFrom(...FILES.map((each) => each.bytes)), fc.uint8Array({ maxLength: 40 })),
  local: fields,
  central: fields,
  recordOnly: fc.boolean(),
});
const archive = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.array(spoiling, { minLength: 1, maxLength: 3 }).map((how) => spoil(BUNDLE.bytes, how)),
  },
  { weight: 1, arbitrary: fc.array(entry, { maxLength: 4 }).map((entries) => craftZip(entries)) },
);

/** Archives: a bundle spoiled, and archives whose records lie. */
export const archives = target('an archive that arrives', archive, (bytes) => takenBadly(bytes, 'in.zip'));

const MAIL = mailWith(
  attached('ZQRC001.json', SMALL_HOLE, 'application/json'),
  attached('camp.zip', BUNDLE.bytes, 'application/zip'),
);
const mailPiece = fc.oneof(
  fc.constantFrom(
    'From: a@example.com\r\n',
    'Subject: =?utf-8?Q?=0D=0A?=\r\n',
    'Content-Type: multipart/mixed; boundary=b\r\n',
    'Content-Type: multipart/alternative; boundary="c"\r\n',
    'Content-Type: message/rfc822\r\n',
    'Content-Type: application/json; name="x.json"\r\n',
    'Content-Type: text/html; charset=utf-16\r\n',
    'Content-Transfer-Encoding: base64\r\n',
    'Content-Transfer-Encoding: quoted-printable\r\n',
    'Content-Disposition: attachment; filename="x.zip"\r\n',
    "Content-Disposition: attachment; filename*0*=utf-8''%2e%2e; filename*1=/x.json\r\n",
    '--b\r\n',
    '--b--\r\n',
    '--c\r\n',
    '--c--\r\n',
    '\r\n',
    ' folded\r\n',
    '=\r\n',
    '=4',
    `${Buffer.from(SMALL_HOLE).toString('base64')}\r\n`,
    `${Buffer.from(BUNDLE.bytes).toString('base64')}\r\n`,
    SMALL_HOLE,
  ),
  fc.constantFrom(...HOSTILE),
  fc.string({ maxLength: 12 }),
);
const arrivingMail = fc.oneof(
  fc.array(spoiling, { minLength: 1, maxLength: 4 }).map((how) => spoil(MAIL, how)),
  fc.array(mailPiece, { maxLength: 25 }).map((pieces) => text(pieces.join(''))),
);

/** Mails: one with a hole and a bundle spoiled, and mails of pieces in any order. */
export const mails = target('a mail that arrives', arrivingMail, (bytes) => takenBadly(bytes, 'in.eml'));

/** The sample's settings over a starter style, read before any case is measured. */
const SAMPLE_PROJECT = ((): Project => {
  const settings = projectSettings.parse(JSON.parse(readFileSync(join(SAMPLE, 'project.json'), 'utf8')));
  const resolved = resolveProject(settings, resolveStyle('orogenic-gold') as LoggingSchema);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.findings));
  return resolved.value;
})();

const piece = fc.oneof(
  fc.constantFrom(
    '\r\n',
    '\n',
    '\r',
    'Bcc: a@example.org',
    '=?utf-8?Q?',
    '?=',
    '=0D=0A',
    '"',
    '<',
    '>',
    '(',
    ',',
    ';',
    ':',
    ' ',
    '\t',
    '\\',
    '--',
  ),
  fc.constantFrom(...HOSTILE),
  fc.string({ maxLength: 8, unit: 'binary' }),
);
const said = fc
  .array(piece, { minLength: 1, maxLength: 6 })
  .map((pieces) => `x${pieces.join('')}`.slice(0, 200));
const CAMP = { to: ['camp@example.com'], cc: ['office@example.com'] };

/** Drafts of a project whose names are made to be headers. */
export const drafts = target('a mail draft', fc.tuple(said, said, said), async ([project, person, hole]) => {
  const { settings, ...rest } = SAMPLE_PROJECT;
  const people = settings.people.map((each) => ({ ...each, name: person }));
  const named = { ...rest, settings: { ...settings, name: project, people, camp: CAMP } };
  const begun = holeWith(
    { rods: [rod(1, 6)], rows: [row(0, 4)] },
    { name: hole, state: 'suspended', stateReason: person },
  );
  return draftFault(await packed(named, [begun]), CAMP);
});
