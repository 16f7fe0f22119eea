import MailComposer from 'nodemailer/lib/mail-composer';
import { instantMs, type Stamp } from '../quantity/stamp.ts';

/** A mail to be opened, looked at and sent by the person's own mail program. */
export interface Draft {
  /** Plain addresses, as the settings of the project hold them to. None leaves the addressing to the person. */
  readonly to: readonly string[];
  readonly cc: readonly string[];
  readonly subject: string;
  readonly text: string;
  readonly attachment: { readonly name: string; readonly bytes: Uint8Array };
  readonly at: Stamp;
  /** What makes this draft another one than all before: at most 40 letters and digits, for a boundary has at most 70 (RFC 2046). */
  readonly token: string;
}

/**
 * A draft as a mail file (RFC 5322, MIME), marked unsent, so that a mail program opens it to be sent. The same draft gives the same
 * bytes. No sender stands in it: the mail program knows its own. A subject is one line that reads as it is written, whatever is in it.
 */
export function writeDraft(draft: Draft): Promise<Uint8Array> {
  const composer = new MailComposer({
    to: [...draft.to],
    cc: [...draft.cc],
    subject: oneLine(draft.subject),
    text: draft.text,
    date: new Date(instantMs(draft.at)),
    messageId: `<${draft.token}@offsider.invalid>`,
    baseBoundary: draft.token,
    headers: { 'X-Unsent': '1' },
    attachments: [
      {
        filename: draft.attachment.name,
        content: Buffer.from(draft.attachment.bytes),
        contentType: 'application/zip',
        contentTransferEncoding: 'base64',
      },
    ],
    newline: 'win',
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  return composer.compile().build();
}

/**
 * Runs of white space and controls become one space, for a line of nothing but spaces may not be folded (RFC 5322, 3.2.2); what a reader
 * would take for an encoded word (RFC 2047), which can hold a line end, is parted.
 */
function oneLine(subject: string): string {
  const plain = subject.replaceAll(/[\p{Cc}\s]+/gu, ' ').trim();
  return plain.replaceAll('=?', '= ?');
}
