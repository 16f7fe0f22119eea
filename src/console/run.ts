import type { Stamp } from '../quantity/stamp.ts';
import type { Id } from '../record/document.ts';
import { bagNumberPattern } from '../sampling/numbers/bag-number.ts';
import { type Happening, reduce } from './reduce.ts';
import type { State } from './state.ts';
import type { Effect } from './step.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** What a run of happenings is lent: ids, the time, and the hand that does effects. */
export interface Hands {
  readonly newId: () => Id;
  readonly now: () => Stamp;
  readonly perform: (state: State, effect: Effect) => State;
}

/** Edits that are made before the screen is painted and the disk is given its turn: a paste of a thousand lines would hold both up. */
const EDITS_AT_ONCE = 20;

/**
 * What waits to be reduced, in order: each happening sees what the one before it left. Works off as much as makes `EDITS_AT_ONCE` edits and
 * leaves the rest in `waiting`. Keys that were held behind a refused line are reduced as soon as it is mended.
 */
export function runSome(state: State, waiting: Happening[], hands: Hands): State {
  let current = state;
  let edits = 0;
  let done = 0;
  while (done < waiting.length && edits < EDITS_AT_ONCE) {
    const happening = waiting[done] as Happening;
    done += 1;
    const ahead =
      waiting.length > done && waiting.slice(done, done + 2).some((each) => each.kind !== 'read over');
    const [next, effects] = reduce(current, happening, { newId: hands.newId, now: hands.now(), ahead });
    current = next;
    for (const effect of effects) {
      current = hands.perform(current, effect);
      if (effect.do === 'submit') edits += 1;
      if (effect.do === 'replay')
        waiting.splice(done, 0, ...effect.events.map((event): Happening => ({ kind: 'key', event })));
    }
  }
  waiting.splice(0, done);
  return current;
}

/** How many lines wait: those whose Enter has not been reduced yet. */
export function linesWaiting(waiting: readonly Happening[]): number {
  return waiting.filter(
    (each) =>
      each.kind === 'scan' ||
      (each.kind === 'key' && each.event.kind === 'key' && each.event.name === 'enter'),
  ).length;
}

/** The key events of one read as happenings. A bag number that came in one burst with its Enter is a scan. */
export function readHappenings(events: readonly KeyEvent[], state: State): readonly Happening[] {
  const pattern = bagNumberPattern(state.project.sampling.numbers);
  const happenings: Happening[] = [];
  let run: KeyEvent[] = [];
  const flush = (): void => {
    happenings.push(...run.map((event): Happening => ({ kind: 'key', event })));
    run = [];
  };
  for (const event of events) {
    if (event.kind === 'text') {
      if (/^[A-Z]$/.test(event.text) && !/^[A-Z]/.test(textOf(run))) flush();
      run.push(event);
    } else if (
      event.kind === 'key' &&
      event.name === 'enter' &&
      pattern.test(textOf(run)) &&
      run.length > 1
    ) {
      happenings.push({ kind: 'scan', number: textOf(run) });
      run = [];
    } else {
      flush();
      happenings.push({ kind: 'key', event });
    }
  }
  flush();
  return [...happenings, { kind: 'read over' }];
}

function textOf(run: readonly KeyEvent[]): string {
  return run.map((event) => (event.kind === 'text' ? event.text : '')).join('');
}
