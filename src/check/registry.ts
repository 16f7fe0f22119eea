import type { FindingKind } from '../finding/finding.ts';
import * as hole from '../hole/findings.ts';
import * as sampling from '../sampling/findings.ts';
import * as schema from '../schema/findings.ts';
import * as shift from '../shift/findings.ts';
import * as survey from '../survey/findings.ts';
import * as termination from '../termination/findings.ts';

/** What a room's `findings.ts` exports: kinds of finding, by themselves or as records of them. */
type FindingTable = Readonly<Record<string, FindingKind | Readonly<Record<string, FindingKind>>>>;

/** Every kind of finding in a room's table. */
export function kindsIn(table: FindingTable): readonly FindingKind[] {
  return Object.values(table).flatMap((entry) => (isKind(entry) ? [entry] : Object.values(entry)));
}

function isKind(entry: FindingTable[string]): entry is FindingKind {
  return typeof entry.code === 'string';
}

/** Rooms with the kinds of finding that each raises, from the lowest line up. Rooms above this one hand theirs in to {@link catalogueText}. */
export const FINDING_KINDS_BY_ROOM: readonly (readonly [room: string, kinds: readonly FindingKind[]])[] = [
  ['schema', kindsIn(schema)],
  ['hole', kindsIn(hole)],
  ['sampling', kindsIn(sampling)],
  ['survey', kindsIn(survey)],
  ['shift', kindsIn(shift)],
  ['termination', kindsIn(termination)],
];

/** Every kind of finding of the rooms below this one. */
export const allFindingKinds: readonly FindingKind[] = FINDING_KINDS_BY_ROOM.flatMap(([, kinds]) => kinds);

const HEAD = `# Findings

Generated from the code. Every problem that offsider can find in data, by the room that looks for it. A _fault_ can't be used as it
stands, a _warning_ can and probably shouldn't, a _note_ is worth knowing. Below each: one input that brings it about, and what is said then.
`;

/** What one input brings about: the input in words, and the text of the finding. */
export interface FindingExample {
  readonly input: string;
  readonly text: string;
}

/** The catalogue of findings as Markdown: code, severity, what is wrong, why it matters, and by code an example of each. */
export function catalogueText(
  rooms: readonly (readonly [room: string, kinds: readonly FindingKind[]])[] = FINDING_KINDS_BY_ROOM,
  examples: ReadonlyMap<string, FindingExample> = new Map(),
): string {
  const sections = rooms.map(([room, kinds]) => {
    const sorted = [...kinds].sort((a, b) => (a.code < b.code ? -1 : 1));
    return [`## ${room}`, ...sorted.map((kind) => entryText(kind, examples.get(kind.code)))].join('\n\n');
  });
  return `${[HEAD.trimEnd(), ...sections].join('\n\n')}\n`;
}

function entryText({ code, severity, title, rationale }: FindingKind, example?: FindingExample): string {
  const said = title.endsWith('.') ? title : `${title}.`;
  const entry = `**\`${code}\`** (${severity}) ${said}\n${rationale}`;
  return example === undefined
    ? entry
    : `${entry} Given ${example.input}:\n\n\`\`\`text\n${example.text}\n\`\`\``;
}
