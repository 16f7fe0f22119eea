import * as z from 'zod';
import { instantMs, type Stamp } from '../../quantity/stamp.ts';
import type { Entry } from '../../record/document.ts';
import { entriesUpTo } from '../../record/increment.ts';
import { type Manifest, manifestShape } from './manifest.ts';

const holds = manifestShape.shape.holds.unwrap();

/** Another copy of the project, as the last bundle that came from it says. */
const knownCopy = z.strictObject({
  replica: manifestShape.shape.replica,
  by: manifestShape.shape.by,
  at: manifestShape.shape.at,
  documents: holds.shape.documents,
  texts: holds.shape.texts,
  /** Its files written by hand, in full: a later bundle of it names what has not changed by its SHA-256 alone. */
  written: z.array(z.strictObject({ path: z.string().max(200), text: z.string() })).max(20),
});
export type KnownCopy = Readonly<z.infer<typeof knownCopy>>;

/** The file in which a project keeps what it knows of its other copies, the one heard of last at the end. */
export const knownCopiesShape = z.strictObject({
  format: z.literal(1),
  copies: z.array(knownCopy).max(100),
});

/** A file written by hand: its place in the project, and what it says. */
export type WrittenText = KnownCopy['written'][number];

/** What a bundle says of the copy that it came from; undefined of one that does not say what it holds. */
export function copyOf(
  { replica, by, at, holds: held }: Manifest,
  written: readonly WrittenText[],
): KnownCopy | undefined {
  if (held === undefined) return undefined;
  return { replica, by, at, documents: held.documents, texts: held.texts, written: [...written] };
}

/** The copies known, with what one of them said now. What it said later by its own clock stands: mails overtake each other. */
export function withCopy(copies: readonly KnownCopy[], heard: KnownCopy): readonly KnownCopy[] {
  const before = copies.find(({ replica }) => replica === heard.replica);
  if (before !== undefined && instantMs(before.at as Stamp) > instantMs(heard.at as Stamp)) return copies;
  return [...copies.filter((each) => each !== before), heard].slice(-100);
}

/** Who is at camp, by the roles of project.json. */
export function campPeople(
  people: readonly { readonly initials: string; readonly role: string }[],
): readonly string[] {
  return people.filter(({ role }) => role === 'camp').map(({ initials }) => initials);
}

/** Who a bundle is for: the copies that it must make sense to. None known yet: everything goes. */
export function recipientsOf(
  copies: readonly KnownCopy[],
  about: {
    readonly person: string;
    readonly people: readonly { readonly initials: string; readonly role: string }[];
    /** Initials of who signs at the other copy, or the copy itself. */
    readonly forWhom?: string | undefined;
  },
): readonly KnownCopy[] {
  const { person, people, forWhom } = about;
  if (forWhom !== undefined)
    return copies.filter(
      ({ by, replica }) => by === forWhom.toUpperCase() || replica === forWhom.toLowerCase(),
    );
  const camp = campPeople(people);
  const isCamp = (initials: string) => camp.includes(initials);
  return isCamp(person)
    ? copies.filter(({ by }) => !isCamp(by))
    : copies.filter(({ by }) => isCamp(by)).slice(-1);
}

/** The last entry that every one of these copies holds of a document; undefined where one of them has not said that it holds one of ours. */
export function heldByAll(
  copies: readonly Pick<KnownCopy, 'documents'>[],
  file: string,
  history: readonly Entry[],
): string | undefined {
  const heads = copies.map(({ documents }) => documents.find((each) => each.file === file)?.head);
  const reached = [...new Set(heads)].map((head) =>
    head === undefined ? undefined : entriesUpTo(history, head),
  );
  return heads.find((head) => head !== undefined && reached.every((entries) => entries?.has(head) === true));
}
