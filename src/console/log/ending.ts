import { endingDecision } from '../../acts/decision.ts';
import { endHole, lastCollarState } from '../../hole/commands/states.ts';
import type { CollarState } from '../../hole/ending.ts';
import { headerOf } from '../../hole/hole.ts';
import { type Depth, formatDepth, parseDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { readReason } from '../../shorthand/reason.ts';
import { adviceAtEnd } from '../../standing/advice.ts';
import { headsOf } from '../../standing/heads.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submittingResult, type World } from '../step.ts';

type EndingPrompt = Extract<Prompt, { readonly kind: 'ending' }>;

/** The ways a collar can be left, in the order that the prompt offers them. */
export const COLLAR_CHOICES = ['capped', 'plugged', 'open'] as const;

/** Starts ending this hole: the first question is its final depth by rod count. */
export function askEnding(state: State): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(saying(state, 'Open a hole first.', 'warn'));
  const header = headerOf(hole);
  if (header.state === 'complete') return still(saying(state, `${header.name} is closed already.`, 'warn'));
  if (header.state === 'planned')
    return still(saying(state, `${header.name} is not drilled yet: there is nothing to end.`, 'warn'));
  const { drilledMm } = headsOf(hole);
  const left = lastCollarState(hole)?.state ?? 'open';
  return still({
    ...state,
    message: undefined,
    prompt: {
      kind: 'ending',
      step: 'depth',
      depthMm: drilledMm,
      collar: left,
      draft: draftOf(formatDepth(drilledMm)),
    },
  });
}

/** Enter in the questions at the end of a hole: one step on; the last one records the decision and closes the hole. */
export function answerEnding(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'ending') return still(state);
  if (prompt.step === 'depth') return depthGiven(state, prompt);
  if (prompt.step === 'open')
    return still({ ...state, prompt: { ...prompt, step: 'collar', draft: EMPTY_DRAFT }, message: undefined });
  if (prompt.step === 'collar') return collarGiven(state, prompt);
  return close(state, prompt, world);
}

function depthGiven(state: State, prompt: EndingPrompt): Step {
  const depthMm = parseDepth(prompt.draft.text.trim());
  if (depthMm === undefined || depthMm === 0)
    return still(saying(state, 'Type the final depth in metres, by rod count, like 120.', 'warn'));
  return still({
    ...state,
    message: undefined,
    prompt: { ...prompt, step: 'open', depthMm, draft: EMPTY_DRAFT },
  });
}

function collarGiven(state: State, prompt: EndingPrompt): Step {
  const typed = prompt.draft.text.trim();
  const collar =
    typed === ''
      ? prompt.collar === 'open'
        ? undefined
        : prompt.collar
      : COLLAR_CHOICES.find((each) => each.startsWith(typed));
  if (collar === undefined)
    return still(
      saying(
        state,
        'Type c capped, p plugged, or o left open. An open collar is a hazard whenever it is unattended.',
        'warn',
      ),
    );
  return still({
    ...state,
    message: undefined,
    prompt: { ...prompt, step: 'reason', collar, draft: EMPTY_DRAFT },
  });
}

function close(state: State, prompt: EndingPrompt, world: World): Step {
  const hole = holeInHand(state);
  if (hole === undefined) return still(state);
  const said = readReason(prompt.draft.text);
  const asks = said.called === undefined && said.reason !== '' && isAsked(state, hole, prompt);
  if (asks && prompt.unreached !== true)
    return still(saying({ ...state, prompt: { ...prompt, unreached: true } }, whoWasCalled(state), 'alert'));
  const decision = endingDecision(state.project, hole, {
    depthMm: prompt.depthMm as Depth,
    ...said,
    ...(asks ? { reason: `no one was reached: ${said.reason}` } : {}),
    others: state.documents.values(),
    at: world.now,
    by: state.person,
  });
  if (!decision.ok)
    return still(decision.findings[0] === undefined ? state : sayingFinding(state, decision.findings[0]));
  const collarState: CollarState = { state: prompt.collar, at: world.now, by: state.person };
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const done = `${headerOf(hole).name} ended at ${formatDepth(prompt.depthMm)} m and closed. Collar ${prompt.collar}.`;
  return submittingResult(
    state,
    hole,
    endHole(hole, decision.value, collarState, maker),
    { ...state, prompt: undefined },
    done,
  );
}

/** True where the rules say to call someone before the hole ends there. */
function isAsked({ project, documents }: State, hole: Document, { depthMm }: EndingPrompt): boolean {
  const { shown } = adviceAtEnd(project, hole, depthMm as Depth, documents.values());
  return shown.shown && shown.advice.verdict === 'ask';
}

/** Asked once: a hole that ends with a question open, and no one called about it, is meant to. */
function whoWasCalled(state: State): string {
  return inOwn(
    state,
    'The advice is ASK, and no one is named as called. Begin with who was: called Ines Falk: zone closed off. If no one was reached Enter again ends it and records that.',
  );
}
