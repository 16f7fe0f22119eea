import PostalMime, { type Email } from 'postal-mime';
import type { Desk } from '../../src/desk/desk.ts';
import { pack } from '../../src/desk/packing/pack.ts';
import type { Project } from '../../src/project/project.ts';
import type { Stamp } from '../../src/quantity/stamp.ts';
import type { Document } from '../../src/record/document.ts';

/** A bundle and its mail draft, as they were laid down. */
export interface Laid {
  readonly bundle: { readonly name: string; readonly bytes: Uint8Array };
  readonly draft: { readonly name: string; readonly bytes: Uint8Array };
}

/** Packs documents of a project at a desk that only keeps what is written out. */
export async function packed(
  project: Project,
  documents: readonly Document[],
  person = 'NOK',
): Promise<Laid> {
  const out = new Map<string, Uint8Array>();
  const desk: Partial<Desk> = {
    person,
    replica: () => 'k3f9',
    now: () => '2026-03-14T16:05:10+08:00' as Stamp,
    documents: () => new Map(documents.map((each) => [`${each.kind}/${each.id}`, each])),
    knownCopies: async () => [],
    writtenTexts: async () => [{ path: 'project.json', text: JSON.stringify(project.settings) }],
    writeOut: async (file, bytes) => {
      out.set(file, bytes);
      return { ok: true };
    },
  };
  const done = await pack(desk as Desk, project, documents, { withPaths: true });
  if (!done.ok) throw new Error(done.problem);
  const laid = (name: string) => ({ name, bytes: out.get(name) ?? new Uint8Array() });
  return { bundle: laid(done.bundle), draft: laid(done.drafts[0] ?? '') };
}

/** The headers of a mail's bytes as they are: each field unfolded, in order. Throws where a line is none that RFC 5322 allows. */
export function headersOf(bytes: Uint8Array): readonly (readonly [name: string, value: string])[] {
  const raw = Buffer.from(bytes).toString('latin1');
  const end = raw.indexOf('\r\n\r\n');
  const fields: [string, string][] = [];
  for (const line of raw.slice(0, end).split('\r\n')) {
    if (!/^[\x20-\x7e\t]{1,998}$/.test(line))
      throw new Error(`no header line: ${JSON.stringify(line.slice(0, 100))}`);
    const field = /^([\x21-\x39\x3b-\x7e]+): ?(.*)$/.exec(line);
    const last = fields.at(-1);
    if (/^[ \t]+\S/.test(line) && last !== undefined) last[1] += ` ${line.trim()}`;
    else if (field?.[1] !== undefined) fields.push([field[1], (field[2] ?? '').trim()]);
    else throw new Error(`no field: ${JSON.stringify(line.slice(0, 100))}`);
  }
  return fields;
}

/** A mail as a reader that is not the program's writer understands it. */
export const parsedMail = (bytes: Uint8Array): Promise<Email> => PostalMime.parse(bytes);

/** What is wrong with a draft, in words, whatever was in the texts that it was made of; undefined where nothing is. */
export async function draftFault(
  { bundle, draft }: Laid,
  {
    to = [],
    cc = [],
  }: { readonly to?: readonly string[] | undefined; readonly cc?: readonly string[] | undefined },
): Promise<string | undefined> {
  const addressed = [...(to.length > 0 ? ['To'] : []), ...(cc.length > 0 ? ['Cc'] : [])];
  const wanted = ['X-Unsent', ...addressed, 'Subject', 'Message-ID', 'Date', 'MIME-Version', 'Content-Type'];
  const names = headersOf(draft.bytes).map(([name]) => name);
  if (names.join() !== wanted.join()) return `headers ${names.join()}`;
  const email = await parsedMail(draft.bytes);
  const read = (list: typeof email.to): string =>
    (list ?? []).map((each) => `${each.name}<${each.address}>`).join();
  if (read(email.to) !== to.map((each) => `<${each}>`).join()) return `to ${read(email.to)}`;
  if (read(email.cc) !== cc.map((each) => `<${each}>`).join()) return `cc ${read(email.cc)}`;
  if (email.bcc !== undefined || email.from !== undefined || email.replyTo !== undefined)
    return 'an address more';
  if (email.html !== undefined) return 'a page of the web in it';
  const [only, ...more] = email.attachments;
  if (only === undefined || more.length > 0) return `${email.attachments.length} attachments`;
  if (`outbox/${only.filename}` !== bundle.name || !/^outbox\/[A-Z0-9_-]+\.zip$/.test(bundle.name))
    return `attached ${only.filename}`;
  if (!Buffer.from(only.content as ArrayBuffer).equals(bundle.bytes)) return 'another bundle attached';
  const unsafe = /[^\P{Cc}\n]|[\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Default_Ignorable_Code_Point}]/u;
  if (/\n/.test(email.subject ?? '') || unsafe.test(email.subject ?? ''))
    return `subject ${JSON.stringify(email.subject)}`;
  return unsafe.test(email.text ?? '') ? `text ${JSON.stringify(unsafe.exec(email.text ?? ''))}` : undefined;
}
