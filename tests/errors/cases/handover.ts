import { arrivalIn } from '../../../src/desk/arriving/read-arrival.ts';
import { readBeginning } from '../../../src/desk/arriving/read-beginning.ts';
import { realDisk } from '../../../src/files/real-disk.ts';
import type { Finding } from '../../../src/finding/finding.ts';
import { makeBundle } from '../../../src/handover/bundle/make-bundle.ts';
import { writeZip } from '../../../src/handover/zip/write-zip.ts';
import type { Stamp } from '../../../src/quantity/stamp.ts';
import { attached, mailWith } from '../../trust/crafted-mail.ts';
import { craftZip } from '../../trust/crafted-zip.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const AT = '2026-03-14T16:05:10+08:00' as Stamp;
const text = (words: string): Uint8Array => new TextEncoder().encode(words);

/** What is found in bytes that arrive at the project Mulgara Bend. */
async function arriving(file: string, bytes: Uint8Array): Promise<readonly Finding[]> {
  return findingsIn(await arrivalIn(bytes, file, { project: 'Mulgara Bend', handWritten: {} }));
}

const bundle = (project = 'Mulgara Bend') =>
  makeBundle({ project, replica: 'k3f9', by: 'NOK', at: AT }, [{ file: 'project.json', bytes: text('{}') }]);

/** A bundle with another file in the place of one that its manifest names. */
function exchanged(): Uint8Array {
  const manifest = text(JSON.stringify(bundle().manifest));
  return writeZip(
    [
      { name: 'manifest.json', bytes: manifest },
      { name: 'project.json', bytes: text('[]') },
    ],
    AT,
  );
}

/** Errors of handover/ and mail/: what arrives and can't be taken in. */
export const HANDOVER_CASES: readonly ErrorCase[] = [
  given('archive-unreadable', 'a bundle that lost its last byte', () =>
    arriving('camp.zip', bundle().bytes.slice(0, -1)),
  ),
  given('archive-unsafe', 'an archive with a file that climbs out of its folder', () =>
    arriving('camp.zip', craftZip([{ name: '../../evil.json', content: text('{}') }])),
  ),
  given('bundle-altered', 'a bundle with a file exchanged', () => arriving('camp.zip', exchanged())),
  given('bundle-of-another-project', 'a bundle of Mulgara West', () =>
    arriving('camp.zip', bundle('Mulgara West').bytes),
  ),
  given('no-beginning', 'a project to begin with the file of one hole', async () =>
    findingsIn(await readBeginning(realDisk, ['sample-projects/mulgara-bend/holes/MBRC003.json'])),
  ),
  given('mail-unreadable', 'a text under the name of a mail', () =>
    arriving('reply.eml', text('See attached.\n')),
  ),
  given('mail-attachment', 'a mail whose attachments are in a form of one mail program alone', () =>
    arriving('reply.eml', mailWith(attached('winmail.dat', 'x\x9f>"', 'application/ms-tnef'))),
  ),
];
