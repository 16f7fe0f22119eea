import { proposeResplit } from '../../acts/resplit.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import type { ResplitLine } from '../../sampling/laboratory/resplit-list.ts';
import type { Prompt } from '../prompt.ts';
import { NOTHING, type Shown } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { line, wrap } from '../widgets/line.ts';

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
      line('Enter numbers them, as one edit. Esc leaves all as it is.', 'faint'),
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
