import { lineContext } from '../../acts/line-context.ts';
import { refusalUnderRows } from '../../acts/shifted-refusal.ts';
import { amendRow, logRow, settleAsked } from '../../hole/commands/rows.ts';
import { holeThing, rowsDown } from '../../hole/hole.ts';
import { formatInterval, type Interval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { cautionsOfNoReturn, cautionsShown, lostWords } from '../../schema/cautions.ts';
import { meaningsOf } from '../../schema/legend.ts';
import { type EntryContext, insistOn, type ParsedRow, parseLine } from '../../shorthand/parse.ts';
import type { Refusal } from '../../shorthand/said.ts';
import { noteWords } from '../../shorthand/words.ts';
import { writeLine } from '../../shorthand/write.ts';
import { nextInterval } from '../../standing/heads.ts';
import { projectForHole } from '../../standing/hole-schema.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import { scanBag } from '../samples/scan.ts';
import { holeInHand, type State, schemaInHand } from '../state.ts';
import { keptIfRefused, type Step, saying, still, submittingResult, type World } from '../step.ts';
import { chordOf, type KeyEvent, keyPress } from '../terminal/input/keys.ts';
import { runCommand } from './commands.ts';
import { refusalWords } from './panels/echo.ts';
import type { RowCursor } from './panels/rows-panel.ts';
import { previewRange } from './range.ts';

/** The interval that the entry line is about: the row in hand at the logged head, or the earlier row that is open. */
export function intervalInHand(hole: Document, cursor: RowCursor): Interval {
  const row = cursor === 'head' ? undefined : holeThing(hole, 'rows', cursor);
  return row ?? nextInterval(hole);
}

/** What the entry line is read against, where the cursor is. */
export function entryContext(state: State, hole: Document, cursor: RowCursor): EntryContext {
  const by = cursor === 'head' ? state.person : undefined;
  return lineContext(projectForHole(state.project, hole), hole, intervalInHand(hole, cursor).fromMm, by);
}

/** Enter on the log screen. An empty line logs nothing, so a held Enter logs nothing more. */
export function enterLine(state: State, world: World): Step {
  const hole = holeInHand(state);
  if (hole === undefined || state.screen.name !== 'log') return still(state);
  const { cursor } = state.screen;
  const parsed = parseLine(lineMeant(state), entryContext(state, hole, cursor));
  switch (parsed.kind) {
    case 'empty':
      return cursor === 'head' ? still({ ...state, message: undefined }) : still(toHead(state));
    case 'settle':
      return settleOldest(state, hole);
    case 'bag':
      return scanBag({ ...state, draft: EMPTY_DRAFT }, hole, parsed.number);
    case 'command':
      return keptIfRefused(state, runCommand({ ...state, draft: EMPTY_DRAFT }, hole, parsed, world));
    case 'range':
      return keptIfRefused(state, previewRange({ ...state, draft: EMPTY_DRAFT }, hole, parsed, world));
    case 'refused':
      return refuse(state, refusalUnderRows(state.project, hole, state.draft.text, parsed), world);
    case 'row':
      return enterRow(state, hole, parsed, world);
  }
}

/** The line typed. A lone `=` put behind a line that was asked about insists on all that was asked, not on its last item alone. */
function lineMeant({ draft, asked }: State): string {
  const [, before] = /^(.*?) *= *$/s.exec(draft.text) ?? [];
  return asked !== undefined && before === asked.trimEnd() ? insistOn(asked) : draft.text;
}

/**
 * A key that goes on repeating where a repeat was asked about: held, counted in words and logged once that one is accepted, for in the line
 * `..` would say nothing. Undefined for any other key.
 */
export function repeatHeld(state: State, event: KeyEvent): State | undefined {
  const { asked, draft, held, screen } = state;
  if (screen.name !== 'log' || asked !== REPEAT || draft.text !== REPEAT) return undefined;
  const isDot = event.kind === 'text' && event.text === REPEAT;
  const isOpen = held.at(-1)?.kind === 'text';
  if (!isDot && !(isOpen && chordOf(event) === 'enter')) return undefined;
  const more = isDot && isOpen ? [keyPress('enter'), event] : [event];
  const next: State = { ...state, held: [...held, ...more] };
  const dots = next.held.filter((each) => each.kind === 'text').length;
  const words = `${dots} more ${dots === 1 ? 'dot waits' : 'dots wait'}: = and Enter logs this row and ${dots === 1 ? 'that one' : 'those'}, Esc drops them.`;
  return saying(next, words, 'warn');
}

const REPEAT = '.';

function refuse(state: State, parsed: Refusal, world: World): Step {
  return still({
    ...saying(state, refusalWords(parsed), 'alert'),
    draft: { ...state.draft, at: state.draft.text.length },
    holding: world.ahead,
  });
}

function enterRow(state: State, hole: Document, parsed: ParsedRow, world: World): Step {
  const { screen } = state;
  if (screen.name !== 'log') return still(state);
  const reasons = [...lostByAmending(state, hole, parsed), ...parsed.asks.map((ask) => ask.reason)];
  if (reasons.length > 0 && !world.ahead) {
    const words = `${reasons.join('; ')}. Add = to accept it, or fix it.`;
    return still(saying({ ...state, asked: state.draft.text }, words, 'warn'));
  }
  const at = intervalInHand(hole, screen.cursor);
  const [next, effects] = saveRow(state, hole, screen.cursor, parsed, world);
  if (effects.length === 0) return still(next);
  const marked = `${formatInterval(at)} saved, marked ?: ${reasons[0]}. = on the empty line settles it.`;
  const said = reasons.length === 0 ? next : saying(next, marked, 'warn');
  const replay = state.held.length === 0 ? [] : [{ do: 'replay' as const, events: state.held }];
  const taught = withCautions(
    withNotes(withLine(said, state, hole, parsed), parsed),
    entryContext(state, hole, screen.cursor),
    parsed,
  );
  return [{ ...taught, formed: undefined }, [...effects, ...replay]];
}

/** A danger that the row opened says and the line no longer would: asked once, `=` at the end of the line is the answer. */
function lostByAmending(state: State, hole: Document, { row }: ParsedRow): readonly string[] {
  const { screen, draft } = state;
  if (screen.name !== 'log' || screen.cursor === 'head' || /= *$/.test(draft.text)) return [];
  const before = holeThing(hole, 'rows', screen.cursor);
  if (before === undefined) return [];
  return lostWords(schemaInHand(state), before, row);
}

/** What the line restated: said once more when the row is saved, for a slipped key may have made it so. */
function withNotes(saved: State, { notes }: ParsedRow): State {
  if (notes.length === 0 || saved.message === undefined) return saved;
  const { text, tone } = saved.message;
  return saying(saved, `${text}. ${noteWords(notes)}`, tone);
}

/** After a row said by fields: the shortest line that would have done the same. */
function withLine(saved: State, before: State, hole: Document, { row }: ParsedRow): State {
  const { draft, formed, screen } = before;
  if (formed === undefined || screen.name !== 'log' || !draft.text.startsWith(formed)) return saved;
  const line = writeLine(row, entryContext(before, hole, screen.cursor));
  const { text = '', tone } = saved.message ?? {};
  return saying(
    saved,
    `${text}${/[.!?]$/.test(text) ? '' : '.'} The line ${line} would have done the same.`,
    tone,
  );
}

/** Logs the row at the logged head, or amends the one that is open; then the line is empty, or the one that waited. */
function saveRow(state: State, hole: Document, cursor: RowCursor, parsed: ParsedRow, world: World): Step {
  const legend = meaningsOf(schemaInHand(state), [parsed.row]);
  const after: State = { ...state, held: [], asked: undefined };
  if (cursor !== 'head')
    return submittingResult(state, hole, amendRow(hole, cursor, parsed.row, legend), toHead(after));
  const row = { ...intervalInHand(hole, cursor), ...parsed.row };
  const maker = { newId: world.newId, at: world.now, by: state.person };
  return submittingResult(state, hole, logRow(hole, row, legend, maker), { ...after, draft: EMPTY_DRAFT });
}

/** Every caution of the row that was logged, above whatever else is said of it. */
function withCautions(saved: State, context: EntryContext, { row }: ParsedRow): State {
  const cautions = [
    ...cautionsShown(context.schema, context.above?.cells ?? {}, row.cells),
    ...cautionsOfNoReturn(context.schema, context.previous ?? context.above, row),
  ];
  if (cautions.length === 0) return saved;
  const { text = '', tone = 'alert' } = saved.message ?? {};
  return { ...saved, message: { text, tone, cautions } };
}

/** `=` on the empty line: the oldest row that was asked about stands as it is. */
function settleOldest(state: State, hole: Document): Step {
  const oldest = rowsDown(hole).find(([, row]) => row.asked !== undefined);
  const emptied = { ...state, draft: EMPTY_DRAFT };
  if (oldest === undefined) return still(saying(emptied, 'Nothing is waiting to be settled.'));
  return submittingResult(state, hole, settleAsked(hole, oldest[0]), emptied);
}

/** Back to the logged head, with the line that was waiting there. */
export function toHead(state: State): State {
  const { screen } = state;
  if (screen.name !== 'log' || screen.cursor === 'head') return state;
  return {
    ...state,
    screen: { ...screen, cursor: 'head' },
    draft: state.parked,
    parked: EMPTY_DRAFT,
    message: undefined,
  };
}

/** Opens a row above or below the one in hand, as its own line; below the last one is the logged head. */
export function moveRow(state: State, by: number): Step {
  const hole = holeInHand(state);
  const { screen } = state;
  if (hole === undefined || screen.name !== 'log') return still(state);
  const rows = rowsDown(hole);
  const headMm = nextInterval(hole).fromMm;
  const headAt = rows.findLastIndex(([, row]) => row.fromMm < headMm) + 1;
  const ids: RowCursor[] = rows.map(([id]) => id);
  ids.splice(headAt, 0, 'head');
  const was = ids.indexOf(screen.cursor);
  const cursor = ids[Math.max(0, Math.min(ids.length - 1, was + by))];
  if (cursor === undefined || cursor === screen.cursor) return still(state);
  if (cursor === 'head') return still(toHead(state));
  const parked = screen.cursor === 'head' ? state.draft : state.parked;
  const moved: State = { ...state, screen: { ...screen, cursor }, parked, message: undefined };
  return still({ ...moved, draft: draftOf(ownLine(moved, hole, cursor)) });
}

/** The line that says an earlier row, as it is. */
function ownLine(state: State, hole: Document, cursor: RowCursor): string {
  const row = cursor === 'head' ? undefined : holeThing(hole, 'rows', cursor);
  return row === undefined ? '' : writeLine(row, entryContext(state, hole, cursor));
}
