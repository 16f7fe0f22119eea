import { act, isPlain } from '../../acts/act.ts';
import type { Document } from '../../record/document.ts';
import type { CommandLine } from '../../shorthand/commands.ts';
import { undoOrRedo } from '../lists/history.ts';
import { leave } from '../lists/leaving.ts';
import { askMend } from '../samples/mismatch.ts';
import { carryLabels } from '../samples/number-bags.ts';
import { askRod } from '../samples/rod.ts';
import { scanPlaced } from '../samples/scan.ts';
import type { State } from '../state.ts';
import { type Step, submittingResult, type World } from '../step.ts';
import { shotSaid } from '../survey/survey-shot.ts';
import { previewRange } from './range.ts';

/** Does what was typed behind `;`. */
export function runCommand(state: State, hole: Document, line: CommandLine, world: World): Step {
  const { command } = line;
  if (command.does === 'shot') return shotSaid(state, line.text, world);
  if (isPlain(command)) {
    return submittingResult(
      state,
      hole,
      act(
        state.project,
        hole,
        command,
        { newId: world.newId, at: world.now, by: state.person },
        state.documents.values(),
        line.insisted,
      ),
      state,
    );
  }
  switch (command.does) {
    case 'undo':
    case 'redo':
      return undoOrRedo(state, command.does);
    case 'leave':
      return leave(state);
    case 'rod done':
      return askRod(state, world, command.check);
    case 'take labels left over':
      return carryLabels(state, hole, world, state);
    case 'mend':
      return askMend(state, hole, command.check);
    case 'scan':
      return scanPlaced(state, hole, command.number, command);
    default:
      return previewRange(state, hole, command, world, line.insisted);
  }
}
