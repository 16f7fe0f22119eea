import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { LOOKS } from '../../sampling/rod-check.ts';
import { adviceFor } from '../../standing/advice.ts';
import { openItems } from '../../standing/open-items.ts';
import { COLLAR_CHOICES } from '../actions/ending.ts';
import { LOOK_ANSWERS, mismatchWays } from '../actions/mismatch.ts';
import { rodStanding } from '../actions/rod.ts';
import { verdictLines } from '../panels/advice-panel.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { box } from '../widgets/box.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { draftSpans } from './bottom.ts';
import { surveyPrompt } from './survey-prompts.ts';

/** What a prompt shows: its title and its lines. */
interface Shown {
  readonly title: string;
  readonly lines: readonly Line[];
}

/** The question that stands, as a box that lies over the screen above the entry line; none where there is no question. */
export function promptPanel(state: State, width: number, room: number, theme: Theme): readonly Line[] {
  if (state.prompt === undefined) return [];
  const shown = shownPrompt(state, state.prompt, width - 4, theme);
  const lines = shown.lines.slice(0, room - 2).map((each): Line => [{ text: ' ' }, ...each]);
  return box([{ title: shown.title, lines, height: lines.length }], width, theme.signs);
}

function shownPrompt(state: State, prompt: Prompt, width: number, theme: Theme): Shown {
  const hole = holeInHand(state);
  switch (prompt.kind) {
    case 'rod':
      return hole === undefined ? nothing : rodShown(state, hole, prompt, width);
    case 'mismatch':
      return hole === undefined ? nothing : mismatchShown(state, hole, prompt, width);
    case 'preview':
      return {
        title: prompt.title,
        lines: [
          ...prompt.lines.map((each) => line(each)),
          line('Enter makes the change. Esc leaves all as it is.', 'faint'),
        ],
      };
    case 'new hole':
      return typedShown(
        'a hole that nobody planned',
        [
          'Its name, like ZQRC014. Direction and depth may follow: ZQRC014 270g -60 120 (from 48 behind a pre-collar)',
          '(t true, m magnetic, g grid, l local grid; dip down negative; metres)',
        ],
        prompt.draft,
        theme,
      );
    case 'redrill':
      return typedShown(
        `redrill ${prompt.hole}`,
        ['Why is it redrilled? The hole gets the next suffix and the same plan.'],
        prompt.draft,
        theme,
      );
    case 'state':
      return typedShown(`${prompt.hole} ${prompt.to}`, [`Why is it ${prompt.to}?`], prompt.draft, theme);
    case 'reopen':
      return typedShown(
        `reopen ${prompt.hole}`,
        ['Why is it reopened? It is recorded with your name.'],
        prompt.draft,
        theme,
      );
    case 'survey run':
    case 'shot':
    case 'rejection':
      return hole === undefined ? nothing : surveyPrompt(hole, prompt, width, theme);
    case 'ending':
      return hole === undefined ? nothing : endingShown(state, hole, prompt, width, theme);
    case 'activity':
      return {
        title: 'what does the rig do now',
        lines: [
          ...state.project.settings.shift.activities.map((each, index) =>
            spans([
              `${index === prompt.cursor ? theme.signs.cursor : ' '} ${each.label}  (${each.charge})`,
              index === prompt.cursor ? 'picked' : 'plain',
            ]),
          ),
          line('Enter starts it now. Esc leaves all as it is.', 'faint'),
        ],
      };
  }
}

const nothing: Shown = { title: '', lines: [] };

function typedShown(
  title: string,
  words: readonly string[],
  draft: Extract<Prompt, { readonly kind: 'new hole' }>['draft'],
  theme: Theme,
): Shown {
  return {
    title,
    lines: [
      ...words.map((each) => line(each)),
      [...spans([`${theme.signs.cursor} `, 'accent']), ...draftSpans(draft)],
      line('Enter goes on. Esc leaves all as it is.', 'faint'),
    ],
  };
}

function rodShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'rod' }>,
  width: number,
): Shown {
  const { depthMm, check } = rodStanding(state, hole, prompt);
  const last = check.expected.at(-1)?.number;
  return {
    title: `rod ${prompt.rod} done at ${formatDepth(depthMm)} m`,
    lines: [
      line(
        last === undefined
          ? 'No numbered bag is left for it: number more with ;numbered.'
          : `${check.expected.length} bags expected, the last calico is ${last}`,
        last === undefined ? 'alert' : 'strong',
      ),
      ...check.expected.map(bagLine),
      ...wrap(
        `Enter if it fits. Else the last digits on the last calico (the whole number, unless it begins with ${state.project.sampling.numbers.prefixes.join(' or ')}); x6 for six bags counted; @54.5 for another depth.`,
        width,
        'faint',
      ),
      [...spans(['digits ', 'accent']), ...draftSpans(prompt.draft)],
    ],
  };
}

function bagLine(bag: Bag): Line {
  const metre =
    bag.fromMm === undefined || bag.toMm === undefined
      ? ''
      : formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm });
  return bag.kind === 'primary'
    ? line(`  ${bag.number}  ${metre}`)
    : spans(`  ${bag.number}  `, [`${bag.kind} ${metre}`, 'accent']);
}

function mismatchShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'mismatch' }>,
  width: number,
): Shown {
  const { check } = rodStanding(state, hole, prompt);
  const ways = mismatchWays(check);
  const likeliest = check.named[0];
  return {
    title: `the bags do not fit: ${prompt.lastDigits}`,
    lines: [
      ...(likeliest === undefined
        ? wrap(
            'No usual mismatch gives these numbers. Read the calico again; ask the field assistant.',
            width,
            'alert',
          )
        : [
            ...wrap(`${likeliest.name}. ${likeliest.happened}`, width, 'alert'),
            ...wrap(likeliest.ground, width),
          ]),
      ...(check.look === undefined
        ? []
        : wrap(`To be sure: ${LOOKS[check.look]} (${LOOK_ANSWERS[check.look]})`, width, 'accent')),
      ...ways.map((way, index) =>
        spans([`${index + 1} `, 'strong'], `mend as: ${way.named.name}, at ${way.at}`),
      ),
      ...wrap(
        'A number mends it that way. Enter alone records the rod as expected and notes the mismatch. Esc goes back.',
        width,
        'faint',
      ),
      [...spans(['number ', 'accent']), ...draftSpans(prompt.draft)],
    ],
  };
}

function endingShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'ending' }>,
  width: number,
  theme: Theme,
): Shown {
  const typed: Line = [...spans([`${theme.signs.cursor} `, 'accent']), ...draftSpans(prompt.draft)];
  const foot = line('Enter goes on. Esc leaves all as it is.', 'faint');
  const title = `end of hole at ${formatDepth(prompt.depthMm)} m`;
  if (prompt.step === 'depth')
    return { title: 'end of hole', lines: [line('Final depth by rod count, in metres:'), typed, foot] };
  if (prompt.step === 'open') {
    const open = openItems(state.project, hole, prompt.depthMm);
    const items =
      open.length === 0
        ? [line('Nothing is open.', 'good')]
        : open.flatMap((each) => wrap(`${theme.signs.dash} ${each}`, width, 'warn'));
    return {
      title,
      lines: [
        line(open.length === 0 ? 'Checked:' : 'Still open:', 'strong'),
        ...items,
        line('Enter goes on all the same. Esc goes back to mend them.', 'faint'),
      ],
    };
  }
  if (prompt.step === 'collar') {
    return {
      title,
      lines: [
        line(
          `How is the collar left? ${COLLAR_CHOICES.map((each) => `${each.charAt(0)} ${each}`).join(', ')}`,
        ),
        line('An open collar is a hazard whenever it is unattended.', 'warn'),
        typed,
        foot,
      ],
    };
  }
  return {
    title,
    lines: [
      ...verdictLines(adviceFor(state.project, hole), width),
      line('The decision is yours and is recorded. Why (and who was called, if anyone):'),
      typed,
      line('Enter ends and closes the hole. Esc leaves all as it is.', 'faint'),
    ],
  };
}
