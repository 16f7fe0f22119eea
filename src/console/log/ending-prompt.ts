import { type Depth, formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { openShift } from '../../standing/activity.ts';
import { adviceAtEnd } from '../../standing/advice.ts';
import { openItems } from '../../standing/open-items.ts';
import { stoodItems } from '../../standing/unfinished.ts';
import type { Prompt } from '../prompt.ts';
import { GO_ON, type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { line, wrap } from '../widgets/line.ts';
import { COLLAR_CHOICES } from './ending.ts';
import { verdictLines } from './panels/advice-panel.ts';

type EndingPrompt = Extract<Prompt, { readonly kind: 'ending' }>;

/** The questions at the end of a hole: its depth, what is open, how the collar is left, why it ends. */
export function endingShown(
  state: State,
  hole: Document,
  prompt: EndingPrompt,
  width: number,
  theme: Theme,
): Shown {
  const title = `end of hole at ${formatDepth(prompt.depthMm)} m`;
  const typed = typedLine(prompt.draft, theme);
  switch (prompt.step) {
    case 'depth':
      return {
        title: 'end of hole',
        lines: [line('Final depth by rod count, in metres:')],
        foot: [typed, GO_ON],
      };
    case 'open':
      return {
        title,
        ...openShown([...openItems(state.project, hole, prompt.depthMm), ...shiftOpen(state)], width, theme),
      };
    case 'collar':
      return {
        title,
        lines: [
          line(
            `How is the collar left? ${COLLAR_CHOICES.map((each) => `${each.charAt(0)} ${each}`).join(', ')}`,
          ),
          line('An open collar is a hazard whenever it is unattended.', 'warn'),
        ],
        foot: [typed, GO_ON],
      };
    case 'reason':
      return {
        title,
        lines: verdictLines(
          adviceAtEnd(state.project, hole, prompt.depthMm as Depth, state.documents.values()),
          width,
        ),
        foot: [
          line('The decision is yours and is recorded. Why? Begin with who was called:'),
          line(inOwn(state, 'called Ines Falk: zone closed off'), 'faint'),
          typed,
          line('Enter ends and closes the hole. Esc changes nothing.', 'faint'),
        ],
      };
  }
}

/** Rods drilled while the record says that the rig stood: most easily put right while the rig is still on the hole. */
function shiftOpen({ project, documents, rig, now }: State): readonly string[] {
  const all = [...documents.values()];
  const shift = openShift(project, all, rig, now);
  return shift === undefined ? [] : stoodItems({ project, documents: all, now }, shift);
}

function openShown(open: readonly string[], width: number, theme: Theme): Omit<Shown, 'title'> {
  const items =
    open.length === 0
      ? [line('Nothing is open.', 'good')]
      : open.flatMap((each) => wrap(`${theme.signs.dash} ${each}`, width, 'warn'));
  return {
    lines: [line(open.length === 0 ? 'Checked:' : 'Still open:', 'strong'), ...items],
    foot: [line('Enter goes on anyway. Esc goes back to fix them.', 'faint')],
  };
}
