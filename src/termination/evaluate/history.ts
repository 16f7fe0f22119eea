import { type Tri, triAll, triAny, triNot } from '../../quantity/tri.ts';

/** From a depth on, a state. */
export type Step = { readonly atMm: number; readonly state: Tri };

/**
 * A state by the depth the hole had: at depth D the state is that of the last step at or above D. The first step
 * is at 0; no two neighbours are alike.
 */
export type History = readonly Step[];

/** A history that never changes. */
export function always(state: Tri): History {
  return [{ atMm: 0, state }];
}

/** A history from steps in order of depth: of steps at one depth the last stands, and neighbours that are alike become one. */
export function historyFrom(steps: Iterable<Step>): History {
  const kept: Step[] = [];
  for (const step of steps) {
    if (kept.at(-1)?.atMm === step.atMm) kept.pop();
    if (kept.at(-1)?.state !== step.state) kept.push(step);
  }
  return kept[0]?.atMm === 0 ? kept : historyFrom([{ atMm: 0, state: 'no' }, ...kept]);
}

/** The state when the hole was at a depth. */
export function stateAt(history: History, depthMm: number): Tri {
  return history.findLast((step) => step.atMm <= depthMm)?.state ?? 'cannot tell';
}

/** Since which depth the state at the end of the history has stood. */
export function sinceMm(history: History): number {
  return history.at(-1)?.atMm ?? 0;
}

/** The state of all of several histories at each depth; of none: yes. */
export function allOf(histories: readonly History[]): History {
  return together(histories, triAll);
}

/** The state of any of several histories at each depth; of none: no. */
export function anyOf(histories: readonly History[]): History {
  return together(histories, triAny);
}

/** The opposite at each depth. */
export function notOf(history: History): History {
  return history.map((step) => ({ atMm: step.atMm, state: triNot(step.state) }));
}

/** Every depth at which one of several histories changes, each once, the shallowest first. */
function depthsOfChange(histories: readonly History[]): readonly number[] {
  const depths = new Set([0, ...histories.flatMap((history) => history.map((step) => step.atMm))]);
  return [...depths].sort((a, b) => a - b);
}

/** The states of several histories at each of the depths at which one of them changes, in one walk down. */
export function* statesDown(
  histories: readonly History[],
): Generator<{ readonly atMm: number; readonly states: readonly Tri[] }> {
  const next = histories.map(() => 0);
  for (const atMm of depthsOfChange(histories)) {
    const states = histories.map((history, index) => {
      while ((history[next[index]! + 1]?.atMm ?? Number.POSITIVE_INFINITY) <= atMm) next[index]!++;
      return history[next[index]!]!.state;
    });
    yield { atMm, states };
  }
}

function together(histories: readonly History[], of: (states: readonly Tri[]) => Tri): History {
  if (histories.length === 1) return histories[0]!;
  const steps: Step[] = [];
  for (const { atMm, states } of statesDown(histories)) steps.push({ atMm, state: of(states) });
  return historyFrom(steps);
}
