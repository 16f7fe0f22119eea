import { act, isPlain } from '../../acts/act.ts';
import { takeLeftOver } from '../../acts/left-over.ts';
import { lineContext } from '../../acts/line-context.ts';
import { planRange } from '../../acts/range.ts';
import type { RangePlan } from '../../acts/range-plan.ts';
import { planSaid } from '../../acts/said-range.ts';
import { refusalUnderRows } from '../../acts/shifted-refusal.ts';
import { earlierWords } from '../../acts/shot.ts';
import { readShotSaid } from '../../acts/shot-said.ts';
import { otherOf, undoneWords } from '../../acts/undone.ts';
import type { Submitted } from '../../desk/desk.ts';
import type { Result } from '../../finding/finding.ts';
import { BAG_KINDS } from '../../hole/bags.ts';
import { logRow, settleAsked } from '../../hole/commands/rows.ts';
import { isOver } from '../../hole/header.ts';
import { headerOf, rowsDown } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document, Edit } from '../../record/document.ts';
import { numbersMeant, numbersOfHole, severalEnd } from '../../sampling/numbers/number-named.ts';
import { type ScannedAt, scanCheck } from '../../sampling/rod/scan.ts';
import { cautionsOfNoReturn, cautionsShown } from '../../schema/cautions.ts';
import { meaningsOf } from '../../schema/legend.ts';
import type { CommandLine } from '../../shorthand/commands.ts';
import { type ParsedRow, parseLine } from '../../shorthand/parse.ts';
import { noteWords } from '../../shorthand/words.ts';
import { nextInterval } from '../../standing/heads.ts';
import { projectForHole } from '../../standing/hole-schema.ts';
import { otherHoles, streamStateOf } from '../../standing/stream.ts';
import { hazardsOf } from '../../standing/survey.ts';
import type { HazardWarning } from '../../survey/expected/expected.ts';
import { holeOf, type LinesAt, makerOf, settled, submitMade, type Taken } from './submit-made.ts';
import { takeMend, takeRod } from './take-rod.ts';

/**
 * Takes one line of the shorthand, as the entry line does where no one is there to be asked; what it says is durable when it returns. A
 * hazard of the plan that the hole comes to, or moves through, is said with it, as it would stand beside the log.
 */
export async function takeLine(at: LinesAt, text: string): Promise<Taken> {
  const before = hazardsAt(at);
  const taken = await taking(at, text);
  if (taken.kind !== 'done' && taken.kind !== 'asked') return taken;
  const known = new Set(before.map(({ text: words }) => words));
  const near = hazardsAt(at).filter(({ text: words }) => !known.has(words));
  return near.length === 0
    ? taken
    : { ...taken, said: [taken.said, ...near.map((each) => each.text)].join('\n') };
}

/** Hazards that the bit is near, where the hole is still being drilled. */
function hazardsAt(at: LinesAt): readonly HazardWarning[] {
  const hole = holeOf(at);
  return isOver(headerOf(hole).state) ? [] : hazardsOf(at.project, hole, at.desk.documents().values());
}

