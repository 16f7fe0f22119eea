import type { FindingKind } from '../finding/finding.ts';
import { QUESTION_FINDINGS } from '../hole/questions.ts';
import { REFUSALS } from '../hole/refusals.ts';
import { SURVEY_FINDING_KINDS } from '../survey/finding-kinds.ts';
import { SAMPLING_FINDING_KINDS } from './kinds/sampling.ts';
import { SCHEMA_FINDING_KINDS } from './kinds/schema.ts';
import { SHIFT_FINDING_KINDS } from './kinds/shift.ts';
import { TERMINATION_FINDING_KINDS } from './kinds/termination.ts';

/** Rooms with the kinds of finding that each raises, from the lowest line up. Rooms above this one hand theirs in to {@link catalogueText}. */
export const FINDING_KINDS_BY_ROOM: readonly (readonly [room: string, kinds: readonly FindingKind[]])[] = [
  ['schema', SCHEMA_FINDING_KINDS],
  ['hole', [...Object.values(REFUSALS), ...Object.values(QUESTION_FINDINGS)]],
  ['sampling', SAMPLING_FINDING_KINDS],
  ['survey', SURVEY_FINDING_KINDS],
  ['shift', SHIFT_FINDING_KINDS],
  ['termination', TERMINATION_FINDING_KINDS],
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
