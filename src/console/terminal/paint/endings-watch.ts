import type { Ending } from './ending.ts';

const endingSignals = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const;

/**
 * Listens for what ends the process: signals and uncaught errors go to `onEnding`, and `onExit` runs at the latest when the process
 * exits. Returns what stops listening.
 */
export function watchEndings(onEnding: (ending: Ending) => void, onExit: () => void): () => void {
  const onSignal = (signal: NodeJS.Signals) => onEnding({ kind: 'signal', signal });
  const onUncaught = (error: unknown) => onEnding({ kind: 'error', error });
  for (const signal of endingSignals) process.on(signal, onSignal);
  process.on('uncaughtException', onUncaught);
  process.on('exit', onExit);
  return () => {
    for (const signal of endingSignals) process.off(signal, onSignal);
    process.off('uncaughtException', onUncaught);
    process.off('exit', onExit);
  };
}
