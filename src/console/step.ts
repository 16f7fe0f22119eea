import { endedElsewhere } from '../acts/elsewhere.ts';
import type { PackAsked } from '../desk/packing/pack-named.ts';
import type { Finding, Result } from '../finding/finding.ts';
import type { Made } from '../hole/commands/made.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Change, DocumentName, Id } from '../record/document.ts';
import type { CodeChange } from '../schema/change/edit-code.ts';
import type { FieldChange } from '../schema/change/edit-field.ts';
import type { CodeEntry } from '../schema/read/file-entries.ts';
import type { Message, State } from './state.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** What reduce is lent from outside: ids, the time, whether more keys of the same read follow. Plain functions, no hidden state. */
export interface World {
  readonly newId: () => Id;
  readonly now: Stamp;
  /** More keys of the same read wait behind this one: a burst is read ahead. */
  readonly ahead: boolean;
}

/** Changes of one document, as a part of an edit. */
interface Part {
  readonly document: DocumentName;
  readonly changes: readonly Change[];
}

/** What the console asks the desk (or its host) to do. Data: reduce itself touches nothing. */
export type Effect =
  | { readonly do: 'submit'; readonly what: string; readonly parts: readonly Part[] }
  /** The latest deed of this sitting taken back, or done again; the document in hand is the one that need not be named. */
  | { readonly do: 'redo'; readonly inHand: DocumentName | undefined }
  /** `sure`: what is asked about first was asked. */
  | { readonly do: 'undo'; readonly inHand: DocumentName | undefined; readonly sure?: true }
  | { readonly do: 'leave' }
  | { readonly do: 'suspend' }
  | { readonly do: 'repaint' }
  /** A code met on the rig, written to logging.json; what came of it happens later. */
  | { readonly do: 'add code'; readonly list: string; readonly entry: CodeEntry }
  /** A code changed in logging.json; what came of it happens later. */
  | { readonly do: 'change code'; readonly list: string; readonly code: string; readonly change: CodeChange }
  /** A field of the log sheet changed in logging.json; what came of it happens later. */
  | { readonly do: 'change field'; readonly field: string; readonly change: FieldChange }
  /** Everything written to another folder, to go on there; what came of it happens later. */
  | { readonly do: 'elsewhere'; readonly folder: string }
  /** A document whose file is gone: made again from the journal, or let go for good. */
  | { readonly do: 'restore'; readonly document: DocumentName }
  | { readonly do: 'let go'; readonly document: DocumentName; readonly why: string }
  /** A file or device of a GPS is read for the line-up of a hole; what came of it happens later. */
  | { readonly do: 'read gps'; readonly path: string; readonly hole: Id }
  /** Documents packed for camp, all where no name is said; what came of it happens later. */
  | { readonly do: 'pack'; readonly asked: PackAsked }
  /** A file that arrived taken in; what came of it happens later. */
  | { readonly do: 'receive'; readonly file: string; readonly mayClear: boolean }
  /** Keys that were held behind a refused line: reduced next, as if typed now. */
  | { readonly do: 'replay'; readonly events: readonly KeyEvent[] };

/** A state and what is to be done. */
export type Step = readonly [State, readonly Effect[]];

/** A state, and nothing to do. */
export function still(state: State): Step {
  return [state, []];
}

/** The state saying something. */
export function saying(state: State, text: string, tone: Message['tone'] = 'plain'): State {
  return { ...state, message: { text, tone } };
}

/** The state saying what is in the way, in one or two sentences. */
export function sayingFinding(state: State, finding: Finding): State {
  return saying(state, `${sentence(finding.problem)} ${finding.remedy}`, 'alert');
}

function sentence(text: string): string {
  const first = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

/** One edit on one document, the state saying what was done. An edit that changes nothing is not made. */
export function submitting(state: State, document: DocumentName, made: Made, said: string = made.what): Step {
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  if (made.changes.length === 0) return still(saying(state, 'Nothing changed.'));
  const part = { document: { kind: document.kind, id: document.id }, changes: made.changes };
  const beside = endedElsewhere(state.project, state.documents.values(), part.document, part.changes);
  if (beside === undefined)
    return [saying(state, said, 'good'), [{ do: 'submit', what: made.what, parts: [part] }]];
  const { what, ...more } = beside;
  return [
    saying(state, `${said.replace(/\.$/, '')}. ${what}: Ctrl-A and what the rig does now.`, 'warn'),
    [{ do: 'submit', what: `${made.what}; ${what}`, parts: [part, more] }],
  ];
}

/** The same of a command that may refuse: then the state stays as `unchanged` and says why. */
export function submittingResult(
  unchanged: State,
  document: DocumentName,
  result: Result<Made>,
  after: State,
  said?: string,
): Step {
  if (result.ok) {
    const at = unchanged.readOnly === undefined ? after : unchanged;
    return submitting(at, document, result.value, said ?? result.value.what);
  }
  const first = result.findings[0];
  return still(first === undefined ? unchanged : sayingFinding(unchanged, first));
}

/** A step that led to nothing but a word of what is wrong: the line and the question stay as they were typed, to be put right. */
export function keptIfRefused(before: State, [next, effects]: Step): Step {
  const refused = next.message !== undefined && ['alert', 'warn'].includes(next.message.tone);
  const isElsewhere = next.prompt !== undefined || next.screen !== before.screen;
  return effects.length > 0 || isElsewhere || !refused
    ? [next, effects]
    : still({ ...next, draft: before.draft, ...(hasLine(before) ? { prompt: before.prompt } : {}) });
}

/** True where the question in hand has a line; one without is over with its answer. */
function hasLine({ prompt }: State): boolean {
  return prompt !== undefined && 'draft' in prompt;
}
