import { ok, type Result } from '../finding/finding.ts';
import { endStops, recordStop } from '../hole/commands/direction.ts';
import { recordStream } from '../hole/commands/drilled.ts';
import type { Made, Maker } from '../hole/commands/made.ts';
import { recordCollarState } from '../hole/commands/states.ts';
import type { Project } from '../project/project.ts';
import type { Interval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import type { Command } from '../shorthand/command.ts';
import { headsOf } from '../standing/heads.ts';
import { nextRod } from '../standing/rods.ts';
import { measureBit } from './bit.ts';
import { chooseControl } from './choose.ts';
import { placeControl, putNextControlOff } from './controls.ts';
import { goingOn } from './decision.ts';
import { setExpected } from './expected.ts';
import { recordFelt, takeOutCavity } from './felt.ts';
import { recordHygiene } from './hygiene.ts';
import { recordMasses } from './mass.ts';
import { numberBags } from './number-bags.ts';
import { recordPhoto } from './photo.ts';
import { placeBag } from './place-bag.ts';
import { setPlan } from './plan.ts';
import { rejectShotsSaid } from './reject-shots.ts';
import { beginRunSaid } from './shot.ts';
import { replaceBySpare } from './spare.ts';
import { notLinedUp } from './start.ts';
import { swapPair } from './swap.ts';
import { tickBags } from './tick.ts';

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
      | 'shot'
      | 'take labels left over';
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
    'take labels left over',
  ].includes(command.does);
}

/**
 * What a plain command makes of a hole, as one edit; or why it can't be. `documents` are those of the project, the hole among them; `insisted`:
 * a last `=` answers what the command would ask first.
 */
export function act(
  project: Project,
  hole: Document,
  command: PlainCommand,
  maker: Maker,
  documents: Iterable<Document> = [hole],
  insisted = false,
): Result<Made> {
  switch (command.does) {
    case 'moisture':
      return ok(recordStream(hole, { ...overRod(hole, command.over), moisture: command.moisture }, maker));
    case 'recovery':
      return ok(recordStream(hole, { ...overRod(hole, command.over), recovery: command.recovery }, maker));
    case 'contaminated':
      return ok(recordStream(hole, { ...overRod(hole, command.over), contaminated: true }, maker));
    case 'felt':
      return recordFelt(project, hole, command, maker, insisted);
    case 'no cavity':
      return takeOutCavity(hole, command.over);
    case 'hygiene':
      return recordHygiene(project, hole, command.care, maker);
    case 'mass':
      return recordMasses(hole, command, maker);
    case 'bit':
      return measureBit(hole, command, maker, insisted);
    case 'tick':
      return tickBags(project, hole, command, maker);
    case 'choose control':
      return chooseControl(project, hole, command, maker);
    case 'swap pair':
      return swapPair(project, hole, command.lastDigits);
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
      return placeBag(project, hole, command, maker, documents, insisted);
    case 'spare':
      return replaceBySpare(project, hole, command, maker, documents);
    case 'survey run':
      return beginRunSaid(hole, command.said, maker);
    case 'reject shots':
    case 'use shots':
      return rejectShotsSaid(hole, command.said, command.does === 'use shots');
    case 'collar':
      return ok(recordCollarState({ state: command.state, at: maker.at, by: maker.by }, maker));
    case 'plan':
      return setPlan(hole, command.said);
    case 'expect':
      return setExpected(project, hole, command.said);
    case 'decide':
      return goingOn(project, hole, command, maker, documents, insisted);
    case 'not lined up':
      return notLinedUp(hole, command.reason, maker);
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
