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
    return !isDefunct(id);
  } catch (error) {
    return errorCode(error) === 'EPERM';
  }
}

/** True for a process that has ended and that its parent has not looked after yet: it still has a number. */
function isDefunct(id: number): boolean {
  try {
    // The state follows the name, which stands in brackets and may hold brackets and spaces itself.
    const stat = readFileSync(`/proc/${id}/stat`, 'utf8');
    return /^[ZX]/.test(stat.slice(stat.lastIndexOf(')') + 2));
  } catch {
    return false;
  }
}
