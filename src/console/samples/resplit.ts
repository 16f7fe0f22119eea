import type { RunLabelled } from '../../acts/number-bags.ts';
import { makeResplit, proposeResplit } from '../../acts/resplit.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import type { ResplitLine } from '../../sampling/laboratory/resplit-list.ts';
import type { Prompt } from '../prompt.ts';
import { NOTHING, type Shown } from '../screens/shown.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submitting, type World } from '../step.ts';
import { line, wrap } from '../widgets/line.ts';

/** Shows the single metres that returned composites ask for in the hole in hand, before they are numbered. */
export function askResplit(state: State, numbers?: RunLabelled): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const proposed = proposeResplit(state.project, state.documents.values(), hole, numbers);
  if (!proposed.ok) {
    const [first] = proposed.findings;
    return still(first === undefined ? state : sayingFinding(state, first));
  }
  if (proposed.value.lines.length === 0)
    return still(saying(state, 'No composite of this hole asks for single metres.'));
  const prompt = { kind: 'resplit', ...(numbers === undefined ? {} : { numbers }) } as const;
  return still({ ...state, prompt, message: undefined });
}

/** The same with the first and the last of the numbers labelled for them, as typed behind the word. */
export function askResplitWith(state: State, text: string): Step {
  const [first, last, ...more] = text.toUpperCase().split(/[ ,]+/);
  if (first === undefined || last === undefined || more.length > 0)
    return still(
      saying(
        state,
        inOwn(state, 'Type the first and the last number labelled for them: ;resplit ZQ000601 ZQ000640'),
        'warn',
      ),
    );
  return askResplit(state, { first, last });
}

/** Enter on the list of single metres: they are numbered as one edit of the hole, which undo takes back. */
export function answerResplit(state: State, world: World): Step {
  const hole = holeInHand(state);
  const { prompt } = state;
  if (hole === undefined || prompt?.kind !== 'resplit') return still({ ...state, prompt: undefined });
  const proposed = proposeResplit(state.project, state.documents.values(), hole, prompt.numbers);
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const made = proposed.ok ? makeResplit(state.project, hole, proposed.value, maker) : proposed;
  const closed: State = { ...state, prompt: undefined };
  if (made.ok) return submitting(closed, hole, made.value);
  const [first] = made.findings;
  return still(first === undefined ? closed : sayingFinding(closed, first));
}

/** The single metres that would be numbered: as many as there is room for, the whole list by the command. */
export function resplitShown(
  state: State,
  hole: Document,
  { numbers }: Extract<Prompt, { readonly kind: 'resplit' }>,
  width: number,
): Shown {
  const proposed = proposeResplit(state.project, state.documents.values(), hole, numbers);
  if (!proposed.ok) return NOTHING;
  const { lines, bags, unnumbered } = proposed.value;
  const metres = bags.filter((bag) => bag.kind === 'primary').length;
  const head =
    unnumbered > 0
      ? wrap(
          `${unnumbered} metres have no numbered bag left: ;resplit with the first and last number labelled for them.`,
          width,
          'alert',
        )
      : wrap(
          `${metres} metres and ${bags.length - metres} controls, ${bags[0]?.number} to ${bags.at(-1)?.number}. The composites stay beside them.`,
          width,
          'strong',
        );
  return {
    title: 'single metres that results ask for',
    lines: [...head, ...lines.map((each) => line(words(each)))],
    foot: [
      line(`The whole list: offsider resplit ${hole.id} (--csv)`, 'faint'),
      line('Enter numbers them, as one edit. Esc changes nothing.', 'faint'),
    ],
  };
}

function words({ bag, fromMm, toMm, place, because }: ResplitLine): string {
  const number = bag?.number ?? 'no number';
  if (fromMm === undefined || toMm === undefined) return `${number}  ${bag?.kind.toUpperCase() ?? ''}`;
  const kind = bag === undefined || bag.kind === 'primary' ? '' : `  + ${bag.kind}`;
  const where = place === undefined ? '' : `  row ${place.row} place ${place.place}`;
  return `${number}  ${formatInterval({ fromMm, toMm })}${kind}${where}  ${because ?? ''}`;
}
