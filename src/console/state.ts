import { ownNames } from '../acts/own-names.ts';
import type { Received } from '../desk/arriving/receive-files.ts';
import type { Packed } from '../desk/packing/pack.ts';
import type { Finding } from '../finding/finding.ts';
import type { Project } from '../project/project.ts';
import type { Stamp } from '../quantity/stamp.ts';
import type { Document, Id } from '../record/document.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { inOwnNames } from '../shorthand/own-names.ts';
import { projectForHole } from '../standing/hole-schema.ts';
import { countOpen } from '../standing/questions.ts';
import { holeInDrilling } from '../standing/rig-holes.ts';
import { type Draft, EMPTY_DRAFT } from './draft.ts';
import type { LineUpForm } from './line-up/line-up-form.ts';
import type { RowCursor } from './log/panels/rows-panel.ts';
import type { Prompt } from './prompt.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** What is on the screen, with its cursor. A screen of a hole names the hole; `escape` leads to the log, from there to the holes. */
export type Screen =
  | { readonly name: 'holes'; readonly cursor: number }
  | { readonly name: 'log'; readonly hole: string; readonly cursor: RowCursor }
  | { readonly name: 'fields'; readonly hole: string; readonly cursor: RowCursor; readonly form: FieldsForm }
  | { readonly name: 'survey'; readonly hole: string; readonly cursor: number; readonly view: SurveyView }
  | { readonly name: 'line-up'; readonly hole: string }
  /** Instrument readings down the metres: the column, the row in hand, what is typed beside it. */
  | {
      readonly name: 'readings';
      readonly hole: string;
      readonly field: string;
      readonly cursor: Id | undefined;
      readonly typed: Draft;
      readonly from: RowCursor;
    }
  | ({ readonly name: ListScreen; readonly hole: string } & ListPart)
  | OverPart<Exclude<ListOver, 'shift' | 'check'>>
  /** What check finds, of the hole in hand or of all: the worst first, or hole by hole. */
  | CheckScreen
  /** The shift record: the shift that was gone to, else the latest one of the rig; its record, its plod and the query list, or the note for the next crew. */
  | (OverPart<'shift'> & { readonly shift?: string; readonly view?: 'plod' | 'note' | 'swing' })
  /** The help, over the screen that it was asked on. */
  | ({
      readonly name: 'help';
      readonly hole?: string;
      readonly asked: Exclude<Screen, { readonly name: 'help' }>;
    } & ListPart);

/** What every list screen has: the first line that is shown, the words that are searched for, and the row that was open on the log. */
interface ListPart {
  readonly cursor: number;
  readonly find: string;
  readonly from: RowCursor;
  /** On the history: the hole as it stood after so many edits. */
  readonly after?: number;
}

/** Lists of the hole in hand. */
export const HOLE_LISTS = ['bags', 'advice', 'history', 'codes', 'row'] as const;
export type ListScreen = (typeof HOLE_LISTS)[number];

/** Lists that need no hole and lie over whatever is in hand; `questions` are those that merges left in any document. */
export const LISTS_OVER = [
  'shift',
  'found',
  'dispatch',
  'results',
  'packed',
  'received',
  'questions',
  'check',
] as const;
export type ListOver = (typeof LISTS_OVER)[number];

/** The list of what check finds. */
export type CheckScreen = OverPart<'check'> & { readonly by?: 'hole' };

/** A list that needs no hole, and names the one it lies over where there is one. */
type OverPart<Name extends ListOver> = { readonly name: Name; readonly hole?: string } & ListPart;

/** What the survey screen shows: the shots with their checks, the hole from above, the hole from the side. */
export type SurveyView = 'shots' | 'plan' | 'section' | 'expected';

/** Logging by fields: which field is in hand, what is typed to find a value in it, and the strokes said in each so far: together they are the line. */
export interface FieldsForm {
  readonly field: number;
  readonly typed: Draft;
  readonly pick: number;
  readonly said: { readonly [field: string]: string };
}

/** What the last key led to, in words. */
export interface Message {
  readonly text: string;
  readonly tone: 'good' | 'warn' | 'alert' | 'plain';
  /** Cautions of the row that was logged: shown first, and never cut. */
  readonly cautions?: readonly string[];
}

/** Whether what was entered is on the disk. */
export interface Health {
  /** Edits entered and not durable yet. */
  readonly pending: number;
  readonly savedAt?: Stamp;
  /** Set where saving has failed: why, what is not safe, and where that is so that it is for good: another console has taken over. */
  readonly unsafe?: {
    readonly reason: string;
    readonly what: readonly string[];
    readonly isForGood?: true;
  };
}

