import type { DeskOptions } from './desk.ts';

/** Everything that the program gets from the world: time, randomness, its environment, its terminal. Injected, so that a whole sitting can be repeated. */
export interface Outside {
  readonly clock: DeskOptions['clock'];
  readonly random: DeskOptions['random'];
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
}
