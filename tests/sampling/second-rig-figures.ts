import type { DayOutcome } from './second-rig-day.ts';

/** Shares over the mishaps that showed: as named, and the most that any namer could reach with the same to go by. */
export interface Figures {
  readonly shown: number;
  readonly detected: number;
  readonly named: number;
  readonly namedBound: number;
  readonly afterOne: number;
  readonly falseAlarms: number;
}

export function figuresOf(outcomes: readonly DayOutcome[]): Figures {
  const shown = outcomes.filter((each) => each.seen);
  const share = (holds: (each: DayOutcome) => boolean) => shown.filter(holds).length / shown.length;
  return {
    shown: shown.length,
    detected: share((each) => each.detected),
    named: share((each) => each.named === each.truth),
    namedBound: bound(shown),
    afterOne: share((each) => each.namedAfterOne === each.truth),
    falseAlarms: outcomes.reduce((sum, each) => sum + each.falseAlarms, 0),
  };
}

/** Of those that read alike a namer gives all the one name; the best it can do is the most frequent truth among them. */
function bound(shown: readonly DayOutcome[]): number {
  const groups = new Map<string, Map<string, number>>();
  for (const { signature = '', truth } of shown) {
    const group = groups.get(signature) ?? new Map<string, number>();
    groups.set(signature, group.set(truth, (group.get(truth) ?? 0) + 1));
  }
  const best = [...groups.values()].reduce((sum, group) => sum + Math.max(...group.values()), 0);
  return best / shown.length;
}

/** What each truth was named, wrongly or not, the most frequent first. */
export function mistaken(
  outcomes: readonly DayOutcome[],
  nameOf: (each: DayOutcome) => string | undefined,
): readonly string[] {
  const counts = new Map<string, number>();
  for (const each of outcomes.filter(({ seen }) => seen)) {
    const key = `${each.truth} named ${nameOf(each) ?? 'nothing'}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([key, count]) => `${key}: ${count}`);
}
