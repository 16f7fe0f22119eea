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

/**
 * The key events of one read, reduced in order: each sees what the one before it left. A bag number that came in one burst with
 * its Enter is a scan; keys that were held behind a refused line are reduced as soon as it is mended.
 */
export function runEvents(state: State, events: readonly KeyEvent[], hands: Hands): State {
  const waiting: Happening[] = withScans(events, state);
  let current = state;
  while (waiting.length > 0) {
    const happening = waiting.shift() as Happening;
    const ahead = waiting.some((each) => each.kind !== 'read over');
    const [next, effects] = reduce(current, happening, { newId: hands.newId, now: hands.now(), ahead });
    current = next;
    for (const effect of effects) {
      current = hands.perform(current, effect);
      if (effect.do === 'replay')
        waiting.unshift(...effect.events.map((event): Happening => ({ kind: 'key', event })));
    }
  }
  return current;
}

/** Runs of typed characters that end in Enter and are a whole bag number, as one happening each. */
function withScans(events: readonly KeyEvent[], state: State): Happening[] {
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
