import { readRod } from '../../acts/rod-read.ts';
import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { CARE_HELP, careWords } from '../../shorthand/rod-care.ts';
import type { Prompt } from '../prompt.ts';
import { draftSpans, type Shown } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { rodStanding, whileStanding } from './rod.ts';
import { headLines, pagesOf, WAY_LETTERS, wayLines, waysOn } from './ways.ts';

/** Rod done: the bags that are expected, and what to type where they don't match. */
export function rodShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'rod' }>,
  width: number,
): Shown {
  const { depthMm, check } = rodStanding(state, hole, prompt);
  const { row: onGround } = check;
  const filled = onGround.filter(({ kind }) => kind !== 'no sample');
  const last = (filled.at(-1) ?? onGround.at(-1))?.number;
  return {
    title: `rod ${prompt.rod} done at ${formatDepth(depthMm)} m`,
    lines: [
      line(
        last === undefined
          ? 'No numbered bag is left for it: number more with ;numbered.'
          : `${filled.length} ${filled.length === 1 ? 'bag' : 'bags'} expected, the last ${filled.length === 0 ? 'number' : 'calico'} is ${last}${keptWords(onGround.length - filled.length)}`,
        last === undefined ? 'alert' : 'strong',
      ),
      ...wrap(whileStanding(state) ?? '', width, 'warn').filter((each) => each.length > 0),
      ...onGround.map(bagLine),
      ...wrap(
        `Enter if the bags match. Else the last digits on the last calico (the whole number, unless it begins with ${state.project.sampling.numbers.prefixes.join(' or ')}); x6 for six bags counted; ${inOwn(state, '@54.5')} for another depth.`,
        width,
        'faint',
      ),
      ...careLines(prompt.draft.text, width),
    ],
    foot: [[...spans(['digits ', 'accent']), ...draftSpans(prompt.draft)]],
  };
}

/** How many numbers are kept of metres that gave nothing: their calicos stay empty, and may be counted or not. */
function keptWords(count: number): string {
  return count === 0 ? '' : `; ${count} ${count === 1 ? 'number is' : 'numbers are'} kept, no sample`;
}

/** What the letters of care say: those that are typed, or all that there are. */
function careLines(typed: string, width: number): readonly Line[] {
  const care = readRod(typed)?.care;
  return care === undefined
    ? wrap(`Seen, if you like: ${CARE_HELP}.`, width, 'faint')
    : wrap(careWords(care), width, 'accent');
}

function bagLine(bag: Bag): Line {
  const metre =
    bag.fromMm === undefined || bag.toMm === undefined
      ? ''
      : formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm });
  return bag.kind === 'primary'
    ? line(`  ${bag.number}  ${metre}`)
    : spans(`  ${bag.number}  `, [
        `${bag.kind} ${metre}${bag.method === 'spear' ? ', speared from its pile' : ''}`,
        'accent',
      ]);
}

/** The bags don't match: the mismatch by name, what it looks like on the ground, the ways to mend it. */
export function mismatchShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'mismatch' }>,
  width: number,
): Shown {
  const { check } = rodStanding(state, hole, prompt);
  const ways = waysOn(state, check, prompt.page);
  const pages = pagesOf(state, check).length;
  return {
    title:
      prompt.later === undefined
        ? `bags don’t match: ${prompt.lastDigits}`
        : `rod ${prompt.rod} noted before: ${prompt.lastDigits}`,
    lines: [
      ...headLines(state, check, prompt.page, width),
      ...ways.flatMap((way, index) => wayLines(way, index, width)),
    ],
    foot: [
      ...wrap(
        [
          ...(ways.length === 0 ? [] : [lettersWords(ways.length, prompt.later !== undefined)]),
          'fits = they match',
          ...(pages > 1 ? [`m more (${prompt.page + 1} of ${pages})`] : []),
          prompt.later === undefined ? 'Enter notes it' : 'Enter leaves it',
          'Esc back',
        ].join(' · '),
        width,
        'faint',
      ),
      [...spans(['number ', 'accent']), ...draftSpans(prompt.draft)],
    ],
  };
}

function lettersWords(count: number, later: boolean): string {
  const letters = count === 1 ? 'a records' : `a–${WAY_LETTERS[count - 1]} record`;
  return `${letters} it so${later ? ', with the rods below' : ''}`;
}
