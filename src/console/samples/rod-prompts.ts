import { readRod } from '../../acts/rod-read.ts';
import type { Bag } from '../../hole/bags.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { mostLikely } from '../../sampling/rod/likely.ts';
import { NEAR_SPLITTER } from '../../sampling/rod/mismatch.ts';
import { LOOKS, type NamedMismatch, type RodCheck } from '../../sampling/rod/rod-check.ts';
import { CARE_HELP, careWords } from '../../shorthand/rod-care.ts';
import type { Prompt } from '../prompt.ts';
import { draftSpans, type Shown } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { LOOK_ANSWERS } from './mismatch.ts';
import { rodStanding, whileStanding } from './rod.ts';
import { pagesOf, WAY_LETTERS, waysOn } from './ways.ts';

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
          : `${filled.length} bags expected, the last ${filled.length === 0 ? 'number' : 'calico'} is ${last}${keptWords(onGround.length - filled.length)}`,
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
    : spans(`  ${bag.number}  `, [`${bag.kind} ${metre}`, 'accent']);
}

/** The bags don't match: the mismatch by name, what it looks like on the ground, the ways to mend it. */
export function mismatchShown(
  state: State,
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'mismatch' }>,
  width: number,
): Shown {
  const { check } = rodStanding(state, hole, prompt);
  const ways = waysOn(check, prompt.page);
  const pages = pagesOf(check);
  const likeliest = check.named[0];
  return {
    title:
      prompt.later === undefined
        ? `bags don’t match: ${prompt.lastDigits}`
        : `rod ${prompt.rod} noted before: ${prompt.lastDigits}`,
    lines: [
      ...(likeliest === undefined
        ? wrap(
            'No usual mismatch gives these numbers. Read the calico again; ask the field assistant.',
            width,
            'alert',
          ).concat(wrap(NEAR_SPLITTER, width, 'warn'))
        : [
            ...wrap(mostLikely(likeliest), width, 'alert'),
            ...wrap(likeliest.ground, width),
            ...nearSplitter(likeliest, width),
          ]),
      ...(check.look === undefined
        ? []
        : wrap(
            `To be sure: ${LOOKS[check.look]} (${inOwn(state, LOOK_ANSWERS[check.look])})`,
            width,
            'accent',
          )),
      ...placeAsked(state, check, width),
      ...ways.map((way, index) =>
        spans(
          [`${WAY_LETTERS[index]} `, 'strong'],
          `fix as: ${way.named.name}${way.at === '' ? '' : `, at ${way.at}`}`,
        ),
      ),
    ],
    foot: [
      ...wrap(
        [
          `${ways.length === 1 ? 'a' : `a–${WAY_LETTERS[ways.length - 1]}`} fixes it so${prompt.later === undefined ? '' : ', with the rods below'}`,
          'fits if they match',
          ...(pages > 1 ? [`m more (${prompt.page + 1} of ${pages})`] : []),
          prompt.later === undefined ? 'Enter notes it and goes on' : 'Enter leaves it',
          'Esc back',
        ].join(' · '),
        width,
        'faint',
      ),
      [...spans(['number ', 'accent']), ...draftSpans(prompt.draft)],
    ],
  };
}

/** The one fact that settles where it happened, asked once no look is left and more places stand than are taken in at a glance. */
function placeAsked(state: State, { look, named: [likeliest] }: RodCheck, width: number): readonly Line[] {
  if (look !== undefined || likeliest?.asks === undefined || likeliest.ways.length < 3) return [];
  const answer =
    typeof likeliest.ways[0]?.place === 'string'
      ? 'its last digits'
      : `its depths, like ${inOwn(state, '46-47')}`;
  return wrap(`${likeliest.asks} Type ${answer}: it is fixed there.`, width, 'accent');
}

/** Calicos can hang on the splitter or lie under it: the driller's word stands wherever someone is sent to look for one. */
function nearSplitter(likeliest: NamedMismatch, width: number): readonly Line[] {
  return likeliest.ground.includes(NEAR_SPLITTER) ? [] : wrap(NEAR_SPLITTER, width, 'warn');
}