async function taking(at: LinesAt, text: string): Promise<Taken> {
  if (/^\s*(#|$)/.test(text)) return { kind: 'nothing' };
  const hole = holeOf(at);
  const project = projectForHole(at.project, hole);
  const parsed = parseLine(text, lineContext(project, hole, nextInterval(hole).fromMm, at.desk.person));
  switch (parsed.kind) {
    case 'empty':
      return { kind: 'nothing' };
    case 'settle':
      return settleOldest(at, hole);
    case 'bag':
      return lookUpBag(at, hole, parsed.number);
    case 'range':
      return takePlan(at, planSaid(project.schema, hole, parsed, makerOf(at.desk)), parsed.insisted);
    case 'command':
      return takeCommand({ ...at, project }, hole, parsed);
    case 'refused': {
      const { problem, remedy, position, suggestions } = refusalUnderRows(at.project, hole, text, parsed);
      const could = suggestions.map((each) => `${each.text} ${each.label}`).join(', ');
      const said = could === '' || suggestions.some((each) => remedy.includes(each.text));
      return { kind: 'refused', problem, remedy: said ? remedy : `${remedy}: ${could}`, position };
    }
    case 'row':
      return takeRow({ ...at, project }, hole, parsed);
  }
}

async function takeRow(at: LinesAt, hole: Document, parsed: ParsedRow): Promise<Taken> {
  const { schema } = at.project;
  const interval = nextInterval(hole);
  const { above, previous } = lineContext(at.project, hole, interval.fromMm, at.desk.person);
  const cautions = [
    ...cautionsShown(schema, above?.cells ?? {}, parsed.row.cells),
    ...cautionsOfNoReturn(schema, previous ?? above, parsed.row),
  ];
  const restated = parsed.notes.length === 0 ? [] : [`(${noteWords(parsed.notes)})`];
  const taken = await submitMade(
    at,
    logRow(hole, { ...interval, ...parsed.row }, meaningsOf(schema, [parsed.row]), makerOf(at.desk)),
    [...cautions, formatInterval(interval), ...restated].join(' '),
  );
  if (taken.kind !== 'done' || parsed.asks.length === 0) return taken;
  return {
    kind: 'asked',
    said: [...cautions, `${formatInterval(interval)} saved, marked ?`].join(' '),
    reasons: parsed.asks.map((ask) => ask.reason),
  };
}

/** Labels left over from a hole of the rig carry on into this one: one edit over both holes. */
async function takeLabels(at: LinesAt, hole: Document): Promise<Taken> {
  const taken = takeLeftOver(at.project, at.desk.documents().values(), hole, makerOf(at.desk));
  if (!taken.ok) {
    const [first] = taken.findings;
    return { kind: 'refused', problem: first?.problem ?? 'refused', remedy: first?.remedy ?? '' };
  }
  return settled(at, at.desk.submit(taken.value), taken.value.what);
}

async function takeCommand(at: LinesAt, hole: Document, line: CommandLine): Promise<Taken> {
  const { command } = line;
  if (isPlain(command))
    return submitMade(
      at,
      act(at.project, hole, command, makerOf(at.desk), at.desk.documents().values(), line.insisted),
    );
  switch (command.does) {
    case 'leave':
      return { kind: 'leave' };
    case 'undo':
      return settledAs(at, at.desk.undo(at.hole), (edit) => `undone: ${undoneWords(edit, at.hole)}`);
    case 'take labels left over':
      return takeLabels(at, hole);
    case 'redo':
      return settledAs(at, at.desk.redo(), (edit) => `done again: ${otherOf(edit, at.hole)}`);
    case 'shot':
      return takeShot(at, hole, command.said);
    case 'rod done':
      return takeRod(at, hole, command.check ?? '');
    case 'mend':
      return takeMend(at, hole, command.check ?? '');
    case 'scan':
      return lookUpBag(at, hole, command.number, command);
    default:
      return takePlan(at, planRange(at.project.schema, hole, command, makerOf(at.desk)), line.insisted);
  }
}

/** A shot that is doubtful is saved, reported and stays marked; a last `=` stands for having looked. */
async function takeShot(at: LinesAt, hole: Document, said: string): Promise<Taken> {
  const { recorded, doubts, earlier, insists } = readShotSaid(
    at.project,
    hole,
    said,
    makerOf(at.desk),
    at.desk.documents().values(),
  );
  const taken = await submitMade(at, recorded);
  const own = insists ? [] : doubts;
  if (taken.kind !== 'done' || own.length + earlier.length === 0) return taken;
  const [first] = [...own, ...earlier];
  return {
    kind: 'asked',
    said: own.length > 0 ? `${taken.said}, doubtful` : taken.said,
    reasons: [...own.map((doubt) => doubt.problem), ...earlierWords(earlier)],
    marked: own.length > 0,
    remedy: `${first?.remedy ?? ''} ${own.length > 0 ? 'To reject it: ;reject, its depth and why. A shot whose line ends in = is not asked about.' : 'The shot of this line is not in doubt.'}`,
  };
}

function settledAs(at: LinesAt, submitted: Submitted, words: (edit: Edit) => string): Promise<Taken> {
  return settled(at, submitted, submitted.ok ? words(submitted.edit) : '');
}

/** A change of several rows is shown before it is made; here a last `=` stands for having looked. */
async function takePlan(at: LinesAt, plan: Result<RangePlan>, insisted: boolean): Promise<Taken> {
  if (!plan.ok) return submitMade(at, plan);
  const { made, lines, isPlain: adds } = plan.value;
  if (adds === true)
    return submitMade(at, { ok: true, value: made }, [...lines.slice(1), made.what].join(' '));
  const cautions = lines.filter((each) => each.startsWith('CAUTION'));
  if (insisted || made.changes.length === 0)
    return submitMade(at, { ok: true, value: made }, [...cautions, made.what].join('. '));
  return {
    kind: 'refused',
    problem: `it changes several rows and no one sees its preview: ${lines.join('; ')}`,
    remedy: 'Put = at the end of the line to do it.',
  };
}

async function settleOldest(at: LinesAt, hole: Document): Promise<Taken> {
  const oldest = rowsDown(hole).find(([, row]) => row.asked !== undefined);
  if (oldest === undefined)
    return { kind: 'refused', problem: 'no row is marked ?', remedy: 'Take the line out.' };
  return submitMade(at, settleAsked(hole, oldest[0]));
}

function lookUpBag(at: LinesAt, hole: Document, text: string, lies?: ScannedAt): Taken {
  const others = otherHoles(at.desk.documents().values(), hole);
  const state = streamStateOf(hole);
  const { sampling } = at.project;
  const [number = text, ...other] = numbersMeant(sampling.numbers, numbersOfHole(sampling, state), text);
  if (other.length > 0) return { kind: 'refused', ...severalEnd(text, [number, ...other]) };
  const scan = scanCheck(sampling, state, number, lies, others);
  const belongs = lies === undefined ? '' : ', and is where it belongs';
  const isBag = BAG_KINDS.some((kind) => scan.known.startsWith(kind));
  if (scan.named === undefined)
    return { kind: 'done', said: `${number} is ${isBag ? 'the ' : ''}${scan.known}${belongs}` };
  return {
    kind: 'refused',
    problem: `${number} is ${scan.known}: ${scan.named.name}`,
    remedy: scan.named.ground,
  };
}
