import { constants } from 'node:os';

/** Why the console left the screen. */
export type Ending =
  | { readonly kind: 'stopped' }
  | { readonly kind: 'signal'; readonly signal: NodeJS.Signals }
  | { readonly kind: 'error'; readonly error: unknown }
  | { readonly kind: 'lost' };

/**
 * What cli.ts does with an ending: the process's exit code (a signal is 128 and its number, as a shell counts; a bug of ours is 70,
 * "internal software error" of sysexits.h), and what to print on stderr, if anything.
 */
export function describeEnding(ending: Ending): { readonly exitCode: number; readonly message?: string } {
  switch (ending.kind) {
    case 'stopped':
      return { exitCode: 0 };
    case 'signal':
      return { exitCode: 128 + constants.signals[ending.signal] };
    case 'lost':
      return { exitCode: 128 + constants.signals.SIGHUP };
    case 'error': {
      const { error } = ending;
      const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
      return {
        exitCode: 70,
        message: `The screen stopped on a fault of the program. Rows shown as saved are safe.\n${detail}`,
      };
    }
  }
}
