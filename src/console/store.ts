import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Happening, reduce } from './reduce.ts';
import { type Hands, runEvents } from './run.ts';
import type { State } from './state.ts';
import type { KeyEvent } from './terminal/input/keys.ts';

/** The console's store: state that is published once a read, and the two ways in which it changes. */
export interface ConsoleStore {
  readonly store: StoreApi<State>;
  /** The key events of one read. */
  readonly keys: (events: readonly KeyEvent[]) => void;
  /** Anything else that happens: the clock, the disk. */
  readonly happen: (happening: Happening) => void;
}

/** What hangs on the size of the screen. */
interface Fitting {
  /** Fits the state to the screen. */
  readonly settle: (state: State) => State;
  /** False while the window is too small to show anything: a key pressed then would change what nobody sees. */
  readonly canBeSeen: () => boolean;
}

/** Makes the store of a console around its first state. Knows no React. */
export function createConsoleStore(first: State, hands: Hands & Fitting): ConsoleStore {
  const store = createStore<State>(() => first);
  const publish = (reduced: State): void => {
    const next = hands.settle(reduced);
    if (next !== store.getState()) store.setState(next, true);
  };
  return {
    store,
    keys: (events) => {
      if (hands.canBeSeen()) publish(runEvents(store.getState(), events, hands));
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
