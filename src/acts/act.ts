import { ok, type Result, refused } from '../finding/finding.ts';
import type { Bag } from '../hole/bags.ts';
import { endStops, recordStop } from '../hole/commands/direction.ts';
import { amendThing, issueBags, recordStream } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { recordCollarState } from '../hole/commands/states.ts';
import { REFUSALS } from '../hole/findings.ts';
import { headerOf, holeNouns, holeThings } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Depth } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import { formatBagNumber, parseBagNumber } from '../sampling/numbers/bag-number.ts';
import { materialFor } from '../sampling/scheme/rotation.ts';
import { serialOf } from '../sampling/scheme/scheme.ts';
import type { Command } from '../shorthand/command.ts';
import { headsOf } from '../standing/heads.ts';
import { nextRod } from '../standing/rods.ts';
import { chooseControl } from './choose.ts';
import { placeControl, putNextControlOff } from './controls.ts';
import { goingOn } from './decision.ts';
import { setExpected } from './expected.ts';
import { recordHygiene } from './hygiene.ts';
import { recordMasses } from './mass.ts';
import { numberBags } from './number-bags.ts';
import { recordPhoto } from './photo.ts';
import { setPlan } from './plan.ts';
import { beginRunSaid } from './shot.ts';
import { swapPair } from './swap.ts';

/** Commands that are one edit of the hole and ask nothing. The others are the caller's: a rod check, a shot, undo, a preview, leaving. */
export type PlainCommand = Exclude<
  Command,
  {
    readonly does:
      | 'undo'
      | 'redo'
      | 'leave'
      | 'rod done'
      | 'mend'
      | 'scan'
      | 'copy'
      | 'shift'
      | 'clear'
      | 'insert'
      | 'merge'
      | 'split'
      | 'shot';
  }
>;

/** True of a command that {@link act} does. */
export function isPlain(command: Command): command is PlainCommand {
  return ![
    'undo',
    'redo',
    'leave',
    'rod done',
    'mend',
    'scan',
    'copy',
    'shift',
    'clear',
    'insert',
    'merge',
    'split',
    'shot',
  ].includes(command.does);
}

/** What a plain command makes of a hole, as one edit; or why it can't be. `documents` are those of the project, the hole among them. */
export function act(
  project: Project,
  hole: Document,
  command: PlainCommand,
  maker: Maker,
  documents: Iterable<Document> = [hole],
): Result<Made> {
  switch (command.does) {
    case 'moisture':
      return ok(recordStream(hole, { ...overRod(hole, command.over), moisture: command.moisture }, maker));
    case 'recovery':
      return ok(recordStream(hole, { ...overRod(hole, command.over), recovery: command.recovery }, maker));
    case 'contaminated':
      return ok(recordStream(hole, { ...overRod(hole, command.over), contaminated: true }, maker));
    case 'hygiene':
      return recordHygiene(hole, command.care, maker);
    case 'mass':
      return recordMasses(hole, command, maker);
    case 'choose control':
      return chooseControl(project, hole, command, maker);
    case 'swap pair':
      return swapPair(hole, command.lastDigits);
    case 'photo':
      return recordPhoto(project, hole, command, maker);
    case 'number bags':
      return numberBags(project, hole, command, maker, documents);
    case 'put control off':
      return putNextControlOff(project, hole, command.reason, maker);
    case 'place control':
      return placeControl(project, hole, command.lastDigits, maker);
    case 'bag':
    case 'control':
    case 'spoiled bag':
      return placeBag(project, hole, command, maker);
    case 'survey run':
      return beginRunSaid(hole, command.said, maker);
    case 'collar':
      return ok(recordCollarState({ state: command.state, at: maker.at, by: maker.by }, maker));
    case 'plan':
      return setPlan(hole, command.said);
    case 'expect':
      return setExpected(project, hole, command.said);
    case 'decide':
      return goingOn(project, hole, command, maker, documents);
    case 'stop':
      return ok(recordStop({ because: command.reason, at: maker.at, by: maker.by }, maker));
    case 'stop over':
      return ok(endStops(hole, maker));
  }
}

/** The interval said, or the rod being drilled: from the drilled head to the foot of the next rod. */
function overRod(hole: Document, over: Interval | undefined): Interval {
  return over === undefined
    ? { fromMm: headsOf(hole).drilledMm, toMm: nextRod(hole).depthMm }
    : { fromMm: over.fromMm, toMm: over.toMm };
}

/** A bag placed by hand: what was said of it, and nothing more. */
function placeBag(
  project: Project,
  hole: Document,
  command: Extract<PlainCommand, { readonly does: 'bag' | 'control' | 'spoiled bag' }>,
  maker: Maker,
): Result<Made> {
  const parsed = parseBagNumber(project.sampling.numbers, command.number);
  if (parsed === undefined) return refused(notOurs(hole, command.number));
  const number = formatBagNumber(project.sampling.numbers, parsed);
  const issued = holeThings(hole, 'bags').find(([, each]) => each.number === number);
  if (command.does === 'spoiled bag' && issued !== undefined) {
    // What was in it stays on record: its metre counts as sampled, and lost.
    const lost = { kind: 'spoiled', reason: command.reason };
    return amendThing(hole, 'bags', issued[0], lost, `bag ${number} spoiled: ${command.reason}`);
  }
  const bag = bagSaid(project, hole, number, command);
  return issueBags(hole, `bag ${number} placed by hand: ${bag.kind}`, [bag], maker);
}

function bagSaid(
  project: Project,
  hole: Document,
  number: string,
  command: Extract<PlainCommand, { readonly does: 'bag' | 'control' | 'spoiled bag' }>,
): Bag {
  if (command.does === 'spoiled bag') return { number, kind: 'spoiled', reason: command.reason };
  if (command.does === 'control') {
    const material = materialFor(project.sampling, command.kind, serialOf(project.sampling.numbers, number));
    return {
      number,
      kind: command.kind,
      reason: 'placed by hand',
      ...(material === undefined ? {} : { material }),
    };
  }
  const metre = {
    fromMm: command.fromMm as Depth,
    toMm: command.toMm as Depth,
    rank: rankOf(project, command),
    reason: 'placed by hand',
  };
  if (command.kind === 'primary') return { number, kind: 'primary', ...metre };
  const primary = holeNouns(hole, 'bags').find(
    (each) => each.kind === 'primary' && each.fromMm === command.fromMm && each.toMm === command.toMm,
  );
  return {
    number,
    kind: 'field duplicate',
    ...metre,
    method: project.sampling.duplicates,
    ...(primary === undefined ? {} : { of: primary.number }),
  };
}

/** A bag of a metre at most, placed by hand where composites are taken, is a single metre beside them. */
function rankOf(
  { sampling }: Project,
  { fromMm, toMm }: Pick<Interval, 'fromMm' | 'toMm'>,
): 'metre' | 'composite' {
  return sampling.rank === 'composite' && sampling.lengthMm > 1000 && toMm - fromMm <= 1000
    ? 'metre'
    : sampling.rank;
}

const notOurs = (hole: Document, number: string) =>
  REFUSALS.notThere.at(
    { hole: headerOf(hole).name, thing: `bag ${number}` },
    {
      problem: 'it is not of the form of this project’s bag numbers',
      remedy: 'Type the whole number with its prefix, as printed on the calico.',
    },
  );
