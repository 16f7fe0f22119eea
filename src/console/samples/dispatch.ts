import { makeDispatch, type Proposed, passOn, proposeDispatch } from '../../acts/dispatch.ts';
import type { Result } from '../../finding/finding.ts';
import type { Document } from '../../record/document.ts';
import type { Dispatch } from '../../sampling/dispatch/dispatch-noun.ts';
import { dispatchesOf, toSend } from '../../standing/dispatches.ts';
import { draftOf, EMPTY_DRAFT } from '../draft.ts';
import type { State } from '../state.ts';
import { type Step, saying, sayingFinding, still, submitting, type World } from '../step.ts';

/** Why no dispatch can be made up now; undefined where bags wait. */
export function whyNothingToSend(state: State): string | undefined {
  return toSend(state.project.sampling, state.documents.values()).length === 0
    ? 'no bag waits: every one issued is sent or spoiled'
    : undefined;
}

/** Asks for a dispatch: everything that waits, or the bags that are typed or scanned. */
export function askDispatch(state: State): Step {
  return still({ ...state, prompt: { kind: 'dispatch', draft: EMPTY_DRAFT }, message: undefined });
}

/** What is typed for a dispatch: bags, then `seal S0413`, then `to Some Laboratory`; all of it may be left out. */
export function dispatchSaid(text: string) {
  const [, bags = '', seal, laboratory] =
    /^(.*?)(?:\bseal +(\S+) *)?(?:\bto +(.+))?$/i.exec(text.trim()) ?? [];
  return {
    ...(bags.trim() === '' ? {} : { bags: [bags] }),
    ...(seal === undefined ? {} : { firstSeal: seal }),
    ...(laboratory === undefined ? {} : { laboratory: laboratory.trim() }),
  };
}

/** The dispatch that comes of what is typed, looked at before it is made. */
export function proposedNow(state: State, text: string): Result<Proposed> {
  const by = { at: state.now, by: state.person };
  return proposeDispatch(state.project, state.documents.values(), dispatchSaid(text), by);
}

/** Enter on the question of a dispatch: it is made up as shown; where it can't be, the reason is said and the question stands. */
export function answerDispatch(state: State, text: string, world: World): Step {
  const proposed = proposedNow({ ...state, now: world.now }, text);
  if (!proposed.ok) {
    const [first] = proposed.findings;
    return still(first === undefined ? state : sayingFinding(state, first));
  }
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const { document, made } = makeDispatch(proposed.value, maker);
  const said = `${made.what}. Its sheets: offsider dispatch sheet ${document.id}`;
  return submitting({ ...state, prompt: undefined }, document, made, said);
}

/** A bag scanned while a dispatch is asked for is one of its bags. */
export function scanIntoDispatch(state: State, number: string): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'dispatch') return still(state);
  const { text } = prompt.draft;
  const draft = draftOf(text === '' ? number : `${text.trimEnd()} ${number}`);
  return still({ ...state, prompt: { ...prompt, draft } });
}

/** Dispatches, the latest first: the order in which they are offered. */
export function latestFirst(documents: Iterable<Document>): readonly Dispatch[] {
  return [...dispatchesOf(documents)].reverse();
}

/** Why nothing can be handed on; undefined where there is a dispatch. */
export function whyNothingToHandOn(state: State): string | undefined {
  return latestFirst(state.documents.values()).length === 0 ? 'no dispatch is made up yet' : undefined;
}

/** Asks who takes the sacks of a dispatch, and how many were counted. */
export function askHandOn(state: State): Step {
  return still({
    ...state,
    prompt: { kind: 'hand over', cursor: 0, draft: EMPTY_DRAFT },
    message: undefined,
  });
}

/** What is typed when sacks change hands: who takes them, sacks counted, bags where they were opened, `broken` where a seal is. */
export function handOnSaid(text: string) {
  const [, to, sacks, bags, broken] =
    /^(.*?\S) +(\d{1,5})(?: +(\d{1,6}))?( +broken)?$/i.exec(text.trim()) ?? [];
  if (to === undefined || sacks === undefined) return undefined;
  return {
    to,
    sacks: Number(sacks),
    ...(bags === undefined ? {} : { bags: Number(bags) }),
    sealsWhole: broken === undefined,
  };
}

/** Enter on the question of who takes the sacks. */
export function answerHandOn(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'hand over') return still(state);
  const dispatch = latestFirst(state.documents.values())[prompt.cursor];
  const document = state.documents.get(`dispatch/${dispatch?.name}`);
  const said = handOnSaid(prompt.draft.text);
  if (dispatch === undefined || document === undefined) return still({ ...state, prompt: undefined });
  if (said === undefined)
    return still(saying(state, 'Type who takes them and how many sacks were counted: Orla Venn 34', 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const passed = passOn(document, said, maker);
  const off = said.sacks !== dispatch.sacks.length || !said.sealsWhole;
  const [next, effects] = submitting({ ...state, prompt: undefined }, passed.document, passed.made);
  if (!off || effects.length === 0) return [next, effects];
  const words = `Recorded: ${passed.made.what}. ${dispatch.sacks.length} were sent: count again with both there before they move on.`;
  return [saying(next, words, 'alert'), effects];
}
