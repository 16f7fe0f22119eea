import PostalMime, { type Attachment, type Email } from 'postal-mime';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { safeText } from '../finding/safe-text.ts';
import { mailAttachment, mailUnreadable } from './findings.ts';

/** What came with a mail: the name that it was sent under, made fit to be said (never to be opened), and its bytes. */
export interface Attached {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const MEGABYTE = 1024 * 1024;

/**
 * What is accepted of a mail. Its reader keeps each line by itself and each part as a thing: a mail of nothing but short lines, which
 * none with attachments is, would fill the memory.
 */
const MAIL_LIMITS = {
  bytes: 24 * MEGABYTE,
  /** Lines of any length, and for larger mails as many as would be this long. */
  lines: 20_000,
  lineBytes: 60,
  boundaryLines: 5000,
  headerBytes: 256 * 1024,
  nesting: 40,
  mailsInMails: 5,
  attachments: 200,
} as const;

const NOTHING_CHANGED = 'Nothing was changed.';
const SAVE_THEM = `Open it in a mail program, save the attachments and take those in. ${NOTHING_CHANGED}`;

/**
 * Everything attached to a mail, forwarded ones within it included. `file` is what findings call it. Refused: what is no mail, what is
 * larger or nested deeper than mails are, and attachments that a mail program has packed in a form of its own.
 */
export async function readMail(bytes: Uint8Array, file: string): Promise<Result<readonly Attached[]>> {
  const refuse = (problem: string, remedy: string): Result<never> =>
    refused(mailUnreadable.at({ file }, { problem, remedy }));
  if (bytes.length > MAIL_LIMITS.bytes)
    return refuse(
      `it is ${Math.ceil(bytes.length / MEGABYTE)} MB; at most ${MAIL_LIMITS.bytes / MEGABYTE} MB is read`,
      SAVE_THEM,
    );
  if (isCompoundFile(bytes))
    return refuse(
      'its mail program saved it in its own form',
      `Save it as .eml, or save its attachments and take those in. ${NOTHING_CHANGED}`,
    );
  const tooMany = linesFault(bytes);
  if (tooMany !== undefined) return refuse(tooMany, SAVE_THEM);
  const email = await parsed(bytes);
  if (email === undefined)
    return refuse('it is nested deeper, or its headers are longer, than those of any mail', SAVE_THEM);
  if (!email.headers.some(({ key }) => MAIL_HEADERS.has(key)))
    return refuse(
      'it has no header of a mail',
      `Save the mail from the mail program as .eml and take that in. ${NOTHING_CHANGED}`,
    );
  if (email.attachments.length > MAIL_LIMITS.attachments)
    return refuse(
      `it has ${email.attachments.length} attachments; at most ${MAIL_LIMITS.attachments} are read`,
      SAVE_THEM,
    );
  const faults = email.attachments.flatMap((each, index) => attachmentFault(each, file, index));
  if (faults.length > 0) return refused(...faults);
  return ok(email.attachments.map((each, index) => ({ name: saidName(each, index), bytes: bytesOf(each) })));
}

const MAIL_HEADERS = new Set(['from', 'to', 'date', 'subject', 'message-id', 'mime-version', 'received']);

async function parsed(bytes: Uint8Array): Promise<Email | undefined> {
  try {
    return await PostalMime.parse(bytes, {
      maxHeadersSize: MAIL_LIMITS.headerBytes,
      maxNestingDepth: MAIL_LIMITS.nesting,
      maxRfc822NestingDepth: MAIL_LIMITS.mailsInMails,
    });
  } catch {
    return undefined;
  }
}

/** Why the lines of a mail are not those of one with attachments, in words; undefined where they are. */
function linesFault(bytes: Uint8Array): string | undefined {
  let [lines, boundaries] = [0, 0];
  for (let at = bytes.indexOf(LINE_FEED); at >= 0; at = bytes.indexOf(LINE_FEED, at + 1)) {
    lines += 1;
    if (bytes[at + 1] === HYPHEN && bytes[at + 2] === HYPHEN) boundaries += 1;
  }
  if (lines > MAIL_LIMITS.lines + bytes.length / MAIL_LIMITS.lineBytes)
    return `it has ${lines} lines, more than a mail of its size`;
  return boundaries > MAIL_LIMITS.boundaryLines
    ? `it has ${boundaries} lines that may part it, more than any mail`
    : undefined;
}

const LINE_FEED = 0x0a;
const HYPHEN = 0x2d;

/** The form in which one common mail program saves mails and drafts: its first bytes are always these. */
function isCompoundFile(bytes: Uint8Array): boolean {
  return [0xd0, 0xcf, 0x11, 0xe0].every((byte, index) => bytes[index] === byte);
}

function attachmentFault(attachment: Attachment, file: string, index: number): readonly Finding[] {
  const name = saidName(attachment, index);
  const at = (problem: string, remedy: string): readonly Finding[] => [
    mailAttachment.at({ file, thing: name }, { problem, remedy: `${remedy} ${NOTHING_CHANGED}` }),
  ];
  if (attachment.rfc822DepthExceeded === true)
    return at(
      'it is a mail in a mail in a mail, too deep to look into',
      'Save that mail by itself and take it in.',
    );
  if (attachment.mimeType === 'application/ms-tnef' || name.toLowerCase() === 'winmail.dat')
    return at(
      'a mail program packed the attachments in its own form',
      'Have it sent again as plain text, or the files on a stick.',
    );
  return [];
}

/** The name of an attachment as it is said: on one line, at most sixty characters, with nothing that hides or obeys; never a path. */
function saidName({ filename }: Attachment, index: number): string {
  const last = (filename ?? '').split(/[/\\]/).at(-1)?.trim() ?? '';
  const shown = [...safeText(last.normalize('NFC'))].slice(0, 60).join('');
  return shown === '' ? `attachment ${index + 1}` : shown;
}

function bytesOf({ content }: Attachment): Uint8Array {
  if (typeof content === 'string') return new TextEncoder().encode(content);
  return content instanceof Uint8Array ? content : new Uint8Array(content);
}
