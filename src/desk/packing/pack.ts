import { checkHole } from '../../check/check-hole.ts';
import { inflateExactly } from '../../files/inflate.ts';
import { campPeople, type KnownCopy, recipientsOf } from '../../handover/bundle/known-copies.ts';
import { type FileToPack, makeBundle } from '../../handover/bundle/make-bundle.ts';
import { TABLES_FOLDER } from '../../handover/bundle/names.ts';
import { openBundle } from '../../handover/bundle/open-bundle.ts';
import { letterFor } from '../../handover/letter/letter.ts';
import type { Source } from '../../handover/tables/table.ts';
import { csvFiles } from '../../handover/tables/table-files.ts';
import { tablesOf } from '../../handover/tables/tables.ts';
import type { Project } from '../../project/project.ts';
import type { Document } from '../../record/document.ts';
import { type Unfinished, unfinished } from '../../standing/unfinished.ts';
import type { Desk } from '../contract.ts';
import type { NotHere } from '../not-here.ts';
import { contentsOf } from './contents.ts';
import { addressesOf, layDown } from './lay-down.ts';
import { type MachinePath, machinePathsIn } from './machine-paths.ts';

/** What came of packing: the files from the top of the project, how large the bundle is, what is not finished in it. */
export type Packed =
  | {
      readonly ok: true;
      readonly bundle: string;
      /** The mail drafts: one, or one for each part where the bundle is larger than a mail may be. */
      readonly drafts: readonly string[];
      readonly bytes: number;
      readonly sha256: string;
      readonly to: readonly string[];
      /** Holes of which anything is in it. */
      readonly holes: number;
      /** Where it holds only what is new or changed: for whom, and how many documents are left out as they have them. */
      readonly since?: Since;
      /** Where everything went in full for want of it: who is at camp, none of whom has acknowledged anything yet. */
      readonly unheard?: readonly string[];
      readonly unfinished: readonly Unfinished[];
      /** Documents that were to be packed and are not in it. */
      readonly absent: readonly NotHere[];
    }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/** What a bundle is held against: copies that acknowledged what they hold, and documents that are as those have them. */
export interface Since {
  readonly receivers: readonly { readonly by: string; readonly at: string }[];
  readonly unchanged: number;
}

interface PackOptions {
  readonly withPaths?: boolean;
  /** True where nothing was chosen by name: the receiver then knows of what it lacks. */
  readonly everything?: boolean;
  /** Everything in full, whatever was acknowledged. */
  readonly whole?: boolean;
  /** For whom: initials of who signs at another copy; camp, or at camp every rig, where no one is named. */
  readonly forWhom?: string | undefined;
  /** Documents that would go with it and can't: the letter names them. */
  readonly absent?: readonly NotHere[];
}

/**
 * Packs documents for camp: a bundle, and mail drafts that carry it and say in plain words what is in it, all laid down durably in
 * the outbox. In it is what is new or changed since the last bundle that camp acknowledged. No network is touched: a person opens the
 * draft in the mail program and sends it. Refused where a history holds a path of a computer, unless it is to go with it.
 */
export async function pack(
  desk: Desk,
  project: Project,
  chosen: readonly Document[],
  options: PackOptions = {},
): Promise<Packed> {
  const { withPaths = false, absent = [] } = options;
  const known = await desk.knownCopies();
  const receivers = options.whole === true ? [] : recipientsOf(known, forWhom(desk, project, options));
  if (options.forWhom !== undefined && options.whole !== true && receivers.length === 0)
    return nothingHeard(options.forWhom, known);
  const documents = [...desk.documents().values()];
  const everything = options.everything === true;
  const written = await desk.writtenTexts();
  const contents = contentsOf({ documents, chosen, everything, written, known, receivers });
  const { packed } = contents;
  const paths = withPaths ? [] : machinePathsIn(packed);
  if (paths[0] !== undefined) return holdsPaths(paths[0], paths.length - 1);
  const at = desk.now();
  // Tables of some rows would pass for all of them: they go with a bundle that is whole.
  const tables = receivers.length > 0 ? [] : tablesIn({ project, documents, of: packed, now: at });
  const bundle = makeBundle(
    { project: project.settings.name, replica: desk.replica(), by: desk.person, at },
    [...contents.files, ...tables],
    contents.along,
  );
  const opened = openBundle(bundle.bytes, bundle.name, inflateExactly);
  if (!opened.ok)
    return {
      ok: false,
      problem: opened.findings[0]?.problem ?? 'it would not open',
      remedy: 'Pack fewer holes at a time. Nothing was written.',
    };
  const since =
    receivers.length === 0
      ? {}
      : {
          since: {
            receivers: receivers.map(({ by, at }) => ({ by, at })),
            unchanged: contents.unchanged.length,
          },
        };
  const holes = packed.filter((each) => each.kind === 'hole');
  const findings = holes.flatMap((hole) => checkHole(project, hole, documents));
  const notPacked = absent.map(absentWords);
  const letter = letterFor({ project, documents, chosen, packed, findings, bundle, notPacked, ...since });
  const laid = await layDown(desk, project, bundle, letter);
  if (!laid.ok) return laid;
  return {
    ok: true,
    bundle: laid.bundle,
    drafts: laid.drafts,
    bytes: bundle.bytes.length,
    sha256: bundle.sha256,
    to: addressesOf(project, desk.person).to,
    holes: holes.length,
    ...since,
    ...(options.whole === true || receivers.length > 0 ? {} : { unheard: unheard(desk, project) }),
    unfinished: [...notPacked, ...unfinished({ project, documents, now: at }, packed, findings)],
    absent,
  };
}

function forWhom(desk: Desk, project: Project, options: PackOptions) {
  return { person: desk.person, people: project.settings.people, forWhom: options.forWhom };
}

/** Who would acknowledge: at a rig those at camp, at camp no one by name. */
function unheard({ person }: Desk, { settings }: Project): readonly string[] {
  const camp = campPeople(settings.people);
  return camp.includes(person) ? [] : camp;
}

function nothingHeard(who: string, known: readonly KnownCopy[]): Packed {
  const signed = [...new Set(known.map(({ by }) => by))].join(', ');
  return {
    ok: false,
    problem: `no bundle has come from ${who}, so nothing is known of what that copy holds`,
    remedy: `${signed === '' ? 'No other copy has sent one yet.' : `Bundles came from ${signed}.`} Pack without a name, or everything in full: --whole (;pack whole). Nothing was written.`,
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
