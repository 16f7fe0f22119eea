import { checkRod, rodAsExpected, rodMended, rodNoted } from '../../desk/acts/rod.ts';
import { readRod } from '../../desk/acts/rod-read.ts';
import { holeNouns } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import type { RodCheck } from '../../sampling/rod-check.ts';
import { nextRod } from '../../standing/rods.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';

type RodPrompt = Extract<Prompt, { readonly kind: 'rod' | 'mismatch' }>;

/** Rod done: shows the bags that it expects. `digits` typed with the command go straight to the check. */
export function askRod(state: State, world: World, digits = ''): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const { rod, depthMm } = nextRod(hole);
  const asked: State = {
    ...state,
    prompt: { kind: 'rod', rod, depthMm, draft: draftOf(digits) },
    message: undefined,
  };
  return digits === '' ? still(asked) : answerRod(asked, world);
}

/** What a rod prompt is asking about: the check as it stands with what is typed. */
export function rodStanding(
  state: State,
  hole: Document,
  prompt: RodPrompt,
): { readonly depthMm: number; readonly check: RodCheck } {
  const typed = prompt.kind === 'rod' ? readRod(prompt.draft.text) : readRod(prompt.lastDigits);
  const depthMm = typed?.depthMm ?? prompt.depthMm;
  const check = checkRod(
    state.project,
    state.documents.values(),
    hole,
    { rod: prompt.rod, depthMm: depthMm as never },
    prompt.kind === 'mismatch' ? (typed ?? {}) : {},
  );
  return { depthMm, check };
}

/** Enter on the rod check: nothing typed confirms; digits are held against what is expected, and a mismatch is named. */
export function answerRod(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'rod' || hole === undefined) return still(state);
  const seen = readRod(prompt.draft.text);
  if (seen === undefined) {
    return still(
      saying(
        state,
        'Type the last digits on the last calico, x6 for six bags counted, @54.5 for another depth; or Enter if all fits.',
        'warn',
      ),
    );
  }
  const { depthMm: typedDepth, ...bags } = seen;
  const at = { rod: prompt.rod, depthMm: (typedDepth ?? prompt.depthMm) as never };
  const check = checkRod(state.project, state.documents.values(), hole, at, bags);
  if (!check.agrees) {
    return still({
      ...state,
      prompt: {
        kind: 'mismatch',
        rod: prompt.rod,
        depthMm: at.depthMm,
        lastDigits: prompt.draft.text,
        draft: EMPTY_DRAFT,
      },
      message: undefined,
    });
  }
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const done = rodAsExpected(hole, at, check.expected, maker);
  return submittingResult(
    state,
    hole,
    done,
    { ...state, prompt: undefined },
    `Rod ${at.rod} done at ${formatDepth(at.depthMm)} m, ${check.expected.length} bags.`,
  );
}

/** A choice of the mismatch prompt: `1` to `9` mends it that way; Enter records the rod as expected with the mismatch noted. */
export function answerMismatch(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'mismatch' || hole === undefined) return still(state);
  const { check } = rodStanding(state, hole, prompt);
  const at = { rod: prompt.rod, depthMm: prompt.depthMm as never };
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const closed: State = { ...state, prompt: undefined };
  const choice = prompt.draft.text.trim();
  if (choice === '') {
    const lastBag = readRod(prompt.lastDigits)?.digits ?? '';
    return submittingResult(
      state,
      hole,
      rodNoted(hole, at, check, lastBag === '' ? 'not read' : lastBag, maker),
      closed,
      'Rod recorded as expected; the mismatch is noted and stays to be mended.',
    );
  }
  const ways = mismatchWays(check);
  const way = ways[Number(choice) - 1];
  if (!/^\d+$/.test(choice) || way === undefined)
    return still(
      saying(state, `Type a number from 1 to ${ways.length}, or Enter to note it and go on.`, 'warn'),
    );
  return submittingResult(state, hole, rodMended(hole, at, way.named, way.index, maker), closed);
}

/** The ways to mend a mismatch, likeliest first, as the prompt numbers them. */
export function mismatchWays(check: RodCheck) {
  return check.named
    .slice(0, 3)
    .flatMap((named) => named.ways.slice(0, 2).map((way, index) => ({ named, index, at: way.at })));
}

/** A bag read by a scanner, or typed whole: where it belongs, without touching the entry line. */
export function scanBag(state: State, hole: Document, number: string, _world: World): Step {
  if (state.prompt?.kind === 'rod')
    return still({ ...state, prompt: { ...state.prompt, draft: draftOf(number) } });
  const bag = holeNouns(hole, 'bags').find((each) => each.number === number);
  if (bag !== undefined) {
    const metre =
      bag.fromMm === undefined || bag.toMm === undefined
        ? ''
        : ` ${formatInterval({ fromMm: bag.fromMm, toMm: bag.toMm })}`;
    return still(
      saying(
        state,
        `${number} is the ${bag.kind}${metre} of this hole.`,
        bag.kind === 'void' ? 'alert' : 'good',
      ),
    );
  }
  const { rod, depthMm } = nextRod(hole);
  const check = checkRod(state.project, state.documents.values(), hole, { rod, depthMm }, { digits: number });
  const coming = check.expected.find((each) => each.number === number);
  if (coming !== undefined) {
    const metre =
      coming.fromMm === undefined || coming.toMm === undefined
        ? ''
        : ` ${formatInterval({ fromMm: coming.fromMm, toMm: coming.toMm })}`;
    return still(saying(state, `${number} is expected in this rod: ${coming.kind}${metre}.`, 'good'));
  }
  const named = check.named[0];
  return still(
    saying(
      state,
      named === undefined
        ? `${number} is not a bag of this hole.`
        : `${number}: ${named.name}. ${named.happened} ${named.ground}`,
      'alert',
    ),
  );
}
