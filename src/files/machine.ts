import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { errorCode } from './disk.ts';

/** This computer and this process, as a lock names them. */
export interface Machine {
  readonly host: string;
  readonly process: number;
  /** Changes each time the computer starts; empty where the platform does not tell. */
  readonly boot: string;
  /** Whether a process of this computer is running. */
  readonly isRunning: (process: number) => boolean;
}

/** The computer that this runs on. */
export function thisMachine(): Machine {
  return { host: hostname(), process: process.pid, boot: bootId(), isRunning };
}

function bootId(): string {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    return '';
  }
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}
