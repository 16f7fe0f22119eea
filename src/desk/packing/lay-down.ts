import { campPeople } from '../../handover/bundle/known-copies.ts';
import type { Bundle } from '../../handover/bundle/make-bundle.ts';
import { partsOf } from '../../handover/bundle/parts.ts';
import type { Letter } from '../../handover/letter/letter.ts';
import { writeDraft } from '../../mail/write-draft.ts';
import type { Project } from '../../project/project.ts';
import type { Desk } from '../contract.ts';

/** Where what is packed for camp is laid down. */
const OUTBOX = 'outbox';

/** The largest mail where project.json says nothing, in MB: most mail programs take that, and a saved mail of it is read here. */
const USUAL_MAIL_MB = 20;

type LaidDown =
  | { readonly ok: true; readonly bundle: string; readonly drafts: readonly string[] }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/**
 * Lays a bundle and its mail drafts down in the outbox, durably. One draft carries all of it; where that would be larger than a mail of
 * this project may be, each draft carries a part. The parts come before the whole, so that a bundle that is there has its drafts.
 */
export async function layDown(
  desk: Desk,
  project: Project,
  bundle: Bundle,
  letter: Letter,
): Promise<LaidDown> {
  const limit = Math.floor((project.settings.camp?.mailMB ?? USUAL_MAIL_MB) * 1_000_000);
  const whole = { name: `${bundle.name}.zip`, bytes: bundle.bytes };
  const draft = await draftOf(project, bundle, letter, whole);
  const drafts =
    draft.length <= limit
      ? [{ file: `${OUTBOX}/${bundle.name}.eml`, bytes: draft }]
      : await draftsOfParts(project, bundle, letter, limit);
  const files = [...drafts, { file: `${OUTBOX}/${whole.name}`, bytes: whole.bytes }];
  for (const { file, bytes } of files) {
    const written = await desk.writeOut(file, bytes);
    if (!written.ok)
      return {
        ok: false,
        problem: written.problem,
        remedy: 'Free space, or open the project for writing, and pack again.',
      };
  }
  return { ok: true, bundle: `${OUTBOX}/${whole.name}`, drafts: drafts.map(({ file }) => file) };
}

/** Base64 in lines of 76 and their ends (RFC 2045) takes 78 bytes for 57. */
const MAILED = 78 / 57;

/** Room for the headers of a mail and of its part, for what an archive adds, and of a letter for each byte of it written as `=C3`. */
const HEADERS_BYTES = 6000;
const LETTER_BYTES = 3.1;

/** However long the letter: a part carries at least so much of the bundle. */
const SMALLEST_PART = 40_000;

async function draftsOfParts(project: Project, bundle: Bundle, letter: Letter, limit: number) {
  const beside = HEADERS_BYTES + Buffer.byteLength(letter.text) * LETTER_BYTES;
  const parts = partsOf(bundle, Math.max(SMALLEST_PART, Math.floor((limit - beside) / MAILED)));
  return Promise.all(
    parts.map(async (part, index) => {
      const which = `part ${index + 1} of ${parts.length}`;
      const needed = `This mail brings ${which} of the bundle ${bundle.name}. It is taken in once all parts are there, in any order: save each mail, or what is attached to it, and give it to offsider receive.`;
      const text =
        index === 0 ? `${needed}\n\n${letter.text}` : `${needed}\nThe letter is in the mail with part 1.\n`;
      const bytes = await draftOf(
        project,
        bundle,
        { subject: `${letter.subject} (${which})`, text },
        part,
        index,
      );
      return { file: `${OUTBOX}/${part.name.replace(/zip$/, 'eml')}`, bytes };
    }),
  );
}

/** Who the drafts go to: camp. What camp itself packs is addressed by a person, for rigs have no address in project.json. */
export function addressesOf({ settings: { camp, people } }: Project, person: string) {
  const isCamp = campPeople(people).includes(person);
  return isCamp ? { to: [], cc: [] } : { to: camp?.to ?? [], cc: camp?.cc ?? [] };
}

function draftOf(
  project: Project,
  { at, sha256, manifest }: Bundle,
  { subject, text }: Letter,
  attachment: { readonly name: string; readonly bytes: Uint8Array },
  index?: number,
): Promise<Uint8Array> {
  const addresses = addressesOf(project, manifest.by);
  const part = index === undefined ? '' : `p${index + 1}`;
  return writeDraft({
    ...addresses,
    subject,
    text,
    attachment,
    at,
    token: `${sha256.slice(0, 32)}${part}`,
  });
}
