import { checkHole } from '../../check/check-hole.ts';
import { documentPath } from '../../files/document-file.ts';
import { inflateExactly } from '../../files/inflate.ts';
import { printDocument } from '../../files/print-document.ts';
import { HAND_WRITTEN } from '../../files/project-folder.ts';
import { type FileToPack, makeBundle } from '../../handover/bundle/make-bundle.ts';
import { TABLES_FOLDER } from '../../handover/bundle/names.ts';
import { openBundle } from '../../handover/bundle/open-bundle.ts';
import { letterFor } from '../../handover/letter/letter.ts';
import type { Source } from '../../handover/tables/table.ts';
import { csvFiles } from '../../handover/tables/table-files.ts';
import { tablesOf } from '../../handover/tables/tables.ts';
import { writeDraft } from '../../mail/write-draft.ts';
import type { Project } from '../../project/project.ts';
import type { Document } from '../../record/document.ts';
import { type Unfinished, unfinished } from '../../standing/unfinished.ts';
import type { Desk } from '../contract.ts';
import type { NotHere } from '../not-here.ts';
import { type MachinePath, machinePathsIn } from './machine-paths.ts';

/** Where what is packed for camp is laid down. */
const OUTBOX = 'outbox';

/** What came of packing: the two files from the top of the project, how large the bundle is, what is not finished in it. */
export type Packed =
  | {
      readonly ok: true;
      readonly bundle: string;
      readonly draft: string;
      readonly bytes: number;
      readonly sha256: string;
      readonly to: readonly string[];
      readonly holes: number;
      readonly unfinished: readonly Unfinished[];
      /** Documents that were to be packed and are not in it. */
      readonly absent: readonly NotHere[];
    }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/** Where a document stands in a journal is a matter of the laptop that it comes from: a copy stands in none. */
const IN_NO_JOURNAL = { generation: 0, sequence: 0 };

interface PackOptions {
  readonly withPaths?: boolean;
  /** Documents that would go with it and can't: the letter names them. */
  readonly absent?: readonly NotHere[];
}

/**
 * Packs documents for camp: a bundle, and a mail draft that carries it and says in plain words what is in it, both laid down durably in
 * the outbox. No network is touched: a person opens the draft in the mail program and sends it. Refused where a history holds a path of a
 * computer, unless it is to go with it.
 */
export async function pack(
  desk: Desk,
  project: Project,
  chosen: readonly Document[],
  { withPaths = false, absent = [] }: PackOptions = {},
): Promise<Packed> {
  const paths = withPaths ? [] : machinePathsIn(chosen);
  if (paths[0] !== undefined) return holdsPaths(paths[0], paths.length - 1);
  const packed = [...chosen].sort((a, b) => (documentPath(a) < documentPath(b) ? -1 : 1));
  const at = desk.now();
  const documents = [...desk.documents().values()];
  const bundle = makeBundle(
    { project: project.settings.name, replica: desk.replica(), by: desk.person, at },
    [...filesOf(desk, packed), ...tablesIn({ project, documents, of: packed, now: at })],
  );
  const opened = openBundle(bundle.bytes, bundle.name, inflateExactly);
  if (!opened.ok)
    return {
      ok: false,
      problem: opened.findings[0]?.problem ?? 'it would not open',
      remedy: 'Pack fewer holes at a time. Nothing was written.',
    };
  const holes = packed.filter((each) => each.kind === 'hole');
  const findings = holes.flatMap((hole) => checkHole(project, hole, documents));
  const notPacked = absent.map(absentWords);
  const { subject, text } = letterFor({ project, documents, packed, findings, bundle, notPacked });
  const to = project.settings.camp?.to ?? [];
  const draft = await writeDraft({
    to,
    cc: project.settings.camp?.cc ?? [],
    subject,
    text,
    attachment: { name: `${bundle.name}.zip`, bytes: bundle.bytes },
    at,
    token: bundle.sha256.slice(0, 32),
  });
  const files = { bundle: `${OUTBOX}/${bundle.name}.zip`, draft: `${OUTBOX}/${bundle.name}.eml` };
  for (const [file, bytes] of [
    [files.bundle, bundle.bytes],
    [files.draft, draft],
  ] as const) {
    const written = await desk.writeOut(file, bytes);
    if (!written.ok)
      return {
        ok: false,
        problem: written.problem,
        remedy: 'Free space, or open the project for writing, and pack again.',
      };
  }
  return {
    ok: true,
    ...files,
    bytes: bundle.bytes.length,
    sha256: bundle.sha256,
    to,
    holes: holes.length,
    unfinished: [...notPacked, ...unfinished({ project, documents, now: at }, packed, findings)],
    absent,
  };
}

function absentWords({ id, file, why }: NotHere): Unfinished {
  return { name: id, items: [`NOT in the bundle, or not whole: ${why} (${file}).`] };
}

function holdsPaths({ document, path }: MachinePath, more: number): Packed {
  const others = more === 0 ? '' : ` (and ${more} more like it)`;
  return {
    ok: false,
    problem: `the history of ${document.kind} ${document.id}${others} holds a path of a computer, which would go to everybody who gets it: ${path}`,
    remedy:
      'An earlier version recorded it, and a history is never rewritten. If camp may see it, pack it with: ;pack with paths, or offsider pack --with-paths. Nothing was written.',
  };
}

/** Flat tables of what is packed, for whoever has the bundle and no offsider. */
function tablesIn(source: Source): readonly FileToPack[] {
  return csvFiles(source.project.settings.name, tablesOf(source)).map(({ file, bytes }) => ({
    file: `${TABLES_FOLDER}/${file}`,
    bytes,
  }));
}

function filesOf(desk: Desk, packed: readonly Document[]): readonly FileToPack[] {
  const utf8 = new TextEncoder();
  const byHand = (['project', 'logging'] as const).flatMap((which) => {
    const found = desk[which]();
    return found === undefined ? [] : [{ file: HAND_WRITTEN[which], bytes: utf8.encode(found.text) }];
  });
  const documents = packed.map((document) => ({
    file: documentPath(document),
    bytes: utf8.encode(printDocument({ document, position: IN_NO_JOURNAL })),
    document,
  }));
  return [...byHand, ...documents];
}
