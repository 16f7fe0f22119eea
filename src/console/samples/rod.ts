import { withCare } from '../../acts/hygiene.ts';
import { checkAgain } from '../../acts/mend-later.ts';
import { checkRod, keptReadAsked, rodAsExpected, withUnbagged } from '../../acts/rod.ts';
import { readRod } from '../../acts/rod-read.ts';
import { headerOf } from '../../hole/hole.ts';
import { type Depth, formatDepth } from '../../quantity/depth.ts';
import { localTime } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import type { RodCheck } from '../../sampling/rod/rod-check.ts';
import { unbaggedWords } from '../../sampling/stream/issue.ts';
import { activityNamed } from '../../shift/shift-rules.ts';
import { isStanding } from '../../shift/stood.ts';
import { careWords } from '../../shorthand/rod-care.ts';
import { activityNow } from '../../standing/activity.ts';
import { waitingRod } from '../../standing/mismatches.ts';
import { nextRod } from '../../standing/rods.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';

type RodPrompt = Extract<Prompt, { readonly kind: 'rod' | 'mismatch' }>;

/** What on the list of holes makes a hole one that is drilled. */
const FROM_LIST = {
  planned: 'Enter starts drilling',
  suspended: 'Enter goes on drilling',
  abandoned: 'r redrills it beside',
  complete: 'o reopens it',
} as const;

/** Rod done: shows the bags that it expects. `digits` typed with the command go straight to the check. */
export function askRod(state: State, world: World, digits = ''): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const { name, state: stands } = headerOf(hole);
  if (stands !== 'drilling')
    return still(
      saying(state, `${name} is ${stands}: no rod is done in it. F10, then ${FROM_LIST[stands]}.`, 'warn'),
    );
  const { rod, depthMm } = nextRod(hole);
  const asked: State = {
    ...state,
    prompt: { kind: 'rod', rod, depthMm, draft: draftOf(digits) },
    message: undefined,
  };
  return digits === '' ? still(asked) : answerRod(asked, world);
}

/** What a rod prompt is asking about: the check as it is with what is typed. */
export function rodStanding(
  state: State,
  hole: Document,
  prompt: RodPrompt,
): { readonly depthMm: Depth; readonly check: RodCheck } {
  const { care: _care, ...typed } =
    readRod(prompt.kind === 'rod' ? prompt.draft.text : prompt.lastDigits) ?? {};
  const depthMm = typed.depthMm ?? prompt.depthMm;
  const waiting = prompt.kind === 'mismatch' ? waitingRod(hole, prompt.later) : undefined;
  if (waiting !== undefined && prompt.kind === 'mismatch') {
    const { depthMm: _depth, ...read } = typed;
    const seen = { ...read, ...prompt.looked };
    return { depthMm, check: checkAgain(state.project, state.documents.values(), hole, waiting, seen) };
  }
  const check = checkRod(
    state.project,
    state.documents.values(),
    hole,
    { rod: prompt.rod, depthMm: depthMm },
    prompt.kind === 'mismatch' ? { ...typed, ...prompt.looked } : {},
    state.now,
  );
  return { depthMm, check };
}

/** Said at a rod where the shift record has the rig standing: a breakdown that is over was left open. */
export function whileStanding({ project, documents, rig, now }: State): string | undefined {
  const activity = activityNow(project, documents.values(), rig, now);
  if (activity === undefined || !isStanding(project.shift, activity)) return undefined;
  const label = activityNamed(project.shift, activity.activity)?.label ?? activity.activity;
  return `The shift record says ${label} since ${localTime(activity.startedAt)}: when did drilling go on? F8 and drilling with its time.`;
}

/** Enter on the rod check: nothing typed confirms; digits are compared with what is expected, and a mismatch is named. */
export function answerRod(state: State, world: World): Step {
  const { prompt } = state;
  const hole = holeInHand(state);
  if (prompt?.kind !== 'rod' || hole === undefined) return still(state);
  const seen = readRod(prompt.draft.text);
  if (seen === undefined) {
    return still(
      saying(
        state,
        inOwn(
          state,
          'Type the last digits on the last calico (the whole number where its prefix is not ours), x6 for six bags counted, @54.5 for another depth, letters like cslh for what was seen; or Enter if all matches.',
        ),
        'warn',
      ),
    );
  }
  const { depthMm: typedDepth, care, fits: _fits, mend: _mend, insisted, ...bags } = seen;
  const at = { rod: prompt.rod, depthMm: typedDepth ?? prompt.depthMm };
  const check = checkRod(state.project, state.documents.values(), hole, at, bags, world.now);
  const asked = insisted ? undefined : keptReadAsked(check);
  if (asked !== undefined) return still(saying(state, `${asked.problem}. ${asked.remedy}`, 'warn'));
  if (!check.agrees) {
    return still({
      ...state,
      prompt: {
        kind: 'mismatch',
        rod: prompt.rod,
        depthMm: at.depthMm,
        lastDigits: prompt.draft.text,
        looked: {},
        page: 0,
        draft: EMPTY_DRAFT,
      },
      message: undefined,
    });
  }
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const standing = whileStanding(state);
  const done = withUnbagged(
    withCare(state.project, hole, rodAsExpected(hole, at, check, maker, bags), care, maker),
    check,
  );
  return submittingResult(
    state,
    hole,
    done,
    { ...state, prompt: undefined },
    `Rod ${at.rod} done at ${formatDepth(at.depthMm)} m, ${bagsWords(check)}.${care === undefined ? '' : ` ${careWords(care)}.`}${standing === undefined ? '' : ` ${standing}`}`,
  );
}

/** How many bags a rod gave, the numbers kept of metres without return apart; and the metres that have none, for numbers ran out. */
function bagsWords({ row, unbagged }: RodCheck): string {
  const kept = row.filter(({ kind }) => kind === 'no sample').length;
  const empty = kept === 0 ? '' : ` and ${kept} kept without a sample`;
  const without = unbagged === undefined ? '' : `. ${unbaggedWords(unbagged)}`;
  return `${row.length - kept} ${row.length - kept === 1 ? 'bag' : 'bags'}${empty}${without}`;
}
