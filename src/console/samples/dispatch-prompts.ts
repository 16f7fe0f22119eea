import type { Proposed } from '../../acts/dispatch.ts';
import { sentNumbers } from '../../sampling/dispatch/dispatch-noun.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { latestFirst, proposedNow } from './dispatch.ts';

type Asked<Kind extends Prompt['kind']> = Extract<Prompt, { readonly kind: Kind }>;

/** The question of a dispatch: what would go as typed so far, or why it can't. */
export function dispatchShown(
  state: State,
  { draft }: Asked<'dispatch'>,
  width: number,
  theme: Theme,
): Shown {
  const proposed = proposedNow(state, draft.text);
  const would: readonly Line[] = proposed.ok
    ? wouldGo(proposed.value, width)
    : proposed.findings.slice(0, 3).flatMap((each) => wrap(`${each.problem} ${each.remedy}`, width, 'alert'));
  return {
    title: 'make a dispatch up',
    lines: [
      ...would,
      ...wrap(
        inOwn(state, 'To send less: scan or type bags, ZQ000001-ZQ000040 for a range of them.'),
        width,
        'faint',
      ),
      ...wrap('Behind them: seal S0413 for the first seal, to Some Laboratory.', width, 'faint'),
    ],
    foot: [typedLine(draft, theme), line('Enter makes it up. Esc changes nothing.', 'faint')],
  };
}

function wouldGo({ laboratory, sacks }: Proposed, width: number): readonly Line[] {
  const numbers = sentNumbers({ sacks });
  const seal = sacks[0]?.seal;
  const seals = seal === undefined ? '' : `, sealed ${seal} to ${sacks.at(-1)?.seal ?? seal}`;
  const words = `${numbers.length} bags in ${sacks.length} sacks, ${numbers[0]} to ${numbers.at(-1)}, go to ${laboratory}${seals}.`;
  return wrap(words, width, 'strong');
}

/** The question of who takes the sacks: the dispatches to pick from, and what was sent. */
export function handOnShown(
  state: State,
  { cursor, draft }: Asked<'hand over'>,
  width: number,
  theme: Theme,
): Shown {
  const all = latestFirst(state.documents.values());
  const picked = all[cursor];
  const sacks = picked?.sacks.length ?? 0;
  const bags = picked === undefined ? 0 : sentNumbers(picked).length;
  const lines = all.map((each, index) =>
    spans([
      `${index === cursor ? theme.signs.cursor : ' '} ${each.name}: ${each.sacks.length} sacks, ${sentNumbers(each).length} bags, with ${each.transfers.at(-1)?.to ?? each.madeBy}`,
      index === cursor ? 'picked' : 'plain',
    ]),
  );
  return {
    title: 'sacks handed over',
    lines: [
      ...lines.slice(Math.max(0, cursor - 4), Math.max(5, cursor + 1)),
      ...wrap(
        'Who takes them, then sacks counted; bags too where they were opened; broken where a seal is:',
        width,
      ),
      line(`Orla Venn ${sacks}      or      Orla Venn ${sacks} ${bags} broken`, 'faint'),
    ],
    foot: [typedLine(draft, theme), line('↑ ↓ pick. Enter records it. Esc changes nothing.', 'faint')],
  };
}
