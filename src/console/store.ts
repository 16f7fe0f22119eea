import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Happening, reduce } from './reduce.ts';
import { type Hands, linesWaiting, readHappenings, runSome } from './run.ts';
import type { State } from './state.ts';
import { saying } from './step.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** The console's store: state that is published once a read, and the two ways in which it changes. */
export interface ConsoleStore {
  readonly store: StoreApi<State>;
  /** The key events of one read. */
  readonly keys: (events: readonly KeyEvent[]) => void;
  /** Anything else that happens: the clock, the disk. */
  readonly happen: (happening: Happening) => void;
}

/** What hangs on the size of the screen, and on its turn. */
interface Fitting {
  /** Fits the state to the screen. */
  readonly settle: (state: State) => State;
  /** False while the window is too small to show anything: a key pressed then would change what no one sees. */
  readonly canBeSeen: () => boolean;
  /** Runs something when the screen has been painted and the disk has had its turn. */
  readonly later: (run: () => void) => void;
}

/**
 * Makes the store of a console around its first state. Knows no React. A long read is worked off in parts, with `later` between them: what is
 * logged is saved and shown as it goes.
 */
export function createConsoleStore(first: State, hands: Hands & Fitting): ConsoleStore {
  const waiting: Happening[] = [];
  let isWaiting = false;
  const store = createStore<State>(() => first);
  const publish = (reduced: State): void => {
    const next = hands.settle(reduced);
    if (next !== store.getState()) store.setState(next, true);
  };
  const workOff = (): void => {
    const state = runSome(store.getState(), waiting, hands);
    isWaiting = waiting.length > 0;
    publish(
      isWaiting ? saying(state, `Taking what was pasted: ${linesWaiting(waiting)} lines to go.`) : state,
    );
    if (isWaiting) hands.later(workOff);
  };
  return {
    store,
    keys: (events) => {
      if (!hands.canBeSeen()) return;
      waiting.push(...readHappenings(events, store.getState()));
      if (!isWaiting) workOff();
    },
    happen: (happening) => {
      const [next, effects] = reduce(store.getState(), happening, {
        newId: hands.newId,
        now: hands.now(),
        ahead: false,
      });
      publish(effects.reduce((state, effect) => hands.perform(state, effect), next));
    },
  };
}
