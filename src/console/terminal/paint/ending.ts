import { constants } from 'node:os';
import { safeLines } from '../../../finding/safe-text.ts';

/** Why the console left the screen. */
export type Ending =
  | { readonly kind: 'stopped' }
  | { readonly kind: 'signal'; readonly signal: NodeJS.Signals }
  | { readonly kind: 'error'; readonly error: unknown }
  | { readonly kind: 'lost' };

/** What cli.ts does with an ending. */
export interface LastAct {
  /** A signal is 128 and its number, as a shell counts; a fault of ours is 70, "internal software error" of sysexits.h. */
  readonly exitCode: number;
  /** To be printed on stderr. */
  readonly message?: string;
  /**
   * The terminal is gone: end by sending this signal to the own process, not by `process.exit`. On its way out Node restores the modes of
   * a terminal that isn't there, and crashes on that.
   */
  readonly raise?: NodeJS.Signals;
}

/** The process's last act for an ending of the console. */
export function describeEnding(ending: Ending): LastAct {
  switch (ending.kind) {
    case 'stopped':
      return { exitCode: 0 };
    case 'signal': {
      const exitCode = 128 + constants.signals[ending.signal];
      return ending.signal === 'SIGHUP' ? { exitCode, raise: 'SIGHUP' } : { exitCode };
    }
    case 'lost':
      return { exitCode: 128 + constants.signals.SIGHUP, raise: 'SIGHUP' };
    case 'error': {
      const { error } = ending;
      const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
      return {
        exitCode: 70,
        message: `The screen stopped on a fault of the program. Rows shown as saved are safe.\n${safeLines(detail)}`,
      };
    }
  }
}
