import { readNewHole } from '../../acts/new-hole.ts';
import { beginsUnlined, startWithRig } from '../../acts/start.ts';
import { ok } from '../../finding/finding.ts';
import { drilledMm } from '../../hole/commands/drilled.ts';
import { planHole } from '../../hole/commands/plan-hole.ts';
import { reopenHole, stopDrilling } from '../../hole/commands/states.ts';
import type { Header, Plan } from '../../hole/header.ts';
import { headerOf, planOf } from '../../hole/hole.ts';
import { depthFromMetres, depthFromMm } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import { hashJson } from '../../record/hash.ts';
import { headsOf } from '../../standing/heads.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import { holesOf, inOwn, type State } from '../state.ts';
import { type Step, saying, still, submittingResult, type World } from '../step.ts';

/** The hole under the cursor on the list of holes. */
export function pickedHole(state: State): Document | undefined {
  return state.screen.name === 'holes' ? holesOf(state)[state.screen.cursor] : undefined;
}

/** Moves the cursor of the list of holes. */
export function moveHole(state: State, by: number): Step {
  if (state.screen.name !== 'holes') return still(state);
  const last = Math.max(0, holesOf(state).length - 1);
  return still({
    ...state,
    screen: { ...state.screen, cursor: Math.max(0, Math.min(last, state.screen.cursor + by)) },
    message: undefined,
  });
}

/** Opens the log of the hole under the cursor. A planned hole starts drilling with the rig of this console, from where logging starts. */
export function openHole(state: State, world: World): Step {
  const hole = pickedHole(state);
  if (hole === undefined) return still(saying(state, 'No hole here yet: n makes one.', 'warn'));
  const opened: State = {
    ...state,
    screen: { name: 'log', hole: hole.id, cursor: 'head' },
    draft: EMPTY_DRAFT,
    parked: EMPTY_DRAFT,
    message: undefined,
  };
  const { state: holeState } = headerOf(hole);
  return holeState === 'planned' || holeState === 'suspended'
    ? startHole(opened, hole, world)
    : still(opened);
}

/** Drilling starts, or goes on, with the rig of this console. */
function startHole(state: State, hole: Document, world: World): Step {
  if (state.readOnly !== undefined) return still(state);
  const maker = { newId: world.newId, at: world.now, by: state.person };
  const [started, effects] = submittingResult(
    state,
    hole,
    startWithRig(state.project, hole, state.rig, maker),
    state,
    `${headerOf(hole).name}: drilling with ${state.rig}. ;u takes it back.`,
  );
  const cautions = beginsUnlined(state.project, hole, state.documents.values());
  return effects.length === 0 || started.message === undefined || cautions.length === 0
    ? [started, effects]
    : [{ ...started, message: { ...started.message, cautions } }, effects];
}

/** Makes the hole that was typed, and opens its log: no one planned it, nothing is looked up. */
export function makeHole(state: State, world: World): Step {
  if (state.prompt?.kind !== 'new hole') return still(state);
  const taken = new Set(holesOf(state).map((hole) => hole.id));
  const read = readNewHole(state.prompt.draft.text, taken, inOwn(state, 'ZQRC014'));
  if (!read.ok) return still(saying(state, read.problem, 'alert'));
  const rig =
    state.project.settings.rigs.find((each) => each.name === state.rig) ?? state.project.settings.rigs[0];
  const header: Header = { ...headerFor(state, rig, read.name, {}), logFromMm: read.logFromMm };
  return made(state, world, read.name, header, read.plan);
}

/** Redrills an abandoned hole beside it: its name with the suffix A (B, C …), its plan, and the hole it stands for as its parent. */
export function redrillHole(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'redrill') return still(state);
  const because = prompt.draft.text.trim();
  if (because === '')
    return still(saying(state, 'Say why it is redrilled: the reason stays with both holes.', 'warn'));
  const parent = state.documents.get(`hole/${prompt.hole}`);
  if (parent === undefined) return still(state);
  const taken = new Set(holesOf(state).map((hole) => hole.id));
  const suffix = [...'ABCDEFGH'].find((letter) => !taken.has(`${parent.id}${letter}`));
  if (suffix === undefined) return still(saying(state, 'It has eight redrills already.', 'alert'));
  const rig =
    state.project.settings.rigs.find((each) => each.name === state.rig) ?? state.project.settings.rigs[0];
  const header = headerFor(state, rig, `${headerOf(parent).name}${suffix}`, {
    parent: { hole: parent.id, reason: 'redrill' as const, because },
  });
  return made(state, world, `${parent.id}${suffix}`, header, planOf(parent));
}

function headerFor(
  state: State,
  rig: State['project']['settings']['rigs'][number] | undefined,
  name: string,
  more: Partial<Header>,
): Header {
  return {
    name,
    state: 'planned',
    unplanned: true,
    ...more,
    logFromMm: depthFromMm(0),
    intervalMm: depthFromMetres(state.project.settings.log.intervalM),
    rodMm: depthFromMetres(rig?.rodM ?? 6),
    firstRodOffsetMm: depthFromMetres(rig?.firstRodOffsetM ?? 0),
  };
}

function made(state: State, world: World, id: string, header: Header, plan: Plan | undefined): Step {
  const making = planHole(
    { header, ...(plan === undefined ? {} : { plan }) },
    { newId: world.newId, at: world.now, by: state.person },
  );
  const cursor = [...holesOf(state).map((hole) => hole.id), id]
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .indexOf(id);
  const after: State = { ...state, prompt: undefined, screen: { name: 'holes', cursor } };
  const said = `${header.name} made. Enter starts drilling it.`;
  return submittingResult(state, { kind: 'hole', id }, ok(making), after, said);
}

/** Suspends or abandons the hole of the prompt, with the reason typed. */
export function stopHole(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'state' || (prompt.to !== 'suspended' && prompt.to !== 'abandoned'))
    return still(state);
  const hole = state.documents.get(`hole/${prompt.hole}`);
  const because = prompt.draft.text.trim();
  if (hole === undefined) return still(state);
  if (because === '') return still(saying(state, `Say why it is ${prompt.to}.`, 'warn'));
  const maker = { newId: world.newId, at: world.now, by: state.person };
  return submittingResult(state, hole, stopDrilling(hole, prompt.to, because, drilledMm(hole), maker), {
    ...state,
    prompt: undefined,
  });
}

/** Reopens the closed hole of the prompt, with the reason typed: recorded as a decision. */
export function reopen(state: State, world: World): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'reopen') return still(state);
  const hole = state.documents.get(`hole/${prompt.hole}`);
  const reason = prompt.draft.text.trim();
  if (hole === undefined) return still(state);
  if (reason === '') return still(saying(state, 'Say why it is reopened.', 'warn'));
  const heads = headsOf(hole);
  const decision = {
    kind: 'reopened' as const,
    depthMm: heads.drilledMm,
    loggedMm: heads.loggedMm,
    verdict: 'ask' as const,
    rules: [],
    reason,
    rulesHash: hashJson(state.project.settings.termination),
    schemaHash: hashJson(state.project.schema),
    at: world.now,
    by: state.person,
  };
  return submittingResult(
    state,
    hole,
    reopenHole(hole, decision, { newId: world.newId, at: world.now, by: state.person }),
    { ...state, prompt: undefined },
  );
}