/** Everything that the console shows or decides by. Plain data; nothing in it is a handle to anything. */
export interface State {
  readonly project: Project;
  readonly documents: ReadonlyMap<string, Document>;
  readonly person: string;
  readonly rig: string;
  readonly now: Stamp;
  /** What was found on opening the project, and of its files since. */
  readonly found: readonly Finding[];
  /** What came of packing last; undefined while it is packed, and before. */
  readonly packed: Packed | undefined;
  /** What came of the file received last; undefined while it is taken in, and before. */
  readonly received: readonly Received[] | undefined;
  readonly screen: Screen;
  /** The list of findings, where it was left to look at the place of one. */
  readonly checkLeft?: CheckScreen | undefined;
  /** The entry line. */
  readonly draft: Draft;
  /** The line that waits at the logged head while an earlier row is open. */
  readonly parked: Draft;
  /** Line-ups that are being made, by hole: what was read stays while other screens are looked at. */
  readonly lineUps: ReadonlyMap<string, LineUpForm>;
  readonly prompt: Prompt | undefined;
  readonly message: Message | undefined;
  readonly health: Health;
  /** Keys typed behind a line that was refused in a burst: they wait until it is mended, and are never glued to it. */
  readonly held: readonly KeyEvent[];
  /** True from a refusal within a burst to the end of that read: what follows goes to `held`. */
  readonly holding: boolean;
  /** The line that was asked about last, as typed: `=` behind it insists. */
  readonly asked: string | undefined;
  /** The line that the form made of this row: once that is saved, the shortest line for it is shown. */
  readonly formed: string | undefined;
  /** Why nothing can be changed, where that is so. */
  readonly readOnly: string | undefined;
}

/** The state at the start: what was found on opening where that is more than a note, else the log of the hole that is drilled, else the list of holes. */
export function initialState(given: {
  readonly project: Project;
  readonly documents: ReadonlyMap<string, Document>;
  readonly person: string;
  readonly rig: string;
  readonly now: Stamp;
  readonly readOnly: string | undefined;
  readonly found?: readonly Finding[];
  readonly message?: Message;
}): State {
  const drilling = holeInDrilling(given.documents.values(), given.rig);
  const found = given.found ?? [];
  return {
    ...given,
    found,
    packed: undefined,
    received: undefined,
    screen: firstScreen(found, drilling?.id),
    draft: EMPTY_DRAFT,
    parked: EMPTY_DRAFT,
    lineUps: new Map(),
    prompt: undefined,
    message: given.message ?? openMessage(found, given.documents.values()),
    health: { pending: 0 },
    held: [],
    holding: false,
    asked: undefined,
    formed: undefined,
  };
}

function firstScreen(found: readonly Finding[], drilling: string | undefined): Screen {
  if (found.some((finding) => finding.severity !== 'note')) {
    const hole = drilling === undefined ? {} : { hole: drilling };
    return { name: 'found', cursor: 0, find: '', from: 'head', ...hole };
  }
  return drilling === undefined
    ? { name: 'holes', cursor: 0 }
    : { name: 'log', hole: drilling, cursor: 'head' };
}

/** What is said at the start: notes on what was found, and questions of two copies that no one settled. */
function openMessage(found: readonly Finding[], documents: Iterable<Document>): Message | undefined {
  const open = [...documents].map((document) => countOpen(document)).reduce((sum, each) => sum + each, 0);
  const noted = foundMessage(found);
  if (open === 0) return noted;
  const said = `${open} ${open === 1 ? 'place' : 'places'} where two copies differ ${open === 1 ? 'waits' : 'wait'} to be settled: ;questions.`;
  return { text: noted === undefined ? said : `${said} ${noted.text}`, tone: 'warn' };
}

/** Notes need no screen of their own: the first is said, and where to read the rest. */
function foundMessage([first, ...rest]: readonly Finding[]): Message | undefined {
  if (first === undefined) return undefined;
  if ([first, ...rest].some((finding) => finding.severity !== 'note')) return undefined;
  const more = rest.length === 0 ? '' : ` ;found shows ${rest.length} more.`;
  return { text: `Found on opening: ${first.problem}. ${first.remedy}${more}`, tone: 'warn' };
}

/** The hole that the screen is about, or undefined on the list of holes. */
export function holeInHand(state: State): Document | undefined {
  const hole = state.screen.name === 'holes' ? undefined : state.screen.hole;
  return hole === undefined ? undefined : state.documents.get(`hole/${hole}`);
}

/** The schema that the hole in hand is logged with: what its rows were typed with never comes to mean something else. */
export function schemaInHand(state: State): LoggingSchema {
  const hole = holeInHand(state);
  return (hole === undefined ? state.project : projectForHole(state.project, hole)).schema;
}

/** The row that was open on the log when the screen was come to; the logged head where none was. */
export function rowLeft(screen: Screen): RowCursor {
  if ('from' in screen) return screen.from;
  return screen.name === 'log' || screen.name === 'fields' ? screen.cursor : 'head';
}

/** Holes of the project in the order of their names. */
export function holesOf(state: State): readonly Document[] {
  return [...state.documents.values()]
    .filter((document) => document.kind === 'hole')
    .sort((a, b) => a.id.localeCompare(b.id, 'en', { numeric: true }));
}

/** A text of ours with its examples in the names of the project in hand. */
export function inOwn(state: State, text: string): string {
  const hole = holeInHand(state);
  const project = hole === undefined ? state.project : projectForHole(state.project, hole);
  return inOwnNames(text, ownNames(project, state.documents.values(), { person: state.person, hole }));
}
