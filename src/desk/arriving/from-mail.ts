import { copyIn } from '../../files/read-copy.ts';
import { ok, type Result, refused } from '../../finding/finding.ts';
import { looksLikeBundle } from '../../handover/bundle/open-bundle.ts';
import { mailAttachment } from '../../mail/findings.ts';
import { type Attached, readMail } from '../../mail/read-mail.ts';
import { type Arrival, type Home, together } from './arrival.ts';
import { fromArchive } from './from-archive.ts';

/**
 * What a mail brings: bundles and documents among its attachments. One that is broken refuses the whole mail, for what belongs together
 * is taken in together; pictures and the like are left.
 */
export async function fromMail(bytes: Uint8Array, file: string, home: Home): Promise<Result<Arrival>> {
  const attached = await readMail(bytes, file);
  if (!attached.ok) return attached;
  const read = attached.value.map((each) => fromAttached(each, file, home));
  const refusals = read.flatMap((each) => (each.ok ? [] : each.findings));
  if (refusals.length > 0) return refused(...refusals);
  const arrival = together(read.flatMap((each) => (each.ok ? [each.value] : [])));
  const brings = arrival.documents.length + (arrival.parts?.length ?? 0) + (arrival.senders?.length ?? 0);
  if (brings > 0) return ok(arrival);
  const names = arrival.left
    .map((each) => each.what)
    .slice(0, 5)
    .join('; ');
  return refused(
    mailAttachment.at(
      { file },
      {
        problem: `no bundle and no file of a hole is attached to it${names === '' ? '' : `: only ${names}`}`,
        remedy: 'Look in the mail for what was meant, and have it attached as a file. Nothing was changed.',
      },
    ),
  );
}

function fromAttached({ name, bytes }: Attached, file: string, home: Home): Result<Arrival> {
  const from = `${file}, ${name}`;
  if (/\.zip$/i.test(name) || (looksLikeBundle(bytes) && !name.includes('.')))
    return fromArchive(bytes, from, home);
  if (/\.json$/i.test(name) || looksLikeDocument(bytes)) {
    const copy = copyIn(bytes, from);
    return copy.ok ? ok({ documents: [{ from, document: copy.value }], left: [] }) : copy;
  }
  return ok({ documents: [], left: [{ what: from, why: 'it is not a bundle and no file of a hole' }] });
}

/** True for bytes that begin as a document of ours does: mail programs change the endings of names. */
function looksLikeDocument(bytes: Uint8Array): boolean {
  const start = new TextDecoder().decode(bytes.subarray(0, 2000));
  return /^\s*\{/.test(start) && start.includes('"kind"') && start.includes('"format"');
}
