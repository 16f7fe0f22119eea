import { documentPath } from '../../files/document-file.ts';
import { printIncrement } from '../../files/increment-file.ts';
import { digestOf } from '../../files/load-document.ts';
import { documentBytes } from '../../files/print-document.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import { heldByAll, type KnownCopy, type WrittenText } from '../../handover/bundle/known-copies.ts';
import type { Along, FileToPack } from '../../handover/bundle/make-bundle.ts';
import type { Manifest } from '../../handover/bundle/manifest.ts';
import { incrementPath, isWrittenPath, SCHEMA_FOLDER } from '../../handover/bundle/names.ts';
import type { Document } from '../../record/document.ts';
import { completed, entriesUpTo, incrementSince } from '../../record/increment.ts';
import { sameJson } from '../../record/json.ts';

/** What goes into a bundle. */
export interface Contents {
  readonly files: readonly FileToPack[];
  /** Documents of which anything goes along, whole or as an increment. */
  readonly packed: readonly Document[];
  /** Documents that its receivers hold as they are: nothing of them goes along. */
  readonly unchanged: readonly Document[];
  readonly along: Along;
}

/** What a bundle is packed from. */
export interface PackedFrom {
  /** Every document of the project. */
  readonly documents: readonly Document[];
  readonly chosen: readonly Document[];
  /** True where nothing was chosen by name. */
  readonly everything: boolean;
  readonly written: readonly WrittenText[];
  /** Every other copy that is known, and those of them that the bundle is for; for none of them everything goes whole. */
  readonly known: readonly KnownCopy[];
  readonly receivers: readonly KnownCopy[];
}

/** Where a document stands in a journal is a matter of the laptop that it comes from: a copy stands in none. */
const IN_NO_JOURNAL = { generation: 0, sequence: 0 };

const utf8 = new TextEncoder();

/** What is new or changed for the receivers of a bundle; everything, where there are none that said what they hold. */
export function contentsOf(from: PackedFrom): Contents {
  const sorted = [...from.chosen].sort((a, b) => (documentPath(a) < documentPath(b) ? -1 : 1));
  const documents = sorted.map((document) => ({ document, file: documentFile(document, from.receivers) }));
  const written = from.written
    .filter(({ path }) => isWrittenPath(path))
    .slice(0, 11)
    .map(placed);
  const isHeld = (sha256: string) =>
    from.receivers.length > 0 && from.receivers.every(({ texts }) => texts.includes(sha256));
  const texts = written.filter(({ said }) => !isHeld(said.sha256));
  return {
    files: [
      ...texts.map(({ said, bytes }) => ({ file: said.file, bytes })),
      ...documents.flatMap(({ file }) => file ?? []),
    ],
    packed: documents.flatMap(({ document, file }) => (file === undefined ? [] : [document])),
    unchanged: documents.flatMap(({ document, file }) => (file === undefined ? [document] : [])),
    along: {
      ...(from.everything ? { everything: true } : {}),
      holds: {
        documents: from.documents.flatMap((each) => {
          const head = each.history.at(-1)?.hash;
          return head === undefined ? [] : [{ file: documentPath(each), head }];
        }),
        texts: heldTexts(from),
      },
      written: written.map(({ said }) => said),
    },
  };
}

function placed({ path, text }: WrittenText, index: number) {
  const byHand: readonly string[] = Object.values(HAND_WRITTEN);
  const bytes = utf8.encode(text);
  // The two files come first, so that what logging.json starts from is numbered from 1 on.
  const file = byHand.includes(path) ? path : `${SCHEMA_FOLDER}/${index - 1}.json`;
  const said: NonNullable<Manifest['written']>[number] = { file, path, sha256: digestOf(text) };
  return { said, bytes };
}

/** The texts that this copy has: its own, and those that others sent. */
function heldTexts({ written, known }: PackedFrom): string[] {
  const all = [...written, ...known.flatMap((copy) => copy.written)];
  return [...new Set(all.map(({ text }) => digestOf(text)))];
}

/**
 * A document's file in a bundle: whole where a receiver has not said which of its entries it holds, else what came since; undefined where
 * nothing did. An increment is put together again here first: one that did not give the same would lose what it lacks.
 */
function documentFile(document: Document, receivers: readonly KnownCopy[]): FileToPack | undefined {
  const file = documentPath(document);
  const whole = () => documentBytes({ document, position: IN_NO_JOURNAL });
  const head = heldByAll(receivers, file, document.history);
  const increment = head === undefined ? undefined : incrementSince(document, head);
  if (head === undefined || increment === undefined) return { file, bytes: whole(), document };
  if (increment.entries.length === 0) return undefined;
  const held = [...(entriesUpTo(document.history, head)?.values() ?? [])];
  const made = completed(increment, held, digestOf);
  if (!made.ok || !sameJson(made.document.tables, document.tables)) return { file, bytes: whole(), document };
  return {
    file: incrementPath(file),
    bytes: utf8.encode(printIncrement(document, increment)),
    document,
    since: increment.onto,
  };
}
