import type { KnownCopy } from '../../handover/bundle/known-copies.ts';
import type { Part } from '../../handover/bundle/parts.ts';
import type { Document, DocumentName } from '../../record/document.ts';

/** Another copy of a document, and what it came in, in words (`reply.eml, MBRC003.json`). */
export interface ArrivedDocument {
  readonly from: string;
  readonly document: Document;
}

/** Something that came along and is not taken in, with why in words. */
export interface LeftAlone {
  readonly what: string;
  readonly why: string;
  /** Where something is missing for it: what to ask for. */
  readonly lacking?: string;
  /** Of a logging.json that is not ours: its text and the files that it starts from, by path, to say what it logs differently. */
  readonly logging?: { readonly text: string; readonly parents: ReadonlyMap<string, string> };
}

/** What came in one file: documents to be taken in, in their order, and what is left. */
export interface Arrival {
  readonly documents: readonly ArrivedDocument[];
  readonly left: readonly LeftAlone[];
  /** Parts of bundles: they wait for the others. */
  readonly parts?: readonly ArrivedPart[];
  /** What the copies that bundles came from say of themselves: kept once what came is taken in. */
  readonly senders?: readonly KnownCopy[];
}

/** A part of a bundle: the archive that it came as, and what is in it. */
export interface ArrivedPart extends Part {
  readonly from: string;
  readonly archive: Uint8Array;
}

/** What something that arrives is compared with: the project's name (none where it is to begin one), its hand-written files as they are, by path, and what it holds. */
export interface Home {
  readonly project: string | undefined;
  readonly handWritten: Readonly<Record<string, string | undefined>>;
  /** Documents here, for increments that go on from them. */
  readonly get?: (name: DocumentName) => Document | undefined;
  /** Copies heard of before, for files written by hand that have not changed since. */
  readonly known?: readonly KnownCopy[];
}

/** Several arrivals as one. */
export function together(arrivals: readonly Arrival[]): Arrival {
  return {
    documents: arrivals.flatMap((each) => each.documents),
    left: arrivals.flatMap((each) => each.left),
    parts: arrivals.flatMap((each) => each.parts ?? []),
    senders: arrivals.flatMap((each) => each.senders ?? []),
  };
}
