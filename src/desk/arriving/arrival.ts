import type { Document } from '../../record/document.ts';

/** Another copy of a document, and what it came in, in words (`reply.eml, MBRC003.json`). */
export interface ArrivedDocument {
  readonly from: string;
  readonly document: Document;
}

/** Something that came along and is not taken in, with why in words. */
export interface LeftAlone {
  readonly what: string;
  readonly why: string;
  /** Of a logging.json that is not ours: its text, to say what it logs differently. */
  readonly logging?: string;
}

/** What came in one file: documents to be taken in, in their order, and what is left. */
export interface Arrival {
  readonly documents: readonly ArrivedDocument[];
  readonly left: readonly LeftAlone[];
}

/** What something that arrives is compared with: the project's name, and its two hand-written files as they are. */
export interface Home {
  readonly project: string;
  readonly handWritten: Readonly<Record<string, string | undefined>>;
}

/** Several arrivals as one. */
export function together(arrivals: readonly Arrival[]): Arrival {
  return {
    documents: arrivals.flatMap((each) => each.documents),
    left: arrivals.flatMap((each) => each.left),
  };
}
